import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { ownDesignation, ownTrouble } from '../../core/thread';
import { ownText } from '../../text/own';
import { threadsText } from '../../text/threads';
import type { App, OwnEntry } from '../../state';

/** More than this are found by typing, not by looking through a list. */
const SHOWN = 60;

/** What one's own thread is called by. */
export const ownName = ({ own }: OwnEntry): string => own.name || ownDesignation(own) || ownText.notNamed;

/** The list of a person's own threads, newest change first. */
@customElement('ls-own')
export class OwnListScreen extends ScreenElement<App> {
  private async add(): Promise<void> {
    this.go(`#/threads/own/${await this.app.beginOwn()}`);
  }

  private line(e: OwnEntry) {
    const state = ownTrouble(e.own) ? html`<br /><small>${ownText.unfinished}</small>` : nothing;
    return html`<a class="key left" href="#/threads/own/${e.key}"><span>${ownName(e)}${state}</span></a>`;
  }

  private away(list: readonly OwnEntry[]) {
    if (list.length === 0) return nothing;
    return html`<h2 class="label">${ownText.away}</h2>
      <div class="stack">
        ${list
          .slice(0, SHOWN)
          .map(
            (e) =>
              html`<button class="key left" @click=${() => void this.app.putOwnAway(e.key, false)}>
                ${ownText.bringBack(ownName(e))}
              </button>`,
          )}
      </div>`;
  }

  override render() {
    const all = this.app.own.list;
    const here = all.filter((e) => !e.deleted);
    const more = here.length - SHOWN;
    const { unreadable } = this.app.own;
    return html`
      <h1>${ownText.title}</h1>
      ${here.length === 0 ? html`<p>${ownText.none}</p>` : nothing}
      ${unreadable.length ? html`<p class="alert">${ownText.unreadable(unreadable.length)}</p>` : nothing}
      <button class="key solid" @click=${() => void this.add()}>${ownText.add}</button>
      <div class="stack">${here.slice(0, SHOWN).map((e) => this.line(e))}</div>
      ${
        more > 0
          ? html`<a class="key left" href="#/threads/type"
              ><span>${threadsText.search}<br /><small>${ownText.more(more)}</small></span></a
            >`
          : nothing
      }
      ${this.away(all.filter((e) => e.deleted))}
      <a class="key" href="#/threads/find">${threadsText.findTitle}</a>
    `;
  }
}
