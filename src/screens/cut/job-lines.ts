import { html } from 'lit';
import type { Job, StatedJobField } from '../../core/job';
import { cutText as t } from '../../text/cut';
import { showStated } from '../../text/numbers';
import { unitLabel } from '../../text/units';
import type { App } from '../../state';
import { line } from './line';

/** What of the job is chosen by keys: a row of them below its heading, the one that is set pressed. */
export const jobKeys = <K extends keyof Job>(
  app: App,
  key: K,
  heading: unknown,
  options: readonly (Job[K] & string)[],
  name: (o: Job[K] & string) => string,
) => {
  const now = app.job[key];
  return html`${heading}
    <div class="keys" role="group" aria-labelledby="of-${key}">
      ${options.map(
        (o) =>
          html`<button
            class="key"
            aria-pressed=${now === o}
            @click=${() => void app.jobs.change({ [key]: o })}
          >
            ${name(o)}
          </button>`,
      )}
    </div>`;
};

/** A figure of the job, and the way to where it is entered. */
export const jobNumber = (app: App, key: StatedJobField, label: string, notes: readonly string[] = []) => {
  const now = app.job[key];
  return line({
    label,
    href: `#/enter/job/${key}`,
    value: now ? showStated(now).value : t.notKnown,
    unit: now ? unitLabel[now.unit] : '',
    open: !now,
    notes,
  });
};
