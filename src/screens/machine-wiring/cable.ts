import { html, nothing } from 'lit';
import '../../elements/cable-drawing';
import {
  BONDS,
  CABLE_KINDS,
  SECTION_IDS,
  wiresOf,
  withoutCable,
  withThing,
  type Bond,
  type Cable,
  type CableField,
} from '../../core/wiring/record';
import { appText } from '../../text/app';
import { fieldText } from '../../text/machine';
import { statedText } from '../../text/numbers';
import { trade } from '../../text/prove';
import { bondName, cableFieldName, kindName, sectionText, wiringText as t } from '../../text/wiring';
import { changeWiring } from '../../state/wiring';
import type { App } from '../../state';
import { choice } from './choice';
import { nameLine } from './connector';
import { drawnCable, sideName } from './drawn';
import { findingLine, findingsNow } from './findings';
import { endName, signalName } from './names';

const SUPPLY = ['supply', 'least', 'current'] as const;

/** A cable: drawn, with its wires, and what is known of it. */
export const cablePage = (app: App, id: string, c: Cable, addWire: () => void, leave: () => void) => {
  const r = app.wiring?.value;
  if (!r) return html``;
  const change = (part: Partial<Cable>): void =>
    void changeWiring(app, withThing(r, 'cables', id, { ...c, ...part }));
  const found = findingsNow(app, r).filter((f) => f.cable === id);
  const asked = new Set(
    found.flatMap((f) => f.missing.flatMap((m) => (m.of === 'machine' ? [m.field] : []))),
  );
  const wires = wiresOf(r, id);
  const drawn = drawnCable(r, id, c);
  const figure = (field: CableField) =>
    html`<a class="key left" href="#/enter/wiring/cable/${id}/${field}"
      >${c[field] ? `${cableFieldName[field]}: ${statedText(c[field])}` : appText.enter(cableFieldName[field])}</a
    >`;
  const bond = (field: 'bondFrom' | 'bondTo', side: 'from' | 'to') =>
    choice<Bond | null>(
      trade(t.bondFrom(sideName(r, id, side))),
      [...BONDS.map((b) => [b, bondName[b]] as const), [null, t.notKnown]],
      c[field],
      (to) => change({ [field]: to }),
    );
  const takeOut = async (): Promise<void> => {
    await changeWiring(app, withoutCable(r, id), c.name);
    leave();
  };
  return html`<h1>${c.name} · ${trade(kindName[c.kind])}</h1>
    <div>${found.map((f) => findingLine(r, f, `cable/${id}`))}</div>
    <div class="stack">
      ${[...asked].map(
        (f) => html`<a class="key left" href="#/machine/field/${f}">${appText.enter(fieldText[f].label)}</a>`,
      )}
    </div>
    <ls-cable-drawing .cable=${drawn.cable} .text=${drawn.text}></ls-cable-drawing>
    ${wires.length > 0 ? html`<p class="note">${t.rings}</p>` : html`<p>${t.noWires}</p>`}
    <div class="stack">
      ${wires.map(
        ([wire, w]) =>
          html`<a class="key left" href="#/machine/wiring/wire/${wire}"
            >${signalName(w)} · ${w.colour ?? '?'} · ${endName(r, w.from)} – ${endName(r, w.to)}</a
          >`,
      )}
      <button class="key" @click=${addWire}>${t.addWire}</button>
    </div>
    ${
      c.kind === 'stop'
        ? choice<Cable['contacts']>(
            t.contacts,
            [
              ['closed', t.closed],
              ['open', t.open],
              [null, t.notKnown],
            ],
            c.contacts,
            (contacts) => change({ contacts }),
          )
        : nothing
    }
    ${choice<Cable['screen']>(
      trade(t.screen),
      [
        ['yes', t.yes],
        ['no', t.no],
        [null, t.notKnown],
      ],
      c.screen,
      (screen) => change({ screen }),
    )}
    ${c.screen === 'yes' ? [bond('bondFrom', 'from'), bond('bondTo', 'to')] : nothing} ${figure('length')}
    ${choice<Cable['section']>(
      t.sections,
      [...SECTION_IDS.map((s) => [s, sectionText(s)] as const), [null, t.notKnown]],
      c.section,
      (section) => change({ section }),
    )}
    <h2 class="label">${t.supplies}</h2>
    <div class="stack">${SUPPLY.map(figure)}</div>
    ${nameLine(c.name, (name) => change({ name }))}
    ${choice(
      t.kind,
      CABLE_KINDS.map((k) => [k, trade(kindName[k])] as const),
      c.kind,
      (kind) => change({ kind }),
    )}
    <a class="key" href="#/machine/wiring">${t.back}</a>
    <button class="key stop apart" @click=${() => void takeOut()}>${t.take(c.name)}</button>`;
};
