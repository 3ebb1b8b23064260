import { css, html, LitElement, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { base } from './styles';

export type StandingName = 'within' | 'near' | 'over' | 'unknown';

/** Four outlines that differ without colour: disc, triangle, square, broken ring. Drawn in a 24 × 24 box. */
const MARKS: Record<StandingName, TemplateResult> = {
  within: svg`<circle class="fill" cx="12" cy="12" r="11" /><path class="cut" d="M6 12.5l4.2 4.2L18 8.4" />`,
  near: svg`<path class="fill" d="M12 1.5L23.5 22.5H.5z" /><path class="cut" d="M12 9v6M12 18v1.6" />`,
  over: svg`<path class="fill" d="M1.5 1.5h21v21h-21z" /><path class="cut" d="M7 7l10 10M17 7L7 17" />`,
  unknown: svg`<circle class="ring" cx="12" cy="12" r="10.2" />
    <path class="line" d="M8.6 9.6c0-4.6 7-4.4 7 0 0 2.6-3.6 2.6-3.6 5M12 17.2v1.4" />`,
};

/** The bare mark, for use inside other elements' templates; hidden from screen readers, so give the word too. */
export const standingMark = (standing: StandingName): TemplateResult =>
  html`<svg class="mark ${standing}" viewBox="0 0 24 24" aria-hidden="true">${MARKS[standing]}</svg>`;

export const standingSheet = css`
  .mark {
    flex: none;
    inline-size: 1.25em;
    block-size: 1.25em;
    fill: none;
    stroke-width: 2.6;
    vertical-align: -0.25em;
  }
  .mark .fill {
    fill: currentColor;
  }
  .mark .cut {
    stroke: var(--paper);
    stroke-width: 3;
  }
  .mark .ring {
    stroke: currentColor;
    stroke-dasharray: 4.2 3.8;
  }
  .mark .line {
    stroke: currentColor;
    stroke-width: 2.4;
  }
`;

/**
 * How a figure stands against its limit: a mark that differs by shape, a colour and a word.
 * @element ls-standing
 * @prop {StandingName} standing - within, near, over or unknown; unknown until set
 * @prop {string} word - the word beside the mark; the only part a screen reader hears
 * @slot - what follows the word
 * @csspart word - the word
 * @cssprop --ok, --near, --over, --unknown, --paper - theme colours
 */
@customElement('ls-standing')
export class LsStanding extends LitElement {
  static override styles = [
    base,
    standingSheet,
    css`
      :host {
        display: inline-flex;
        align-items: center;
        gap: 0.5em;
        font-size: var(--t-label);
        font-weight: 700;
        line-height: 1.2;
      }
    `,
  ];

  @property({ reflect: true }) standing: StandingName = 'unknown';
  @property() word = '';

  protected override render() {
    return html`${standingMark(this.standing)}<span part="word" class=${this.standing}
        >${this.word} <slot></slot
      ></span>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-standing': LsStanding;
  }
}
