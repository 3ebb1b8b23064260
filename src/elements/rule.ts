import { css, html, LitElement } from 'lit';
import { customElement } from 'lit/decorators.js';

/**
 * An engraved rule in the manner of a steel scale: ten divisions to a long line, a middle line at five. Ornament only.
 * @element ls-rule
 * @cssprop --ink - colour of the lines
 * @cssprop --division - distance of two lines, 5px unless set
 */
@customElement('ls-rule')
export class LsRule extends LitElement {
  static override styles = css`
    :host {
      --d: var(--division, 5px);
      display: block;
      forced-color-adjust: none;
      block-size: 14px;
      border-block-start: 1px solid var(--ink);
      /* Short, middle and long lines: three combs of their own height, all hung from the top edge. */
      background:
        repeating-linear-gradient(to right, var(--ink) 0 1px, transparent 1px var(--d)) top / 100% 5px
          no-repeat,
        repeating-linear-gradient(to right, var(--ink) 0 1px, transparent 1px calc(5 * var(--d))) top / 100%
          9px no-repeat,
        repeating-linear-gradient(to right, var(--ink) 0 2px, transparent 2px calc(10 * var(--d))) top / 100%
          14px no-repeat;
    }
    :host([hidden]) {
      display: none;
    }
  `;

  override connectedCallback() {
    super.connectedCallback();
    this.setAttribute('aria-hidden', 'true');
  }

  protected override render() {
    return html``;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-rule': LsRule;
  }
}
