/** Kept before the thread for the drive to run in, in leads: the shop's minimum. Common practice. */
export const RUN_IN_LEADS = 3;
/** Withdrawing, going back and setting by hand, s for each pass. An estimate of our own. */
export const BY_HAND = 20;

export interface PassTime {
  /** The tool on its way from run-in to run-out, s. */
  readonly cutting: number;
  /** All passes of all starts, with the hand's part, s. */
  readonly inAll: number;
}

/**
 * 60·(ℓ + run-in + run-out) ÷ (L·n) for one pass; in all with the part of the hand. Lengths in mm.
 * @param passes of one start
 */
export const passTime = (q: {
  readonly length: number;
  readonly runIn: number;
  readonly runOut: number;
  readonly lead: number;
  readonly rpm: number;
  readonly passes: number;
  readonly starts: number;
}): PassTime => {
  const cutting = (60 * (q.length + q.runIn + q.runOut)) / (q.lead * q.rpm);
  return { cutting, inAll: (cutting + BY_HAND) * q.passes * q.starts };
};
