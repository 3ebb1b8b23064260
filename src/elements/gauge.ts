import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { numberStep } from './gauge-scale';
import { base } from './styles';

const CX = 190;
const CY = 176;
const BAND = 134;

/**
 * Half-circle speed scale, engraved lines in tens. A solid arc within the limit, hatched near it, dotted over it; with
 * nothing known there is no arc at all, only the scale. Values are revolutions per minute, drawing only.
 * @element ls-gauge
 * @prop {number} max - end of the scale, greater than zero
 * @prop {number|null} within - end of the solid arc
 * @prop {number|null} limit - start of the dotted arc
 * @prop {number|null} set - where the needle stands; no needle when null; held at the scale's ends
 * @prop {number[]} speeds - the spindle's own speeds, as rings along the scale
 * @prop {string} text - the whole dial in words
 * @cssprop --ok, --near, --over, --ink - theme colours
 */
@customElement('ls-gauge')
export class LsGauge extends LitElement {
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
        max-block-size: 100%;
        fill: none;
        stroke: var(--ink);
      }
      text {
        fill: var(--ink);
        stroke: none;
        font-family: var(--font);
        font-size: clamp(20px, 1.25rem, 24px);
      }
      .minor {
        stroke-width: 1.2;
      }
      .mid {
        stroke-width: 2;
      }
      .major {
        stroke-width: 3.4;
      }
      .band {
        stroke-width: 11;
      }
      .band.within {
        stroke: var(--ok);
      }
      .band.near {
        stroke: var(--near);
        stroke-dasharray: 4.5 2.5;
      }
      .band.over {
        stroke: var(--over);
        stroke-width: 4.5;
        stroke-linecap: round;
        stroke-dasharray: 0 8;
      }
      .speed {
        stroke-width: 2.4;
        fill: var(--paper);
      }
      .needle {
        stroke: none;
        fill: var(--ink);
      }
    `,
  ];

  @property({ type: Number }) max = 1000;
  @property({ type: Number }) within: number | null = null;
  @property({ type: Number }) limit: number | null = null;
  @property({ type: Number }) set: number | null = null;
  @property({ attribute: false }) speeds: readonly number[] = [];
  @property() text = '';

  private at(rpm: number, radius: number): readonly [number, number] {
    const share = Math.min(Math.max(rpm / this.max, 0), 1);
    const angle = Math.PI * (1 - share);
    return [CX + radius * Math.cos(angle), CY - radius * Math.sin(angle)];
  }

  private arc(kind: 'within' | 'near' | 'over', from: number, to: number) {
    const start = Math.max(from, 0);
    const end = Math.min(to, this.max);
    if (!(end > start)) return nothing;
    const [x1, y1] = this.at(start, BAND);
    const [x2, y2] = this.at(end, BAND);
    return svg`<path class="band ${kind}" d="M${x1} ${y1}A${BAND} ${BAND} 0 0 1 ${x2} ${y2}" />`;
  }

  private bands() {
    const { within, limit, max } = this;
    return [
      within === null ? nothing : this.arc('within', 0, limit === null ? within : Math.min(within, limit)),
      within === null || limit === null ? nothing : this.arc('near', within, limit),
      limit === null ? nothing : this.arc('over', limit, max),
    ];
  }

  private lines() {
    const step = numberStep(this.max);
    const lines = Math.floor((this.max / step) * 10 + 1e-9);
    return Array.from({ length: lines + 1 }, (_, i) => {
      const rpm = (i * step) / 10;
      const kind = i % 10 === 0 ? 'major' : i % 5 === 0 ? 'mid' : 'minor';
      const [x1, y1] = this.at(rpm, 124);
      const [x2, y2] = this.at(rpm, kind === 'major' ? 100 : kind === 'mid' ? 108 : 114);
      return svg`<line class=${kind} x1=${x1} y1=${y1} x2=${x2} y2=${y2} />`;
    });
  }

  /** Numbers stand outside the arc, so that the needle never lies on one; those at the ends hang below. */
  private numbers() {
    const step = numberStep(this.max);
    return Array.from({ length: Math.floor(this.max / step + 1e-9) + 1 }, (_, i) => {
      const rpm = i * step;
      const share = rpm / this.max;
      const low = share < 0.06 || share > 0.94;
      const [x, y] = this.at(rpm, low ? BAND - 12 : BAND + 13);
      const anchor = low || Math.abs(share - 0.5) < 0.06 ? 'middle' : share < 0.5 ? 'end' : 'start';
      return svg`<text x=${x} y=${low ? CY + 26 : y + 4} text-anchor=${anchor}>${String(rpm)}</text>`;
    });
  }

  private needle(set: number) {
    const [x, y] = this.at(set, 120);
    const [ux, uy] = [(x - CX) / 120, (y - CY) / 120];
    const [tx, ty] = [x + uy, y - ux];
    return svg`<path class="needle" d="M${CX + uy * 4.5} ${CY - ux * 4.5}L${tx} ${ty}L${x - uy} ${y + ux}L${CX - uy * 4.5} ${CY + ux * 4.5}z" />
      <circle class="needle" cx=${CX} cy=${CY} r="10" />`;
  }

  protected override render() {
    if (!(this.max > 0)) return nothing;
    return html`<svg viewBox="0 0 380 208" role="img" aria-label=${this.text}>
      ${this.bands()}${this.lines()}${this.numbers()}${this.set === null ? nothing : this.needle(this.set)}
      ${this.speeds.map((rpm) => {
        const [cx, cy] = this.at(rpm, 90);
        return rpm > this.max ? nothing : svg`<circle class="speed" cx=${cx} cy=${cy} r="4.5" />`;
      })}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-gauge': LsGauge;
  }
}
