import { mul, ratio, toNumber, type Ratio } from '../../quantity';
import * as guide from '../reach';

/** How far a differential line reaches at a rate in bits a second, whole metres; null where it is faster than the guide goes. */
export const differentialReach = (rate: Ratio): Ratio | null => {
  const metres = guide.differentialReach(toNumber(rate));
  // The guide's own points are whole metres: no rounding of the logarithm takes one of them away.
  return metres === null ? null : ratio(BigInt(Math.floor(metres + 1e-6)));
};

/** How far a single-ended line should go near an inverter, m (common practice). */
export const SINGLE_ENDED_REACH = ratio(guide.SINGLE_ENDED_REACH);

/** Bits a second of a square wave: two for each period. @param frequency Hz */
export const bitRate = (frequency: Ratio): Ratio => mul(2, frequency);
