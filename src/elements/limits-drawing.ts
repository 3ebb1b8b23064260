import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { base } from './styles';

/** Diameters of one outline of a thread, all in one unit. */
export interface Outline {
  readonly major: number;
  readonly pitch: number;
  readonly minor: number;
}

/** What is drawn: lengths in one unit, angles in degrees. */
export interface LimitsShape {
  readonly kind: 'external' | 'internal';
  readonly pitch: number;
  /** Flank angles from the plane square to the axis: right of a ridge of the screw, left of it. */
  readonly flanks: readonly [number, number];
  /** Most and least material. */
  readonly most: Outline;
  readonly least: Outline;
  /** Diameter of wires seated in the grooves, if any. */
  readonly wire: number | null;
  /** The tool's point in one groove: its outline as [along the axis, from the axis]; null where it isn't known. */
  readonly tool?: readonly (readonly [number, number])[] | null;
}

const WIDTH = 360;
const HEIGHT = 190;
const TURNS = 2.5;

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

/** Points of an outline over some turns: x along the axis, r from the axis. The groove's middle stands at x = 0, P, 2 P… */
export const outlinePoints = (
  shape: LimitsShape,
  o: Outline,
  from: number,
  to: number,
): [number, number][] => {
  const [right, left] = [tan(shape.flanks[0]), tan(shape.flanks[1])];
  const [top, bottom] = [o.major / 2, o.minor / 2];
  // Half the groove's width at a radius, on either side: a quarter of the pitch at the pitch line.
  const half = (r: number, t: number): number => shape.pitch / 4 + (r - o.pitch / 2) * t;
  const points: [number, number][] = [];
  for (let turn = from; turn <= to; turn += 1) {
    const x = turn * shape.pitch;
    points.push([x - half(top, right), top], [x - Math.max(0, half(bottom, right)), bottom]);
    points.push([x + Math.max(0, half(bottom, left)), bottom], [x + half(top, left), top]);
  }
  return points;
};

/** Radius at which a wire's centre stands, seated on both flanks of a symmetrical groove. */
export const wireCentre = (shape: LimitsShape, o: Outline, wire: number): number => {
  const a = (shape.flanks[0] * Math.PI) / 180;
  // The flanks meet below the pitch line by (P/4)·cot A; the centre stands (w/2) ÷ sin A above that point.
  return o.pitch / 2 - shape.pitch / 4 / Math.tan(a) + wire / 2 / Math.sin(a);
};

/**
 * The thread's profile to scale between its limits: the outline with most material drawn heavy, the one with least
 * drawn thin, the band between them filled; pitch line; a tool's point and wires seated in the grooves where given.
 * @element ls-limits-drawing
 * @prop {LimitsShape|null} shape - nothing is drawn without one
 * @prop {string} text - the drawing in words
 * @cssprop --ink, --hair, --machine, --paper
 */
@customElement('ls-limits-drawing')
export class LsLimitsDrawing extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
        inline-size: min(100%, 26rem, 110vh);
        margin-inline: auto;
      }
      svg {
        display: block;
        inline-size: 100%;
        fill: none;
        stroke: var(--ink);
      }
      .band {
        fill: var(--machine);
        fill-opacity: 0.55;
        stroke: none;
      }
      .most {
        stroke-width: 3;
        stroke-linejoin: round;
      }
      .least {
        stroke-width: 1.5;
        stroke-linejoin: round;
      }
      .line {
        stroke: var(--ink-2);
        stroke-width: 1.5;
        stroke-dasharray: 16 4 3 4;
      }
      .tool {
        stroke-width: 2.5;
        stroke-dasharray: 6 4;
      }
      .wire {
        stroke-width: 2.5;
        fill: var(--paper);
      }
    `,
  ];
  @property({ attribute: false }) shape: LimitsShape | null = null;
  @property() text = '';

  override render() {
    const s = this.shape;
    if (!s) return nothing;
    const scale = WIDTH / (TURNS * s.pitch);
    const wireTop = s.wire === null ? 0 : wireCentre(s, s.most, s.wire) + s.wire / 2;
    const tool = s.tool ?? [];
    const tip = tool.map(([, r]) => r);
    const deepest = s.kind === 'internal' ? 2 * Math.max(0, ...tip) : 0;
    const top = Math.max(s.most.major, s.least.major, 2 * wireTop, deepest) / 2 + s.pitch * 0.08;
    const x = (v: number): string => ((v + s.pitch * 0.25) * scale).toFixed(2);
    const y = (r: number): string => ((top - r) * scale).toFixed(2);
    const path = (o: Outline): string =>
      outlinePoints(s, o, -1, 3)
        .map(([px, r], i) => `${i ? 'L' : 'M'}${x(px)} ${y(r)}`)
        .join('');
    const back = outlinePoints(s, s.least, -1, 3)
      .reverse()
      .map(([px, r]) => `L${x(px)} ${y(r)}`)
      .join('');
    const reach = s.kind === 'external' ? Math.min(Infinity, ...tip) : Infinity;
    const low = Math.min(s.most.minor / 2, s.least.minor / 2, reach);
    const high = Math.min(HEIGHT, (top - low) * scale + 24);
    const wire = s.wire;
    return html`<svg viewBox="0 0 ${WIDTH} ${high.toFixed(0)}" role="img" aria-label=${this.text}>
      ${svg`<path class="band" d="${path(s.most)}${back}Z" />
      <path class="least" d=${path(s.least)} />
      <path class="most" d=${path(s.most)} />
      <path class="line" d="M0 ${y(s.most.pitch / 2)}H${WIDTH}" />
      ${
        tool.length === 0
          ? nothing
          : svg`<path class="tool" d=${tool.map(([px, r], i) => `${i ? 'L' : 'M'}${x(px)} ${y(r)}`).join('')} />`
      }
      ${
        wire === null
          ? nothing
          : [0, 1, 2].map(
              (turn) =>
                svg`<circle class="wire" cx=${x(turn * s.pitch)} cy=${y(wireCentre(s, s.most, wire))} r=${((wire / 2) * scale).toFixed(2)} />`,
            )
      }`}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-limits-drawing': LsLimitsDrawing;
  }
}
