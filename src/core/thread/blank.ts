import { add, div, type Ratio } from '../quantity';
import { limits, type LimitsResult, type Refused } from './limits';
import type { Thread } from './thread';

/** What to turn or bore before threading, in the thread's own unit. */
export interface Blank {
  readonly ok: true;
  readonly kind: 'external' | 'internal';
  readonly unit: 'mm' | 'in';
  readonly min: Ratio;
  readonly max: Ratio;
  /** Middle of the two, exact: what to aim for. */
  readonly aim: Ratio;
  readonly source: Extract<LimitsResult, { ok: true }>['source'];
}

/**
 * Diameter of the blank (external: the limits of the major diameter) or the bore (internal: those of the minor
 * diameter) for single-point threading with a tool that leaves the crest as turned. Refused as limits() refuses.
 */
export const blank = (thread: Thread, classId: string): Blank | Refused => {
  const l = limits(thread, classId);
  if (!l.ok) return l;
  const { min, max } = l.kind === 'external' ? l.major : l.minor;
  if (!min || !max) return { ok: false, refusal: 'no-limits-known' };
  return { ok: true, kind: l.kind, unit: l.unit, min, max, aim: div(add(min, max), 2), source: l.source };
};
