import { html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { makeRecord, PHASES, type CheckState, type Phase } from '../core/checks';
import type { CheckRecord } from '../core/context';
import type { Sheet } from '../core/figures';
import { boundsText, checksText, checkText, readingRefusalText, tierName } from '../text/checks';
import { embedText } from '../text/embed';
import { unitLabel } from '../text/units';
import { dayOf, sheetFor, statesOf, type Asked } from './asking';
import { findingSaid, readingOf, restSaid } from './checks-said';
import { checksSheet } from './checks-styles';
import { EmbedElement } from './element';
import { readMachine, type EmbedMachine, type MachineRead } from './machine';
import { misreadSaid } from './misread';

const t = embedText.checks;

/** A person answered a check, or took the last answer back. Nothing of it is kept by the element beyond the page. */
export class EmbedAnswerEvent extends Event {
  static readonly type = 'ls-embed-answer';
  constructor(
    /** The check's id: "chuck-key". */
    readonly item: string,
    /** As it was asked: "Chuck key out?". */
    readonly question: string,
    readonly answer: 'done' | 'not-ok' | 'taken-back',
    /** The figure as typed, with its unit; empty where none was. */
    readonly reading: string,
    /** How many aren't done. */
    readonly left: number,
  ) {
    super(EmbedAnswerEvent.type, { bubbles: true, composed: true });
  }
}

/** How long a new question takes no answer, ms: longer than a double tap. */
const REST = 400;

/**
 * Pre-start checks, one question at a time. Nothing is stored: the element says so, and that answers given here prove nothing.
 * Without a machine it asks the general questions alone.
 * @element ls-embed-checks
 * @fires {EmbedAnswerEvent} ls-embed-answer - an answer was given or taken back
 * @csspart caution - that nothing is kept, and what the answers are worth
 * @csspart question - the question
 * @csspart look - where to look
 * @csspart done - the key DONE
 * @csspart not-ok - the key NOT OK
 * @csspart key - each other key
 * @csspart input - the line for a figure
 * @cssprop --ls-embed-paper - ground
 * @cssprop --ls-embed-ink - text and lines
 * @cssprop --ls-embed-ink-2 - second text
 * @cssprop --ls-embed-hair - hairlines
 * @cssprop --ls-embed-over - NOT OK
 * @cssprop --ls-embed-near - close to a limit
 * @cssprop --ls-embed-unknown - not known
 * @cssprop --ls-embed-font - typeface
 * @cssprop --ls-embed-label - size of the text
 */
@customElement('ls-embed-checks')
export class LsEmbedChecks extends EmbedElement {
  static override styles = [...EmbedElement.styles, checksSheet];

  /** When they are asked: before the cut, after the scratch pass, before each pass, before service. */
  @property() phase: 'before' | 'scratch' | 'pass' | 'service' = 'before';
  /** The machine, as for the wall chart; without one the general questions are asked. */
  @property({ type: Object }) machine: EmbedMachine | null = null;
  /** The thread to be cut, by its id or designation; counts with a machine. */
  @property() thread = '';
  /** Spindle speed set, rpm; counts with a machine. */
  @property() rpm = '';
  /** Screw or nut. */
  @property() side: 'external' | 'internal' = 'external';
  @state() private records: readonly CheckRecord[] = [];
  @state() private put: readonly string[] = [];
  @state() private typed = '';
  @state() private trouble = '';
  @state() private said = '';
  @state() private resting = false;
  private begun = Date.now();
  private read: MachineRead | null = null;

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (changed.has('machine')) this.read = this.machine && readMachine(this.machine, embedText.machine);
  }

  private get asked(): Asked {
    const now = Date.now();
    const { thread, rpm, side, records, begun } = this;
    const phase: Phase = Object.hasOwn(PHASES, this.phase) ? this.phase : 'before';
    const machine = this.read?.profile ?? null;
    return { phase, machine, thread, rpm, side, records, now, day: dayOf(now), begun };
  }

  private open(sheet = sheetFor(this.asked)): readonly CheckState[] {
    return statesOf(this.asked, sheet).filter((s) => s.state !== 'done');
  }

  private answer(s: CheckState, answer: 'done' | 'not-ok'): void {
    const reading = answer === 'done' ? readingOf(s.item, this.typed) : null;
    if (reading && 'trouble' in reading) {
      this.trouble = reading.trouble;
      return;
    }
    const sheet = sheetFor(this.asked);
    const made = makeRecord(s.item, sheet, answer, reading, String(this.records.length));
    if (!made.ok) {
      this.trouble = readingRefusalText(made.refusal);
      return;
    }
    this.records = [...this.records, made.record];
    const unit = s.item.reading ? unitLabel[s.item.reading.units[0]] : '';
    this.tell(s.item.id, answer, reading ? `${this.typed.trim()} ${unit}`.trim() : '');
    if (answer === 'done') this.put = this.put.filter((id) => id !== s.item.id);
    this.next('');
    this.resting = true;
    setTimeout(() => (this.resting = false), REST);
  }

  private tell(item: string, answer: EmbedAnswerEvent['answer'], reading = ''): void {
    const { question } = checkText(item);
    this.dispatchEvent(new EmbedAnswerEvent(item, question, answer, reading, this.open().length));
  }

  private next(said: string): void {
    this.typed = this.trouble = '';
    this.said = said;
  }

  private undo(): void {
    const last = this.records.at(-1);
    if (!last) return;
    this.records = this.records.slice(0, -1);
    this.put = this.put.filter((id) => id !== last.item);
    this.next(t.undone);
    this.tell(last.item, 'taken-back');
  }

  private caution() {
    return html`<div class="stack caution" part="caution">
      <p><strong>${t.notKept}</strong></p>
      <p class="note">${t.caution}</p>
      ${this.machine ? nothing : html`<p class="note">${t.general}</p>`} ${misreadSaid(this.read)}
    </div>`;
  }

  private entry({ item }: CheckState, sheet: Sheet) {
    if (!item.reading) return nothing;
    const { figure = '' } = checkText(item.id);
    const bounds = boundsText(item, sheet);
    return html`<div class="entry">
      <label class="label" for="reading">${t.figure(figure, unitLabel[item.reading.units[0]])}</label>
      <input
        id="reading"
        part="input"
        inputmode="decimal"
        autocomplete="off"
        .value=${this.typed}
        aria-invalid=${this.trouble ? 'true' : 'false'}
        aria-describedby="trouble"
        @input=${(e: Event) => (this.typed = (e.target as HTMLInputElement).value)}
      />
      ${bounds ? html`<p>${bounds}</p>` : nothing}
    </div>`;
  }

  private question(s: CheckState, left: number, sheet: Sheet) {
    const text = checkText(s.item.id);
    return html`<p class="label">${checksText.left(left, tierName[s.item.tier])}</p>
      <p class="question" part="question" aria-live="polite">${text.question}</p>
      ${
        s.state === 'not-ok'
          ? html`<p class="alert over"><strong>${t.wasNotOk}</strong> ${text.notOk ?? ''}</p>`
          : nothing
      }
      ${findingSaid(s)}
      <p part="look">${text.look}</p>
      <details>
        <summary>${checksText.why}</summary>
        <p>${text.why}</p>
      </details>
      ${this.entry(s, sheet)}
      <p id="trouble" class="over" role="alert">${this.trouble}</p>
      <div class="answers ${this.resting ? 'resting' : ''}">
        <button class="key solid done" part="done" @click=${() => this.answer(s, 'done')}>
          ${s.item.reading && s.item.kind === 'physical' && !this.typed.trim() ? checksText.doneWithout : checksText.done}
        </button>
        <button class="key stop" part="not-ok" @click=${() => this.answer(s, 'not-ok')}>
          ${checksText.notOk}
        </button>
        <div class="keys">
          ${
            left > 1
              ? html`<button class="key" part="key" @click=${() => this.later(s)}>
                  ${checksText.later}
                </button>`
              : nothing
          }
          ${this.undoKey()}
        </div>
      </div>`;
  }

  private later(s: CheckState): void {
    this.put = [...this.put, s.item.id];
    this.next('');
  }

  private undoKey() {
    return this.records.length
      ? html`<button class="key" part="key" @click=${() => this.undo()}>${t.undo}</button>`
      : nothing;
  }

  /** Nothing more to be asked now. */
  private rest(open: readonly CheckState[]) {
    const putOff = open.some((s) => s.answerable);
    return html`${restSaid(open, this.records.at(-1)?.at ?? null)}
      <div class="keys">
        ${
          putOff
            ? html`<button class="key" part="key" @click=${() => (this.put = [])}>${t.again}</button>`
            : nothing
        }
        ${this.undoKey()}
      </div>`;
  }

  protected override render() {
    const sheet = sheetFor(this.asked);
    const open = this.open(sheet);
    const now = open.find((s) => s.answerable && !this.put.includes(s.item.id));
    return html`<div class="stack">
      ${this.caution()}
      <p role="status" class="vh">${this.said}</p>
      ${now ? this.question(now, open.length, sheet) : this.rest(open)}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-embed-checks': LsEmbedChecks;
  }
  interface HTMLElementEventMap {
    'ls-embed-answer': EmbedAnswerEvent;
  }
}
