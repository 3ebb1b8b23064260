import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { FAMILIES, threadsOf, type Thread } from '../../core/thread';
import { identifyKey, ownKeyText } from '../../text/pages';
import { familyText, threadsText } from '../../text/threads';
import { marked, statedText } from '../../text/numbers';
import type { App } from '../../state';

/** Finding a thread: favourites and last used, then a family, then a size, then a pitch; or typing it. */
@customElement('ls-find')
export class FindScreen extends ScreenElement<App> {
  private choose(t: Thread): void {
    void this.app.chooseFound(t);
    this.go('#/threads');
  }

  private threadKey(t: Thread, label = t.designation) {
    return html`<button class="key" @click=${() => this.choose(t)}>${marked(label)}</button>`;
  }

  private known(ids: readonly string[], most: number): Thread[] {
    return ids.flatMap((id) => this.app.own.threadById(id) ?? []).slice(0, most);
  }

  private start() {
    const { favourites, recent } = this.app.settings;
    const kept = this.known(favourites, 60);
    const last = this.known(
      recent.filter((id) => !favourites.includes(id)),
      6,
    );
    return html`
      <h1>${threadsText.findTitle}</h1>
      ${
        kept.length
          ? html`<h2 class="label">${threadsText.favourites}</h2>
              <div class="grid2">${kept.map((t) => this.threadKey(t))}</div>`
          : nothing
      }
      ${
        last.length
          ? html`<h2 class="label">${threadsText.recent}</h2>
              <div class="grid2">${last.map((t) => this.threadKey(t))}</div>`
          : nothing
      }
      <a class="key solid" href="#/threads/type">${threadsText.search}</a>
      <div class="pair">
        <a class="key" href="#/threads/what">${identifyKey}</a>
        <a class="key" href="#/threads/own">${ownKeyText}</a>
      </div>
      <h2 class="label">${threadsText.families}</h2>
      <div class="grid2">
        ${FAMILIES.map((f) => html`<a class="key" href="#/threads/family/${f.id}">${familyText(f.id)}</a>`)}
      </div>
    `;
  }

  private family(id: string) {
    const sizes = new Map<string, Thread[]>();
    for (const t of threadsOf(id)) sizes.set(t.size, [...(sizes.get(t.size) ?? []), t]);
    return html`
      <h1>${familyText(id)}</h1>
      <div class="grid3">
        ${[...sizes].map(([size, list]) => {
          const [only] = list;
          if (list.length === 1 && only) return this.threadKey(only, size);
          return html`<a class="key" href="#/threads/size/${id}/${encodeURIComponent(size)}"
            >${marked(size)}</a
          >`;
        })}
      </div>
    `;
  }

  private size(family: string, size: string) {
    const list = threadsOf(family).filter((t) => t.size === size);
    return html`
      <h1>${marked(size)}</h1>
      <p class="label">${familyText(family)}</p>
      <div class="grid2">${list.map((t) => this.threadKey(t, statedText(t.pitch)))}</div>
    `;
  }

  override render() {
    const [what, family = '', size = ''] = this.path;
    if (what === 'family') return this.family(family);
    if (what === 'size') return this.size(family, decodeURIComponent(size));
    return this.start();
  }
}
