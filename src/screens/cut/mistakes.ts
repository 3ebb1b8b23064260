import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { MISTAKE_IDS, type MistakeId } from '../../core/cut/mistakes';
import { mistakePlace, mistakesText as t, mistakeText } from '../../text/mistakes';
import type { App } from '../../state';

/** Common mistakes: the list of them, and each on a page with what it does, how it shows, and where it is seen to. */
@customElement('ls-cut-mistakes')
export class MistakesScreen extends ScreenElement<App> {
  private list() {
    return html`<h1>${t.title}</h1>
      <p>${t.intro}</p>
      <div class="stack">
        ${MISTAKE_IDS.map(
          (id, i) =>
            html`<a class="key quiet left" href="#/cut/mistakes/${id}"
              >${i + 1}. ${mistakeText(id).title}</a
            >`,
        )}
      </div>
      <a class="key" href="#/cut">${t.toCut}</a>`;
  }

  private page(id: MistakeId) {
    const say = mistakeText(id);
    return html`<p class="label">${t.title} · ${MISTAKE_IDS.indexOf(id) + 1}</p>
      <h1>${say.title}</h1>
      <h2>${t.thread}</h2>
      <p>${say.thread}</p>
      <h2>${t.notice}</h2>
      <p>${say.notice}</p>
      <h2>${t.avoid}</h2>
      <p>${say.avoid}</p>
      <div class="grow"></div>
      <a class="key solid" href=${mistakePlace(id)}>${say.place}</a>
      <button class="key" @click=${() => history.back()}>${t.back}</button>
      <a class="key" href="#/cut/mistakes">${t.all}</a>`;
  }

  override render() {
    const id = MISTAKE_IDS.find((one) => one === this.path[1]);
    return id ? this.page(id) : this.list();
  }
}
