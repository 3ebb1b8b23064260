import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { Listen } from '../../elements/listen';
import { ScreenElement } from '../../elements/screen';
import { shelfAnswer, shelfText as t, shelfWords } from '../../text/shelf';
import type { App } from '../../state';
import { carryOf } from '../../state/carry';
import { shelfOf, type OnShelf, type ShelfState } from '../../state/shelf';
import { readFile } from './files';

/** The shelf: files of machines in a folder beside the app, to be looked at and brought in. */
@customElement('ls-shelf')
export class ShelfScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      .file {
        flex-direction: column;
        align-items: flex-start;
        text-align: start;
      }
      .file small {
        font-size: 1rem;
        font-weight: 400;
      }
    `,
  ];
  @state() private gone = false;
  private readonly shelf = new Listen(this);

  private get kept(): ShelfState {
    return shelfOf(this.app);
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    if (!changed.has('app')) return;
    this.shelf.to(this.kept);
    void this.kept.look();
  }

  private async open({ file, name }: OnShelf): Promise<void> {
    const found = await this.kept.file(file);
    this.gone = found === null;
    if (!found) return;
    void carryOf(this.app).open(name, readFile(found));
    this.go('#/machine/carry');
  }

  private group([workshop, files]: readonly [string, readonly OnShelf[]]): TemplateResult {
    return html`<h2>${workshop || t.noWorkshop}</h2>
      <div class="stack">
        ${files.map(
          (f) =>
            html`<button class="key file" @click=${() => void this.open(f)}>
              <span>${f.name}</span><small>${shelfWords[f.standing]}</small>
            </button>`,
        )}
      </div>`;
  }

  override render() {
    const { files, at, missing, answer } = this.kept;
    const groups = new Map<string, OnShelf[]>();
    for (const f of files ?? []) groups.set(f.workshop, [...(groups.get(f.workshop) ?? []), f]);
    return html`<h1>${t.heading}</h1>
      <p>${t.note}</p>
      ${this.gone ? html`<p class="alert" role="alert">${t.gone}</p>` : nothing}
      ${missing ? html`<p class="alert" role="alert">${t.missing(missing)}</p>` : nothing}
      ${files?.length === 0 ? html`<p><strong>${t.none}</strong></p>` : nothing}
      ${[...groups].map((each) => this.group(each))}
      <p role="status">${answer === null ? t.looking : shelfAnswer[answer]}</p>
      ${at ? html`<p>${t.asOf(at)}</p>` : nothing}
      <button class="key" ?disabled=${answer === null} @click=${() => void this.kept.refresh()}>
        ${t.again}
      </button>`;
  }
}
