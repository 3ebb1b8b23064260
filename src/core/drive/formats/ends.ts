import { toNumber, type Ratio } from '../../quantity';
import type { Format } from './format';
import type { Holding } from './hold';
import { stallOf } from './running-sum';

/** First whole number to which one more can't be added in single precision: 24 bits of significand (IEEE 754). */
export const FLOAT32_COUNTS = 2 ** 24;

/** Where counting ends: so many counts from the start, that is so many spindle revs. */
export interface Ending {
  readonly counts: number;
  readonly revs: number;
}

/**
 * Where a format stops counting, from a fresh start; null where it never does. A single-precision product ends with its
 * counter at 2^24 counts, where that counter is of single precision too; a running sum where it stands still.
 * @param counts per spindle rev
 */
export const endOf = (format: Format, h: Holding, counts: Ratio): Ending | null => {
  if (format.kind !== 'float32' && format.kind !== 'float32-sum') return null;
  const at = format.kind === 'float32' ? FLOAT32_COUNTS : stallOf(toNumber(h.ratio));
  return { counts: at, revs: at / toNumber(counts) };
};

/** Steps that a ratio off by so many ppm has drifted after some seconds at a speed. Own derivation. */
export const driftSteps = (ppm: number, stepsPerRev: number, rpm: number, seconds: number): number =>
  ((ppm * 1e-6 * stepsPerRev * rpm) / 60) * seconds;
