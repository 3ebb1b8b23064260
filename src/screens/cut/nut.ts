import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import type { App } from '../../state';
import './nut-rule';
import './nut-starts';
import './nut-pick-up';

/** The half-nut: where it may be closed, the starts of a thread, picking up. */
@customElement('ls-cut-nut')
export class NutScreen extends ScreenElement<App> {
  // The pages bring their own margins.
  static override styles = [];

  override render() {
    const [, page] = this.path;
    if (page === 'starts') return html`<ls-nut-starts .app=${this.app}></ls-nut-starts>`;
    if (page === 'pick-up') return html`<ls-nut-pick-up .app=${this.app}></ls-nut-pick-up>`;
    return html`<ls-nut-rule .app=${this.app}></ls-nut-rule>`;
  }
}
