import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { corners, flats, roundedPath, type ProfileShape } from './profile-path';
import { base } from './styles';

/** A tool's nose standing in the groove: rounded or flat, its tip `depth` below the crest. */
export interface ProfileNose {
  readonly radius?: number;
  readonly flat?: number;
  readonly depth: number;
}

const WIDTH = 360;
const ABOVE = 46;
const BELOW = 22;

/**
 * A thread's profile to scale, in section: outline, hatched metal, pitch line, pitch dimension and, when given, the
 * tool's nose in a groove.
 * @element ls-profile
 * @prop {ProfileShape|null} shape - nothing is drawn without one, or with one that isn't a thread
 * @prop {ProfileNose|null} nose
 * @prop {number} turns - ridges shown, 3 unless set
 * @prop {string} pitchText - figure on the dimension
 * @prop {string} text - the drawing in words
 * @cssprop --ink, --hair, --machine, --paper
 */
@customElement('ls-profile')
export class LsProfile extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
        /* As wide as a phone, also on a wide screen; never higher than half of it. */
        inline-size: min(100%, 26rem, 110vh);
        margin-inline: auto;
      }
      svg {
        display: block;
        inline-size: 100%;
        fill: none;
        stroke: var(--ink);
        overflow: visible;
      }
      .outline {
        stroke-width: 3;
        stroke-linejoin: round;
      }
      .hatch {
        stroke: var(--hair);
        stroke-width: 1.5;
      }
      .pitch-line {
        stroke: var(--machine);
        stroke-width: 1.6;
        stroke-dasharray: 16 4 3 4;
      }
      .dimension {
        stroke-width: 1.6;
      }
      .tip {
        fill: var(--ink);
        stroke: none;
      }
      .nose {
        fill: var(--machine);
        fill-opacity: 0.25;
        stroke: var(--machine);
        stroke-width: 2.4;
      }
      text {
        fill: var(--ink);
        stroke: none;
        font: 700 clamp(20px, 1.25rem, 26px) var(--font);
      }
    `,
  ];

  @property({ attribute: false }) shape: ProfileShape | null = null;
  @property({ attribute: false }) nose: ProfileNose | null = null;
  @property({ type: Number }) turns = 3;
  @property() pitchText = '';
  @property() text = '';

  private dimension(scale: number, pitch: number) {
    const [x1, x2, y] = [(pitch / 2) * scale, (pitch / 2 + pitch) * scale, -16];
    return svg`<g class="dimension">
        <path d="M${x1} -6V${y - 8}M${x2} -6V${y - 8}M${x1} ${y}H${x2}" />
        <path class="tip" d="M${x1} ${y}l10 -3.5v7zM${x2} ${y}l-10 -3.5v7z" />
      </g>
      <text x=${(x1 + x2) / 2} y=${y - 8} text-anchor="middle">${this.pitchText}</text>`;
  }

  /** The tool's outline: flanks of the thread's own angles, closed above the crest, nose rounded or flat. */
  private tool(shape: ProfileShape, nose: ProfileNose, scale: number) {
    const [right, left] = shape.flanks.map((a) => Math.tan((a * Math.PI) / 180)) as [number, number];
    const x = shape.pitch * (this.turns > 2 ? 2 : 1);
    const top = -0.12 * shape.pitch;
    const r = nose.radius ?? 0;
    const included = Math.atan(right) + Math.atan(left);
    const sharp = r > 0 && included > 0 ? nose.depth - r + r / Math.sin(included / 2) : nose.depth;
    const half = (nose.flat ?? 0) / 2;
    const tip =
      r > 0
        ? [{ x, y: sharp, r }]
        : [
            { x: x - half, y: sharp, r: 0 },
            { x: x + half, y: sharp, r: 0 },
          ];
    const list = [
      { x: x - half - (sharp - top) * right, y: top, r: 0 },
      ...tip,
      { x: x + half + (sharp - top) * left, y: top, r: 0 },
    ];
    return svg`<path class="nose" d=${`${roundedPath(list, scale)}z`} />`;
  }

  protected override render() {
    const s = this.shape;
    if (!s || !(s.pitch > 0) || !(s.depth > 0) || !(s.pitchDepth >= 0) || s.pitchDepth > s.depth)
      return nothing;
    // A hundredth of the pitch is left to standards' printed roundings.
    if (flats(s).crest < -s.pitch / 100 && s.crestRadius === 0) return nothing;
    const scale = WIDTH / (this.turns * s.pitch);
    const depth = s.depth * scale;
    const line = roundedPath(corners(s, this.turns), scale);
    const bottom = depth + BELOW;
    const outline = svg`<path id="metal" d=${`${line}V${bottom}H0z`} />`;
    return html`<svg viewBox="0 ${-ABOVE} ${WIDTH} ${ABOVE + bottom}" role="img" aria-label=${this.text}>
      <defs>
        <clipPath id="inside">${outline}</clipPath>
        <clipPath id="frame"><rect x="0" y=${-ABOVE} width=${WIDTH} height=${ABOVE + bottom} /></clipPath>
      </defs>
      <g clip-path="url(#frame)">
        <g clip-path="url(#inside)">
          ${Array.from({ length: Math.ceil((WIDTH + bottom) / 11) }, (_, i) => svg`<path class="hatch" d="M${i * 11} 0L${i * 11 - bottom} ${bottom}" />`)}
        </g>
      </g>
      <g clip-path="url(#frame)">
        ${this.nose ? this.tool(s, this.nose, scale) : nothing}
        <path class="outline" d=${line} />
        <path class="pitch-line" d="M0 ${s.pitchDepth * scale}H${WIDTH}" />
      </g>
      ${this.dimension(scale, s.pitch)}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-profile': LsProfile;
  }
}
