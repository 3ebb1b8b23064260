import { LitElement, css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import '../../elements/wipe-lock';
import { runText } from '../../text/run';

/** The wipe lock's key in the header, on every screen. */
@customElement('ls-wipe')
export class WipeKey extends LitElement {
  static override styles = css`
    ls-wipe-lock::part(key) {
      border-color: transparent;
      padding-inline: 8px;
    }
  `;

  override render() {
    return html`<ls-wipe-lock .label=${runText.wipe} .text=${runText.wipeText}></ls-wipe-lock>`;
  }
}
