import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { base, keys, written } from './styles';

/** A line was written and is to be kept: one line, blanks put in order. */
export class WrittenEvent extends Event {
  static readonly type = 'ls-written';
  constructor(readonly value: string) {
    super(WrittenEvent.type, { bubbles: true, composed: true });
  }
}

/**
 * One line written with the phone's own keyboard; what is too long is refused beside it and stays.
 * @element ls-written-line
 * @prop {string} label - what is written
 * @prop {string} value - what stands there
 * @prop {string} keep - words on the key that keeps it
 * @prop {number} most - signs at the most
 * @prop {string} long - words of refusal of a longer one
 * @fires {WrittenEvent} ls-written
 */
@customElement('ls-written-line')
export class LsWrittenLine extends LitElement {
  static override styles = [
    base,
    keys,
    written,
    css`
      :host {
        display: grid;
        gap: 8px;
      }
    `,
  ];
  @property() label = '';
  @property() value = '';
  @property() keep = '';
  @property() long = '';
  @property({ type: Number }) most = 40;
  @state() private typed: string | null = null;
  @state() private refused = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value')) this.typed = null;
  }

  private done(): void {
    const value = (this.typed ?? this.value).replace(/\s+/g, ' ').trim();
    this.refused = value.length > this.most;
    if (this.refused) return;
    this.typed = null;
    if (value !== this.value) this.dispatchEvent(new WrittenEvent(value));
  }

  protected override render() {
    const changed = this.typed !== null && this.typed.trim() !== this.value;
    return html`<label class="label" for="line">${this.label}</label>
      <input
        id="line"
        .value=${this.typed ?? this.value}
        autocomplete="off"
        autocapitalize="off"
        aria-describedby="error"
        aria-invalid=${this.refused ? 'true' : 'false'}
        @input=${(e: Event) => (this.typed = (e.target as HTMLInputElement).value)}
        @change=${() => this.done()}
      />
      <p id="error" class="over" role="alert">${this.refused ? this.long : ''}</p>
      ${changed ? html`<button class="key" @click=${() => this.done()}>${this.keep}</button>` : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-written-line': LsWrittenLine;
  }
  interface HTMLElementEventMap {
    'ls-written': WrittenEvent;
  }
}
