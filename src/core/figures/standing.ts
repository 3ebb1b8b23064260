import { compare, mul, ratio, type Ratio } from '../quantity';

/** How a figure stands to its limit. On screen: OK, Close, Too much, Not known. */
export type Standing = 'within' | 'near' | 'over' | 'unknown';

/** `near` begins at the limit times its margin. Common practice; named once, here. */
export const MARGIN_ELECTRONIC = ratio(4, 5);
/** Of a stepper's pull-out torque: common practice uses no more than half of it. */
export const MARGIN_PULL_OUT = ratio(1, 2);
/** For limits that already carry a safety factor, or that are a maker's mark not to be passed. */
export const MARGIN_NONE = ratio(1);

/** within up to limit × margin, near up to the limit, over beyond it. */
export const standingOf = (demand: Ratio, limit: Ratio, margin: Ratio): Standing => {
  if (compare(demand, limit) > 0) return 'over';
  return compare(demand, mul(limit, margin)) > 0 ? 'near' : 'within';
};

const RANK: readonly Standing[] = ['within', 'near', 'unknown', 'over'];

/** The worst of several: over, then unknown, then near. Of none at all: unknown, for nothing was judged. */
export const worst = (all: readonly Standing[]): Standing =>
  all.length === 0 ? 'unknown' : all.reduce((w, s) => (RANK.indexOf(s) > RANK.indexOf(w) ? s : w));
