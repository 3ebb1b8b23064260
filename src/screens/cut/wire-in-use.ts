import { html, nothing } from 'lit';
import '../../elements/row';
import { readStored } from '../../core/machine';
import { equal, inBase, toNumber } from '../../core/quantity';
import * as wires from '../../core/thread/wires';
import type { App } from '../../state';
import { finishText as t, mmText } from '../../text/finish';
import { measureText } from '../../text/measure';
import { statedText, withUnit } from '../../text/numbers';
import { classText } from '../../text/threads';
import type { Piece } from './finishing';

/** The wires owned that suit, as keys; the one in use; and what the class reads over it. @param entry the key to enter it */
export const wireInUse = (app: App, { thread, classId }: Piece, entry: unknown) => {
  if (!thread) return nothing;
  const { units } = app.settings;
  const sizes = wires.wireSizes(thread);
  const range = sizes && (sizes.customary ?? sizes.range);
  const now = app.readings.get('cut.wire');
  const mm = now && toNumber(inBase(now));
  const owned = app.settings.wires
    .flatMap((w) => readStored(w) ?? [])
    .filter((w) => {
      const size = toNumber(inBase(w));
      return !range || (size >= range.least && size <= range.most);
    });
  const misfit =
    mm !== null && range ? (mm < range.least ? 'too-thin' : mm > range.most ? 'too-thick' : null) : null;
  const w = mm !== null && classId ? wires.overWiresWindow(thread, classId, mm) : null;
  const over = w?.ok && w.min !== null && w.max !== null ? [w.min, w.max] : null;
  const best = sizes ? withUnit(mmText(sizes.best, units), units) : '';
  return html`${
    owned.length
      ? html`<div class="keys" role="group" aria-label=${measureText.owned}>
          ${owned.map(
            (size) =>
              html`<button
                class="key"
                aria-pressed=${now !== null && equal(inBase(now), inBase(size))}
                @click=${() => void app.readings.set('cut.wire', size)}
              >
                ${statedText(size)}
              </button>`,
          )}
        </div>`
      : nothing
  }
  ${entry}
  ${best && !now ? html`<p class="note">${measureText.bestWire}: ${best}. ${measureText.bestNote}</p>` : nothing}
  ${misfit ? html`<p class="over"><strong>${measureText.misfit[misfit]}</strong></p>` : nothing}
  ${w?.ok && w.clear === false ? html`<p class="over"><strong>${measureText.notClear}</strong></p>` : nothing}
  ${
    over
      ? html`<ls-row
          .label=${t.overFor(classText(classId ?? ''))}
          .value=${over.map((x) => mmText(x, units)).join(' – ')}
          .unit=${units}
        ></ls-row>`
      : nothing
  }`;
};
