import { html, nothing } from 'lit';
import '../../elements/row';
import { DUMMY_RUNS, mayReplace, wholeTime } from '../../core/cut/stop';
import { checkNumber, FIELDS } from '../../core/machine';
import {
  compare,
  equal,
  inBase,
  lead,
  leadLow,
  max,
  stated,
  type Lead,
  type Ratio,
} from '../../core/quantity';
import { dummyText as t } from '../../text/cut-stop';
import { decimal, showStated, statedText } from '../../text/numbers';
import { unitLabel } from '../../text/units';
import type { App } from '../../state';

/** The lead and speed that the runs were made at, set when they are begun: the job's may be others by now. */
const LEAD = 'dummy.lead';
const RPM = 'dummy.rpm';
const RUNS = Array.from({ length: DUMMY_RUNS }, (_, i) => i + 1);
const keyOf = (n: number): string => `dummy.${n}`;

/** Keeps what was read, for an undo, and begins with the job's lead and speed. */
const begin = async (app: App, l: Lead, rpm: Ratio): Promise<void> => {
  if (app.readings.get(LEAD)) await app.clearReadings('dummy.');
  await app.readings.set(RPM, stated(rpm, 'rpm'));
  // A lead a hair too short makes the time a hair too long, which is the careful side.
  await app.readings.set(LEAD, stated(leadLow(l), 'mm'));
};

const leadText = (mm: Ratio): string => `${decimal(mm, 4)} mm`;

const verdict = (app: App, overruns: readonly Ratio[], mm: Ratio, rpm: Ratio) => {
  const [first, ...rest] = overruns;
  const now = app.profile?.wholeStopTime ?? null;
  const left = DUMMY_RUNS - overruns.length;
  const time = wholeTime(overruns, lead(mm), rpm);
  const kept = time && checkNumber(FIELDS.wholeStopTime, stated(time, 's'));
  const may = time && kept?.ok && mayReplace(time, overruns.length, now && inBase(now));
  const same = time && now && equal(time, inBase(now));
  const shorter = time && !may && kept?.ok;
  return html`<div>
      ${
        first && time
          ? html`<ls-row
                .label=${t.longest}
                .value=${decimal(max(first, ...rest), 3, 'up')}
                unit="mm"
              ></ls-row>
              <ls-row .label=${t.time} .value=${decimal(time, 2)} unit="s" .note=${t.timeNote}></ls-row>`
          : nothing
      }
      <ls-row
        .label=${t.now}
        .value=${now ? showStated(now).value : t.notKnown}
        .unit=${now ? unitLabel[now.unit] : ''}
      ></ls-row>
    </div>
    <div role="status">
      ${left > 0 ? html`<p><strong>${t.left(left)}</strong> ${shorter ? t.shorter : ''}</p>` : nothing}
      ${time && kept && !kept.ok ? html`<p class="over"><strong>${t.outOfRange}</strong></p>` : nothing}
      ${same && left === 0 ? html`<p>${t.same}</p>` : nothing}
    </div>
    ${
      time && may && !same
        ? html`<button
            class="key big solid"
            @click=${() => void app.setField('wholeStopTime', stated(time, 's'))}
          >
            ${t.set(decimal(time, 2))}
          </button>`
        : nothing
    }`;
};

/** Ten runs in air past a mark: the whole time from mark to nut clear. */
export const dummyPage = (app: App) => {
  const [mm, rpm] = [app.readings.get(LEAD), app.readings.get(RPM)];
  const jobLead = app.sheet.get('lead').value;
  const jobRpm = app.job.rpm;
  const overruns = RUNS.flatMap((n) => {
    const read = app.readings.get(keyOf(n));
    return read ? [inBase(read)] : [];
  });
  const begun = mm !== null && rpm !== null;
  const other =
    begun &&
    ((jobLead !== null && compare(leadLow(jobLead), mm.value) !== 0) ||
      (jobRpm !== null && compare(jobRpm, rpm.value) !== 0));
  const beginKey = (label: string, shape: string) =>
    jobLead && jobRpm
      ? html`<button class="key ${shape}" @click=${() => void begin(app, jobLead, jobRpm)}>${label}</button>`
      : nothing;
  const at = jobLead && jobRpm ? t.begin(leadText(leadLow(jobLead)), decimal(jobRpm, 1)) : '';
  return html`<h1>${t.title}</h1>
    ${t.how.map((line) => html`<p>${line}</p>`)}
    ${
      begun
        ? html`<p class="note">${t.ranAt(leadText(mm.value), decimal(rpm.value, 1))}</p>
            ${other ? html`<p class="near"><strong>${t.otherNow}</strong></p>` : nothing}
            <a class="key left" href="#/enter/reading/${RPM}">${t.rpm}: ${statedText(rpm)}</a>
            <div class="grid2">
              ${RUNS.map((n) => {
                const read = app.readings.get(keyOf(n));
                return html`<a class="key run" href="#/enter/reading/${keyOf(n)}"
                  ><small>${t.run(n)}</small><span>${read ? statedText(read) : t.enter}</span></a
                >`;
              })}
            </div>
            ${verdict(app, overruns, mm.value, rpm.value)}`
        : jobLead && jobRpm
          ? beginKey(at, 'big solid')
          : html`<p class="unknown">${t.needs}</p>
              <div class="stack">
                ${jobLead ? nothing : html`<a class="key left" href="#/threads/find">${t.chooseThread}</a>`}
                ${jobRpm ? nothing : html`<a class="key left" href="#/speed">${t.setSpeed}</a>`}
              </div>`
    }
    <p class="note">${t.video}</p>
    <a class="key" href="#/cut/stop">${t.back}</a>
    ${
      begun
        ? html`<div class="apart stack">
            ${other ? beginKey(`${t.beginAgain}: ${at.replace(/^[^:]*: /, '')}`, '') : nothing}
            <button class="key stop" @click=${() => void app.clearReadings('dummy.')}>${t.clear}</button>
          </div>`
        : nothing
    }`;
};
