import { css, html, LitElement, type PropertyValues } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { keys, base } from './styles';

/** The sheet was closed, by its key, by Escape or by the phone's back gesture. */
export class CloseEvent extends Event {
  static readonly type = 'ls-close';
  constructor() {
    super(CloseEvent.type, { bubbles: true, composed: true });
  }
}

/**
 * A full-height sheet over the screen: heading above, content that scrolls, close key low where the thumb is.
 * Focus goes to the heading and returns to where it was.
 * @element ls-sheet
 * @prop {boolean} open
 * @prop {string} heading - also the dialog's name
 * @prop {string} close - words on the close key
 * @fires {CloseEvent} ls-close - after it has closed; `open` is then false
 * @slot - content
 * @slot keys - further keys, above the close key
 * @csspart content
 */
@customElement('ls-sheet')
export class LsSheet extends LitElement {
  static override styles = [
    base,
    keys,
    css`
      dialog {
        inline-size: 100%;
        max-inline-size: 40rem;
        block-size: 100dvh;
        max-block-size: none;
        margin: 0 auto;
        padding: 0;
        border: 0;
        background: var(--paper);
        color: var(--ink);
        overscroll-behavior: contain;
      }
      dialog[open] {
        display: grid;
        grid-template-rows: auto 1fr auto;
      }
      dialog::backdrop {
        background: var(--paper);
      }
      h1 {
        padding: 16px max(var(--edge), env(safe-area-inset-right)) 10px
          max(var(--edge), env(safe-area-inset-left));
        border-block-start: 8px solid var(--machine);
        border-block-end: 3px solid var(--ink);
      }
      .content {
        min-block-size: 0;
        overflow: auto;
        padding: 12px max(var(--edge), env(safe-area-inset-right)) 24px
          max(var(--edge), env(safe-area-inset-left));
      }
      .foot {
        display: grid;
        gap: var(--gap);
        padding: 8px var(--edge) max(12px, env(safe-area-inset-bottom));
        border-block-start: 1px solid var(--hair);
      }
      /* Takes the focus only so that the sheet is read from its top; nothing can be done with it. */
      h1:focus-visible {
        outline: none;
      }
    `,
  ];

  @property({ type: Boolean, reflect: true }) open = false;
  @property() heading = '';
  @property() close = '';
  @query('dialog') private dialog!: HTMLDialogElement;

  protected override updated(changed: PropertyValues<this>) {
    if (!changed.has('open')) return;
    if (this.open && !this.dialog.open) {
      this.dialog.showModal();
    } else if (!this.open && this.dialog.open) this.dialog.close();
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    // A modal dialog taken out of the page would leave the rest inert in some browsers.
    if (this.dialog?.open) this.dialog.close();
  }

  private closed() {
    this.open = false;
    this.dispatchEvent(new CloseEvent());
  }

  protected override render() {
    return html`<dialog aria-labelledby="heading" @close=${this.closed}>
      <h1 id="heading" tabindex="-1" autofocus>${this.heading}</h1>
      <div class="content" part="content" tabindex="0" role="group" aria-labelledby="heading">
        <slot></slot>
      </div>
      <div class="foot">
        <slot name="keys"></slot>
        <button class="key" @click=${() => this.dialog.close()}>${this.close}</button>
      </div>
    </dialog>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-sheet': LsSheet;
  }
  interface HTMLElementEventMap {
    'ls-close': CloseEvent;
  }
}
