import { html, nothing } from 'lit';
import { embedText } from '../text/embed';
import { refusalText } from '../text/typed';
import type { MachineRead } from './machine';

/** What of a page's words about a machine couldn't be read: said where the element stands, and taken as not known. */
export const misreadSaid = (read: MachineRead | null) =>
  read?.misread.length
    ? html`<p class="over" part="unknown">
        ${embedText.misreadTitle}
        ${read.misread.map((m) => html`<br />${embedText.misread(m.field, refusalText(m.refusal))}`)}
      </p>`
    : nothing;
