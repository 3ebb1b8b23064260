import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { base } from './styles';

/** A length along the axis, drawn below the work: from and to in mm from where the thread ends. */
export interface StopBar {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly over?: boolean;
}

/** What is drawn; lengths in mm, angles in degrees from square to the axis. */
export interface StopShape {
  readonly kind: 'groove' | 'run-out' | 'gap';
  readonly pitch: number;
  readonly depth: number;
  readonly leading: number;
  readonly trailing: number;
  /** How far what is in the way stands above the crests. */
  readonly shoulder: number;
  /** From where the thread ends to what is in the way; null: not in the picture. */
  readonly wall: number | null;
  /** Tips of the tool at full depth: at the mark, at the furthest it may get, at the end of its travel. */
  readonly mark: number;
  readonly furthest: number | null;
  readonly end: number | null;
  readonly over: boolean;
  /** The cut goes to the right of the picture, as it does from the headstock. */
  readonly toRight: boolean;
  readonly inside: boolean;
  readonly bars: readonly StopBar[];
}

const WIDTH = 360;
const ROW = 27;
const LETTER = 8.6;
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

/** Millimetres along the axis that are drawn before the thread's end and after it. */
export const stretch = (s: StopShape): { readonly before: number; readonly after: number } => {
  const ends = [s.wall ?? 0, s.mark, s.furthest ?? 0, s.end ?? 0, ...s.bars.map((b) => b.to)];
  const after = Math.max(...ends) * 1.02 + Math.max(0.6 * s.pitch, 0.4);
  return { before: Math.max(2.2 * s.pitch, after * 0.3), after };
};

/**
 * Where a thread has to be stopped, to scale: work in section, groove or gap, what is in the way, and the tool at full
 * depth at the mark (heavy), at the furthest it may get (broken) and where its travel ends (filled). Lengths below.
 * @element ls-stop-drawing
 * @prop {StopShape|null} shape - nothing is drawn without one
 * @prop {string} text - the drawing in words
 * @cssprop --ink, --ink-2, --hair, --machine, --over, --paper
 */
@customElement('ls-stop-drawing')
export class LsStopDrawing extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
        inline-size: min(100%, 30rem, 110vh);
        margin-inline: auto;
      }
      svg {
        display: block;
        inline-size: 100%;
        fill: none;
        stroke: var(--ink);
        stroke-linejoin: round;
      }
      .work {
        fill: var(--hair);
        stroke-width: 2;
      }
      .wall {
        fill: var(--ink-2);
        stroke: none;
      }
      .tool {
        stroke-width: 2.5;
      }
      .end {
        fill: var(--machine);
        fill-opacity: 0.6;
        stroke: none;
      }
      .over {
        fill: var(--over);
        stroke: var(--over);
      }
      .furthest {
        stroke-width: 2.5;
        stroke-dasharray: 5 4;
      }
      .guide {
        stroke: var(--ink-2);
        stroke-width: 1;
        stroke-dasharray: 2 4;
      }
      .bar {
        stroke-width: 3;
      }
      text {
        fill: var(--ink);
        stroke: var(--paper);
        stroke-width: 5px;
        paint-order: stroke;
        font: 700 16px var(--font);
      }
      text.over {
        fill: var(--over);
        stroke: var(--paper);
      }
    `,
  ];
  @property({ attribute: false }) shape: StopShape | null = null;
  @property() text = '';

  override render() {
    const s = this.shape;
    if (!s) return nothing;
    const { before, after } = stretch(s);
    const scale = WIDTH / (before + after);
    const x = (mm: number): number => (s.toRight ? (before + mm) * scale : WIDTH - (before + mm) * scale);
    // Above the crests as much as the shoulder needs, cut off where it would fill the picture.
    const above = Math.min(Math.max(s.shoulder, 0.8 * s.depth), 80 / scale) * scale + 8;
    const below = s.depth * scale * 1.2 + 16;
    const high = above + below;
    const y = (mm: number): number => (s.inside ? high - above - mm * scale : above + mm * scale);
    const foot = s.inside ? 0 : high;
    const points = (list: readonly (readonly [number, number])[]): string =>
      list.map(([px, py], i) => `${i ? 'L' : 'M'}${px.toFixed(1)} ${py.toFixed(1)}`).join('');
    const tool = (tip: number): string => {
      const up = above / scale;
      const h = s.depth + up;
      return points([
        [x(tip + h * tan(s.leading)), y(-up)],
        [x(tip), y(s.depth)],
        [x(tip - h * tan(s.trailing)), y(-up)],
      ]);
    };
    const turns = Math.ceil(before / s.pitch) + 1;
    // The groove of each turn as the tool left it, up to the thread's end; the picture's edge cuts the first of them.
    const first = Math.min(s.mark, s.pitch / 2) - (turns + 1) * s.pitch;
    const thread = Array.from({ length: turns + 1 }, (_, i) => first + i * s.pitch).flatMap(
      (tip): [number, number][] => [
        [x(tip - s.depth * tan(s.trailing)), y(0)],
        [x(tip), y(s.depth)],
        [x(Math.min(0, tip + s.depth * tan(s.leading))), y(0)],
      ],
    );
    const wall = s.wall ?? after;
    const rest: [number, number][] =
      s.kind === 'groove'
        ? [
            [x(0), y(0)],
            [x(0), y(1.12 * s.depth)],
            [x(wall), y(1.12 * s.depth)],
            [x(wall), y(-Math.min(s.shoulder, above / scale))],
            [x(after), y(-Math.min(s.shoulder, above / scale))],
            [x(after), foot],
          ]
        : s.kind === 'run-out'
          ? [
              [x(after), y(0)],
              [x(after), foot],
            ]
          : [
              [x(0), y(0)],
              [x(0), foot],
            ];
    const top = s.kind === 'groove' || s.wall === null ? null : s.wall;
    return html`<svg
      viewBox="0 0 ${WIDTH} ${(high + 10 + s.bars.length * ROW).toFixed(0)}"
      role="img"
      aria-label=${this.text}
    >
      ${svg`<path class="work" d="${points([[x(first - s.pitch), foot], [x(first - s.pitch), y(0)], ...thread, ...rest])}Z" />
      ${
        top === null
          ? nothing
          : svg`<path class="wall" d="${points([
              [x(top), y(-above / scale)],
              [x(after), y(-above / scale)],
              [x(after), foot],
              [x(top), foot],
            ])}Z" />`
      }
      ${s.end === null ? nothing : svg`<path class="end ${s.over ? 'over' : ''}" d="${tool(s.end)}Z" />`}
      ${s.furthest === null ? nothing : svg`<path class="furthest" d=${tool(s.furthest)} />`}
      <path class="tool" d=${tool(s.mark)} />
      ${s.bars.map((b, i) => {
        const [from, to, low] = [x(b.from), x(b.to), high + 22 + i * ROW];
        return svg`<path class="guide" d="M${from} ${y(s.depth)}V${low}M${to} ${y(s.depth)}V${low}" />`;
      })}
      ${s.bars.map((b, i) => this.bar(b, x, high + 22 + i * ROW))}`}
    </svg>`;
  }

  private bar(b: StopBar, x: (mm: number) => number, y: number) {
    const [from, to] = [x(b.from), x(b.to)].sort((p, q) => p - q) as [number, number];
    const wide = b.text.length * LETTER;
    const [leftOf, rightOf] = [from - 6, WIDTH - to - 6];
    const inside = wide > Math.max(leftOf, rightOf);
    const at = inside
      ? Math.min(WIDTH - wide / 2, Math.max(wide / 2, (from + to) / 2))
      : rightOf >= leftOf
        ? to + 6
        : from - 6;
    const anchor = inside ? 'middle' : rightOf >= leftOf ? 'start' : 'end';
    const over = b.over ? 'over' : '';
    return svg`<path class="bar ${over}" d="M${from} ${y}H${to}M${from} ${y - 5}v10M${to} ${y - 5}v10" />
      <text class=${over} x=${at.toFixed(1)} y=${y + 5.5} text-anchor=${anchor}>${b.text}</text>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-stop-drawing': LsStopDrawing;
  }
}
