import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../../elements/sheet';
import { shared } from '../../elements/styles';
import type { InputPath } from '../../core/context';
import type { FigureId, LimitId } from '../../core/figures';
import { appText } from '../../text/app';
import { renderLimit, renderWhy } from '../../text/why';
import type { App } from '../../state';

/** Where an input is entered. */
const entryOf = (path: InputPath): string => {
  if (path.startsWith('machine.')) return `#/machine/field/${path.slice(8)}`;
  if (path === 'job.thread') return '#/threads/find';
  if (path === 'job.noseKind') return '#/threads';
  return `#/enter/job/${path.slice(4)}`;
};

/** The grounds of a figure, in lines that can be checked by hand. `figure` is a figure's id or "limit:" and a limit's. */
@customElement('ls-why-sheet')
export class WhySheet extends LitElement {
  static override styles = [
    ...shared,
    css`
      .sum {
        font-size: 1.375rem;
        font-weight: 700;
        padding-block: 8px;
        overflow-wrap: anywhere;
      }
      dl {
        margin: 0;
      }
      dt {
        font-size: var(--t-label);
        color: var(--ink-2);
      }
      dd {
        margin: 0 0 8px;
        font-size: 1.25rem;
        font-weight: 700;
        border-block-end: 1px solid var(--hair);
        padding-block-end: 6px;
        overflow-wrap: anywhere;
      }
      dd small {
        display: block;
        font-size: 1rem;
        font-weight: 400;
      }
      p {
        margin-block: 8px;
      }
      .key {
        inline-size: 100%;
        margin-block-end: 8px;
      }
    `,
  ];
  @property({ attribute: false }) app: App | null = null;
  @property({ attribute: false }) figure: string | null = null;

  private grounds(app: App, figure: string) {
    if (figure.startsWith('limit:')) {
      const id = figure.slice(6) as LimitId;
      const limit = app.sheet.get('limits').value?.find((l) => l.id === id);
      return limit ? renderLimit(limit, app.job.rpm) : null;
    }
    return renderWhy(app.sheet.get(figure as FigureId));
  }

  override render() {
    const { app, figure } = this;
    const why = app && figure ? this.grounds(app, figure) : null;
    return html`<ls-sheet .open=${why !== null} .heading=${why?.title ?? ''} .close=${appText.close}>
      ${
        why
          ? html`
              ${why.result ? html`<p class="figure">${why.result}</p>` : html`<p class="figure">${appText.notKnown}</p>`}
              ${why.formula ? html`<p>${why.formula}</p>` : nothing}
              ${why.numbers ? html`<p class="sum">${why.numbers}</p>` : nothing}
              ${
                why.missing.length
                  ? html`<p><strong>${appText.missing}</strong></p>
                      ${why.missing.map((m) => html`<a class="key" href=${entryOf(m.path)}>${appText.enter(m.label)}</a>`)}`
                  : nothing
              }
              ${why.notes.map((n) => html`<p>${n}</p>`)}
              <dl>
                ${why.terms.map(
                  (t) =>
                    html`<dt>${t.name}</dt>
                      <dd>${t.value}<small>${t.from}</small></dd>`,
                )}
              </dl>
              <p class="second">${why.source}</p>
            `
          : nothing
      }
    </ls-sheet>`;
  }
}
