import { LitElement, css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { icon } from '../../elements/icons';
import '../../elements/wipe-lock';
import { runText } from '../../text/run';

/** The wipe lock's key in the header, on every screen. */
@customElement('ls-wipe')
export class WipeKey extends LitElement {
  static override styles = css`
    ls-wipe-lock::part(key) {
      flex-direction: column;
      gap: 3px;
      block-size: 100%;
      border-color: transparent;
      padding: 0;
      font-size: var(--t-bar);
    }
    .icon {
      inline-size: 24px;
      block-size: 24px;
      pointer-events: none;
    }
  `;

  override render() {
    return html`<ls-wipe-lock .label=${runText.wipe} .text=${runText.wipeText}
      >${icon('wipe')}</ls-wipe-lock
    >`;
  }
}
