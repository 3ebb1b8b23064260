import { html, nothing } from 'lit';
import {
  adviceOfFeel,
  FELT,
  NO_GO,
  TRIED,
  type FeelAdvice,
  type Felt,
  type NoGo,
  type Tried,
} from '../../core/cut/feel';
import { gaugeLengths, wireThreadOf } from '../../core/thread/wires';
import type { Thread } from '../../core/thread';
import type { App } from '../../state';
import { finishText as t } from '../../text/finish';
import { chosen } from './finishing';

/** Choices by which the feel is kept; the two that belong to one trial are forgotten after it. */
const TRIED_WITH = 'cut.tried';
const FEEL = 'cut.felt';
const NO_GO_FEEL = 'cut.noGo';

export interface Feel {
  readonly tried: Tried;
  readonly felt: Felt | null;
  readonly noGo: NoGo | null;
  readonly advice: FeelAdvice | null;
}

export const feelNow = (app: App): Feel => {
  const tried = chosen(app, TRIED_WITH, TRIED);
  const { choices } = app.settings;
  const felt = FELT.find((f) => f === choices[FEEL]) ?? null;
  const noGo = tried === 'nut' ? null : (NO_GO.find((f) => f === choices[NO_GO_FEEL]) ?? null);
  return { tried, felt, noGo, advice: felt && adviceOfFeel(tried, felt, noGo) };
};

export const forgetFeel = (app: App): Promise<void> => {
  const { [FEEL]: _felt, [NO_GO_FEEL]: _noGo, ...choices } = app.settings.choices;
  return app.setSettings({ choices });
};

const group = <K extends string>(
  app: App,
  name: string,
  label: string,
  options: readonly K[],
  now: K | null,
  text: Readonly<Record<K, string>>,
) =>
  html`<h2 class="label">${label}</h2>
    <div class="keys" role="group" aria-label=${label}>
      ${options.map(
        (k) =>
          html`<button class="key" aria-pressed=${k === now} @click=${() => void app.choose(name, k)}>
            ${text[k]}
          </button>`,
      )}
    </div>`;

/** What a nut or the gauges say by hand, and what follows from it. */
export const feelSection = (app: App, thread: Thread | null, { tried, felt, noGo, advice }: Feel) => {
  const rule = thread?.pitch.unit === 'tpi' ? 'asme-b1.2' : 'iso-1502';
  const turns = (thread && gaugeLengths(rule, wireThreadOf(thread).lead, 1)?.noGoTurns) ?? 2;
  const bad = advice === 'beyond' || advice === 'contradicts';
  return html`<p class="note">${t.feel}</p>
    ${group(app, TRIED_WITH, t.tried, TRIED, tried, t.triedWith)}
    ${group(app, FEEL, t.go(tried), FELT, felt, t.felt)}
    ${tried === 'gauges' ? group(app, NO_GO_FEEL, t.noGo, NO_GO, noGo, t.noGoFelt(turns)) : nothing}
    ${
      advice
        ? html`<p role="status" class=${bad ? 'alert' : ''}><strong>${t.feelAdvice[advice]}</strong></p>`
        : nothing
    }`;
};
