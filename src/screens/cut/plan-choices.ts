import { html, nothing } from 'lit';
import type { CutPlan, PlanChoice } from '../../core/cut/plan';
import { INFEEDS, PASS_HOLDS, PASS_RULES, type Job } from '../../core/job';
import { showStated } from '../../text/numbers';
import {
  degreesText,
  holdKey,
  holdLabel,
  infeedKey,
  places,
  planText as t,
  ruleHelp,
  ruleKey,
} from '../../text/plan';
import { unitLabel } from '../../text/units';
import type { App } from '../../state';

const HELD = { count: 'passCount', first: 'firstPass', chip: 'chipArea' } as const;
/** What the key "as is usual" takes back. */
const PLANNED = {
  infeed: null,
  topSlide: null,
  passRule: null,
  passHold: null,
  firstPass: null,
  leastPass: null,
  passCount: null,
  chipArea: null,
  springPasses: null,
} as const satisfies Record<PlanChoice, null>;

const usual = (plan: CutPlan | null, name: PlanChoice) =>
  plan?.assumed.includes(name) ? html`<p class="note">${t.usual}</p>` : nothing;

const keys = <K extends 'infeed' | 'passRule' | 'passHold'>(
  app: App,
  key: K,
  label: string,
  options: readonly (Job[K] & string)[],
  name: Readonly<Record<Job[K] & string, string>>,
  now: string | null,
) =>
  html`<h2 class="label" id="of-${key}">${label}</h2>
    <div class="pair" role="group" aria-labelledby="of-${key}">
      ${options.map(
        (o) =>
          html`<button
            class="key"
            aria-pressed=${now === o}
            @click=${() => void app.jobs.change({ [key]: o })}
          >
            ${name[o]}
          </button>`,
      )}
    </div>`;

/** A number of the plan: as entered, or as taken, with a way to the pad. */
const amount = (
  app: App,
  key: Exclude<PlanChoice, 'infeed' | 'passRule' | 'passHold'>,
  label: string,
  taken: string,
  unit: string,
) => {
  const entered = app.job[key];
  const shown = entered ? showStated(entered) : { value: taken, unit };
  return html`<a class="key left amount" href="#/enter/job/${key}"
    ><span>${label}</span
    ><span class="end"
      ><span class="figure">${shown.value}</span> ${entered ? unitLabel[entered.unit] : unit}</span
    >${entered ? nothing : html`<span class="note">${t.usual}</span>`}</a
  >`;
};

/** What the plan is made by; what isn't chosen is said to be usual. */
export const choices = (app: App, plan: CutPlan | null) => {
  const { job } = app;
  const infeed = job.infeed ?? plan?.infeed ?? null;
  const along = infeed === 'flank' || infeed === 'modified-flank';
  const rule = job.passRule ?? plan?.rule ?? null;
  const hold = job.passHold ?? plan?.hold ?? 'count';
  const held = plan && (hold === 'count' ? String(plan.held) : places(plan.held, hold === 'first' ? 2 : 3));
  const chosen = Object.keys(PLANNED).some((k) => job[k as PlanChoice] !== null);
  return html`${keys(app, 'infeed', t.infeed, INFEEDS, infeedKey, infeed)} ${usual(plan, 'infeed')}
    ${
      along
        ? amount(app, 'topSlide', t.topSlide(), plan?.scale == null ? '?' : degreesText(plan.scale), '')
        : nothing
    }
    ${keys(app, 'passRule', t.rule, PASS_RULES, ruleKey, rule)}
    ${rule ? html`<p class="note">${ruleHelp[rule]}</p>` : nothing} ${usual(plan, 'passRule')}
    ${keys(app, 'passHold', t.hold, PASS_HOLDS, holdKey, hold)} ${usual(plan, 'passHold')}
    <div class="stack">
      ${amount(app, HELD[hold], holdLabel[hold], held ?? '?', hold === 'count' ? '' : hold === 'first' ? 'mm' : 'mm²')}
      ${amount(app, 'leastPass', t.least, plan ? places(plan.least, 3) : '?', 'mm')}
      ${amount(app, 'springPasses', t.springsLabel, plan ? String(plan.springs) : '?', '')}
    </div>
    ${
      chosen
        ? html`<button class="key left" @click=${() => void app.jobs.change(PLANNED)}>${t.usualAll}</button>`
        : nothing
    }`;
};
