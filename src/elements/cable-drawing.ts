import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { WireColour } from '../core/wiring/record/colour';
import { conductor } from './conductor';
import { base } from './styles';

export interface DrawnWire {
  /** Pins, already written. */
  readonly pins: readonly [left: string, right: string];
  readonly signal: string;
  readonly colour: WireColour | null;
  readonly pair: number | null;
}
/** Wires between the same two connectors, under the connectors' names. */
export interface DrawnBlock {
  readonly left: readonly string[];
  readonly right: readonly string[];
  readonly wires: readonly DrawnWire[];
}
export type DrawnBond = 'direct' | 'capacitor' | 'open' | 'unknown';
export interface DrawnCable {
  readonly blocks: readonly DrawnBlock[];
  /** null: it has none. */
  readonly screen: {
    readonly name: string;
    readonly bonds: readonly [DrawnBond, DrawnBond];
    readonly words: readonly [string, string];
  } | null;
}

/** Text is 19 of 300 across: 18 px on a phone 320 px wide. */
const WIDTH = 300;
const ROW = 50;
const LINE = 22;
const BOX = 36;
const MIDDLE = WIDTH / 2;
const RING = 12;

const EARTH = 'M-11 8H11M-7 13H7M-3 18H3';
const MARKS: Readonly<Record<DrawnBond, string>> = {
  direct: `M0 0V8${EARTH}`,
  capacitor: `M0 -4V0M-9 0H9M-9 4H9M0 4V8${EARTH}`,
  open: 'M-5 -5L5 5M5 -5L-5 5',
  unknown: '',
};

/**
 * A cable between its connectors: pins, conductors with signal and letters of their colour, rings with the number of a
 * twisted pair, the screen and how it is bonded.
 * @element ls-cable-drawing
 * @prop {DrawnCable|null} cable - nothing is drawn without one
 * @prop {string} text - the drawing in words
 * @cssprop --ink, --ink-2, --paper
 */
@customElement('ls-cable-drawing')
export class LsCableDrawing extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: block;
      }
      svg {
        display: block;
        inline-size: 100%;
        max-inline-size: 30rem;
        fill: none;
        overflow: visible;
      }
      .edge,
      .thin {
        stroke: var(--ink);
      }
      .thin {
        stroke-width: 2;
      }
      .ring {
        fill: var(--paper);
      }
      text {
        fill: var(--ink);
        font: 700 19px var(--font);
      }
      .second {
        font-weight: 400;
        fill: var(--ink-2);
      }
      .end {
        text-anchor: end;
      }
      .middle {
        text-anchor: middle;
      }
    `,
  ];
  @property({ attribute: false }) cable: DrawnCable | null = null;
  @property() text = '';

  private pin(x: number, y: number, pin: string): TemplateResult {
    return svg`<rect class="thin" x=${x} y=${y - 16} width=${BOX} height="32" />
      <text class="middle" x=${x + BOX / 2} y=${y + 7}>${pin}</text>`;
  }

  private ring(y: number, wire: DrawnWire, next: DrawnWire | undefined): TemplateResult {
    const [top, low] = [y + RING, y + ROW - RING];
    const twist = [-14, 14].map(
      (x) => `M${MIDDLE} ${top}C${MIDDLE + x} ${top + 9} ${MIDDLE - x} ${low - 9} ${MIDDLE} ${low}`,
    );
    return svg`${next?.pair === wire.pair ? svg`<path class="thin" d=${twist.join('')} />` : nothing}
      <circle class="thin ring" cx=${MIDDLE} cy=${y} r=${RING} />
      <text class="middle" x=${MIDDLE} y=${y + 7}>${wire.pair}</text>`;
  }

  private block({ left, right, wires }: DrawnBlock, top: number): TemplateResult {
    const from = top + left.length * LINE;
    const at = (i: number): number => from + ROW * i + 36;
    return svg`${left.map((t, i) => svg`<text class=${i ? 'second' : ''} x="0" y=${top + LINE * i + 18}>${t}</text>`)}
      ${right.map((t, i) => svg`<text class="end ${i ? 'second' : ''}" x=${WIDTH} y=${top + LINE * i + 18}>${t}</text>`)}
      ${wires.map((w, i) => {
        const y = at(i);
        return svg`${conductor(w.colour, BOX, y, WIDTH - BOX)}${this.pin(0, y, w.pins[0])}${this.pin(WIDTH - BOX, y, w.pins[1])}
          <text x=${BOX + 5} y=${y - 11}>${w.signal}</text>
          <text class="end second" x=${WIDTH - BOX - 5} y=${y - 11}>${w.colour ?? '?'}</text>`;
      })}
      ${wires.map((w, i) => (w.pair === null ? nothing : this.ring(at(i), w, wires[i + 1])))}`;
  }

  private screen({ name, bonds, words }: NonNullable<DrawnCable['screen']>, top: number): TemplateResult {
    const y = top + 34;
    const mark = (x: number, bond: DrawnBond): TemplateResult =>
      bond === 'unknown'
        ? svg`<text class="middle" x=${x} y=${y + 7}>?</text>`
        : svg`<path class="thin" transform="translate(${x} ${y})" d=${MARKS[bond]} />`;
    return svg`<text class="middle second" x=${MIDDLE} y=${y - 9}>${name}</text>
      <path class="thin" stroke-dasharray="5 4" d=${`M${BOX / 2 + 8} ${y}H${WIDTH - BOX / 2 - 8}`} />
      ${mark(BOX / 2, bonds[0])}${mark(WIDTH - BOX / 2, bonds[1])}
      <text class="second" x="0" y=${y + 38}>${words[0]}</text>
      <text class="end second" x=${WIDTH} y=${y + 38}>${words[1]}</text>`;
  }

  protected override render() {
    const { cable } = this;
    if (!cable) return nothing;
    let top = 0;
    const blocks = cable.blocks.map((b) => {
      const drawn = this.block(b, top);
      top += b.left.length * LINE + b.wires.length * ROW + 10;
      return drawn;
    });
    const screen = cable.screen && this.screen(cable.screen, top);
    const height = top + (screen ? 80 : 0);
    return html`<svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label=${this.text}>
      ${blocks}${screen}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-cable-drawing': LsCableDrawing;
  }
}
