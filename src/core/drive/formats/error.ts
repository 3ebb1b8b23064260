import { leadNumber, mul, toNumber, type Lead, type Ratio } from '../../quantity';
import type { Holding } from './hold';
import { runningSum } from './running-sum';

/** The drive a ratio belongs to: the exact ratio, the lead cut, and what turns counts and steps into lengths. */
export interface Chain {
  /** Exact steps per count. */
  readonly ratio: Lead;
  readonly lead: Lead;
  readonly counts: Ratio;
  /** One step on the carriage, mm. */
  readonly step: Ratio;
}

export interface HeldError {
  /** Error over the length, ppm; null where it does not follow the length. */
  readonly ppm: number | null;
  /** Farthest from where the carriage should be, µm, with its sign. */
  readonly um: number;
}

/** The running sum against the exact product, mm, after so many counts. */
const sumOff = (h: Holding, c: Chain, counts: number): { mm: number; part: number } => {
  const should = leadNumber(c.ratio) * counts;
  const off = runningSum(toNumber(h.ratio), counts).sum - should;
  return { mm: off * toNumber(c.step), part: should === 0 ? 0 : off / should };
};

/**
 * Error over a length of thread, from a controller that starts afresh. ppm × length where it grows with travel; the
 * running sum bit for bit; a count that starts afresh each rev is off by the part of a step it has rounded away.
 * @param length mm, above 0
 */
export const errorOver = (h: Holding, c: Chain, length: number): HeldError => {
  if (h.grows === 'nothing') return { ppm: 0, um: 0 };
  if (h.grows === 'counts') {
    const off = sumOff(h, c, Math.floor((length / leadNumber(c.lead)) * toNumber(c.counts)));
    return { ppm: off.part * 1e6, um: off.mm * 1000 };
  }
  if (h.grows === 'rev') {
    const rounded = toNumber(mul(h.ratio, c.counts)) - leadNumber(c.ratio) * toNumber(c.counts);
    return { ppm: null, um: rounded * toNumber(c.step) * 1000 };
  }
  return { ppm: h.ppm, um: (h.ppm * length) / 1000 };
};

/**
 * How far the groove has moved when a spindle has turned so many revs since the first pass, µm, with its sign: with
 * the nut open the error of every rev counts, not that of the thread alone. Own derivation.
 * @param revs spindle revs, the nut open or not
 */
export const shiftAfter = (h: Holding, c: Chain, revs: number): number => {
  // Corrected at each index, it has no memory of earlier revs.
  if (h.grows === 'nothing' || h.grows === 'rev') return 0;
  if (h.grows === 'counts') return sumOff(h, c, Math.floor(revs * toNumber(c.counts))).mm * 1000;
  return h.ppm * leadNumber(c.lead) * revs * 1e-3;
};
