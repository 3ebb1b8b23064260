import { css, html, svg } from 'lit';
import { scaleStyles } from './scale-styles';

export const limitsScaleStyles = [
  scaleStyles,
  css`
    .scale .band {
      fill: var(--ok);
      fill-opacity: 0.25;
      stroke: none;
    }
    .scale .limit {
      stroke-width: 3.4;
    }
    .scale .spread {
      stroke-width: 5;
    }
  `,
];

const WIDTH = 360;
const EDGE = 14;
/** Widest text beside a limit's line, in the drawing's units. */
const ROOM = 84;

/**
 * Where a found size lies: the band between the limits, a pointer, and a bar for its uncertainty. Always wide enough
 * for all three. @param label writes a limit @param words the drawing in words
 */
export const limitsScale = (
  found: { readonly value: number; readonly expanded: number },
  limits: { readonly min: number; readonly max: number },
  label: (x: number) => string,
  words: string,
) => {
  const { value, expanded } = found;
  const { min, max } = limits;
  const middle = (min + max) / 2;
  const half = 1.15 * Math.max((max - min) / 2, Math.abs(value - middle) + expanded);
  const x = (v: number): number => EDGE + ((v - middle) / half + 1) * (WIDTH / 2 - EDGE);
  // The limits' names grow outwards, and stay on the drawing.
  const low = Math.max(x(min) + 6, ROOM);
  const high = Math.min(Math.max(x(max) - 6, low + 12), WIDTH - ROOM);
  const at = x(value);
  return html`<svg class="scale" viewBox="0 0 ${WIDTH} 96" role="img" aria-label=${words}>
    ${svg`<rect class="band" x=${x(min).toFixed(1)} y="12" width=${(x(max) - x(min)).toFixed(1)} height="30" />
    <path d="M4 42H${WIDTH - 4}" />
    <path class="limit" d="M${x(min).toFixed(1)} 6V50M${x(max).toFixed(1)} 6V50" />
    <path class="spread" d="M${x(value - expanded).toFixed(1)} 27H${x(value + expanded).toFixed(1)}" />
    <path d="M${at.toFixed(1)} 12V52" />
    <path class="at" d="M${at.toFixed(1)} 44l-9 16h18z" />
    <text x=${low.toFixed(1)} y="88" text-anchor="end">${label(min)}</text>
    <text x=${high.toFixed(1)} y="88">${label(max)}</text>`}
  </svg>`;
};
