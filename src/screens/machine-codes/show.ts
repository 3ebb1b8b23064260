import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import '../../elements/code-loop';
import { ScreenElement } from '../../elements/screen';
import { split, type CodeDrawing, type Split } from '../../core/carry/codes';
import { deflate } from '../../device/deflate';
import { keepAwake, type Awake } from '../../device/wake-lock';
import type { App } from '../../state';
import { bytesToShow } from '../../state/codes';
import { codesKeys, codesText as t, loopText } from '../../text/codes';
import { startCodes, type CodeWorker } from './talk';

type Shown =
  | { readonly kind: 'making' | 'none' | 'failed' | 'too-large' }
  | { readonly kind: 'codes'; readonly codes: readonly CodeDrawing[]; readonly of: number };

/** Show as codes: the machine in use, for another phone's camera. */
@customElement('ls-codes-show')
export class CodesShow extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      /* Nearly from edge to edge: every millimetre makes the modules larger. */
      ls-code-loop {
        margin-inline: calc(8px - var(--edge, 16px));
      }
    `,
  ];

  @state() private shown: Shown = { kind: 'making' };
  private worker: CodeWorker | null = null;
  private awake: Awake | null = null;

  override connectedCallback() {
    super.connectedCallback();
    this.awake = keepAwake(() => undefined);
    this.worker = startCodes(() => (this.shown = { kind: 'failed' }));
  }

  override firstUpdated() {
    if (this.worker) void this.make(this.worker);
  }

  override disconnectedCallback() {
    this.awake?.release();
    this.worker?.end();
    super.disconnectedCallback();
  }

  private async make(worker: CodeWorker): Promise<void> {
    const bytes = await bytesToShow(this.app);
    if (!bytes) {
      this.shown = { kind: 'none' };
      return;
    }
    const parts: Split = split(await deflate(bytes));
    if (!parts.ok) {
      this.shown = { kind: parts.code === 'too-large' ? 'too-large' : 'none' };
      return;
    }
    // Each is shown as soon as it is drawn: on a slow phone all of them take seconds.
    let codes: readonly CodeDrawing[] = [];
    for (const text of parts.texts) {
      const drawn = await worker.draw([text]);
      // Nothing comes from a worker that broke or was ended.
      if (drawn.length === 0) return;
      codes = [...codes, ...drawn];
      this.shown = { kind: 'codes', codes, of: parts.texts.length };
    }
  }

  private body() {
    const { shown } = this;
    if (shown.kind === 'making') return html`<p role="status">${t.making}</p>`;
    if (shown.kind === 'none') return html`<p>${t.none}</p>`;
    if (shown.kind !== 'codes')
      return html`<p class="alert" role="alert">${shown.kind === 'failed' ? t.failed : t.tooLarge}</p>`;
    return html`<ls-code-loop .codes=${shown.codes} .of=${shown.of} .text=${loopText}></ls-code-loop>
      <p>${t.holdOther} ${t.holdSteady}</p>
      <p class="note">${t.flicker}</p>`;
  }

  override render() {
    const name = this.app.profile?.name;
    return html`<h1>${name ? t.showTitle(name) : t.none}</h1>
      ${this.body()}
      <div class="stack apart">
        <a class="key" href="#/machine/codes/read">${codesKeys['codes/read']}</a>
      </div>`;
  }
}
