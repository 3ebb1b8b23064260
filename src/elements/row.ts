import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { standingMark, standingSheet, type StandingName } from './standing';
import { base } from './styles';

/** A person asks where a figure comes from. */
export class WhyEvent extends Event {
  static readonly type = 'ls-why';
  constructor(
    /** The figure's id, as the row was given it. */
    readonly figure: string,
  ) {
    super(WhyEvent.type, { bubbles: true, composed: true });
  }
}

/**
 * One figure on its line: label left, figure right, hairline below. Long figures go under the label.
 * @element ls-row
 * @prop {string} label - what the figure is
 * @prop {string} value - the figure, already written
 * @prop {string} unit - its unit, or what follows it
 * @prop {string} note - a second, smaller line
 * @prop {StandingName|''} standing - mark before the figure; empty for none
 * @prop {string} word - the standing's word, read with the mark
 * @prop {string} why - the key's name for screen readers ("Why"); when set the whole row is a key
 * @prop {string} figure - id carried by the event
 * @fires {WhyEvent} ls-why - the row was pressed
 * @slot - instead of value and unit
 * @csspart row, value
 */
@customElement('ls-row')
export class LsRow extends LitElement {
  static override styles = [
    base,
    standingSheet,
    css`
      :host {
        display: block;
        border-block-end: 1px solid var(--hair);
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        align-content: center;
        gap: 0 1rem;
        inline-size: 100%;
        min-block-size: 52px;
        margin: 0;
        padding: 8px 0;
        border: 0;
        background: none;
        color: inherit;
        font: inherit;
        text-align: start;
      }
      /* With the hairline between, two rows are as far apart as two keys. */
      button.line {
        min-block-size: 64px;
        margin-block: 4px;
        padding-block: 4px;
        cursor: pointer;
        touch-action: manipulation;
        -webkit-tap-highlight-color: transparent;
      }
      button.line:active {
        background: var(--hair);
      }
      .value {
        flex: 1 0 auto;
        max-inline-size: 100%;
        text-align: end;
        overflow-wrap: anywhere;
      }
      .value .mark {
        inline-size: 1.5rem;
        block-size: 1.5rem;
        vertical-align: -0.15rem;
        margin-inline-end: 0.5rem;
      }
      .unit {
        margin-inline-start: 0.2em;
      }
      .why .label {
        /* Apart: in one line WebKit takes none of it. */
        text-decoration: underline;
        text-decoration-style: dotted;
        text-decoration-thickness: 2px;
        text-underline-offset: 0.25em;
      }
      .note {
        flex-basis: 100%;
        font-size: var(--t-label);
        color: var(--ink-2);
      }
    `,
  ];

  @property() label = '';
  @property() value = '';
  @property() unit = '';
  @property() note = '';
  @property() standing: StandingName | '' = '';
  @property() word = '';
  @property() why = '';
  @property() figure = '';

  protected override render() {
    const body = html`<span class="label">${this.label}</span>
      <span class="value" part="value"
        >${this.standing ? html`<span class=${this.standing}>${standingMark(this.standing)}</span>` : nothing}${
          this.word ? html`<span class="vh">${this.word}: </span>` : nothing
        }<slot
          ><span class="figure">${this.value}</span
          >${this.unit ? html` <span class="unit">${this.unit}</span>` : nothing}</slot
        ></span
      >${this.note ? html`<span class="note">${this.note}</span>` : nothing}`;
    if (!this.why) return html`<div class="line" part="row">${body}</div>`;
    return html`<button class="line why" part="row" @click=${this.ask}>
      ${body}<span class="vh">. ${this.why}</span>
    </button>`;
  }

  private ask() {
    this.dispatchEvent(new WhyEvent(this.figure));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-row': LsRow;
  }
  interface HTMLElementEventMap {
    'ls-why': WhyEvent;
  }
}
