import { html, svg } from 'lit';
import '../../elements/written-line';
import { conductor } from '../../elements/conductor';
import type { WrittenEvent } from '../../elements/written-line';
import {
  COLOURS,
  coloursOf,
  connectorsOf,
  signalsFor,
  WIRING_BOUNDS,
  withThing,
  type Colour,
  type End,
  type Wire,
  type WireColour,
} from '../../core/wiring/record';
import { colourName, colourText, wiringText as t } from '../../text/wiring';
import { changeWiring } from '../../state/wiring';
import type { App } from '../../state';
import { choice } from './choice';
import { findingLine, findingsNow } from './findings';
import { connectorName, endName, signalName } from './names';

const PAIRS = [null, 1, 2, 3, 4, 5, 6, 7, 8] as const;

/** A short piece of the conductor, its letters and its name: never colour alone. */
const swatch = (colour: WireColour, name: string) =>
  html`<span class="swatch"
    ><svg viewBox="0 0 40 16" aria-hidden="true">${svg`${conductor(colour, 2, 8, 38)}`}</svg> ${colour}
    <small>${name}</small></span
  >`;

/** A wire: what it carries, its colour, where it comes from and goes to. */
export const wirePage = (app: App, id: string, w: Wire, leave: () => void) => {
  const r = app.wiring?.value;
  if (!r) return html``;
  const change = (part: Partial<Wire>): void =>
    void changeWiring(app, withThing(r, 'wires', id, { ...w, ...part }));
  const cable = r.cables[w.cable];
  const [body, second] = w.colour ? coloursOf(w.colour) : [null, null];
  const paint = (b: Colour | null, s: Colour | null): void =>
    change({ colour: b && (s && s !== b ? `${b}/${s}` : b) });
  const colours = (none: string) =>
    [...COLOURS.map((c) => [c, swatch(c, colourName[c])] as const), [null, none]] as const;
  const end = (side: 'from' | 'to', name: string) => {
    const now = w[side];
    const put = (connector: string | null): void => {
      const to: End | null = connector === null ? null : { connector, pin: null };
      if (connector !== (now?.connector ?? null)) change({ [side]: to });
    };
    return html`${choice<string | null>(
      `${name}: ${endName(r, now)}`,
      [...connectorsOf(r).map(([c, at]) => [c, connectorName(at)] as const), [null, t.openEnd]],
      now?.connector ?? null,
      put,
    )}
    ${
      now
        ? html`<a class="key left" href="#/enter/wiring/wire/${id}/${side}"
            >${t.pin}: ${now.pin ?? t.enter}</a
          >`
        : ''
    }`;
  };
  const takeOut = async (): Promise<void> => {
    await changeWiring(app, withThing(r, 'wires', id, null), signalName(w));
    leave();
  };
  return html`<h1>${cable?.name ?? '?'} · ${signalName(w)}</h1>
    <p>${endName(r, w.from)} – ${endName(r, w.to)}${w.colour ? `, ${colourText(w.colour)}` : ''}</p>
    <div>
      ${findingsNow(app, r)
        .filter((f) => f.wires.includes(id))
        .map((f) => findingLine(r, f, `wire/${id}`))}
    </div>
    ${choice(
      t.signal,
      signalsFor(cable?.kind ?? 'other').map((s) => [s, s] as const),
      w.signal,
      (signal) => change({ signal }),
      'grid3',
    )}
    <ls-written-line
      .label=${t.otherSignal}
      .value=${w.signal}
      .keep=${t.keep}
      .long=${t.nameLong}
      .most=${WIRING_BOUNDS.signal}
      @ls-written=${(e: WrittenEvent) => change({ signal: e.value })}
    ></ls-written-line>
    ${end('from', t.from)} ${end('to', t.to)}
    ${choice<Colour | null>(t.colour, colours(t.notKnown), body, (b) => paint(b, second), 'grid3')}
    ${body ? choice<Colour | null>(t.stripe, colours(t.noPair), second, (s) => paint(body, s), 'grid3') : ''}
    ${choice<number | null>(
      t.pair,
      PAIRS.map((n) => [n, n ?? t.noPair] as const),
      w.pair,
      (pair) => change({ pair }),
      'grid3',
    )}
    <a class="key" href="#/machine/wiring/cable/${w.cable}">${t.toCable}</a>
    <button class="key stop apart" @click=${() => void takeOut()}>${t.take(signalName(w))}</button>`;
};
