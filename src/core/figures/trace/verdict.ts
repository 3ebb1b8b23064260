import { MARGIN_ELECTRONIC, type Standing } from '../standing';
import { toNumber } from '../../quantity';
import { perDiameter } from '../../drive/formats';
import type { TraceResult } from '../../drive/trace';

/** What the error does to the thread, each against what is allowed where that is known. Lengths in mm. */
export interface TraceVerdict {
  /** Pitch error over the nut's length as a change of pitch diameter; null for flanks that stand upright. */
  readonly shift: number | null;
  readonly tolerance: number | null;
  readonly nut: Standing;
  /** Against the practical test of a centre lathe. */
  readonly over60: Standing;
  readonly over300: Standing;
  readonly lost: Standing;
}

/** Lead of a thread cut on a centre lathe: 0.015 mm in any 60, 0.04 in 300. ISO 1708 (from memory). */
export const LATHE_60 = 0.015;
export const LATHE_300 = 0.04;
/** A pitch error may eat half of the pitch-diameter tolerance: common practice. Beyond all of it nothing is left. */
const HALF = 0.5;

const stands = (value: number, limit: number | null, margin: number): Standing => {
  if (limit === null) return 'unknown';
  if (value > limit) return 'over';
  return value > limit * margin ? 'near' : 'within';
};

/**
 * Judges a run. @param tolerance of the pitch diameter, mm, or null where the class has none
 * @param flanks degrees, or null where there is no thread form
 */
export const judgeTrace = (
  r: TraceResult,
  tolerance: number | null,
  flanks: readonly [number, number] | null,
): TraceVerdict => {
  const k = flanks && perDiameter(flanks);
  const shift = k === null ? null : r.nut * k;
  const lathe = toNumber(MARGIN_ELECTRONIC);
  const { output, motor, missed, extra } = r.lost;
  return {
    shift,
    tolerance,
    nut: shift === null ? 'unknown' : stands(shift, tolerance, HALF),
    over60: stands(r.over60, LATHE_60, lathe),
    over300: stands(r.over300, LATHE_300, lathe),
    lost: output !== 0 || motor !== 0 || missed !== 0 || extra !== 0 ? 'over' : 'within',
  };
};
