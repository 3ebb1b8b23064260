import { compare, div, min, mul, ratio, type Ratio } from '../../quantity';

/** Longest cable of all in the guide, m. */
const LONGEST = ratio(1219);
/** Length times rate of the guide at its fast end, the least of it: 12 m × 10 Mb/s. */
const PRODUCT = ratio(120_000_000);
const FASTEST = ratio(10_000_000);

/**
 * How far a differential line reaches, m, at a rate in bits a second; null where it is faster than the guide goes.
 * Source: the length-to-rate guide of TIA-422 (12 m at 10 Mb/s, 122 m at 1 Mb/s, 1219 m at 100 kb/s), on its careful side.
 */
export const differentialReach = (rate: Ratio): Ratio | null => {
  if (compare(rate, FASTEST) > 0) return null;
  return compare(rate, 0) > 0 ? min(LONGEST, div(PRODUCT, rate)) : LONGEST;
};

/** How far a single-ended line should go near an inverter, m (common practice). */
export const SINGLE_ENDED_REACH = ratio(3);

/** Bits a second of a square wave: two for each period. @param frequency Hz */
export const bitRate = (frequency: Ratio): Ratio => mul(2, frequency);
