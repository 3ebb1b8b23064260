import { html, nothing } from 'lit';
import { fingerprint, type InputPath } from '../../core/context';
import { figuresFor, type Sheet } from '../../core/figures';
import { inBase, leadNumber, mul, toNumber, type Ratio } from '../../core/quantity';
import type { Run } from '../../core/run';
import { changesSince, type RunChange } from '../../core/run/changes';
import { keptName, marked, plain, withUnit } from '../../text/numbers';
import { pathLabel } from '../../text/paths';
import { runText as t } from '../../text/run';
import type { App } from '../../state';

/** The figures as the run was begun, on the machine as it is now. */
export const sheetAsBegun = (app: App, run: Run): Sheet =>
  fingerprint(run.job) === fingerprint(app.job) ? app.sheet : figuresFor({ ...app.inputs, job: run.job });

const fullStepMm = (app: App, sheet: Sheet): number | null => {
  const step = sheet.get('stepOnCarriage').value;
  const micro = app.profile?.microsteps;
  return step && micro ? toNumber(mul(step, inBase(micro))) : null;
};

export const changes = (app: App, run: Run, sheet: Sheet): readonly RunChange[] => {
  const lead = sheet.get('lead').value;
  const lag = app.readings.get('trace.lag');
  return changesSince(run, app.inputs, {
    lead: lead && leadNumber(lead),
    lag: lag && toNumber(inBase(lag)),
    fullStep: fullStepMm(app, sheet),
  });
};

const fields = (paths: readonly InputPath[]): string => paths.map(pathLabel).join(', ');
const rpm = (r: Ratio | null): string => (r ? withUnit(plain(r), t.rpm) : t.unknownSpeed);

const line = (app: App, run: Run, c: RunChange): string => {
  switch (c.code) {
    case 'rpm':
      return t.rpmChanged(rpm(c.from), rpm(c.to), c.shift, c.speed);
    case 'thread': {
      const chosen = app.sheet.get('chosen').value;
      const now = chosen ? keptName(chosen) : t.unknownSpeed;
      return now === run.threadName
        ? t.threadChanged(fields(c.paths), marked(run.threadName))
        : t.threadChanged(marked(now), marked(run.threadName));
    }
    case 'drive':
      return t.driveChanged(fields(c.paths));
    case 'nut':
      return t.nutChanged(fields(c.paths));
    case 'dials':
      return t.dialsChanged(fields(c.paths));
  }
};

/** One line at the top: that something changed, and what. */
export const changedLine = (all: readonly RunChange[]) =>
  all.length > 0
    ? html`<p class="over" role="status">
        <strong>${t.changed(all.map((c) => t.changedWhat[c.code]).join(', '))}</strong>
      </p>`
    : nothing;

/** What each change does to the groove and to the plan. Never in the way of reading the setting. */
export const changedDetails = (app: App, run: Run, all: readonly RunChange[]) =>
  all.length > 0
    ? html`<div class="alert stack">
        ${all.map((c) => html`<p>${line(app, run, c)}</p>`)}
        ${
          all.some((c) => c.code === 'rpm' && c.shift.kind === 'servo' && c.shift.mm === null)
            ? html`<a class="key left" href="#/enter/reading/trace.lag">${t.enterLag}</a>`
            : nothing
        }
        <p class="note">${t.asBegun}</p>
      </div>`
    : nothing;
