import { html, nothing, svg } from 'lit';
import type { CommissioningId } from '../../core/context';
import { proveText as t } from '../../text/prove';

/** Drawn in a 240 × 120 box like the pictures of the checks: `yes` is what to look at, `thin` the background. */
const DRAWN = {
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

const OF: Readonly<Partial<Record<CommissioningId, keyof typeof DRAWN>>> = {
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

/** A simple picture of a test, where one helps. */
export const testPicture = (test: CommissioningId) => {
  const id = OF[test];
  return id
    ? html`<svg class="picture" viewBox="0 0 240 120" role="img" aria-label=${t.pictures[id]}>
        ${DRAWN[id]}
      </svg>`
    : nothing;
};
