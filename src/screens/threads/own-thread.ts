import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { written } from '../../elements/styles';
import { OWN_NAME_LENGTH, type OwnFieldName } from '../../core/job';
import { OWN_PROFILES, ownDesignation, ownTrouble, threadOfOwn, type OwnThread } from '../../core/thread';
import { statedText } from '../../text/numbers';
import { ownFieldName, ownProfileName, ownText, ownTroubleText } from '../../text/own';
import { handName, startsText } from '../../text/threads';
import type { App } from '../../state';
import { drawing } from './drawing';

const OTHER: readonly OwnFieldName[] = ['angle', 'crest', 'depth'];

/** One of a person's own threads: each figure on the pad, profile and hand as keys; saved as it is changed. */
@customElement('ls-own-thread')
export class OwnThreadScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, written];
  @state() private typed: string | null = null;
  @state() private error = '';

  private get key(): string {
    return this.path[1] ?? '';
  }

  private change(part: Partial<OwnThread>): void {
    void this.app.changeOwn(this.key, part);
  }

  private async use(own: OwnThread): Promise<void> {
    await this.app.chooseThread({ kind: 'own', id: this.key, own }, own.starts);
    this.go('#/threads');
  }

  private async putAway(): Promise<void> {
    await this.app.putOwnAway(this.key, true);
    this.go('#/threads/own');
  }

  private figure(field: Exclude<OwnFieldName, 'starts'>, own: OwnThread) {
    const now = own[field];
    const name = ownFieldName[field];
    return html`<a class="key left" href="#/enter/own/${this.key}/${field}"
      >${now ? `${name}: ${statedText(now)}` : `${ownText.enter}: ${name}`}</a
    >`;
  }

  private choice<K extends 'profile' | 'hand'>(
    name: string,
    field: K,
    options: readonly (readonly [OwnThread[K], string])[],
    own: OwnThread,
  ) {
    return html`<h2 class="label">${name}</h2>
      <div class="grid2" role="group" aria-label=${name}>
        ${options.map(
          ([value, label]) =>
            html`<button
              class="key"
              aria-pressed=${own[field] === value}
              @click=${() => this.change({ [field]: value })}
            >
              ${label}
            </button>`,
        )}
      </div>`;
  }

  private keepName(own: OwnThread): void {
    const name = (this.typed ?? own.name).replace(/\s+/g, ' ').trim();
    if (name.length > OWN_NAME_LENGTH) {
      this.error = ownText.nameLong(OWN_NAME_LENGTH);
      return;
    }
    this.error = '';
    this.typed = null;
    if (name !== own.name) this.change({ name });
  }

  private nameEntry(own: OwnThread) {
    const changed = this.typed !== null && this.typed.trim() !== own.name;
    return html`<label class="label" for="name">${ownText.name}</label>
      <input
        id="name"
        .value=${this.typed ?? own.name}
        autocomplete="off"
        aria-describedby="error"
        aria-invalid=${this.error ? 'true' : 'false'}
        @input=${(e: Event) => (this.typed = (e.target as HTMLInputElement).value)}
        @change=${() => this.keepName(own)}
      />
      <p id="error" class="over" role="alert">${this.error}</p>
      ${
        changed
          ? html`<button class="key" @click=${() => this.keepName(own)}>${ownText.keepName}</button>`
          : nothing
      }`;
  }

  private isInJob(): boolean {
    const { thread } = this.app.job;
    return thread?.kind === 'own' && thread.id === this.key;
  }

  override render() {
    const entry = this.app.own.find(this.key);
    if (!entry || entry.deleted)
      return html`<h1>${ownText.title}</h1>
        <p>${entry ? ownText.gone : this.app.own.loaded ? ownText.unknown : ownText.loading}</p>
        <a class="key solid" href="#/threads/own">${ownText.back}</a>`;
    const { own } = entry;
    const thread = threadOfOwn(entry.key, own);
    const trouble = ownTrouble(own);
    return html`
      <h1>${own.name || ownDesignation(own) || ownText.notNamed}</h1>
      ${thread ? drawing(thread, this.app.job, null) : nothing}
      ${this.isInJob() ? html`<p class="note">${ownText.inUse}</p>` : nothing}
      <div class="stack">${this.figure('major', own)} ${this.figure('pitch', own)}</div>
      ${this.choice(
        ownText.profile,
        'profile',
        OWN_PROFILES.map((p) => [p, ownProfileName[p]] as const),
        own,
      )}
      ${
        own.profile === 'other'
          ? html`<div class="stack">
              ${OTHER.map((f) => this.figure(f as Exclude<OwnFieldName, 'starts'>, own))}
            </div>`
          : nothing
      }
      ${trouble ? html`<p class="alert" role="status">${ownTroubleText[trouble]}</p>` : nothing}
      <a class="key left" href="#/enter/own/${this.key}/starts">${startsText(own.starts)}</a>
      ${this.choice(
        ownText.hand,
        'hand',
        [
          ['right', handName.right],
          ['left', handName.left],
        ],
        own,
      )}
      ${this.nameEntry(own)}
      ${
        own.pitch
          ? html`<button class="key solid" @click=${() => void this.use(own)}>
              ${thread ? ownText.use : ownText.usePitch}
            </button>`
          : nothing
      }
      <a class="key" href="#/threads/own">${ownText.back}</a>
      <button class="key stop apart" @click=${() => void this.putAway()}>${ownText.putAway}</button>
    `;
  }
}
