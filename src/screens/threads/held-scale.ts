import { html, svg } from 'lit';
import type { Measure } from '../../core/drive/formats';
import { marked } from '../../text/numbers';

const WIDTH = 360;
const EDGE = 32;
const [LOW, HIGH] = [-2, 4];
const TICKS = ['0.01', '', '1', '', '100', '', '10k'];

/** Errors of lead on an axis of powers of ten, ppm: the measures as rules, a pointer for this one. */
export const heldScale = (ppm: number, measures: readonly Measure[], words: string) => {
  const x = (p: number): number => {
    const power = p > 0 ? Math.min(HIGH, Math.max(LOW, Math.log10(p))) : LOW;
    return EDGE + ((power - LOW) / (HIGH - LOW)) * (WIDTH - 2 * EDGE);
  };
  const at = x(ppm);
  return html`<svg class="scale" viewBox="0 0 ${WIDTH} 96" role="img" aria-label=${words}>
    ${svg`<path d="M${EDGE} 48H${WIDTH - EDGE}" />
    ${measures.map((m) => svg`<path d="M${x(m.ppm).toFixed(1)} 34V48" />`)}
    ${TICKS.map(
      (text, i) =>
        svg`<path d="M${x(10 ** (i + LOW)).toFixed(1)} 48v10" /><text x=${x(10 ** (i + LOW)).toFixed(1)} y="84" text-anchor="middle">${marked(text)}</text>`,
    )}
    <path class="at" d="M${at.toFixed(1)} 32l-9 -18h18z" />`}
  </svg>`;
};
