/** A limit that is no straight line over speed: what is asked and what is borne at each spindle speed. */
export interface Course {
  readonly demand: (rpm: number) => number;
  readonly bears: (rpm: number) => number;
}

/** No limit is looked for beyond this spindle speed. */
export const TOP_RPM = 100_000;

/** Rounding of floats must not pass for room: what is asked is taken this much larger. */
const GUARD = 1 + 1e-9;

/**
 * Highest whole rpm at which the demand stays within a share of what is borne, 0 when not even 1 does, TOP_RPM when
 * the limit has nothing to do with the speed. The demand may only rise with speed and what is borne only fall.
 */
export const highestOn = ({ demand, bears }: Course, share: number): number => {
  const fits = (rpm: number): boolean => demand(rpm) * GUARD <= bears(rpm) * share;
  if (!fits(1)) return 0;
  if (fits(TOP_RPM)) return TOP_RPM;
  let [low, high] = [1, TOP_RPM];
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (fits(mid)) low = mid;
    else high = mid;
  }
  return low;
};
