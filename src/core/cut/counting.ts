import { div, mul, type Ratio } from '../quantity';

/** Longer waits than this, s, are refused: own choice; nobody stands by a turning spindle for longer without looking away. */
export const LONGEST_WAIT = 60;

export interface Wait {
  /** Spindle revs from one closing to the next. */
  readonly revs: bigint;
  /** The same in counts, exact: a fraction is kept as one and each closing rounded once. Null: no counts known. */
  readonly counts: Ratio | null;
  /** The same in seconds at the speed set; null while none is set. */
  readonly seconds: Ratio | null;
  /** Longer than `LONGEST_WAIT`. False while no speed is set. */
  readonly tooLong: boolean;
}

/**
 * Closing by a controller that counts the spindle, the carriage at the same fixed stop each time: in step again after a
 * revs, and after every a more. The longest that one has to wait. Own derivation (half-nut.ts).
 * @param a from the half-nut rule @param counts per spindle rev, above 0 @param rpm above 0
 */
export const waitAtStop = (a: bigint, counts: Ratio | null, rpm: Ratio | null): Wait => {
  const seconds = rpm && div(mul(a, 60), rpm);
  return {
    revs: a,
    counts: counts && mul(a, counts),
    seconds,
    tooLong: seconds !== null && seconds.n > BigInt(LONGEST_WAIT) * seconds.d,
  };
};
