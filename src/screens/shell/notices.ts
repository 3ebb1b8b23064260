import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { askOnce } from '../../device/persist';
import type { Accepted, OfflineStatus, Updates } from '../../device/updates';
import { Listen } from '../../elements/listen';
import { shared } from '../../elements/styles';
import {
  acceptedText,
  appText,
  errorText,
  offlineText,
  restoredText,
  saveText,
  shareAllText,
  storageText,
  updateText,
  type Trouble,
} from '../../text/app';
import { FIRST_STEPS, firstDone } from '../../core/checks/first-run';
import { firstRunText, stepText } from '../../text/first-run';
import { barLabel } from '../../text/frame';
import { fieldText } from '../../text/machine';
import { dayText } from '../../text/records';
import { timeOf } from '../../text/time';
import type { App } from '../../state';
import type { Route } from './routes';

const trouble = ({ what, todo }: Trouble): TemplateResult => html`<p><strong>${what}</strong> ${todo}</p>`;

const fieldNames = (fields: readonly string[]): string =>
  fields
    .map(
      (f) => (fieldText as Record<string, { label: string } | undefined>)[f]?.label ?? saveText.ofRun[f] ?? f,
    )
    .join(', ');

/** What has to be said above every screen, worst first. Nothing here goes away by itself. */
@customElement('ls-notices')
export class Notices extends LitElement {
  static override styles = [
    ...shared,
    css`
      .notice {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 16px;
        padding: 8px max(16px, 50% - 23rem);
        border-block-end: 1px solid var(--hair);
      }
      .notice p,
      .first {
        flex: 1 1 5rem;
      }
      .first {
        justify-content: start;
        text-align: start;
        padding: 0;
        text-decoration: none;
      }
      .first strong {
        text-decoration: underline;
      }
      .bad {
        border: 3px solid var(--over);
      }
    `,
  ];
  @property({ attribute: false }) app: App | null = null;
  @property({ attribute: false }) updates: Updates | null = null;
  @property({ attribute: false }) offline: OfflineStatus | null = null;
  /** Another tab needed the database, and this one can't write any more. */
  @property({ type: Boolean }) closed = false;
  /** The page of the pass, or the way to it, is on the screen. */
  @property({ type: Boolean }) atCut = false;
  /** What is on the screen: what is said of the next step depends on it. */
  @property({ attribute: false }) at: Route | null = null;
  /** What became of a yes to the newer version. */
  @state() private accepted: Accepted | null = null;
  private readonly listen = new Listen(this);

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('app')) this.listen.to(this.app);
    // As soon as there is something to keep.
    if (this.app?.machine) void askOnce();
  }

  private lost() {
    return this.closed
      ? html`<div class="notice bad" role="alert">
          ${trouble(storageText['closed-for-update'])}
          <button class="key" @click=${() => location.reload()}>${errorText.reload}</button>
        </div>`
      : nothing;
  }

  private memoryOnly({ storage }: App) {
    return storage.durable
      ? nothing
      : html`<div class="notice bad" role="alert">
          ${trouble(storageText[storage.trouble ?? 'unavailable'])}
          <a class="key" href="#/machine/carry">${shareAllText}</a>
        </div>`;
  }

  private restored(app: App) {
    const { restored } = app;
    if (!restored) return nothing;
    const { at, torn } = restored;
    const what = restoredText.what(dayText(at), timeOf(at));
    return html`<div class="notice" role="alert">
      ${trouble({ what: torn > 0 ? `${what} ${restoredText.torn(torn)}` : what, todo: restoredText.todo })}
      <button class="key" @click=${() => void app.restoredSeen()}>${saveText.seen}</button>
    </div>`;
  }

  private saving(app: App) {
    const state = app.saveState;
    if (state.kind === 'failed')
      return html`<div class="notice bad" role="alert">
        ${trouble(storageText[state.code])}
        <button class="key" @click=${() => void app.saveAgain()}>${saveText.again}</button>
      </div>`;
    if (state.kind === 'conflict')
      return html`<div class="notice" role="alert">
        <p>${saveText.conflict}. ${saveText.conflictNote} ${fieldNames(state.fields)}</p>
        <button class="key" @click=${() => app.conflictSeen()}>${saveText.seen}</button>
      </div>`;
    return nothing;
  }

  private async accept(updates: Updates): Promise<void> {
    this.accepted = await updates.accept();
  }

  private newer(app: App) {
    const { offline, updates } = this;
    if (!offline?.update) return nothing;
    const { cutting } = app;
    const { news } = offline;
    const answer = cutting ? 'refused-cutting' : this.accepted;
    return html`<div class="notice" role="status">
      <p>
        ${updateText.version(updateText[offline.update], news?.version ?? '')}${answer ? `. ${acceptedText[answer]}` : ''}
      </p>
      ${
        cutting || !updates
          ? nothing
          : html`<button class="key" @click=${() => void this.accept(updates)}>${updateText.accept}</button>`
      }
      ${news?.changes.length ? html`<a class="key" href="#/settings">${updateText.changes}</a>` : nothing}
    </div>`;
  }

  private running(app: App) {
    const since = app.jobs.cuttingSince;
    const run = app.runs.current !== null;
    // Both say so themselves, and the pass needs the height.
    return since === null || (run && this.atCut)
      ? nothing
      : html`<div class="notice" role="status">
          <p>${appText.cutRunning(timeOf(since))}</p>
          <a class="key" href=${run ? '#/cut/pass' : '#/checks'}>${run ? barLabel.cut : barLabel.checks}</a>
        </div>`;
  }

  /** Cuts that were left running on other machines. */
  private elsewhere(app: App) {
    return app.cutsElsewhere.map(({ machine, since }) => {
      const name = app.machines.find(machine)?.value.profile.name;
      return name === undefined || machine === app.machine?.id
        ? nothing
        : html`<div class="notice" role="status">
            <p>${appText.cutOn(name, timeOf(since))}</p>
            <button class="key" @click=${() => void app.useMachine(machine)}>
              ${appText.toMachine(name)}
            </button>
          </div>`;
    });
  }

  /** The next step of a first run, until that is put away. */
  private first(app: App) {
    // Before that the figures it asks for may not be here.
    if (!this.updates || app.settings.choices.first !== 'on' || this.at?.tag === 'ls-first-run')
      return nothing;
    const done = firstDone(app.sheet, app.machine !== null);
    const next = FIRST_STEPS.find((step) => !done.has(step));
    const { go, href, how } = next ? stepText[next] : { go: '', href: '', how: firstRunText.allNote };
    return html`<div class="notice" role="status">
      <a class="key quiet first" href="#/machine/first"
        ><span
          ><strong
            >${next ? firstRunText.line(FIRST_STEPS.indexOf(next) + 1, FIRST_STEPS.length) : firstRunText.all}</strong
          >
          ${how}</span
        ></a
      >
      ${next && !location.hash.startsWith(href) ? html`<a class="key" href=${href}>${go}</a>` : nothing}
    </div>`;
  }

  private broken() {
    const { offline } = this;
    return offline?.offline === 'failed' && offline.code && offline.code !== 'no-service-worker'
      ? html`<div class="notice" role="status">${trouble(offlineText[offline.code])}</div>`
      : nothing;
  }

  override render() {
    const { app } = this;
    if (!app) return nothing;
    return html`${this.lost()}${this.memoryOnly(app)}${this.restored(app)}${this.saving(app)}${this.running(app)}${this.elsewhere(app)}${this.newer(app)}${this.broken()}${this.first(app)}`;
  }
}
