import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CodeDrawing } from '../core/carry/codes';
import type { LoopText } from '../text/codes';
import { base, keys } from './styles';

/** A code is shown so long: a camera takes several pictures of it, and 48 pass in ten seconds. */
const SHOWN_MS = 200;

/**
 * Codes one after another, over and over, black on white whatever the theme. Where a person wants less motion it stands
 * still until told to run, and a key goes on by one.
 * @element ls-code-loop
 * @prop {CodeDrawing[]} codes - what is shown; more may come while it runs
 * @prop {number} of - how many there will be
 * @prop {LoopText} text - words of its keys
 * @csspart code - the drawing
 */
@customElement('ls-code-loop')
export class LsCodeLoop extends LitElement {
  static override styles = [
    base,
    keys,
    css`
      :host {
        display: grid;
        gap: var(--gap, 8px);
      }
      svg {
        display: block;
        inline-size: min(100%, 100vh - 13rem);
        min-inline-size: min(100%, 17rem);
        margin-inline: auto;
        aspect-ratio: 1;
        background: #fff;
        forced-color-adjust: none;
      }
      path {
        stroke: #000;
        fill: none;
        shape-rendering: crispEdges;
      }
      p {
        text-align: center;
        font-weight: 700;
        font-variant-numeric: tabular-nums;
      }
    `,
  ];

  @property({ attribute: false }) codes: readonly CodeDrawing[] = [];
  @property({ type: Number }) of = 0;
  @property({ attribute: false }) text!: LoopText;
  @state() private at = 0;
  @state() private running = false;
  private timer: ReturnType<typeof setInterval> | undefined;

  override connectedCallback() {
    super.connectedCallback();
    this.running = !matchMedia('(prefers-reduced-motion: reduce)').matches;
  }

  override disconnectedCallback() {
    clearInterval(this.timer);
    this.running = false;
    super.disconnectedCallback();
  }

  protected override updated(changed: PropertyValues) {
    if (!changed.has('running')) return;
    clearInterval(this.timer);
    if (this.running && this.isConnected) this.timer = setInterval(() => this.step(), SHOWN_MS);
  }

  private step() {
    this.at = (this.at + 1) % Math.max(1, this.codes.length);
  }

  protected override render() {
    const { at, codes, text } = this;
    const code = codes[at];
    if (!code) return nothing;
    const name = text.at(at + 1, this.of);
    const { size, path } = code;
    return html`<svg part="code" role="img" aria-label=${name} viewBox="0 0 ${size} ${size}">
        <path d=${path} />
      </svg>
      <p aria-hidden="true">${name}</p>
      <div class="keys">
        <button class="key" @click=${() => (this.running = !this.running)}>
          ${this.running ? text.pause : text.go}
        </button>
        <button class="key" ?disabled=${this.running} @click=${() => this.step()}>${text.next}</button>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-code-loop': LsCodeLoop;
  }
}
