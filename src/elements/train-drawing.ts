import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { base } from './styles';

/** A wheel to be drawn: all lengths in teeth, the radius of the pitch circle being the number of teeth. */
export interface DrawnWheel {
  readonly x: number;
  readonly y: number;
  readonly teeth: number;
  /** Lies in front of the others on its shaft. */
  readonly stage: number;
  readonly idler: boolean;
  readonly changed: boolean;
}
export interface DrawnShaft {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}
export interface DrawnTrain {
  readonly wheels: readonly DrawnWheel[];
  readonly shafts: readonly DrawnShaft[];
}

/** Text is drawn so large that it stays 18 px on a phone 320 px wide. */
const TEXT = 1 / 15.5;

/**
 * A train of change gears to scale: pitch circles, teeth, shafts by name. Wheels to be put on are drawn heavy, idlers
 * broken.
 * @element ls-train-drawing
 * @prop {DrawnTrain} train - wheels and shafts
 * @prop {string} text - the drawing in words
 */
@customElement('ls-train-drawing')
export class LsTrainDrawing extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        max-block-size: 70vh;
      }
      circle {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5px;
        vector-effect: non-scaling-stroke;
      }
      .changed {
        stroke-width: 4px;
      }
      .idler {
        stroke-dasharray: 10 6;
      }
      .shaft {
        fill: var(--ink);
      }
      .lead {
        stroke: var(--hair);
        stroke-width: 1.5px;
        vector-effect: non-scaling-stroke;
      }
      text {
        fill: var(--ink);
        stroke: var(--paper);
        stroke-width: 5px;
        paint-order: stroke;
        text-anchor: middle;
        dominant-baseline: central;
        font-family: var(--font);
        font-weight: 700;
      }
      .name {
        font-weight: 400;
        fill: var(--ink-2);
      }
    `,
  ];
  @property({ attribute: false }) train: DrawnTrain | null = null;
  @property() text = '';

  protected override render() {
    const { train } = this;
    if (!train) return nothing;
    const left = Math.min(...train.wheels.map((w) => w.x - w.teeth));
    const right = Math.max(...train.wheels.map((w) => w.x + w.teeth));
    const top = Math.min(...train.wheels.map((w) => -w.y - w.teeth));
    const bottom = Math.max(...train.wheels.map((w) => -w.y + w.teeth));
    const pad = 6;
    const width = right - left + 2 * pad;
    const size = width * TEXT;
    const line = size * 1.3;
    const box = `${left - pad} ${top - pad} ${width} ${bottom - top + 2 * pad + line * train.shafts.length}`;
    return html`<svg viewBox=${box} role="img" aria-label=${this.text}>
      ${train.wheels.map(
        (w) =>
          svg`<circle class="${w.changed ? 'changed' : ''} ${w.idler ? 'idler' : ''}" cx=${w.x} cy=${-w.y} r=${w.teeth} />`,
      )}
      ${train.shafts.map((s) => svg`<circle class="shaft" cx=${s.x} cy=${-s.y} r=${size / 5} />`)}
      ${train.wheels.map((w) => {
        const mates = train.wheels.filter((o) => o.x === w.x && o.y === w.y);
        // Of two wheels on one stud one is named above its centre, the other below.
        const side = mates.length > 1 && mates[0] !== w ? 1 : -1;
        const away = Math.max(size * 0.8, Math.min(w.teeth * 0.55, w.teeth - size * 0.6));
        return svg`<text x=${w.x} y=${-w.y + side * away} font-size=${size}>${w.teeth}</text>`;
      })}
      ${train.shafts.map((s, i) => {
        const y = bottom + pad + line * (i + 0.6);
        const half = (s.name.length * size * 0.6) / 2;
        const x = Math.max(left + half, Math.min(right - half, s.x));
        return svg`<line x1=${s.x} y1=${-s.y} x2=${s.x} y2=${y - size * 0.6} class="lead" />
          <text class="name" x=${x} y=${y} font-size=${size}>${s.name}</text>`;
      })}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-train-drawing': LsTrainDrawing;
  }
}
