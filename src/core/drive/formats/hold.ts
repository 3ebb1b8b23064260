import { bestFraction } from '../gearing';
import {
  compare,
  div,
  equal,
  mul,
  PI_HIGH,
  PI_LOW,
  ppm,
  ratio,
  roundTo,
  roundWhole,
  add,
} from '../../quantity';
import type { Lead, Ratio } from '../../quantity';
import { FLOAT32_BITS, FLOAT64_BITS, nearestFloat } from './binary';
import { growsWith, type Format, type Grows } from './format';

export interface Holding {
  /** What the controller keeps, steps per count. */
  readonly ratio: Ratio;
  /** Held so that nothing ever adds up. Never true of single precision, whose counting ends at 2^24. */
  readonly exact: boolean;
  /** Error of the number kept, ppm. */
  readonly ppm: number;
  readonly grows: Grows;
}

/** A rational so near to a ratio that carries π that no format tells them apart. */
const target = (r: Lead): Ratio => (r.pi ? mul(r.mm, div(add(PI_LOW, PI_HIGH), 2)) : r.mm);

const kept = (format: Format, r: Ratio, counts: Ratio): Ratio | null => {
  switch (format.kind) {
    case 'integers': {
      const best = bestFraction(r, format.topMax, format.bottomMax);
      return best && ratio(best.top, best.bottom);
    }
    case 'decimal':
      return roundTo(r, format.digits);
    case 'fixed-rounded':
    case 'fixed-truncated': {
      const one = 1n << BigInt(format.bits);
      return ratio(roundWhole(mul(r, one), format.kind === 'fixed-rounded' ? 'nearest' : 'down'), one);
    }
    case 'float32':
    case 'float32-sum':
      return nearestFloat(r, FLOAT32_BITS);
    case 'float64':
      return nearestFloat(r, FLOAT64_BITS);
    case 'rev-count':
      return div(roundWhole(mul(r, counts), 'nearest'), counts);
    case 'rate':
      return null;
  }
};

/**
 * What a controller keeps of a ratio, and how far off that is. null where it keeps none: the number is too small
 * for the format, or it holds a rate and no ratio. Source: own reckoning in whole numbers.
 * @param r steps per count, above 0 @param counts per spindle rev
 */
export const hold = (format: Format, r: Lead, counts: Ratio): Holding | null => {
  const value = kept(format, target(r), counts);
  if (!value || compare(value, 0) <= 0) return null;
  const same = !r.pi && equal(value, r.mm);
  const single = format.kind === 'float32' || format.kind === 'float32-sum';
  const exact = same && !single;
  return {
    ratio: value,
    exact,
    ppm: same ? 0 : ppm(value, r.mm, r.pi),
    grows: exact ? 'nothing' : growsWith(format.kind),
  };
};
