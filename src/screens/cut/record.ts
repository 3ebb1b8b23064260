import { html, nothing } from 'lit';
import '../../elements/row';
import { storeJob } from '../../core/job';
import { toNumber } from '../../core/quantity';
import { startOf } from '../../core/run/progress';
import { runRecalls } from '../../core/run/recalls';
import type { Run } from '../../core/run/run';
import { recallNotes } from '../../elements/recall';
import type { App, EndedRun } from '../../state';
import { infeedName, materialName, toolMaterialName } from '../../text/cut-work';
import { statedText } from '../../text/numbers';
import {
  dayText,
  outcomeText,
  passText,
  readingText,
  recordName,
  recordsText as t,
} from '../../text/records';
import { recallSaid } from '../../text/recall';
import { timeOf } from '../../text/time';

const line = (label: string, value: string, note = '') =>
  value ? html`<ls-row .label=${label} .note=${note}><span class="figure">${value}</span></ls-row>` : nothing;

/** From when to when, by the phone's clock. */
const span = ({ begun, ended }: Run): string => {
  if (ended === null) return timeOf(begun);
  const day = dayText(ended);
  return t.from(timeOf(begun), day === dayText(begun) ? timeOf(ended) : `${day}, ${timeOf(ended)}`);
};

const plans = (run: Run) =>
  run.plans.map((plan, i) => {
    const springs = plan.filter((p) => p.kind === 'spring').length;
    return line(i === 0 ? t.plan : t.plannedAnew, t.planned(plan.length - springs, springs));
  });

const passes = (run: Run) =>
  run.taken.length === 0
    ? html`<p>${t.noPasses}</p>`
    : html`<ol class="log">
        ${run.taken.map(
          ({ n, at, pass }) =>
            html`<li value=${n}>
              <span>${passText(pass, run.job.starts > 1 ? startOf(run, n) : null)}</span
              ><span>${timeOf(at)}</span>
            </li>`,
        )}
      </ol>`;

const readings = (run: Run, unit: 'mm' | 'in') =>
  run.readings.length === 0
    ? html`<p>${t.noReadings}</p>`
    : html`<ul class="log">
        ${run.readings.map(
          (r) =>
            html`<li>
              <span>${readingText(r, unit)}</span><span>${timeOf(r.at)}, ${t.after(r.after)}</span>
            </li>`,
        )}
      </ul>`;

/** Makes the record's job the one to be cut; undo brings the one before back. */
export const useAgain = async (app: App, run: Run): Promise<void> => {
  const machine = app.machine?.id;
  const before = storeJob(app.job);
  await app.jobs.change(run.job);
  if (machine) app.undo.push({ code: 'thread', machine, before });
};

/** What was corrected since a run was begun, for review. @param say takes what went wrong with that */
export const runNotes = (app: App, { id, run }: EndedRun, say: (trouble: string) => void) =>
  recallNotes(
    recallSaid(runRecalls(id, run, app.records.recalls), run),
    (recall) => app.review(recall, id, true),
    say,
  );

/** One finished cut, whole. @param keys what else can be done with it */
export const recordSection = (app: App, entry: EndedRun, keys: unknown, say: (trouble: string) => void) => {
  const { id, run } = entry;
  const { job } = run;
  const { units } = app.settings;
  return html`<h1>${recordName(run)}</h1>
    <p class="label">${outcomeText(run)}</p>
    ${runNotes(app, entry, say)}
    <div>
      ${line(t.machine, run.machineName, run.workshop)} ${line(t.cut, dayText(run.begun), span(run))}
      ${line(t.work, job.material ? materialName[job.material] : '', job.blank ? statedText(job.blank) : '')}
      ${line(
        t.tool,
        job.toolMaterial ? toolMaterialName[job.toolMaterial] : '',
        job.infeed ? infeedName[job.infeed] : '',
      )}
      ${line(t.speed, job.rpm ? `${toNumber(job.rpm)} rpm` : '')} ${plans(run)}
    </div>
    <h2>${t.readings}</h2>
    ${readings(run, units)}
    <h2>${t.passes}</h2>
    ${passes(run)}
    <label class="label" for="notes">${t.notes}</label>
    <textarea
      id="notes"
      rows="4"
      maxlength="2000"
      .value=${run.notes}
      @input=${(e: Event) => void app.runs.updateNotes(id, (e.target as HTMLTextAreaElement).value)}
    ></textarea>
    ${keys}`;
};
