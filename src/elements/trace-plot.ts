import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { base } from './styles';

/** What is drawn: lowest, highest and mean error at even places along the thread, in any one unit. */
export interface TraceShape {
  readonly min: ArrayLike<number>;
  readonly max: ArrayLike<number>;
  readonly mean: ArrayLike<number>;
}

const WIDTH = 360;
const HEIGHT = 200;
const MOST = 360;

/** Joins neighbours so that no more points are drawn than can be told apart; the extremes stay. */
export const columns = (shape: TraceShape, most = MOST): TraceShape => {
  const count = shape.mean.length;
  const size = Math.max(1, Math.ceil(count / most));
  const [min, max, mean]: [number[], number[], number[]] = [[], [], []];
  for (let from = 0; from < count; from += size) {
    const to = Math.min(count, from + size);
    let [low, high, sum] = [Infinity, -Infinity, 0];
    for (let i = from; i < to; i += 1) {
      low = Math.min(low, shape.min[i] ?? Infinity);
      high = Math.max(high, shape.max[i] ?? -Infinity);
      sum += shape.mean[i] ?? 0;
    }
    min.push(low);
    max.push(high);
    mean.push(sum / (to - from));
  }
  return { min, max, mean };
};

/**
 * Lead error along the thread: the mean as a line, least and most as a band about it, zero as a rule. The words at
 * its corners say what its height and length are.
 * @element ls-trace-plot
 * @prop {TraceShape|null} shape - nothing is drawn without one
 * @prop {string} top, bottom, start, end - what the upper and lower edge, the left and right end stand for
 * @prop {number} high, low - error at the upper and lower edge
 * @prop {string} text - the drawing in words
 * @cssprop --ink, --ink-2, --hair, --machine
 */
@customElement('ls-trace-plot')
export class LsTracePlot extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: clamp(140px, 30vh, 260px);
        fill: none;
        border-block: 1px solid var(--hair);
        border-inline-start: 3px solid var(--ink);
      }
      path {
        vector-effect: non-scaling-stroke;
      }
      .band {
        fill: var(--machine);
        fill-opacity: 0.45;
        stroke: var(--machine);
        stroke-width: 1;
      }
      .mean {
        stroke: var(--ink);
        stroke-width: 2.5;
        stroke-linejoin: round;
      }
      .zero {
        stroke: var(--ink-2);
        stroke-width: 1.5;
        stroke-dasharray: 6 5;
      }
      .ends {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 1rem;
      }
    `,
  ];
  @property({ attribute: false }) shape: TraceShape | null = null;
  @property({ attribute: false }) high = 1;
  @property({ attribute: false }) low = -1;
  @property() top = '';
  @property() bottom = '';
  @property() start = '';
  @property() end = '';
  @property() text = '';

  override render() {
    if (!this.shape || this.shape.mean.length === 0) return nothing;
    const s = columns(this.shape);
    const count = s.mean.length;
    const x = (i: number): string => ((i + 0.5) * (WIDTH / count)).toFixed(1);
    const y = (e: number): string => (((this.high - e) / (this.high - this.low)) * HEIGHT).toFixed(1);
    const line = (all: ArrayLike<number>): string =>
      Array.from(all, (e, i) => `${i ? 'L' : 'M'}${x(i)} ${y(e)}`).join('');
    const back = Array.from(s.min, (e, i) => `L${x(i)} ${y(e)}`)
      .reverse()
      .join('');
    return html`<p class="label">${this.top}</p>
      <svg viewBox="0 0 ${WIDTH} ${HEIGHT}" preserveAspectRatio="none" role="img" aria-label=${this.text}>
        ${svg`<path class="band" d="${line(s.max)}${back}Z" />
        <path class="zero" d="M0 ${y(0)}H${WIDTH}" />
        <path class="mean" d=${line(s.mean)} />`}
      </svg>
      <p class="label ends">
        <span>${this.bottom}</span><span>${this.start}</span><span>${this.end}</span>
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-trace-plot': LsTracePlot;
  }
}
