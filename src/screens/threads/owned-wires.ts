import { html, nothing } from 'lit';
import '../../elements/row';
import { readStored } from '../../core/machine';
import { equal, inBase, toNumber, type Stated } from '../../core/quantity';
import type { Thread } from '../../core/thread';
import * as wires from '../../core/thread/wires';
import { statedText } from '../../text/numbers';
import { measureText as t } from '../../text/measure';
import { drillName } from '../../text/threads';
import type { App } from '../../state';

interface Owned {
  readonly at: number;
  readonly size: Stated;
}
const ownedOf = (app: App): readonly Owned[] =>
  app.settings.wires
    .flatMap((w, at): Owned[] => {
      const size = readStored(w);
      return size ? [{ at, size }] : [];
    })
    .sort((a, b) => toNumber(inBase(a.size)) - toNumber(inBase(b.size)));

const shank = (best: number, range: wires.WireRange | null, mm: (x: number) => string) => {
  const near = wires.nearestShank(best, range);
  if (!near) return html`<p>${t.shankNone}</p>`;
  const metric = near.kind === 'metric';
  return html`<ls-row
    .label=${t.shank}
    .value=${drillName(near.kind, near.name)}
    .unit=${metric ? 'mm' : ''}
    .note=${metric ? '' : mm(toNumber(near.diameter))}
  ></ls-row>`;
};

/** Which wire suits the thread, and which of those owned. @param mm writes a length with its unit */
export const wireSection = (app: App, thread: Thread, sizes: wires.WireSizes, mm: (x: number) => string) => {
  const range = sizes.customary ?? sizes.range;
  const { half, pitch } = wires.wireThreadOf(thread);
  const owned = ownedOf(app);
  const list = owned.map(({ at, size }) => ({
    id: `${at}`,
    diameter: toNumber(inBase(size)),
    measured: true,
    count: 3,
  }));
  const first = range ? wires.chooseWires(half, pitch, range, list)[0] : undefined;
  const best = first?.fit === 'suits' ? owned.find(({ at }) => `${at}` === first.wire.id) : undefined;
  const uneven = wires.symmetricalHalf(half) === null;
  const note = uneven ? t.bestUneven : t.bestNote;
  return html`<div>
    <ls-row .label=${t.bestWire} .note=${note}><span class="figure">${mm(sizes.best)}</span></ls-row>
    ${
      range
        ? html`<ls-row .label=${sizes.customary ? t.customary : t.usable}
            ><span class="figure">${mm(range.least)} – ${mm(range.most)}</span></ls-row
          >`
        : nothing
    }
    ${best ? html`<ls-row .label=${t.pick}><span class="figure">${statedText(best.size)}</span></ls-row>` : nothing}
    ${owned.length && !best ? html`<p class="unsuited">${t.pickNone}</p>` : nothing}
    ${best ? nothing : shank(sizes.best, range, mm)}
  </div>`;
};

/** The wires owned as keys: touched to be used, or to be taken out once that was asked for. */
export const ownedSection = (
  app: App,
  inUse: Stated | null,
  taking: boolean,
  setTaking: (on: boolean) => void,
) => {
  const owned = ownedOf(app);
  if (taking && owned.length)
    return html`<h2 class="label">${t.takeOutWhich}</h2>
      <div class="keys" role="group" aria-label=${t.takeOutWhich}>
        ${owned.map(
          ({ at, size }) =>
            html`<button
              class="key stop"
              @click=${() => {
                setTaking(false);
                void app.takeOutWire(at);
              }}
            >
              ${t.takeOut(statedText(size))}
            </button>`,
        )}
      </div>
      <button class="key apart" @click=${() => setTaking(false)}>${t.takeOutEnd}</button>`;
  return html`<h2 class="label">${t.owned}</h2>
    <div class="keys" role="group" aria-label=${t.owned}>
      ${owned.map(
        ({ size }) =>
          html`<button
            class="key"
            aria-pressed=${inUse !== null && equal(inBase(inUse), inBase(size))}
            @click=${() => void app.readings.set('measure.wire', size)}
          >
            ${statedText(size)}
          </button>`,
      )}
      <a class="key" href="#/enter/wire">${t.addWire}</a>
    </div>
    ${
      owned.length
        ? html`<p class="note">${t.ownedHelp}</p>
            <button class="key apart" @click=${() => setTaking(true)}>${t.takeOutOne}</button>`
        : nothing
    }`;
};
