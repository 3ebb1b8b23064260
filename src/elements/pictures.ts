import { css, html, svg, type TemplateResult } from 'lit';

/** Three jaws of a chuck seen from its face, centred on the point given. */
const jaws = (cx: number, cy: number) =>
  [0, 120, 240].map(
    (turn) =>
      svg`<path transform="rotate(${turn} ${cx} ${cy})" d=${`M${cx - 9} ${cy - 46}h18v30h-5l-4 5l-4-5h-5z`} />`,
  );

const cross = (x: number, y: number, w: number, h: number) =>
  svg`<path class="no" d=${`M${x} ${y}l${w} ${h}M${x + w} ${y}l${-w} ${h}`} />`;

/** Drawn in a 240 × 150 box, lines 3 wide; `no` is crossed out, `yes` ticked, `thin` is background. */
const DRAWN = {
  /* Chuck face, key in its socket with its T bar, crossed out. */
  'chuck-key': svg`<circle cx="76" cy="78" r="58" /><circle cx="76" cy="78" r="14" class="thin" />${jaws(76, 78)}
    <path class="heavy" d="M127 48l62-26" /><path class="heavy" d="M180 -1l18 46" transform="translate(0 4)" />
    <path d="M127 41l10 14" />${cross(144, 8, 74, 60)}`,
  /* Side view: two jaws press on a bar, arrows towards it, centre in its end. */
  'work-tight': svg`<path d="M8 28h40v94H8z" /><path d="M48 34h34v26H48zM48 90h34v26H48z" />
    <path class="solid" d="M48 62h116v26H48z" /><path class="thin" d="M4 75h232" />
    <path d="M164 75l18-12h50v24h-50z" /><path class="yes" d="M65 6v20M58 18l7 9 7-9M65 144v-20M58 132l7-9 7 9" />`,
  /* Chuck face under its hood: hinge at the back, handle in front, arrow shut. */
  guard: svg`<circle cx="112" cy="88" r="54" /><circle cx="112" cy="88" r="12" class="thin" />${jaws(112, 88)}
    <path class="heavy" d="M42 108A72 72 0 1 1 182 108" /><circle cx="40" cy="114" r="9" class="solid" />
    <path class="heavy" d="M178 108h22" /><path class="yes" d="M192 26q28 26 24 58M205 72l10 15 13-12" />`,
  /* Sleeve rolled above the elbow; hair under a cap; glove crossed out. */
  clothing: svg`<path d="M8 22h34v34H8zM8 48h34" /><path d="M13 56v18l32 36M37 56v10l28 32" />
    <path d="M45 110l-2 12 9 12 14 4 12-10 4-14-8-14-9-2" />
    <path d="M100 52a25 25 0 0 1 50 0z" class="solid" /><path d="M92 52h58M103 54v22a22 22 0 0 0 44 0V54M115 98v14M135 98v14M92 132q2-20 23-20h20q21 0 23 20" />
    <path d="M182 132V94l-10-18 9-5 10 14V38h11v36M202 70V30h11v42M213 70V38h11v94zM182 116h42" />${cross(168, 28, 62, 106)}`,
  /* Handwheel with its crank, half-nut lever in its two places. */
  'handwheel-and-nut': svg`<circle cx="70" cy="76" r="52" /><circle cx="70" cy="76" r="42" class="thin" /><circle cx="70" cy="76" r="10" />
    <path d="M70 66V34M61 81l-28 16M79 81l28 16" /><circle cx="103" cy="40" r="9" class="solid" />
    <path d="M150 46h76v70h-76z" /><circle cx="176" cy="82" r="9" /><path class="heavy" d="M182 76l32-44" /><circle cx="216" cy="28" r="8" class="solid" />
    <path class="thin" d="M184 87l38 20" stroke-dasharray="6 5" /><circle class="thin" cx="229" cy="110" r="8" />`,
  /* Lever on a plate with three places, one of them taken. */
  'speed-lever': svg`<path d="M30 92h180v42H30z" /><circle cx="120" cy="112" r="13" /><path class="heavy" d="M126 100l34-62" /><circle cx="163" cy="31" r="11" class="solid" />
    <path class="thin" d="M114 100L84 44M120 98V34" stroke-dasharray="6 5" />
    <circle cx="79" cy="34" r="8" class="thin" /><circle cx="120" cy="22" r="8" class="thin" /><path class="yes" d="M186 30l8 9 16-20" />`,
  /* Mushroom head on its box, an arrow to press it. */
  estop: svg`<path d="M62 84h116v50H62z" /><path d="M98 84V66h44v18" /><path class="alarm" d="M70 66q0-36 50-36t50 36z" />
    <path class="yes" d="M120 0v20M110 11l10 10 10-10" />`,
  /* Look: an eye. */
  look: svg`<path d="M20 76q100-112 200 0q-100 112-200 0z" /><circle cx="120" cy="76" r="30" /><circle cx="120" cy="76" r="12" class="solid" />`,
} as const;

export type PictureId = keyof typeof DRAWN;

/** Colours and lines of the pictures; belongs to the sheet of whoever shows one. */
export const pictureSheet = css`
  .picture {
    display: block;
    inline-size: min(100%, 20rem);
    fill: none;
    stroke: var(--ink);
    stroke-width: 3;
    stroke-linejoin: round;
    overflow: visible;
  }
  .picture .thin {
    stroke: var(--ink-2);
    stroke-width: 1.8;
  }
  .picture .heavy {
    stroke-width: 7;
  }
  .picture .solid {
    fill: var(--ink);
  }
  .picture .alarm {
    fill: var(--over);
  }
  .picture .no {
    stroke: var(--over);
    stroke-width: 5;
  }
  .picture .yes {
    stroke: var(--ok);
    stroke-width: 5;
  }
`;

/** A line drawing of what to look at, hidden from screen readers: the question beside it says the same. */
export const picture = (id: string): TemplateResult =>
  html`<svg class="picture" viewBox="0 0 240 150" aria-hidden="true">
    ${id in DRAWN ? DRAWN[id as PictureId] : DRAWN.look}
  </svg>`;
