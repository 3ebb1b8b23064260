import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { standingMark, standingSheet } from '../../elements/standing';
import { firstDone, FIRST_STEPS } from '../../core/checks/first-run';
import { firstRunText as t, stepText } from '../../text/first-run';
import type { App } from '../../state';

/** First run: the way from nothing to all checks recorded, step by step, and how far one has come. */
@customElement('ls-first-run')
export class FirstRunScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    standingSheet,
    css`
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 2rem 1fr auto;
        gap: 2px 8px;
        padding-block: 10px;
        border-block-end: 1px solid var(--hair);
        font-size: var(--t-label);
      }
      li p {
        grid-column: 2 / -1;
      }
    `,
  ];

  private keep(on: boolean, href: string): void {
    void this.app.choose('first', on ? 'on' : '');
    this.go(href);
  }

  override render() {
    const { app } = this;
    const done = firstDone(app.sheet, app.machine !== null);
    const next = FIRST_STEPS.find((step) => !done.has(step));
    const on = app.settings.choices.first === 'on';
    const live = app.machine;
    return html`<h1>${t.title}</h1>
      <p>${t.intro}</p>
      ${
        live
          ? html`<p class="alert">
              <strong>${live.value.example ? t.notYours(live.value.profile.name) : t.own}</strong>
            </p>`
          : nothing
      }
      <ol>
        ${FIRST_STEPS.map(
          (step, i) =>
            html`<li>
              <strong>${i + 1}</strong><strong>${stepText[step].title}</strong>
              <span class="within"
                >${done.has(step) ? html`${standingMark('within')} ${t.done}` : nothing}</span
              >
              ${step === next ? html`<p>${stepText[step].how}</p>` : nothing}
            </li>`,
        )}
      </ol>
      ${
        next
          ? html`<button class="key solid big" @click=${() => this.keep(true, stepText[next].href)}>
              ${on ? t.goOn : t.begin}
            </button>`
          : html`<p>${t.allNote}</p>
              <button class="key solid big" @click=${() => this.keep(false, '#/machine/new')}>
                ${t.enterMine}
              </button>`
      }
      ${on ? html`<button class="key" @click=${() => this.keep(false, '#/threads')}>${t.away}</button>` : nothing}`;
  }
}
