import { html, nothing } from 'lit';
import '../../elements/row';
import {
  isRun,
  runsKept,
  slotKey,
  testOf,
  type FaultTest,
  type Slot,
  type SlotPart,
} from '../../core/prove/faults';
import type { MachineProfile } from '../../core/machine';
import { mul, type Ratio } from '../../core/quantity';
import { faultsText as t, faultTestText } from '../../text/faults';
import { decimal, mark, plain, significant, statedText } from '../../text/numbers';
import type { App } from '../../state';
import { keepSettings, type Held, type Now } from './now';

/** measured ÷ expected, as fine as its uncertainty bears and no finer. */
export const ratioText = ({ test, value, u }: { test: FaultTest; value: number; u: number }): string => {
  const places = Math.min(6, Math.max(0, Math.ceil(-Math.log10(2 * u))));
  const by = test === 'back' ? ' mm' : '';
  return `${value.toFixed(places).replace('.', mark())} ± ${significant(2 * u, 1)}${by}`;
};

const expectation = (now: Now, held: Held): Ratio | null => {
  const test = testOf(held.slot);
  const over = held.reading?.over;
  if (test === 'travel' || test === 'back' || !over) return null;
  const each = now.expected[test];
  return each && mul(each, over);
};

const key = (app: App, now: Now, held: Held, part: SlotPart) => {
  const words = faultTestText[testOf(held.slot)];
  const value = held[part];
  const label = part === 'half' ? t.half : words[part];
  const taken = `${plainOr(held.within)} ${words.unit} (${t.taken})`;
  const shown = value ? statedText(value) : part === 'half' ? taken : t.enter;
  return html`<a
    class="key left ${value || part === 'half' || held.slot === 'travel2' ? '' : 'solid'}"
    href="#/enter/reading/${slotKey(now.machine, held.slot, part)}"
    @click=${() => isRun(held.slot) && void keepSettings(app)}
    >${held.slot === 'travel2' ? t.secondOf(label) : label}: ${shown}</a
  >`;
};

const plainOr = (r: Ratio): string => (r.d > 1000n ? decimal(r, 4) : plain(r));

const slot = (app: App, now: Now, name: Slot) => {
  const held = now.held.find((h) => h.slot === name);
  if (!held) return nothing;
  const expects = expectation(now, held);
  return html`<div class="stack">
      ${(['over', 'got', 'half'] as const).map((part) => key(app, now, held, part))}
    </div>
    ${
      held.weighed
        ? html`<div>
            ${
              expects
                ? html`<ls-row
                    .label=${t.expects}
                    .value=${decimal(expects, 4)}
                    .unit=${faultTestText[testOf(name)].unit}
                  ></ls-row>`
                : nothing
            }
            <ls-row .label=${t.result} .value=${ratioText(held.weighed)}></ls-row>
          </div>`
        : held.reading
          ? html`<p class="unknown">${t.expectsNot}</p>`
          : nothing
    }`;
};

/** Among the choices: the machine whose settings are to be entered anew, and which is then to be tested again. */
export const AGAIN = 'faults.again';

/** What was read with the old settings says nothing of the new: cleared, and asked for again. */
export const again = async (
  app: App,
  machine: string,
  fields: Partial<MachineProfile> = {},
): Promise<void> => {
  if (Object.keys(fields).length > 0) await app.setFields(fields, runsKept(machine));
  else await app.clearReadings(runsKept(machine));
  await app.choose(AGAIN, machine);
};

/** Runs read with settings that are no longer the profile's: said, and cleared by a key. */
export const lapsed = (app: App, now: Now) =>
  now.stale
    ? html`<p class="alert unknown" role="status"><strong>${t.stale}</strong></p>
        <button class="key" @click=${() => void app.clearReadings(runsKept(now.machine))}>
          ${t.clearRuns}
        </button>`
    : nothing;

/** One test: what to do, and what was read. */
export const readingPage = (app: App, now: Now, name: Slot) => {
  const test = testOf(name);
  const words = faultTestText[test];
  return html`<h1>${words.name}</h1>
    <p><strong>${words.how}</strong></p>
    ${
      (test === 'screw' || test === 'travel') && now.lead
        ? html`<p class="note">${t.atLead(decimal(now.lead, 4))}</p>`
        : nothing
    }
    ${isRun(name) ? lapsed(app, now) : nothing} ${slot(app, now, test)}
    ${
      test === 'travel'
        ? html`<h2>${t.second}</h2>
            ${slot(app, now, 'travel2')}`
        : nothing
    }
    <a class="key solid" href="#/machine/faults">${t.toFaults}</a>`;
};
