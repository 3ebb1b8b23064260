import { css, html, LitElement, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { base } from './styles';

const on = (share: number, radius: number): readonly [number, number] => [
  100 + radius * Math.sin(2 * Math.PI * share),
  106 - radius * Math.cos(2 * Math.PI * share),
];

/**
 * A still picture of a thread dial. The lines to close on are long, heavy and numbered, the others short and thin. It
 * never moves: the phone doesn't know where the dial on the lathe stands.
 * @element ls-thread-dial
 * @prop {number} lines - lines round the dial
 * @prop {number[]} good - indices (from 0 at the mark) to close on
 * @prop {string[]} names - what is engraved at each line; 1, 2, 3 … unless given
 * @prop {string} text - the picture in words
 * @cssprop --ink, --machine
 */
@customElement('ls-thread-dial')
export class LsThreadDial extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
        max-inline-size: 18rem;
      }
      svg {
        display: block;
        inline-size: 100%;
        fill: none;
        stroke: var(--ink);
      }
      .rim {
        stroke-width: 2.5;
      }
      .thin {
        stroke-width: 1.5;
      }
      .good {
        stroke-width: 6;
      }
      .mark {
        fill: var(--machine);
        stroke: none;
      }
      .hub {
        stroke-width: 1.5;
      }
      text {
        fill: var(--ink);
        stroke: none;
        font: 700 20px var(--font);
        text-anchor: middle;
      }
    `,
  ];

  @property({ type: Number }) lines = 8;
  @property({ attribute: false }) good: readonly number[] = [];
  @property({ attribute: false }) names: readonly string[] = [];
  @property() text = '';

  protected override render() {
    const count = Math.max(0, Math.floor(this.lines));
    return html`<svg viewBox="0 0 200 204" role="img" aria-label=${this.text}>
      <path class="mark" d="M91 0h18l-9 15z" />
      <circle class="rim" cx="100" cy="106" r="88" />
      <circle class="hub" cx="100" cy="106" r="7" />
      ${Array.from({ length: count }, (_, i) => {
        const good = this.good.includes(i);
        const [x1, y1] = on(i / count, 87);
        const [x2, y2] = on(i / count, good ? 56 : 72);
        const [tx, ty] = on(i / count, 39);
        return svg`<line class=${good ? 'good' : 'thin'} x1=${x1} y1=${y1} x2=${x2} y2=${y2} />
          ${good ? svg`<text x=${tx} y=${ty + 7}>${this.names[i] ?? String(i + 1)}</text>` : ''}`;
      })}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-thread-dial': LsThreadDial;
  }
}
