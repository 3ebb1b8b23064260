import { html } from 'lit';
import '../../elements/written-line';
import type { WrittenEvent } from '../../elements/written-line';
import {
  PLACES,
  WIRING_BOUNDS,
  wiresOf,
  withoutConnector,
  withThing,
  type Connector,
} from '../../core/wiring/record';
import { trade } from '../../text/prove';
import { placeName, wiringText as t } from '../../text/wiring';
import { changeWiring } from '../../state/wiring';
import type { App } from '../../state';
import { choice } from './choice';
import { findingLine, findingsNow } from './findings';
import { connectorName, endName, signalName } from './names';

/** A name of its own, for a connector or a cable. */
export const nameLine = (value: string, keep: (name: string) => void) =>
  html`<ls-written-line
    .label=${t.name}
    .value=${value}
    .keep=${t.keep}
    .long=${t.nameLong}
    .most=${WIRING_BOUNDS.name}
    @ls-written=${(e: WrittenEvent) => keep(e.value)}
  ></ls-written-line>`;

/** A connector: its name, place and pins, and what is on each. */
export const connectorPage = (app: App, id: string, c: Connector, leave: () => void) => {
  const r = app.wiring?.value;
  if (!r) return html``;
  const change = (part: Partial<Connector>): void =>
    void changeWiring(app, withThing(r, 'connectors', id, { ...c, ...part }));
  const ends = wiresOf(r).flatMap(([wire, w]) =>
    [w.from, w.to].flatMap((e) => (e?.connector === id ? [{ wire, w, e }] : [])),
  );
  const takeOut = async (): Promise<void> => {
    await changeWiring(app, withoutConnector(r, id), c.name);
    leave();
  };
  return html`<h1>${connectorName(c)}</h1>
    <div>
      ${findingsNow(app, r)
        .filter((f) => f.connector === id)
        .map((f) => findingLine(r, f, `connector/${id}`))}
    </div>
    <div class="stack">
      ${
        ends.length === 0
          ? html`<p>${t.noWires}</p>`
          : ends.map(
              ({ wire, w, e }) =>
                html`<a class="key left" href="#/machine/wiring/wire/${wire}"
                  >${endName(r, e)} · ${signalName(w)} · ${r.cables[w.cable]?.name ?? '?'}</a
                >`,
            )
      }
    </div>
    ${nameLine(c.name, (name) => change({ name }))}
    ${choice(
      t.place,
      PLACES.map((p) => [p, trade(placeName[p])] as const),
      c.place,
      (place) => change({ place }),
    )}
    <a class="key left" href="#/enter/wiring/connector/${id}/pins">${t.pins}: ${c.pins}</a>
    <a class="key" href="#/machine/wiring">${t.back}</a>
    <button class="key stop apart" @click=${() => void takeOut()}>${t.take(c.name)}</button>`;
};
