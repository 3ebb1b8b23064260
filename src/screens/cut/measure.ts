import { html, nothing, type PropertyValues } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import { limitsScaleStyles } from '../../elements/limits-scale';
import type { FinishFound, Left } from '../../core/cut/finish';
import type { PlannedPass } from '../../core/cut/pass';
import type { Outcome, RunReading } from '../../core/run/run';
import * as wires from '../../core/thread/wires';
import type { App } from '../../state';
import { finishLabels, finishText as t, mmText, type FinishKey, type FinishWay } from '../../text/finish';
import { measureText } from '../../text/measure';
import { runText } from '../../text/run';
import { marked, statedText, withUnit } from '../../text/numbers';
import { classText } from '../../text/threads';
import { mistakeLinksAt } from '../../text/mistakes';
import { feelNow, feelSection, forgetFeel } from './feel';
import * as f from './finishing';
import { resultSection } from './left';
import { leastKey, takeKeys } from './take-keys';
import { wireInUse } from './wire-in-use';

type Found = Extract<FinishFound, { ok: true }>;

/** The thread that wire and standard belong to, and the run that the reading does, by these names among the choices. */
const OF_THREAD = 'cut.of';
const OF_RUN = 'cut.read';
const FOR_THREAD: readonly FinishKey[] = ['cut.wire', 'cut.standard', 'cut.shown'];
const FOR_RUN: readonly FinishKey[] = ['cut.over', 'cut.mic'];

/** Measuring the thread on the lathe: from a reading to what is left on the handwheels, and to the end of the cut. */
@customElement('ls-cut-measure')
export class CutMeasureScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, ...limitsScaleStyles];

  /** A step that could not be kept. */
  @state() private refused = false;

  override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    this.forgetOthers();
  }

  /** What was read on another thread or in another run says nothing of this one. */
  private forgetOthers(): void {
    const { thread, runId } = f.pieceOf(this.app);
    const { choices } = this.app.settings;
    const forget = (keys: readonly FinishKey[]): void => {
      for (const key of keys) if (this.app.readings.get(key)) void this.app.readings.set(key, null);
    };
    const other = thread !== null && choices[OF_THREAD] !== thread.id;
    // The choice first: forgetting draws this screen again.
    if (other) {
      void this.app.choose(OF_THREAD, thread.id);
      forget([...FOR_THREAD, ...FOR_RUN]);
    }
    if ((choices[OF_RUN] ?? '') !== runId) {
      void this.app.choose(OF_RUN, runId);
      forget(FOR_RUN);
    }
  }

  private readonly length = (mm: number, places = 3): string =>
    withUnit(mmText(mm, this.app.settings.units, places), this.app.settings.units);

  private entry(key: FinishKey, solid = false) {
    const s = this.app.readings.get(key);
    const label = finishLabels[key];
    return html`<a class="key left ${solid && !s ? 'solid' : ''}" href="#/enter/reading/${key}"
      >${s ? `${label}: ${statedText(s)}` : `${t.enter}: ${label}`}</a
    >`;
  }

  private choice<K extends string>(
    name: string,
    label: string,
    options: readonly K[],
    now: K,
    text: Readonly<Record<K, string>>,
  ) {
    return html`<h2 class="label">${label}</h2>
      <div class="keys" role="group" aria-label=${label}>
        ${options.map(
          (k) =>
            html`<button class="key" aria-pressed=${k === now} @click=${() => void this.app.choose(name, k)}>
              ${text[k]}
            </button>`,
        )}
      </div>`;
  }

  private uncertainties(way: FinishWay) {
    const instrument = f.instrumentOf(this.app);
    const kind = f.chosen(this.app, 'measure.wires', f.WIRE_KINDS);
    const wired = way === 'wires';
    return html`${this.choice(
        'measure.instrument',
        measureText.instrument,
        f.instruments,
        instrument,
        measureText.instruments,
      )}
      ${wired ? this.choice('measure.wires', measureText.wires, f.WIRE_KINDS, kind, measureText.wireKinds) : nothing}
      <p class="note">
        ${measureText.assumed(
          this.length(wires.INSTRUMENT_U[instrument], 4),
          wired ? this.length(wires.WIRE_U[kind], 4) : '',
        )}
      </p>`;
  }

  private reading(way: FinishWay, found: Found | null): Omit<RunReading, 'at' | 'after'> {
    if (way === 'gauge') {
      const { felt, tried, noGo } = feelNow(this.app);
      return { way, reading: null, felt, tried, noGo, pitchDiameter: null, uncertainty: null };
    }
    return {
      way,
      reading: this.app.readings.get(f.READ_KEY[way]),
      felt: null,
      pitchDiameter: found?.value ?? null,
      uncertainty: found?.u == null ? null : 2 * found.u,
    };
  }

  /**
   * Puts the reading into the run, with the plan that follows from it, and clears the pad for the next. False where it
   * is not on the disk: then the reading stays.
   */
  private async keep(way: FinishWay, found: Found | null, plan?: readonly PlannedPass[]): Promise<boolean> {
    const { run } = f.pieceOf(this.app);
    const reading = this.reading(way, found);
    if (run && (reading.reading ?? reading.felt)) {
      const whole = { ...reading, at: Date.now(), after: run.taken.length };
      this.refused = !(await this.app.runs.addReading(whole, plan));
      if (this.refused) return false;
    }
    if (way === 'gauge') await forgetFeel(this.app);
    else await this.app.readings.set(f.READ_KEY[way], null);
    return true;
  }

  /** Notes the reading and goes to the passes: those of a new plan, or those that were left. */
  private async toPasses(way: FinishWay, found: Found | null, plan?: readonly PlannedPass[]): Promise<void> {
    if (await this.keep(way, found, plan)) this.go('#/cut/pass');
  }

  private async end(outcome: Outcome, way: FinishWay, found: Found | null): Promise<void> {
    const { runId, run } = f.pieceOf(this.app);
    if (!(await this.keep(way, found))) return;
    this.refused = !(await this.app.endRun(outcome, run?.notes ?? ''));
    if (!this.refused) this.go(`#/cut/records/${runId}`);
  }

  private endKeys(outcomes: readonly Outcome[], way: FinishWay, found: Found | null, read: boolean) {
    if (!f.pieceOf(this.app).run) return html`<p class="note">${t.notOpen}</p>`;
    if (this.hold()) return nothing;
    return html`<h2 class="label apart">${t.end}</h2>
      <div class="stack">
        ${outcomes.map(
          (o) =>
            html`<button
              class="key left ${o === 'scrapped' ? 'stop apart' : o === 'within' || o === 'gauged' ? 'solid' : ''}"
              @click=${() => void this.end(o, way, found)}
            >
              ${t.outcome(o, read)}
            </button>`,
        )}
      </div>`;
  }

  /** What the reading says, and what may be done about it. */
  private result(piece: f.Piece, way: Exclude<FinishWay, 'gauge'>, found: Found, left: Left) {
    const { units: unit } = this.app.settings;
    const slides = f.slidesLeft(this.app, piece, left);
    const may = !piece.run || this.hold() === null;
    const take = may
      ? takeKeys(this.app, piece, left, (passes) => void this.toPasses(way, found, passes))
      : nothing;
    const note = html`<button class="key left" @click=${() => void this.toPasses(way, found)}>
      ${t.noteIt}
    </button>`;
    return resultSection(
      { piece, way, found, left, slides, feeds: f.feedingOf(this.app, piece), unit },
      html`${take} ${piece.run && may && left.lies !== 'beyond' ? note : nothing}`,
    );
  }

  private ends(left: Left | null): readonly Outcome[] {
    if (left?.lies === 'within') return ['within', 'scrapped'];
    return left?.lies === 'beyond' ? ['scrapped'] : ['not-measured', 'scrapped'];
  }

  private bySize(piece: f.Piece, way: Exclude<FinishWay, 'gauge'>, wayKeys: unknown) {
    const found = f.foundNow(this.app, piece, way);
    const got = found?.ok ? found : null;
    const left = got && f.leftNow(piece, got);
    const wired = way === 'wires';
    const setting = wired
      ? wireInUse(this.app, piece, this.entry('cut.wire', true))
      : [this.entry('cut.standard'), this.entry('cut.shown')];
    const known = !wired || this.app.readings.get('cut.wire') !== null;
    const read = html`${this.entry(f.READ_KEY[way], known)}
    ${found && !found.ok ? html`<p class="over">${measureText.refusal(found.refusal)}</p>` : nothing}`;
    const ends = this.endKeys(this.ends(left), way, got, got !== null);
    // Once it is read, what that says stands first; how it was read, after it.
    return got && left
      ? html`${read} ${this.result(piece, way, got, left)} ${setting} ${wayKeys} ${this.uncertainties(way)}
        ${ends}`
      : html`${this.first(piece)} ${wayKeys} ${setting} ${read} ${this.uncertainties(way)} ${ends}`;
  }

  private byFeel(piece: f.Piece, wayKeys: unknown) {
    const feel = feelNow(this.app);
    const { advice } = feel;
    const done = advice === 'fits' || advice === 'gauged';
    const ends: readonly Outcome[] = done
      ? ['gauged', 'scrapped']
      : advice === 'beyond'
        ? ['scrapped']
        : ['not-measured', 'scrapped'];
    const take = (passes: readonly PlannedPass[]): void => void this.toPasses('gauge', null, passes);
    return html`${this.first(piece)} ${wayKeys} ${feelSection(this.app, piece.thread, feel)}
    ${advice === 'least-more' && this.hold() === null ? leastKey(this.app, piece, take) : nothing}
    ${this.endKeys(ends, 'gauge', null, feel.felt !== null)}`;
  }

  /** What is done before measuring. */
  private first(piece: f.Piece) {
    const spring = f.springOf(this.app, piece);
    return html`<p class="note">${t.before} ${t.spring(spring)}</p>
      ${spring === null ? html`<a class="key" href="#/cut/work">${t.work}</a>` : nothing}`;
  }

  /** Why nothing may be put into the run now; null where it may. */
  private hold() {
    const { runs } = this.app;
    if (runs.asks)
      return html`<p class="alert">${t.askedFirst}</p>
        <a class="key solid" href="#/cut/pass">${t.toPass}</a>`;
    return runs.holds === 'elsewhere' ? html`<p class="alert">${runText.elsewhere}</p>` : null;
  }

  override render() {
    const piece = f.pieceOf(this.app);
    const { thread, job, classId, run } = piece;
    if (!job.thread)
      return html`<h1>${t.noThread}</h1>
        <a class="key solid" href="#/threads/find">${t.choose}</a>`;
    const ways = f.waysFor(piece);
    const way = f.chosen(this.app, 'cut.way', ways);
    const held = run ? this.hold() : null;
    const name = thread ? `${marked(thread.designation)} ${classId ? classText(classId) : ''}`.trim() : '';
    const wayKeys = html`${ways.length > 1 ? this.choice('cut.way', t.way, ways, way, t.ways) : nothing}
    ${job.side === 'internal' ? html`<p class="note">${t.inside}</p>` : nothing}`;
    return html`<h1>${t.title(name || marked(run?.threadName ?? ''))}</h1>
      ${this.refused ? html`<p class="alert" role="alert">${t.notKept}</p>` : nothing} ${held ?? nothing}
      ${way === 'gauge' ? this.byFeel(piece, wayKeys) : this.bySize(piece, way, wayKeys)}
      ${links(mistakeLinksAt('cut/measure'))}
      <a class="key apart" href="#/cut">${t.back}</a>`;
  }
}
