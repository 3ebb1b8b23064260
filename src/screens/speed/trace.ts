import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { classOf } from '../../core/figures';
import {
  figureOf,
  figuresOf,
  FORMATS,
  ingredientsOf,
  judgeTrace,
  setupTrace,
  type FormatChoice,
  type Had,
  type TraceKey,
  type TraceSource,
  type TraceVerdict,
} from '../../core/figures/trace';
import {
  alone,
  without,
  INGREDIENTS,
  NOTHING,
  type IngredientName,
  type TraceResult,
  type TraceSpec,
} from '../../core/drive/trace';
import { inBase, stated, sub, toNumber } from '../../core/quantity';
import { limits } from '../../core/thread';
import { formOf } from '../../core/thread/forms';
import { mark, significant, statedText } from '../../text/numbers';
import { pathLabel } from '../../text/paths';
import { threadsText } from '../../text/threads';
import { formatText, ingredientText, originText, traceLabels, traceText as t } from '../../text/trace';
import type { App } from '../../state';
import { traceResult, type TraceUnits } from './trace-result';
import { startTrace, type TraceRun } from './trace-run';

interface Ranked {
  readonly name: IngredientName | null;
  readonly nut: number;
  /** The others together without it; null for the bare run. */
  readonly rest: number | null;
}
/** What was last run, and with what; it outlives the page while a figure is entered on the pad. */
interface Last {
  readonly key: string;
  readonly length: number;
  readonly result: TraceResult;
  readonly ranked: readonly Ranked[];
}
let last: Last | null = null;
let figuresOpen = false;

const OF_THREAD: readonly TraceKey[] = ['trace.length', 'trace.engagement', 'trace.runIn'];

/** Lead error in time: the whole chain as a model, drawn along the thread, and which part of it spoils the thread. */
@customElement('ls-trace')
export class TraceScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      progress {
        inline-size: 100%;
        block-size: 1.5rem;
        accent-color: var(--ink);
      }
      .running {
        display: grid;
        gap: var(--gap);
      }
      summary {
        font-size: var(--t-label);
        min-block-size: 64px;
        padding-block: 20px;
        box-sizing: border-box;
      }
    `,
  ];
  @state() private share: number | null = null;
  @state() private trouble = '';
  private run: TraceRun | null = null;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.run?.cancel();
  }

  private get off(): readonly string[] {
    return (this.app.settings.choices['trace.off'] ?? 'miscounts').split(',');
  }

  private get source(): TraceSource | null {
    const { profile } = this.app;
    if (!profile) return null;
    const chosen = this.app.settings.choices['trace.format'];
    const own = this.app.sheet.get('ratioHeld').value ? 'own' : 'exact';
    return {
      sheet: this.app.sheet,
      profile,
      job: this.app.job,
      entered: (key) => this.app.readings.get(key),
      format: FORMATS.find((f) => f === chosen && f !== 'own') ?? own,
      afterReversal: this.app.settings.choices['trace.reversal'] === 'yes',
    };
  }

  private get units(): TraceUnits {
    const inch = this.app.settings.units === 'in';
    const unit = inch ? 'in' : 'µm';
    const error = (mm: number): string => {
      const text = inch ? (mm / 25.4).toFixed(5) : (mm * 1000).toFixed(Math.abs(mm) < 0.1 ? 1 : 0);
      return text
        .replace(/^-(?=[0.]*$)/, '')
        .replace('-', '−')
        .replace('.', mark());
    };
    return {
      unit,
      error,
      errorText: (mm) => `${error(mm)}\u00a0${unit}`,
      length: (mm) => (inch ? `${significant(mm / 25.4, 3)}\u00a0in` : `${significant(mm, 3)}\u00a0mm`),
    };
  }

  private get verdictFor(): (r: TraceResult) => TraceVerdict {
    const thread = this.app.sheet.get('chosen').value?.thread ?? null;
    if (!thread) return (r) => judgeTrace(r, null, null);
    const form = formOf(thread);
    const flanks = [toNumber(form.flanks[0]), toNumber(form.flanks[1])] as const;
    const classId = classOf(thread, this.app.job.classId, this.app.job.side);
    const l = limits({ ...thread, starts: this.app.job.starts }, classId ?? '');
    const { min, max } = l.ok ? l.pitch : { min: null, max: null };
    const tolerance = l.ok && min && max ? toNumber(inBase(stated(sub(max, min), l.unit))) : null;
    return (r) => judgeTrace(r, tolerance, flanks);
  }

  /** Runs the model; with `each`, every ingredient alone too. */
  private async start(spec: TraceSpec, each: boolean): Promise<void> {
    const on = each ? INGREDIENTS.filter((n) => spec.with[n] !== null) : [];
    const bare = { ...spec, with: NOTHING };
    const specs = [
      spec,
      ...(each ? [bare] : []),
      ...on.map((n) => alone(spec, n)),
      ...on.map((n) => without(spec, n)),
    ];
    this.trouble = '';
    this.share = 0;
    this.run = startTrace(specs, (part) => (this.share = part));
    const outcome = await this.run.outcome;
    this.run = null;
    this.share = null;
    if (outcome.kind === 'failed') this.trouble = t.failed;
    if (outcome.kind === 'refused')
      this.trouble = outcome.field === 'length' ? t.tooMany : t.refused(outcome.field);
    const [result, ...others] = outcome.kind === 'done' ? outcome.results : [];
    if (!result) return;
    const [none, ...runs] = others;
    const ranked: Ranked[] = on.map((name, i) => ({
      name,
      nut: runs[i]?.nut ?? 0,
      rest: runs[i + on.length]?.nut ?? 0,
    }));
    if (none) ranked.push({ name: null, nut: none.nut, rest: null });
    ranked.sort((a, b) => b.nut - a.nut);
    last = { key: JSON.stringify(spec), length: spec.job.length, result, ranked };
    this.requestUpdate();
    await this.updateComplete;
    this.renderRoot.querySelector('.result')?.scrollIntoView();
  }

  private toggle(name: IngredientName): void {
    const { off } = this;
    const next = off.includes(name) ? off.filter((n) => n !== name) : [...off, name];
    void this.app.choose('trace.off', next.filter(Boolean).join(','));
  }

  /** How many figures of what is on nobody has measured. */
  private assumed(source: TraceSource, on: readonly IngredientName[]): number {
    const keys = on.flatMap((n) => figuresOf(n, source.profile.motorKind));
    return keys.filter((key) => figureOf(key, source)?.from === 'assumed').length;
  }

  private entry(key: TraceKey, had: Had | null) {
    const value = had ? `${statedText(had.value)}, ${originText[had.from]}` : t.none;
    return html`<a class="key left" href="#/enter/reading/${key}">${traceLabels[key]}: ${value}</a>`;
  }

  private ingredients(source: TraceSource, on: readonly IngredientName[]) {
    const all = ingredientsOf(source);
    const known = (n: IngredientName): boolean => all[n] !== null || n === 'format';
    return html`<h2>${t.ingredients}</h2>
      <div class="grid2">
        ${INGREDIENTS.filter(known).map(
          (n) =>
            html`<button class="key" aria-pressed=${on.includes(n)} @click=${() => this.toggle(n)}>
              ${ingredientText[n]}
            </button>`,
        )}
      </div>
      ${INGREDIENTS.filter((n) => !known(n)).map(
        (n) => html`<p class="unknown">${t.unavailable(ingredientText[n])}</p>`,
      )}
      <details
        ?open=${figuresOpen}
        @toggle=${(e: Event) => (figuresOpen = (e.target as HTMLDetailsElement).open)}
      >
        <summary>${t.figures(this.assumed(source, on))}</summary>
        <div class="stack">
          ${OF_THREAD.map((key) => this.entry(key, figureOf(key, source)))}
          ${INGREDIENTS.filter((n) => on.includes(n) || !known(n)).map((n) =>
            figuresOf(n, source.profile.motorKind).map((key) => this.entry(key, figureOf(key, source))),
          )}
        </div>
      </details>
      ${on.includes('backlash') ? this.reversal(source) : nothing}
      ${on.includes('format') ? this.formats(source.format) : nothing}`;
  }

  private reversal(source: TraceSource) {
    const next = source.afterReversal ? 'no' : 'yes';
    return html`<button
      class="key"
      aria-pressed=${source.afterReversal}
      @click=${() => void this.app.choose('trace.reversal', next)}
    >
      ${t.reversal}
    </button>`;
  }

  private formats(now: FormatChoice) {
    const own = this.app.sheet.get('ratioHeld').value !== null;
    return html`<h2 class="label">${t.format}</h2>
      <div class="grid2" role="group" aria-label=${t.format}>
        ${FORMATS.filter((f) => f !== 'own' || own).map(
          (f) =>
            html`<button
              class="key"
              aria-pressed=${f === now}
              @click=${() => void this.app.choose('trace.format', f)}
            >
              ${formatText[f]}
            </button>`,
        )}
      </div>`;
  }

  private ranking(ranked: readonly Ranked[], u: TraceUnits) {
    if (ranked.length === 0) return nothing;
    return html`<h2>${t.ranked}</h2>
      <p class="note">${t.rankedNote}</p>
      <div>
        ${ranked.map(
          (r) =>
            html`<ls-row
              .label=${r.name ? ingredientText[r.name] : t.baseline}
              .value=${u.error(r.nut)}
              .unit=${u.unit}
              .note=${r.rest === null ? '' : t.withoutIt(u.errorText(r.rest))}
            ></ls-row>`,
        )}
      </div>`;
  }

  private actions(spec: TraceSpec) {
    if (this.share !== null) {
      const percent = Math.floor(this.share * 100);
      return html`<div class="running">
        <p role="status">${t.running(percent)}</p>
        <progress max="100" .value=${percent} aria-label=${t.title}></progress>
        <button class="key" @click=${() => this.run?.cancel()}>${t.cancel}</button>
      </div>`;
    }
    return html`<div class="pair">
      <button class="key solid" @click=${() => void this.start(spec, false)}>${t.run}</button>
      <button class="key" @click=${() => void this.start(spec, true)}>${t.rank}</button>
    </div>`;
  }

  override render() {
    const { source, units } = this;
    const chosen = this.app.sheet.get('chosen').value;
    if (!source || !chosen)
      return html`<h1>${t.noThread}</h1>
        <a class="key solid" href="#/threads/find">${threadsText.choose}</a>`;
    const all = ingredientsOf(source);
    const on = INGREDIENTS.filter((n) => !this.off.includes(n) && (all[n] !== null || n === 'format'));
    const setup = setupTrace(source, on);
    const head = html`<h1>${t.title}</h1>
      <p class="note">${t.model}</p>`;
    if (!setup.ok)
      return html`${head}
        <p class="unknown"><strong>${t.missing} ${setup.missing.map(pathLabel).join(', ')}.</strong></p>
        ${
          setup.missing.includes('job.rpm')
            ? html`<a class="key solid" href="#/enter/job/rpm">${t.setSpeed}</a>`
            : nothing
        }
        <a class="key" href="#/speed">${t.back}</a>`;
    const shown = last;
    const changed = shown !== null && shown.key !== JSON.stringify(setup.spec);
    return html`${head}
      ${
        shown && !changed
          ? html`<div class="stack result">
              ${traceResult(shown.result, this.verdictFor(shown.result), units, shown.length, this.assumed(source, on))}
              ${this.ranking(shown.ranked, units)}
            </div>`
          : nothing
      }
      ${changed ? html`<p class="note">${t.changed}</p>` : nothing}
      ${this.trouble ? html`<p class="over" role="alert"><strong>${this.trouble}</strong></p>` : nothing}
      ${this.actions(setup.spec)}
      <a class="key left" href="#/enter/job/rpm">${t.rpm}: ${significant(setup.spec.job.rpm)} rpm</a>
      ${this.ingredients(source, on)}
      <a class="key" href="#/speed">${t.back}</a>`;
  }
}
