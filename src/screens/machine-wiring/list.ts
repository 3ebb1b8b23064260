import { html, nothing } from 'lit';
import { standingMark } from '../../elements/standing';
import { worst } from '../../core/figures/standing';
import {
  cablesOf,
  connectorsOf,
  LAYOUT_IDS,
  wiresOf,
  type Finding,
  type LayoutId,
} from '../../core/wiring/record';
import { trade } from '../../text/prove';
import { findingText, kindName, wiringText as t } from '../../text/wiring';
import type { App } from '../../state';
import { findingLine, findingsNow, isOnlyMissing } from './findings';
import { connectorName } from './names';

export interface Adding {
  readonly layout: (kind: LayoutId) => void;
  readonly empty: (part: 'cables' | 'connectors') => void;
}

/** First and large, whatever else there is. */
export const cautions = () =>
  html`<div class="alert">
    <strong>${t.caution}</strong>
    ${t.cautions.map((c) => html`<p>${trade(c)}</p>`)}
  </div>`;

const openOf = (f: Finding): string => `${trade(findingText[f.code])}: ${t.notKnown.toLowerCase()}`;

/** Everything in the record, what the checks say, and what can be added. */
export const listPage = (app: App, adding: Adding, trouble: string) => {
  const r = app.wiring?.value;
  if (!r) return nothing;
  const found = findingsNow(app, r);
  const said = found.filter((f) => !isOnlyMissing(f) && (f.standing !== 'within' || f.cable === null));
  const [cables, connectors] = [cablesOf(r), connectorsOf(r)];
  /** Empty where nothing was judged, as of a display's cable. */
  const markOf = (id: string) => {
    const of = found.filter((f) => f.cable === id || f.wires.some((w) => r.wires[w]?.cable === id));
    const standing = worst(of.map((f) => f.standing));
    return of.length === 0 ? nothing : html`<span class=${standing}>${standingMark(standing)}</span>`;
  };
  return html`${cautions()}
    <p>${cables.length + connectors.length > 0 ? t.intro : t.none}</p>
    ${cables.length > 0 ? html`<a class="key solid" href="#/machine/wiring/sheet">${t.sheet}</a>` : nothing}
    ${
      said.length > 0
        ? html`<h2>${t.checks}</h2>
            <div>${said.map((f) => findingLine(r, f))}</div>
            <p class="note">${t.byRecord}</p>`
        : nothing
    }
    ${
      cables.length > 0
        ? html`<h2>${t.cables}</h2>
            <div>
              ${cables.map(
                ([id, c]) =>
                  html`<a class="line" href="#/machine/wiring/cable/${id}">
                    <span>${markOf(id)}</span>
                    <span
                      ><strong>${c.name} · ${trade(kindName[c.kind])}</strong><br />${[
                        t.wires(wiresOf(r, id).length),
                        ...found.filter((f) => f.cable === id && isOnlyMissing(f)).map(openOf),
                      ].join(' · ')}</span
                    >
                  </a>`,
              )}
            </div>`
        : nothing
    }
    ${
      connectors.length > 0
        ? html`<h2>${t.connectors}</h2>
            <div class="stack">
              ${connectors.map(
                ([id, c]) =>
                  html`<a class="key left" href="#/machine/wiring/connector/${id}"
                    >${connectorName(c)}, ${t.pinsOf(c.pins)}</a
                  >`,
              )}
            </div>`
        : nothing
    }
    <h2>${t.add}</h2>
    <p class="note">${t.invented}</p>
    ${trouble ? html`<p class="over" role="alert">${trouble}</p>` : nothing}
    <div class="stack">
      ${LAYOUT_IDS.map(
        (kind) =>
          html`<button class="key left" @click=${() => adding.layout(kind)}>
            ${trade(kindName[kind])}
          </button>`,
      )}
    </div>
    <h2>${t.addEmpty}</h2>
    <div class="pair">
      <button class="key" @click=${() => adding.empty('cables')}>${t.emptyCable}</button>
      <button class="key" @click=${() => adding.empty('connectors')}>${t.connector}</button>
    </div>
    <a class="key" href="#/machine">${t.machine}</a>`;
};
