import { ceil, div, max, ONE, ratio, toNumber, type Ratio } from '../../quantity';

/**
 * What can be measured of the chain from spindle to carriage (each answers another part of it):
 * `counts` over N spindle turns; `screw` turns of the leadscrew over N spindle turns, nut open; `carriage` travel over
 * N leadscrew turns; `travel` measured against commanded; `back`, how far off the carriage stands after there and back.
 */
export const FAULT_TESTS = ['counts', 'screw', 'carriage', 'travel', 'back'] as const;
export type FaultTest = (typeof FAULT_TESTS)[number];

/**
 * One reading. `got`: counts, screw turns or mm. `over`: spindle turns (counts, screw), screw turns (carriage) or the
 * mm commanded (travel, back), above 0. `half`: how far each end may be misread, in the unit of `got`.
 */
export interface Reading {
  readonly test: FaultTest;
  readonly got: Ratio;
  readonly over: Ratio;
  readonly half: Ratio;
}

/** What the profile expects of each test; null where a field isn't known. */
export interface Expected {
  /** Counts per spindle turn. */
  readonly counts: Ratio | null;
  /** Leadscrew turns per spindle turn at the lead that is set. */
  readonly screw: Ratio | null;
  /** Travel per leadscrew turn, mm. */
  readonly carriage: Ratio | null;
}

/** A reading as the finder weighs it: measured ÷ expected (for `back`: mm), and its standard uncertainty. */
export interface Weighed {
  readonly test: FaultTest;
  readonly value: number;
  readonly u: number;
  /** Travel in mm over which it was taken; 0 for tests that move nothing. */
  readonly length: number;
}

/**
 * Standard uncertainty of a difference of two readings, each within ±half of the truth: half/√3 each, times √2
 * (JCGM 100:2008, 4.3.7 and 5.1.2).
 */
export const standard = (half: number): number => half * Math.sqrt(2 / 3);

/** How far a mark may be off at each end: a chuck's rim, a screw's collar, degrees (common practice). */
const MARK = { spindle: 1, screw: 5 };
/** A caliper or a dial indicator over its travel, mm (common practice). */
const LENGTH = ratio(3, 100);

/** The ± at each end that is taken where none was said, in the unit of `got`. */
export const usualHalf = (test: FaultTest, e: Expected): Ratio => {
  if (test === 'screw') return ratio(MARK.screw, 360);
  if (test !== 'counts') return LENGTH;
  return e.counts ? max(ONE, ratio(ceil(div(e.counts, 360 / MARK.spindle)))) : ONE;
};

/** null when the profile doesn't say what to expect. */
export const weigh = (r: Reading, e: Expected): Weighed | null => {
  const [got, over, half] = [toNumber(r.got), toNumber(r.over), toNumber(r.half)];
  if (!(over > 0) || !(half > 0)) return null;
  if (r.test === 'back') return { test: r.test, value: got, u: standard(half), length: over };
  const per = r.test === 'travel' ? 1 : e[r.test] && toNumber(e[r.test] as Ratio);
  if (!per) return null;
  const scale = 1 / (per * over);
  const length = r.test === 'travel' ? over : r.test === 'carriage' ? over * per : 0;
  return { test: r.test, value: got * scale, u: standard(half) * scale, length };
};
