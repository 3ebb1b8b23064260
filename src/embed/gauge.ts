import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../elements/limits-drawing';
import { limitsScale, limitsScaleStyles } from '../elements/limits-scale';
import { limitsShapeOf } from '../elements/limits-shape';
import '../elements/standing';
import { classOf } from '../core/figures';
import { read, toNumber } from '../core/quantity';
import { classesOf, limits, unitOf, type LimitsResult, type Thread } from '../core/thread';
import { VERDICT_STANDING, verdictOf, type Verdict } from '../core/thread/wires';
import { embedText as t } from '../text/embed';
import { limitsText } from '../text/limits';
import { measureText } from '../text/measure';
import { mark } from '../text/numbers';
import { classText } from '../text/threads';
import { readErrorText } from '../text/typed';
import { EmbedElement } from './element';
import { basicFigures, goNoGo, limitFigures } from './gauge-figures';
import { describe, threadCalled, type EmbedThread } from './thread';

/** A person entered what they measured. */
export class EmbedVerdictEvent extends Event {
  static readonly type = 'ls-embed-verdict';
  constructor(
    readonly thread: EmbedThread,
    /** Class of fit it was held against, "6g". */
    readonly fit: string,
    /** As typed. */
    readonly measured: string,
    /** Within, above or below the limits, can't tell, or not known. */
    readonly verdict: 'within' | 'above' | 'below' | 'unsure' | 'unknown',
  ) {
    super(EmbedVerdictEvent.type, { bubbles: true, composed: true });
  }
}

interface Judged {
  readonly value: number;
  readonly expanded: number | null;
  readonly verdict: Verdict;
}

/**
 * Gauge: a thread's profile to scale between its limits, the limits as figures, and where a measured size lies in them. What
 * isn't known (a class without limits, how far a reading may be out) is never called good.
 * @element ls-embed-gauge
 * @fires {EmbedVerdictEvent} ls-embed-verdict - a person entered what they measured
 * @csspart title - the thread's name and class
 * @csspart drawing - the profile to scale
 * @csspart figures - the limits
 * @csspart key - each class's key
 * @csspart input - the line for what was measured
 * @csspart verdict - how it lies in its limits
 * @cssprop --ls-embed-paper - ground
 * @cssprop --ls-embed-ink - text and lines
 * @cssprop --ls-embed-ink-2 - second text
 * @cssprop --ls-embed-hair - hairlines
 * @cssprop --ls-embed-machine - filling between the limits
 * @cssprop --ls-embed-ok - within
 * @cssprop --ls-embed-near - something left to take
 * @cssprop --ls-embed-over - below the limits
 * @cssprop --ls-embed-unknown - not known
 * @cssprop --ls-embed-font - typeface
 * @cssprop --ls-embed-label - size of the text
 */
@customElement('ls-embed-gauge')
export class LsEmbedGauge extends EmbedElement {
  static override styles = [...EmbedElement.styles, ...limitsScaleStyles];

  /** The thread's id or its designation: "iso-coarse:M10", "M10×1.5". */
  @property() thread = '';
  /** Screw or nut. */
  @property() side: 'external' | 'internal' = 'external';
  /** Class of fit, such as "6g" or "2B"; the usual one where it is empty or not of this thread. */
  @property() fit = '';
  /** Pitch diameter as measured, in the thread's own unit; empty for none. */
  @property() measured = '';
  /** How far the reading may be out either way (twice the standard uncertainty), same unit; empty: not known. */
  @property() uncertainty = '';
  /** Only shows: no keys and no line to type in. */
  @property({ type: Boolean }) fixed = false;

  private classKeys(thread: Thread, now: string | null) {
    const offered = classesOf(thread);
    return (['external', 'internal'] as const).map((side) =>
      offered[side].length === 0
        ? nothing
        : html`<p class="label">${limitsText.classes(limitsText[side])}</p>
            <div class="keys" role="group" aria-label=${limitsText.classes(limitsText[side])}>
              ${offered[side].map(
                (c) =>
                  html`<button
                    class="key"
                    part="key"
                    aria-pressed=${side === this.side && c === now}
                    @click=${() => {
                      this.side = side;
                      this.fit = c;
                    }}
                  >
                    ${classText(c)}
                  </button>`,
              )}
            </div>`,
    );
  }

  /** What was measured against the limits; null where nothing was, or it is no number. */
  private judged(l: LimitsResult): Judged | null {
    const value = read(this.measured);
    if (!value.ok) return null;
    const u = read(this.uncertainty);
    const expanded = u.ok ? toNumber(u.value) : null;
    const { min, max } = l.ok ? l.pitch : { min: null, max: null };
    const size = toNumber(value.value);
    return {
      value: size,
      expanded,
      verdict: verdictOf(size, expanded, min && toNumber(min), max && toNumber(max)),
    };
  }

  private typed(e: Event, thread: Thread, classId: string | null, l: LimitsResult): void {
    this.measured = (e.target as HTMLInputElement).value;
    const judged = this.judged(l);
    if (!judged) return;
    const { verdict } = judged;
    this.dispatchEvent(new EmbedVerdictEvent(describe(thread), classId ?? '', this.measured, verdict));
  }

  private result(l: LimitsResult, { value, expanded, verdict }: Judged, unit: string) {
    const number = (x: number): string => x.toFixed(unit === 'mm' ? 3 : 4).replace('.', mark());
    const [min, max] = l.ok ? [l.pitch.min, l.pitch.max] : [null, null];
    const known = min && max ? { min: toNumber(min), max: toNumber(max) } : null;
    const words = known ? measureText.scale(number(value), number(known.min), number(known.max)) : '';
    return html`${known && expanded !== null ? limitsScale({ value, expanded }, known, number, words) : nothing}
      <ls-standing
        part="verdict"
        .standing=${VERDICT_STANDING[verdict]}
        .word=${t.verdict(verdict, expanded !== null || !known)}
      ></ls-standing>
      ${expanded === null ? nothing : html`<p class="note">${t.uncertain(number(expanded), unit)}</p>`}`;
  }

  private measuring(thread: Thread, classId: string | null, l: LimitsResult) {
    if (thread.taper) return html`<p>${measureText.refusal('taper-thread')}</p>`;
    if (this.side === 'internal')
      return html`<p>${measureText.refusal('internal-thread')}</p>
        ${goNoGo(thread)}`;
    const unit = unitOf(thread);
    const value = read(this.measured);
    const wrong = value.ok || this.measured.trim() === '' ? '' : readErrorText(value.error);
    const judged = this.judged(l);
    return html`${
        this.fixed
          ? nothing
          : html`<div class="entry">
              <label class="label" for="measured">${t.measured(unit)}</label>
              <input
                id="measured"
                part="input"
                inputmode="decimal"
                autocomplete="off"
                .value=${this.measured}
                aria-invalid=${wrong ? 'true' : 'false'}
                aria-describedby="wrong"
                @input=${(e: Event) => this.typed(e, thread, classId, l)}
              />
            </div>`
      }
      <p id="wrong" class="over" role="alert">${wrong}</p>
      <div class="stack" role="status">${judged ? this.result(l, judged, unit) : nothing}</div>
      ${goNoGo(thread)}`;
  }

  protected override render() {
    const thread = threadCalled(this.thread);
    if (!thread) return html`<p>${this.thread ? t.unknownThread(this.thread) : t.noThread}</p>`;
    const classId = classOf(thread, this.fit || null, this.side);
    const l = limits(thread, classId ?? '');
    const shape = l.ok ? limitsShapeOf(thread, l) : null;
    const cls = classId ? classText(classId) : '';
    return html`<div class="stack">
      <p class="title" part="title">${thread.designation} ${cls}</p>
      ${
        shape
          ? html`<ls-limits-drawing
                part="drawing"
                .shape=${shape}
                .text=${limitsText.drawing(thread.designation, cls, false)}
              ></ls-limits-drawing>
              <p class="note">${limitsText.drawnToScale}</p>`
          : nothing
      }
      ${
        l.ok
          ? limitFigures(l)
          : html`<p>${limitsText.refused(l.refusal, thread.family)}</p>
              ${basicFigures(thread)}`
      }
      ${this.fixed ? nothing : this.classKeys(thread, classId)} ${this.measuring(thread, classId, l)}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-embed-gauge': LsEmbedGauge;
  }
  interface HTMLElementEventMap {
    'ls-embed-verdict': EmbedVerdictEvent;
  }
}
