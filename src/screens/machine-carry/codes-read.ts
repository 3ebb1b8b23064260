import { css, html, nothing } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import '../../elements/row';
import { ScreenElement } from '../../elements/screen';
import { NOTHING_COLLECTED, take, type Taken } from '../../core/carry/codes';
import { openCamera, type Camera } from '../../device/camera';
import { inflate } from '../../device/deflate';
import { vibrate } from '../../device/vibrate';
import { keepAwake, type Awake } from '../../device/wake-lock';
import type { App } from '../../state';
import { carryOf } from '../../state/carry';
import { cameraText, codesKeys, codesText as t, refusedText, type CameraState } from '../../text/codes';
import { startCodes, type CodeWorker } from './codes-talk';
import { watchCodes } from './codes-watch';
import { readFile } from './files';

/** More than any machine makes: what swells beyond it is no machine. */
const MOST_INFLATED = 1_000_000;

/** Read codes: what another phone shows, by this one's camera. */
@customElement('ls-codes-read')
export class CodesRead extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      video {
        display: block;
        inline-size: min(100%, 100vh - 26rem);
        min-inline-size: min(100%, 14rem);
        margin-inline: auto;
        aspect-ratio: 1;
        object-fit: cover;
        background: #000;
        border: 3px solid var(--ink);
      }
      .count {
        text-align: center;
      }
      .ticks {
        display: flex;
        gap: 3px;
        block-size: 20px;
      }
      .ticks > * {
        flex: 1;
        border-block-end: 3px solid var(--ink);
      }
      .ticks > .on {
        background: var(--ink);
      }
    `,
  ];

  @state() private camera: 'off' | 'starting' | 'on' = 'off';
  @state() private trouble: CameraState | null = null;
  @state() private refused: keyof typeof refusedText | null = null;
  @state() private have = 0;
  @state() private need = 0;
  @query('video') private video!: HTMLVideoElement;
  private collected = NOTHING_COLLECTED;
  private open: Camera | null = null;
  private worker: CodeWorker | null = null;
  private awake: Awake | null = null;
  private stopWatching: () => void = () => undefined;

  override disconnectedCallback() {
    this.off();
    super.disconnectedCallback();
  }

  private off(): void {
    this.camera = 'off';
    this.stopWatching();
    this.open?.stop();
    this.worker?.end();
    this.awake?.release();
    this.open = this.worker = this.awake = null;
  }

  private fail(why: CameraState): void {
    this.off();
    this.trouble = why;
  }

  private async start(): Promise<void> {
    this.trouble = this.refused = null;
    this.collected = NOTHING_COLLECTED;
    this.have = this.need = 0;
    this.camera = 'starting';
    await this.updateComplete;
    const opened = await openCamera(
      this.video,
      () => this.camera === 'starting',
      () => this.fail('ended'),
    );
    if (this.camera !== 'starting') return;
    if (typeof opened === 'string') return this.fail(opened);
    this.open = opened;
    this.camera = 'on';
    this.awake = keepAwake(() => undefined);
    this.worker = startCodes(() => this.fail('worker'));
    this.stopWatching = watchCodes(this.video, this.worker, (text) => this.took(text));
  }

  private took(text: string): void {
    const { collected, taken } = take(this.collected, text);
    this.collected = collected;
    this.tell(taken);
  }

  private tell(taken: Taken): void {
    if (taken.kind === 'refused') {
      this.refused = taken.code;
      if (taken.code === 'contradiction') this.have = 0;
      return;
    }
    this.refused = null;
    this.need = taken.need;
    this.have = taken.kind === 'more' ? taken.have : taken.need;
    if (taken.kind === 'more') return;
    this.off();
    void this.finish(taken.bytes);
  }

  private async finish(bytes: Uint8Array): Promise<void> {
    vibrate(80);
    const whole = await inflate(new Uint8Array(bytes), MOST_INFLATED);
    if (!whole) {
      this.refused = 'unknown';
      return;
    }
    // From here on it is a file like any other: looked at first, merged, and taken back by one undo.
    void carryOf(this.app).open(t.readTitle, readFile(new Blob([whole])));
    this.go('#/machine/carry');
  }

  private progress() {
    if (this.need === 0) return nothing;
    return html`<div class="count" role="status">
        <span class="label">${t.haveLabel}</span>
        <div class="deciding">${t.have(this.have, this.need)}</div>
      </div>
      <div class="ticks" aria-hidden="true">
        ${Array.from({ length: this.need }, (_, i) => html`<i class=${i < this.have ? 'on' : ''}></i>`)}
      </div>`;
  }

  override render() {
    const { camera, trouble, refused } = this;
    const begun = camera !== 'off';
    return html`<h1>${t.readTitle}</h1>
      ${begun || trouble ? nothing : html`<p>${t.ask}</p>`}
      ${trouble ? html`<p class="alert" role="alert">${cameraText[trouble]}</p>` : nothing}
      <video ?hidden=${!begun} muted playsinline aria-label=${t.camera}></video>
      ${begun ? html`<p>${camera === 'on' ? t.aim : t.starting}</p>` : nothing} ${this.progress()}
      ${refused ? html`<p class="alert" role="alert">${refusedText[refused]}</p>` : nothing}
      <div class="stack">
        ${
          begun
            ? html`<button class="key" @click=${() => this.off()}>${t.stop}</button>`
            : html`<button class="key solid" @click=${() => void this.start()}>${t.start}</button>`
        }
        <a class="key" href="#/machine/carry/show">${codesKeys.show}</a>
      </div>`;
  }
}
