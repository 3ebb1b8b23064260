import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/groove-section';
import '../../elements/row';
import type { CutPlan } from '../../core/cut/plan';
import { decimal, statedText } from '../../text/numbers';
import { areaText, degreesText, lengthIn, places, planHow, planText as t, timeText } from '../../text/plan';
import { noteText } from '../../text/why';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { choices } from './plan-choices';
import { grooveOf } from './plan-groove';
import { listSheet, passList } from './plan-list';
import { missingKeys } from './plan-missing';

/** Notes of the reckoning that a person must see without asking. */
const SAID = [
  'plan-fewer',
  'plan-spring-rubs',
  'plan-no-flank',
  'depth-root-short',
  'depth-square-narrow',
] as const;

/** The plan of passes: what to set, each pass, the groove as it fills, and what it is made by. */
@customElement('ls-cut-plan')
export class PlanScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    listSheet,
    css`
      .amount {
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 1rem;
      }
      .amount .end {
        margin-inline-start: auto;
      }
      .amount .note {
        flex-basis: 100%;
        font-weight: 400;
      }
      .step {
        font-variant-numeric: tabular-nums;
      }
    `,
  ];

  /** Passes filled in the drawing; null: all. */
  @state() private taken: number | null = null;

  /** Lengths are said in the unit of the dial that goes deeper. */
  private unit(plan: CutPlan): 'mm' | 'in' {
    const p = plan.passes[0];
    return (plan.slide === 'cross' ? p?.cross : p?.top)?.reading.unit === 'in' ? 'in' : 'mm';
  }

  private settings(plan: CutPlan) {
    const m = this.app.profile;
    const division = plan.slide === 'cross' ? m?.crossDivision : m?.topDivision;
    const inside = this.app.job.side === 'internal';
    const along = plan.slide === 'top';
    const alternate = plan.infeed === 'alternate-flank';
    return html`<h2>${t.before}</h2>
      <div>
        ${
          plan.scale === null || plan.angle === null
            ? nothing
            : html`<ls-row
                .label=${t.angle()}
                .value=${degreesText(plan.scale)}
                .note=${alternate ? t.parallel : `${t.handle(plan.handle)} · ${t.fromSquare(degreesText(plan.angle))}`}
              ></ls-row>`
        }
        <ls-row
          .label=${t.feeds}
          .value=${t.slide[plan.slide]()}
          .note=${along ? t.crossBack : alternate ? t.shifts() : ''}
        ></ls-row>
        ${plan.reads ? html`<ls-row .label=${t.readsLabel} .value=${t.reads[plan.reads]}></ls-row>` : nothing}
        ${
          division
            ? html`<ls-row
                .label=${t.division}
                .value=${statedText(division)}
                .note=${t.divisionOf(lengthIn(plan.division, this.unit(plan)))}
              ></ls-row>`
            : nothing
        }
      </div>
      <p class="note">${t.zero} ${t.zeroUp} ${inside ? t.outward : ''}</p>`;
  }

  private depth(plan: CutPlan) {
    const unit = this.unit(plan);
    const { from, start, target, value } = plan.depth;
    const inside = this.app.job.side === 'internal';
    const measured = from === 'measured' && start !== null && target !== null;
    const short = value - plan.reached;
    return html`<div>
        <ls-row
          .label=${t.depth}
          .value=${lengthIn(value, unit)}
          why="Why"
          figure="plan"
          .note=${measured ? t.fromMeasured(lengthIn(start, unit), lengthIn(target, unit)) : t.fromNominal}
        ></ls-row>
        ${
          short > 0.0005
            ? html`<ls-row
                .label=${t.reached}
                .value=${lengthIn(plan.reached, unit)}
                .note=${t.short(lengthIn(short, unit))}
              ></ls-row>`
            : nothing
        }
        ${
          plan.slide === 'top'
            ? html`<ls-row
                .label=${t.creep}
                .value=${lengthIn(plan.creep, unit)}
                .note=${t.creepNote(plan.travel, lengthIn(plan.shaved, unit))}
              ></ls-row>`
            : nothing
        }
      </div>
      ${measured ? nothing : html`<a class="key left" href="#/enter/job/blank">${t.enterBlank(inside)}</a>`}`;
  }

  private picture(plan: CutPlan) {
    const { tool, cuts } = grooveOf(plan);
    const of = cuts.length;
    const taken = Math.min(this.taken ?? of, of);
    const deep = lengthIn(cuts[taken - 1]?.depth ?? 0, this.unit(plan));
    const said = taken === 0 ? t.none : t.after(taken, of, deep);
    return html`<h2>${t.picture}</h2>
      <ls-groove-section
        .tool=${tool}
        .cuts=${cuts}
        .taken=${taken}
        .left=${t.headstock}
        .right=${t.tailstock}
        .text=${t.pictureText(taken, of, deep, t.how[plan.infeed])}
      ></ls-groove-section>
      <p class="step" role="status">${said}. ${t.how[plan.infeed]}</p>
      <div class="pair">
        <button class="key" ?disabled=${taken === 0} @click=${() => (this.taken = taken - 1)}>
          ${t.less}
        </button>
        <button class="key" ?disabled=${taken === of} @click=${() => (this.taken = taken + 1)}>
          ${t.more}
        </button>
      </div>`;
  }

  private speedTime(plan: CutPlan) {
    const { rpm } = this.app.job;
    const { speed, time } = plan;
    const range = speed && t.rpmRange(speed.rpm.min, speed.rpm.max);
    const at =
      speed?.atSet != null && rpm
        ? t.atSet(`${places(speed.atSet, 1)}\u00a0m/min`, `${decimal(rpm, 1)}\u00a0rpm`)
        : '';
    return html`<h2>${t.speedTime}</h2>
      <div>
        ${
          speed && range
            ? html`<ls-row
                .label=${t.speed}
                .value=${t.vRange(speed.speed.min, speed.speed.max)}
                unit="m/min"
                .note=${[speed.tool === 'carbide' ? t.carbideNote(range) : t.speedNote(range), at].filter(Boolean).join('. ')}
              ></ls-row>`
            : html`<ls-row .label=${t.speed} .value=${t.speedUnknown} .note=${t.speedNeeds}></ls-row>`
        }
        ${
          time
            ? html`<ls-row .label=${t.time} .value=${timeText(time.cutting)} .note=${t.timeNote}></ls-row>
                <ls-row .label=${t.inAll} .value=${timeText(time.inAll)} .note=${t.inAllNote}></ls-row>`
            : html`<ls-row .label=${t.inAll} .value=${t.timeUnknown} .note=${t.timeNeeds}></ls-row>`
        }
      </div>
      <p class="note">${t.stopFirst}</p>
      ${speed ? nothing : html`<a class="key left" href="#/cut/work">${t.chooseOn}</a>`}
      ${this.app.job.length ? nothing : html`<a class="key left" href="#/enter/job/length">${t.enterLength}</a>`}`;
  }

  private planned(plan: CutPlan, notes: readonly string[]) {
    const cuts = plan.passes.filter((p) => p.kind === 'cut').length;
    const beside = [t.springs(plan.springs), plan.starts > 1 ? t.eachStart(plan.starts) : ''].filter(Boolean);
    return html`<div>
        <p><span class="deciding">${cuts}</span><span class="unit"> ${t.passes(cuts)}</span></p>
        <p class="label">${beside.join('; ')}</p>
      </div>
      <a class="key left" href="#/cut/plan/how">${planHow(plan)}</a>
      ${this.app.job.toolMaterial ? nothing : html`<p class="note">${t.toolUnknown}</p>`}
      ${SAID.filter((n) => notes.includes(n)).map((n) => html`<p class="over"><strong>${noteText[n]}</strong></p>`)}
      ${this.settings(plan)} ${this.depth(plan)}
      <h2>${t.list}</h2>
      <p class="note">${t.listHelp} ${t.caution}</p>
      ${passList(plan, this.unit(plan))} ${this.picture(plan)} ${this.speedTime(plan)}`;
  }

  /** Why there is no plan, and the way to what is missing. */
  private withheld({ missing, why }: ReturnType<App['sheet']['get']>) {
    const words: Readonly<Record<string, string>> = noteText;
    return html`<p class="label">${t.notPlanned}</p>
      ${why.notes.map((n) => html`<p class="over" role="status"><strong>${words[n] ?? n}</strong></p>`)}
      ${missing.length > 0 ? missingKeys(missing) : nothing}
      ${why.notes.includes('no-diameter') ? html`<a class="key left" href="#/threads/find">${t.chooseThread}</a>` : nothing}`;
  }

  /** The page on which it is chosen how the plan is made, with what comes of it. */
  private how(plan: CutPlan | null) {
    const cutting = plan?.passes.filter((p) => p.kind === 'cut') ?? [];
    const [first, last] = [cutting[0], cutting.at(-1)];
    const chip = Math.max(0, ...cutting.map((p) => p.chip));
    return html`<h1>${t.choices}</h1>
      ${
        plan && first && last
          ? html`<div role="status">
              <p>
                <span class="deciding">${cutting.length}</span
                ><span class="unit"> ${t.passes(cutting.length)}</span>
              </p>
              <p class="label">
                ${t.outcome(lengthIn(first.step, this.unit(plan)), lengthIn(last.step, this.unit(plan)), areaText(chip))}
              </p>
            </div>`
          : this.withheld(this.app.sheet.get('plan'))
      }
      ${choices(this.app, plan)}
      <a class="key" href="#/cut/plan">${t.backToPlan}</a>`;
  }

  override render() {
    const figure = this.app.sheet.get('plan');
    const plan = figure.value;
    if (this.path[1] === 'how') return this.how(plan);
    return html`<h1>${t.title}</h1>
      ${plan ? this.planned(plan, figure.why.notes) : this.withheld(figure)}
      ${
        this.app.sheet.get('chosen').value?.thread && !plan
          ? html`<a class="key left" href="#/cut/plan/how">${t.choices}</a>`
          : nothing
      }
      ${links(mistakeLinksAt('cut/plan'))}
      <a class="key" href="#/cut">${t.back}</a>`;
  }
}
