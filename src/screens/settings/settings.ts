import { html, nothing, css } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { askToPersist, persistence, type Persistence } from '../../device/persist';
import { logEntries, logText, replaceLog, type LogEntry } from '../../device/log';
import { shareText } from '../../device/share';
import type { Change, OfflineStatus, Updates } from '../../device/updates';
import {
  cautions,
  logText as logWords,
  offlineState,
  persistText,
  settingsText,
  updateText,
} from '../../text/app';
import { backedUpText, carryText } from '../../text/carry';
import type { App, Settings } from '../../state';
import { carryOf } from '../../state/carry';

type Choice<K extends keyof Settings> = readonly { readonly value: Settings[K]; readonly label: string }[];

const changes = (heading: string, list: readonly Change[] = []) =>
  list.length
    ? html`<h2>${heading}</h2>
        ${list.map(
          ({ version, lines }) =>
            html`<p>
              <strong>${version}</strong>
              ${lines.join(' ')}
            </p>`,
        )}`
    : nothing;

/** What belongs to the person: units, theme, hand, trade words; what the phone grants; the log; the cautions. */
@customElement('ls-settings')
export class SettingsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      pre {
        white-space: pre-wrap;
        overflow-wrap: anywhere;
        font-size: 0.9rem;
        border: 1px solid var(--hair);
        padding: 8px;
      }
    `,
  ];
  @property({ attribute: false }) offline: OfflineStatus | null = null;
  @property({ attribute: false }) updates: Updates | null = null;
  @state() private persisted: Persistence | null = null;
  @state() private logShown = false;
  /** What the log held before it was emptied, for as long as the page is open. */
  @state() private cleared: readonly LogEntry[] = [];
  @state() private changes: readonly Change[] = [];

  override connectedCallback(): void {
    super.connectedCallback();
    void persistence().then((p) => (this.persisted = p));
    fetch('./changes.json')
      .then(async (r) => (this.changes = (await r.json()) as Change[]))
      // Not there while it is developed.
      .catch(() => undefined);
    void carryOf(this.app)
      .look()
      .then(() => this.requestUpdate());
  }

  private choice<K extends keyof Settings>(key: K, name: string, options: Choice<K>) {
    return html`<h2 class="label">${name}</h2>
      <div class="keys" role="group" aria-label=${name}>
        ${options.map(
          (o) =>
            html`<button
              class="key"
              aria-pressed=${this.app.settings[key] === o.value}
              @click=${() => void this.app.setSettings({ [key]: o.value })}
            >
              ${o.label}
            </button>`,
        )}
      </div>`;
  }

  private share(): void {
    const text = logText(__VERSION__);
    void shareText({ title: logWords.heading, text, fileName: logWords.fileName });
  }

  private log() {
    const entries = logEntries();
    return html`<h2>${logWords.heading}</h2>
      <p>${logWords.note}</p>
      <p>${settingsText.log(entries.length)}</p>
      <div class="keys">
        <button class="key" @click=${() => this.share()}>${logWords.share}</button>
        <button class="key" aria-expanded=${this.logShown} @click=${() => (this.logShown = !this.logShown)}>
          ${settingsText.showLog}
        </button>
      </div>
      ${this.logShown ? html`<pre tabindex="0">${logText(__VERSION__)}</pre>` : nothing}
      ${
        entries.length
          ? html`<div class="apart">
              <button class="key stop" @click=${() => (this.cleared = replaceLog([]))}>
                ${settingsText.clearLog}
              </button>
            </div>`
          : this.cleared.length
            ? html`<button class="key" @click=${() => (this.cleared = replaceLog(this.cleared))}>
                ${settingsText.bringLogBack}
              </button>`
            : nothing
      }`;
  }

  override render() {
    const { backedUp } = carryOf(this.app);
    return html`
      <h1>${settingsText.heading}</h1>
      ${changes(updateText.changes, this.offline?.news?.changes)}
      ${this.choice('units', settingsText.units, [
        { value: 'mm', label: settingsText.unitsOptions.mm },
        { value: 'in', label: settingsText.unitsOptions.in },
      ])}
      ${this.choice('theme', settingsText.theme, [
        { value: 'auto', label: settingsText.themeOptions.auto },
        { value: 'bright', label: settingsText.themeOptions.bright },
        { value: 'dark', label: settingsText.themeOptions.dark },
      ])}
      ${this.choice('hand', settingsText.hand, [
        { value: 'right', label: settingsText.handOptions.right },
        { value: 'left', label: settingsText.handOptions.left },
      ])}
      ${this.choice('words', settingsText.words, [
        { value: 'uk', label: settingsText.wordsOptions.uk },
        { value: 'us', label: settingsText.wordsOptions.us },
      ])}
      <h2>${settingsText.offline}</h2>
      <p role="status">${offlineState[this.offline?.offline ?? 'checking']}</p>
      <button class="key" @click=${() => void this.updates?.check()}>${updateText.check}</button>
      <h2>${settingsText.keeping}</h2>
      <p>${this.persisted ? persistText[this.persisted] : ''}</p>
      ${
        this.persisted === 'denied'
          ? html`<button class="key" @click=${() => void askToPersist().then((p) => (this.persisted = p))}>
              ${persistText.ask}
            </button>`
          : nothing
      }
      <p class="note">${persistText.clearing}</p>
      <p>${backedUp ? backedUpText(backedUp.at, backedUp.changes) : ''}</p>
      <a class="key" href="#/machine/carry">${carryText.heading}</a>
      <h2>${cautions.heading}</h2>
      ${cautions.points.map((c) => html`<p>${c}</p>`)} ${this.log()}
      ${changes(updateText.changed, this.changes)}
      <p class="note">${settingsText.versionLine(__VERSION__)}</p>
    `;
  }
}
