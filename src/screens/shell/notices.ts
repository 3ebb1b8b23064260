import { html, nothing, type TemplateResult } from 'lit';
import type { OfflineStatus, Updates } from '../../device/updates';
import {
  errorText,
  offlineText,
  saveText,
  storageText,
  updateText,
  acceptedText,
  type Trouble,
} from '../../text/app';
import { fieldText } from '../../text/machine';
import type { App } from '../../state';

interface Said {
  readonly app: App;
  readonly updates: Updates | null;
  readonly offline: OfflineStatus | null;
  readonly closed: boolean;
}

const trouble = ({ what, todo }: Trouble): TemplateResult => html`<p><strong>${what}</strong> ${todo}</p>`;

const fieldNames = (fields: readonly string[]): string =>
  fields.map((f) => (fieldText as Record<string, { label: string } | undefined>)[f]?.label ?? f).join(', ');

const saving = (app: App): TemplateResult | typeof nothing => {
  const state = app.saveState;
  if (state.kind === 'failed')
    return html`<div class="notice bad" role="alert">
      ${trouble(storageText[state.code])}
      <button class="key" @click=${() => void app.saveAgain()}>${saveText.again}</button>
    </div>`;
  if (state.kind === 'conflict')
    return html`<div class="notice" role="alert">
      <p>${saveText.conflict}. ${saveText.conflictNote} ${fieldNames(state.fields)}</p>
    </div>`;
  return nothing;
};

const memoryOnly = ({ storage }: App): TemplateResult | typeof nothing =>
  storage.durable
    ? nothing
    : html`<div class="notice bad" role="alert">
        ${trouble(storageText[storage.trouble ?? 'unavailable'])}
      </div>`;

const update = ({ app, updates, offline }: Said): TemplateResult | typeof nothing => {
  if (!offline?.update) return nothing;
  const cutting = app.jobs.cuttingSince !== null;
  return html`<div class="notice" role="status">
    <p>${updateText[offline.update]}${cutting ? `. ${acceptedText['refused-cutting']}.` : ''}</p>
    ${
      cutting || !updates
        ? nothing
        : html`<button class="key" @click=${() => void updates.accept()}>${updateText.accept}</button>`
    }
  </div>`;
};

const broken = ({ offline }: Said): TemplateResult | typeof nothing =>
  offline?.offline === 'failed' && offline.code && offline.code !== 'no-service-worker'
    ? html`<div class="notice" role="status">${trouble(offlineText[offline.code])}</div>`
    : nothing;

const closed = (said: Said): TemplateResult | typeof nothing =>
  said.closed
    ? html`<div class="notice bad" role="alert">
        ${trouble(storageText['closed-for-update'])}
        <button class="key" @click=${() => location.reload()}>${errorText.reload}</button>
      </div>`
    : nothing;

/** What has to be said above every screen, worst first. Nothing here goes away by itself. */
export const notices = (said: Said): TemplateResult =>
  html`${closed(said)}${memoryOnly(said.app)}${saving(said.app)}${update(said)}${broken(said)}`;
