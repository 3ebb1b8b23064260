import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { headline, headlineSheet, standingKey } from '../../elements/headline';
import { ScreenElement } from '../../elements/screen';
import { threadName } from '../../text/numbers';
import { standingOf } from '../../text/standing';
import type { App } from '../../state';

/** The thread and how the job stands, as Threads has them at its head: shown before the code of the screens is read. */
@customElement('ls-glance')
export class Glance extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, headlineSheet];

  override render() {
    const { sheet, job } = this.app;
    const chosen = sheet.get('chosen').value;
    if (!chosen) return '';
    const standing = sheet.get('speed').value?.standing ?? 'unknown';
    return html`<div>
        ${headline(threadName(chosen))}
        <p class="label">&nbsp;</p>
      </div>
      ${standingKey('#/speed', standing, ...standingOf(standing, job.rpm))}`;
  }
}
