import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../../elements/styles';
import type { OfflineStatus } from '../../device/updates';
import { appText, cautions, offlineState } from '../../text/app';
import { carryText } from '../../text/carry';
import { firstRunText } from '../../text/first-run';

/** The first thing a new person sees: what this is, the cautions, and two ways in. */
@customElement('ls-first')
export class First extends LitElement {
  static override styles = [
    ...shared,
    css`
      :host {
        display: flex;
        flex-direction: column;
        gap: 12px;
        padding: 12px var(--edge) 24px;
      }
      ul {
        margin: 0;
        padding-inline-start: 1.1em;
        display: grid;
        gap: 8px;
      }
    `,
  ];

  @property({ attribute: false }) offline: OfflineStatus | null = null;

  override render() {
    return html`
      <h1>${appText.welcome}</h1>
      <p>${appText.welcomeLine}</p>
      <h2>${cautions.heading}</h2>
      <ul>
        ${cautions.points.map((c) => html`<li><p>${c}</p></li>`)}
      </ul>
      <a class="key solid big" href="#/machine/new">${appText.enterMine}</a>
      <a class="key" href="#/machine/list">${appText.tryExample}</a>
      <a class="key" href="#/machine/first">${firstRunText.title}: ${firstRunText.about}</a>
      <a class="key" href="#/machine/carry">${carryText.open}</a>
      <p>${appText.usedBefore}</p>
      <p class="second" role="status">${offlineState[this.offline?.offline ?? 'checking']}</p>
    `;
  }
}
