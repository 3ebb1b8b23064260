import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { base, keys } from './styles';

/** The screen hears again. */
export class UnlockEvent extends Event {
  static readonly type = 'ls-unlock';
  constructor() {
    super(UnlockEvent.type, { bubbles: true, composed: true });
  }
}

const SILENCED = [
  'pointerdown',
  'pointerup',
  'click',
  'contextmenu',
  'touchstart',
  'touchmove',
  'wheel',
  'keydown',
  'keyup',
];

/**
 * A key that makes the whole screen deaf for some seconds, so that it can be wiped. The cover counts down and ends by
 * itself; nothing ends it sooner.
 * @element ls-wipe-lock
 * @prop {number} seconds - how long, 10 unless set
 * @prop {string} label - word on the key
 * @prop {string} text - words over the countdown
 * @fires {UnlockEvent} ls-unlock
 * @slot - a drawing over the word
 * @csspart key
 */
@customElement('ls-wipe-lock')
export class LsWipeLock extends LitElement {
  static override styles = [
    base,
    keys,
    css`
      :host {
        display: inline-grid;
      }
      dialog {
        inline-size: 100vw;
        block-size: 100dvh;
        max-inline-size: none;
        max-block-size: none;
        margin: 0;
        padding: var(--edge);
        border: 12px solid var(--machine);
        background: var(--paper);
        color: var(--ink);
        touch-action: none;
        user-select: none;
        -webkit-user-select: none;
      }
      dialog[open] {
        display: grid;
        place-content: center;
        gap: 1rem;
        text-align: center;
      }
      p {
        font-size: var(--t-figure);
        font-weight: 700;
      }
      .left {
        font-size: max(96px, min(9rem, 40vmin));
        font-weight: 700;
        line-height: 1;
      }
    `,
  ];

  @property({ type: Number }) seconds = 10;
  @property() label = '';
  @property() text = '';
  @state() private left = 0;
  @query('dialog') private cover!: HTMLDialogElement;
  private until = 0;
  private timer: ReturnType<typeof setInterval> | undefined;

  override disconnectedCallback() {
    this.release();
    super.disconnectedCallback();
  }

  /** Makes the screen deaf now; the key calls it, a screen may too. */
  lock() {
    if (this.timer !== undefined) return;
    this.until = performance.now() + this.seconds * 1000;
    this.left = this.seconds;
    this.cover.showModal();
    for (const type of SILENCED)
      window.addEventListener(type, this.silence, { capture: true, passive: false });
    this.timer = setInterval(this.count, 200);
  }

  private readonly silence = (event: Event) => {
    event.preventDefault();
    event.stopImmediatePropagation();
  };

  private readonly count = () => {
    this.left = Math.ceil((this.until - performance.now()) / 1000);
    if (this.left <= 0) {
      this.release();
      this.dispatchEvent(new UnlockEvent());
    }
  };

  private release() {
    if (this.timer === undefined) return;
    clearInterval(this.timer);
    this.timer = undefined;
    for (const type of SILENCED) window.removeEventListener(type, this.silence, { capture: true });
    this.cover.close();
  }

  /** A back gesture may close a modal dialog whatever the page says: it opens again until the time is over. */
  private closed() {
    if (this.timer !== undefined) this.cover.showModal();
  }

  protected override render() {
    return html`<button part="key" class="key" @click=${this.lock}><slot></slot>${this.label}</button>
      <dialog aria-labelledby="text" @cancel=${this.silence} @close=${this.closed}>
        <p id="text">${this.text}</p>
        <div class="left" role="timer">${this.left > 0 ? this.left : nothing}</div>
      </dialog>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-wipe-lock': LsWipeLock;
  }
  interface HTMLElementEventMap {
    'ls-unlock': UnlockEvent;
  }
}
