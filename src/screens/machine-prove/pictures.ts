import { html, svg } from 'lit';
import type { CommissioningId } from '../../core/context';
import { proveText as t } from '../../text/prove';

/** Drawn in a 240 × 120 box like the pictures of the checks: `yes` is what to look at, `thin` the background. */
const DRAWN = {
  slack: svg`<circle cx="58" cy="66" r="36" /><circle cx="186" cy="66" r="28" /><circle class="thin" cx="58" cy="66" r="12" /><circle class="thin" cx="186" cy="66" r="10" />
    <path d="M60 30L122 50L184 38M60 102L184 94" /><path class="yes" d="M122 8v34M114 33l8 9 8-9" /><path class="solid" d="M55 44h6v8h-6zM183 50h6v7h-6z" />`,
  ways: svg`<path d="M6 10h44v72H6z" /><path class="thin" d="M0 46h96M8 100h224" stroke-dasharray="12 4" /><path d="M0 114h236" />
    <path class="thin" d="M18 18a56 56 0 0 1 0 54M18 72l-3-12M18 72l11-7" /><path d="M136 70h76v44h-76zM156 70V52h34v18" />
    <path class="yes" d="M126 84H66M76 76l-10 8 10 8" />`,
  mark: svg`<circle cx="110" cy="62" r="50" /><circle class="thin" cx="110" cy="62" r="12" />
    <path class="yes" d="M160 62h-22" /><path class="solid" d="M166 62l26-9v18z" /><path d="M192 62h30V112" />
    <path class="thin" d="M84 26a46 46 0 0 1 46-6M130 20l-12-6M130 20l-10 8" />`,
  indicator: svg`<path d="M4 104h232" /><path d="M120 104V24h96v80" /><circle cx="52" cy="44" r="26" />
    <path class="yes" d="M52 44l12-14" /><path d="M78 44h42M30 104V92h44v12M52 70v22" />
    <path class="thin" d="M146 66h44M190 66l-10-7M190 66l-10 7" />`,
  belt: svg`<circle cx="60" cy="34" r="22" /><path class="thin" d="M42 14a28 28 0 0 1 40 4M82 18l-12-2M82 18l1-12" />
    <circle cx="60" cy="92" r="26" /><path class="thin" d="M60 66v52M34 92h52" />
    <path class="thin" stroke-dasharray="6 5" d="M38 34l-4 58M82 34l4 58" /><path d="M130 62h70" /><path class="yes" d="M120 92h90" />`,
  scratch: svg`<path d="M10 30h220v64H10z" /><path class="thin" d="M4 62h232" />
    <path d="M40 94l18-64M76 94l18-64M112 94l18-64M148 94l18-64M184 94l18-64" />
    <path class="yes" d="M58 12h144M58 6v12M202 6v12" />`,
  run: svg`<path d="M10 80h220" /><path class="thin" d="M120 20v60" stroke-dasharray="6 5" /><path d="M150 78l-14-40h28z" />
    <path class="yes" d="M120 104h30M120 98v12M150 98v12" /><path class="thin" d="M60 50h44M104 50l-10-7M104 50l-10 7" />`,
} as const;

const OF: Readonly<Record<CommissioningId, keyof typeof DRAWN>> = {
  'look-over': 'slack',
  direction: 'ways',
  counts: 'mark',
  'there-and-back': 'mark',
  'screw-turns': 'mark',
  coast: 'mark',
  drift: 'belt',
  'screw-travel': 'indicator',
  travel: 'indicator',
  backlash: 'indicator',
  repeat: 'indicator',
  ramp: 'indicator',
  scratch: 'scratch',
  're-entry': 'scratch',
  'stopping-time': 'run',
};

/** A simple picture of a test. */
export const testPicture = (test: CommissioningId) => {
  const id = OF[test];
  return html`<svg class="picture" viewBox="0 0 240 120" role="img" aria-label=${t.pictures[id]}>
    ${DRAWN[id]}
  </svg>`;
};
