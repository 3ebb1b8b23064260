import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { icon, type IconName } from './icons';
import { base } from './styles';

/** One place of the bar. */
export interface BarItem {
  readonly id: IconName;
  readonly label: string;
  readonly href: string;
}

/**
 * The places, side by side at the foot of the screen: equal widths, icon over word. With large text they take two lines;
 * on a phone on its side they stand one over the other.
 * @element ls-bar
 * @prop {BarItem[]} items - id (also the icon's name), label, hash href
 * @prop {string} current - id of the place shown
 * @prop {string} label - name of the bar for screen readers
 * @csspart item
 * @cssprop --t-bar - size of the words
 */
@customElement('ls-bar')
export class LsBar extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
        background: var(--paper);
        border-block-start: 3px solid var(--ink);
        padding-block-end: env(safe-area-inset-bottom, 0);
      }
      nav {
        display: flex;
        flex-wrap: wrap;
      }
      a {
        flex: 1 0 max(calc(100% / var(--n, 5)), 4.3em);
        display: flex;
        flex-direction: column;
        align-items: center;
        justify-content: center;
        gap: 3px;
        min-block-size: 56px;
        padding: 5px 1px;
        font-size: var(--t-bar);
        line-height: 1.2;
        text-decoration: none;
        touch-action: manipulation;
        -webkit-tap-highlight-color: transparent;
      }
      a[aria-current='page'] {
        background: var(--ink);
        color: var(--paper);
        font-weight: 700;
      }
      a:focus-visible {
        outline-offset: -6px;
      }
      a[aria-current='page']:focus-visible {
        outline-color: var(--paper);
      }
      /* Beside a low screen, away from the hand. */
      @media (orientation: landscape) and (max-height: 500px) {
        :host {
          direction: var(--hand);
          overflow-y: auto;
          border-block-start: 0;
          border-inline-end: 3px solid var(--ink);
        }
        nav {
          direction: ltr;
          flex-direction: column;
          flex-wrap: nowrap;
          min-block-size: 100%;
          min-inline-size: 80px;
        }
        a {
          flex: 1 0 56px;
        }
      }
      .icon {
        inline-size: 24px;
        block-size: 24px;
      }
      @media (forced-colors: active) {
        a[aria-current='page'] {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }
      }
    `,
  ];

  @property({ attribute: false }) items: readonly BarItem[] = [];
  @property() current = '';
  @property() label = '';

  protected override willUpdate() {
    this.style.setProperty('--n', String(Math.max(this.items.length, 1)));
  }

  protected override render() {
    return html`<nav aria-label=${this.label}>
      ${this.items.map(
        (item) =>
          html`<a part="item" href=${item.href} aria-current=${item.id === this.current ? 'page' : 'false'}
            >${icon(item.id)}<span>${item.label}</span></a
          >`,
      )}
    </nav>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-bar': LsBar;
  }
}
