import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { groovePath, reach, type GrooveCut, type GrooveTool } from './groove-path';
import { base } from './styles';

const WIDTH = 360;
/** Largest height of the groove itself, and what is left beside and below it. */
const HEIGHT = 250;
const BESIDE = 34;
const BELOW = 26;
const ABOVE = 34;

/**
 * The section of a thread's groove to scale as it fills pass by pass: the chips taken so far filled by turns, the one
 * last taken in the machine's colour, those to come as outlines.
 * @element ls-groove-section
 * @prop {GrooveTool|null} tool
 * @prop {GrooveCut[]} cuts - one for each pass, in their order
 * @prop {number} taken - passes filled
 * @prop {string} left - what lies to the left
 * @prop {string} right - what lies to the right
 * @prop {string} text - the drawing in words
 * @cssprop --ink, --hair, --machine, --paper
 */
@customElement('ls-groove-section')
export class LsGrooveSection extends LitElement {
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
      .hatch {
        stroke: var(--hair);
        stroke-width: 1.5;
      }
      .surface {
        stroke-width: 3;
      }
      .cut {
        fill: var(--paper);
        stroke-width: 1.4;
        stroke-linejoin: round;
      }
      .odd {
        fill: var(--hair);
      }
      .to-come {
        fill: none;
        stroke-width: 1;
        stroke-dasharray: 4 3;
      }
      .now {
        fill: var(--machine);
        stroke-width: 2.4;
      }
      .end {
        stroke-width: 3;
        stroke-linejoin: round;
      }
      text {
        fill: var(--ink);
        stroke: none;
        font: 700 clamp(18px, 1.125rem, 24px) var(--font);
      }
    `,
  ];

  @property({ attribute: false }) tool: GrooveTool | null = null;
  @property({ attribute: false }) cuts: readonly GrooveCut[] = [];
  @property({ type: Number }) taken = 0;
  @property() left = '';
  @property() right = '';
  @property() text = '';

  protected override render() {
    const { tool, cuts, taken } = this;
    const last = cuts.at(-1);
    if (!tool || !last || !(last.depth > 0)) return nothing;
    const sides = cuts.map((c) => {
      const w = reach(tool, c.depth);
      return { left: c.at - w.left, right: c.at + w.right };
    });
    const from = Math.min(...sides.map((s) => s.left));
    const wide = Math.max(...sides.map((s) => s.right)) - from;
    const scale = Math.min((WIDTH - 2 * BESIDE) / wide, HEIGHT / last.depth);
    // The finished groove is in the middle where the drawing is as high as it may be.
    const shift = (WIDTH - wide * scale) / 2 - from * scale;
    const bottom = last.depth * scale + BELOW;
    const path = (c: GrooveCut) => groovePath(tool, c, scale);
    // The deepest first, so that each shallower one leaves of it the chip alone.
    const filled = cuts
      .map((c, i) => ({ c, i }))
      .slice(0, taken)
      .reverse();
    return html`<svg viewBox="0 ${-ABOVE} ${WIDTH} ${ABOVE + bottom}" role="img" aria-label=${this.text}>
      <defs>
        <clipPath id="metal"><rect x="0" y="0" width=${WIDTH} height=${bottom} /></clipPath>
      </defs>
      <g clip-path="url(#metal)">
        ${Array.from({ length: Math.ceil((WIDTH + bottom) / 11) }, (_, i) => svg`<path class="hatch" d="M${i * 11} 0L${i * 11 - bottom} ${bottom}" />`)}
      </g>
      <path class="surface" d="M0 0H${WIDTH}" />
      <g transform="translate(${shift} 0)">
        ${filled.map(
          ({ c, i }) =>
            svg`<path class="cut ${i === taken - 1 ? 'now' : i % 2 ? 'odd' : ''}" d=${path(c)} />`,
        )}
        ${cuts.slice(taken).map((c) => svg`<path class="cut to-come" d=${path(c)} />`)}
        <path class="end" d=${path(last)} />
      </g>
      <text x="4" y="-12">${this.left}</text>
      <text x=${WIDTH - 4} y="-12" text-anchor="end">${this.right}</text>
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-groove-section': LsGrooveSection;
  }
}
