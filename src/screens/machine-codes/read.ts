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
import { bytesRead, type Received } from '../../state/codes';
import { cameraText, codesKeys, codesText as t, refusedText, type CameraState } from '../../text/codes';
import { startCodes, type CodeWorker } from './talk';
import { watchCodes } from './watch';

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
  @state() private received: Received | null = null;
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
    this.trouble = this.refused = this.received = null;
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
    this.received = whole && (await bytesRead(this.app, whole));
    if (!this.received) this.refused = 'unknown';
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

  private whole({ name, workshop, tests }: Received) {
    return html`<h2>${t.whole}</h2>
      <div>
        <ls-row .label=${t.machine} .value=${name}></ls-row>
        ${workshop ? html`<ls-row .label=${t.workshop} .value=${workshop}></ls-row>` : nothing}
        <ls-row .label=${t.tests} .value=${String(tests)}></ls-row>
      </div>
      <p>${t.untouched}</p>`;
  }

  override render() {
    const { camera, trouble, refused, received } = this;
    const begun = camera !== 'off';
    return html`<h1>${t.readTitle}</h1>
      ${begun || received || trouble ? nothing : html`<p>${t.ask}</p>`}
      ${trouble ? html`<p class="alert" role="alert">${cameraText[trouble]}</p>` : nothing}
      <video ?hidden=${!begun} muted playsinline aria-label=${t.camera}></video>
      ${begun ? html`<p>${camera === 'on' ? t.aim : t.starting}</p>` : nothing} ${this.progress()}
      ${received ? this.whole(received) : nothing}
      ${refused ? html`<p class="alert" role="alert">${refusedText[refused]}</p>` : nothing}
      <div class="stack">
        ${
          begun
            ? html`<button class="key" @click=${() => this.off()}>${t.stop}</button>`
            : html`<button class="key solid" @click=${() => void this.start()}>
                ${received ? t.another : t.start}
              </button>`
        }
        <a class="key" href="#/machine/codes/show">${codesKeys['codes/show']}</a>
      </div>`;
  }
}
