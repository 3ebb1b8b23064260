import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { icon } from './icons';
import { padSheet } from './pad-styles';
import { base, keys } from './styles';

/** A unit to choose on the pad; the label stands on its key ("mm", "in", "tpi"). */
export interface PadUnit {
  readonly id: string;
  readonly label: string;
}

/** Names of the keys that carry a sign only, for screen readers; `space` also stands on its key. */
export interface PadWords {
  readonly back: string;
  readonly space: string;
  readonly mark: string;
  readonly over: string;
  readonly unit: string;
}

/** The text typed or the unit has changed. */
export class PadInputEvent extends Event {
  static readonly type = 'ls-pad-input';
  constructor(
    /** As typed: never parsed here. */
    readonly value: string,
    /** Id of the unit. */
    readonly unit: string,
  ) {
    super(PadInputEvent.type, { bubbles: true, composed: true });
  }
}

const LONGEST = 24;
const ROWS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '/'];

const holds = ({ left, right, top, bottom }: DOMRect, { clientX, clientY }: Touch): boolean =>
  clientX >= left && clientX <= right && clientY >= top && clientY <= bottom;

/** For so long after a touch a browser may still play the mouse for it, ms. */
const ECHO = 700;

/**
 * Number pad without the system keyboard: twelve large keys, a unit key and a correcting key beside the value, and a
 * space key ("11 1/2") while a whole number stands there. Also takes a hardware keyboard. It fills the height it is
 * given (its parent needs one); when there is room, question and reading get lines of their own, else they share the
 * value's box: the question until something is typed, then the reading or the error. Keep `understood` short there.
 * @element ls-pad
 * @prop {string} value - text typed
 * @prop {PadUnit[]} units - two: the key swaps them; more: it opens the choices; one: only shown
 * @prop {string} unit - id of the unit
 * @prop {string} label - the question being answered
 * @prop {string} understood - how the text is understood ("= 2.2087 mm")
 * @prop {string} error - why it isn't; spoken when it comes
 * @prop {'.'|','} mark - decimal mark
 * @prop {PadWords} words - names of the sign keys
 * @fires {PadInputEvent} ls-pad-input
 * @slot results - what the owner offers for it, each at least 64 px high
 * @csspart value, key
 * @cssprop --machine - stripe at the value
 */
@customElement('ls-pad')
export class LsPad extends LitElement {
  static override styles = [base, keys, padSheet];
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };

  @property() value = '';
  @property({ attribute: false }) units: readonly PadUnit[] = [];
  @property() unit = '';
  @property() label = '';
  @property() understood = '';
  @property() error = '';
  @property() mark: '.' | ',' = '.';
  @property({ attribute: false }) words: PadWords = { back: '', space: '', mark: '', over: '', unit: '' };
  @state() private choosing = false;

  override connectedCallback() {
    super.connectedCallback();
    document.addEventListener('keydown', this.typed);
  }

  override disconnectedCallback() {
    document.removeEventListener('keydown', this.typed);
    super.disconnectedCallback();
  }

  private get spaceFits(): boolean {
    return /^\d+$/.test(this.value);
  }

  /** More signs than stand on one line in the usual size, beside the keys that are there. */
  private get long(): boolean {
    return this.value.length > (this.spaceFits ? 4 : 6);
  }

  /** A keyboard's keys count when they were meant for the pad or for nothing in particular. */
  private readonly typed = (event: KeyboardEvent) => {
    const path = event.composedPath();
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!path.includes(this) && (path[0] as Element).matches('a, button, input, textarea, summary')) return;
    const { key } = event;
    if (key === 'Backspace') this.correct();
    else if (key === 'Escape' && this.choosing) this.choosing = false;
    else if (key === '.' || key === ',') this.add(this.mark);
    else if (/^[0-9/]$/.test(key)) this.add(key);
    else if (key === ' ' && this.spaceFits && !(path[0] instanceof HTMLButtonElement)) this.add(' ');
    else return;
    event.preventDefault();
  };

  /** The key whose touch was taken, though the browser may play a click for it as well. */
  private echo: Element | null = null;

  /**
   * A key counts when the finger leaves it, wherever on it: a wet finger slides further than a browser takes for a tap. It
   * then need not wait for the mouse that the browser plays after a touch, which is half of the way to the next picture.
   */
  private readonly lifted = (e: TouchEvent): void => {
    const key = (e.target as Element).closest<HTMLButtonElement>('button.key');
    const [touch, another] = e.changedTouches;
    if (!key || !touch || another || e.targetTouches.length > 0) return;
    // What can't be cancelled may have scrolled the pad, where there is something to scroll.
    if (!e.cancelable && this.scrollHeight > this.clientHeight) return;
    if (!holds(key.getBoundingClientRect(), touch)) return;
    if (e.cancelable) e.preventDefault();
    else {
      this.echo = key;
      setTimeout(() => (this.echo = null), ECHO);
    }
    key.click();
  };

  private readonly heard = (e: Event): void => {
    if (!e.isTrusted || !this.echo?.contains(e.target as Node)) return;
    this.echo = null;
    e.stopPropagation();
  };

  private add(sign: string) {
    if (this.value.length < LONGEST) this.change(this.value + sign, this.unit);
  }

  private correct() {
    if (this.value) this.change(this.value.slice(0, -1), this.unit);
  }

  private change(value: string, unit: string) {
    this.value = value;
    this.unit = unit;
    this.choosing = false;
    this.dispatchEvent(new PadInputEvent(value, unit));
  }

  private nextUnit() {
    if (this.units.length > 2) this.choosing = !this.choosing;
    else this.change(this.value, this.units.find((u) => u.id !== this.unit)?.id ?? this.unit);
  }

  private unitKey() {
    const label = this.units.find((u) => u.id === this.unit)?.label ?? '';
    if (this.units.length < 2) return label ? html`<span class="key unit-key only">${label}</span>` : nothing;
    const open = this.units.length > 2 ? String(this.choosing) : nothing;
    return html`<button part="key" class="key unit-key" aria-expanded=${open} @click=${this.nextUnit}>
      <span class="vh">${this.words.unit} </span>${label}
    </button>`;
  }

  private choices() {
    return html`<div class="pad choices" role="group" aria-label=${this.words.unit}>
      ${this.units.map(
        (u) =>
          html`<button
            class="key"
            aria-pressed=${u.id === this.unit}
            @click=${() => this.change(this.value, u.id)}
          >
            ${u.label}
          </button>`,
      )}
    </div>`;
  }

  private digits() {
    return html`<div
      class="pad"
      role="group"
      aria-label=${this.label}
      @touchend=${this.lifted}
      @click=${{ handleEvent: this.heard, capture: true }}
    >
      ${ROWS.map((row) => {
        const sign = row === '.' ? this.mark : row;
        const name = row === '.' ? this.words.mark : row === '/' ? this.words.over : '';
        return html`<button
          part="key"
          class="key"
          aria-label=${name || nothing}
          @click=${() => this.add(sign)}
        >
          ${sign}
        </button>`;
      })}
    </div>`;
  }

  protected override render() {
    const wrong = this.error !== '';
    const answered = wrong || (this.value !== '' && this.understood !== '');
    return html`<div class="all by-hand">
      <div class="top by-hand ${wrong ? 'wrong' : ''} ${answered ? 'answered' : ''}">
        <span class="frame"></span>
        <span class="ask">${this.label}</span>
        <span class="value ${this.long ? 'long' : ''}" part="value" aria-live="polite"
          >${this.value}<span class="caret"></span
        ></span>
        <span class="said" aria-live="polite">${wrong ? nothing : this.understood}</span>
        <span class="error" role="alert">${this.error}</span>
        <div class="side" @touchend=${this.lifted} @click=${{ handleEvent: this.heard, capture: true }}>
          ${
            this.spaceFits && !wrong
              ? html`<button part="key" class="key space" @click=${() => this.add(' ')}>
                  ${this.words.space}
                </button>`
              : nothing
          }
          ${this.unitKey()}
          <button part="key" class="key back" aria-label=${this.words.back} @click=${this.correct}>
            ${icon('back')}
          </button>
        </div>
      </div>
      <div class="results"><slot name="results"></slot></div>
      ${this.choosing ? this.choices() : this.digits()}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-pad': LsPad;
  }
  interface HTMLElementEventMap {
    'ls-pad-input': PadInputEvent;
  }
}
