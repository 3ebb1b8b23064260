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
      /* Short, middle and long lines: three combs of their own height, all hung from the top edge, each of one tooth that is
         repeated; a gradient as long as the rule puts its teeth unevenly in WebKit. */
      background:
        linear-gradient(to right, var(--ink) 1px, transparent 0) 0 0 / var(--d) 5px repeat-x,
        linear-gradient(to right, var(--ink) 1px, transparent 0) 0 0 / calc(5 * var(--d)) 9px repeat-x,
        linear-gradient(to right, var(--ink) 2px, transparent 0) 0 0 / calc(10 * var(--d)) 14px repeat-x;
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
