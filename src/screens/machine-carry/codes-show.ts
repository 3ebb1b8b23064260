import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import '../../elements/code-loop';
import { ScreenElement } from '../../elements/screen';
import { forCodes, type CodesKind } from '../../core/carry';
import { split, type CodeDrawing } from '../../core/carry/codes';
import { deflate } from '../../device/deflate';
import { keepAwake, type Awake } from '../../device/wake-lock';
import type { App } from '../../state';
import { carryOf } from '../../state/carry';
import { codesKeys, codesText as t, loopText } from '../../text/codes';
import { startCodes, type CodeWorker } from './codes-talk';
import { writeFile } from './files';

type Shown =
  | { readonly kind: 'making' | 'none' | 'failed' | 'too-large' }
  | {
      readonly kind: 'codes';
      readonly what: CodesKind;
      readonly codes: readonly CodeDrawing[];
      readonly of: number;
    };

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
    if (this.worker)
      this.make(this.worker).catch(() => {
        this.shown = { kind: 'failed' };
      });
  }

  override disconnectedCallback() {
    this.awake?.release();
    this.worker?.end();
    super.disconnectedCallback();
  }

  private async make(worker: CodeWorker): Promise<void> {
    if (!this.app.machine) {
      this.shown = { kind: 'none' };
      return;
    }
    const whole = await carryOf(this.app).content('machine', __VERSION__);
    for (const { kind, content } of forCodes(whole)) {
      const { file } = await writeFile(content);
      const parts = split(await deflate(new Uint8Array(await file.arrayBuffer())));
      if (parts.ok) return this.draw(worker, kind, parts.texts);
    }
    this.shown = { kind: 'too-large' };
  }

  /** Each is shown as soon as it is drawn: on a slow phone all of them take seconds. */
  private async draw(worker: CodeWorker, what: CodesKind, texts: readonly string[]): Promise<void> {
    let codes: readonly CodeDrawing[] = [];
    for (const text of texts) {
      const drawn = await worker.draw([text]);
      // Nothing comes from a worker that broke or was ended.
      if (drawn.length === 0) return;
      codes = [...codes, ...drawn];
      this.shown = { kind: 'codes', what, codes, of: texts.length };
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
      <p>${t.goes[shown.what]}</p>
      <p class="note">${t.flicker}</p>`;
  }

  override render() {
    const name = this.app.profile?.name;
    return html`<h1>${name ? t.showTitle(name) : t.none}</h1>
      ${this.body()}
      <div class="stack apart">
        <a class="key" href="#/machine/carry/read">${codesKeys.read}</a>
      </div>`;
  }
}
