import { errorAtClosing, errorByPass } from '../cut/picking-up';
import { inBase, leadNumber, toNumber } from '../quantity';
import type { Sheet } from './define';
import type { RatioHeld } from './ids';
import type { MachineProfile } from '../machine';
import { MARGIN_ELECTRONIC, type Standing } from './standing';

/** More passes than any plan may have (core/job/fields): what holds over these holds for the job. */
export const MOST_PASSES = 200;
/** Share of what the thread allows that opening the nut may take. Own choice. */
const SHARE = 0.1;

/** What an inexact ratio moves the groove by where the nut is opened between passes, and what may be let pass. µm. */
export interface NutSum {
  /** At one closing, and by the last of `MOST_PASSES` passes. */
  readonly perClosing: number;
  readonly sum: number;
  /** A tenth of what the thread allows. */
  readonly allowed: number;
  /** Spindle revs after which the sum comes to that. */
  readonly lasts: number;
  readonly standing: Standing;
}

/**
 * The sum, where it is one that travel alone adds to; null for an exact ratio, a train of wheels, and forms whose error
 * or counting has other ends (single precision, a running sum, whole steps a rev, a rate): those keep the nut closed.
 * @param lead mm
 */
export const nutSum = (held: RatioHeld, form: MachineProfile['ratioHeld'], lead: number): NutSum | null => {
  const { judged, ppm, grows } = held;
  if (held.exact || !judged || grows !== 'travel' || form === 'float32') return null;
  const perClosing = errorAtClosing(ppm, lead * judged.cycle, 0);
  const sum = errorByPass(perClosing, MOST_PASSES);
  const allowed = SHARE * judged.allowed;
  if (!(allowed > 0) || !Number.isFinite(sum)) return null;
  const standing = sum > allowed ? 'over' : sum > toNumber(MARGIN_ELECTRONIC) * allowed ? 'near' : 'within';
  return { perClosing, sum, allowed, lasts: allowed / errorAtClosing(ppm, lead, 0), standing };
};

/** How an error adds up over the passes planned, for this job; null where nothing adds up or it isn't known. */
export interface Adding {
  /** µm at one closing; ppm; and the spindle revs from one pass to the next, an estimate. */
  readonly perClosing: number;
  readonly ppm: number;
  readonly cycle: number;
  /** As planned, else an estimate. */
  readonly passes: number;
  readonly planned: boolean;
  readonly sum: number;
  /** What the thread allows, µm. */
  readonly allowed: number;
}

export const addingUp = ({ inputs: { job }, get }: Sheet): Adding | null => {
  const held = get('ratioHeld').value;
  const lead = get('lead').value;
  if (!held?.judged || !lead || held.exact || (held.grows !== 'travel' && held.grows !== 'counts'))
    return null;
  const { judged, ppm } = held;
  const count = job.passHold === 'count' && job.passCount ? Number(inBase(job.passCount).n) : null;
  const passes = count ?? judged.passes;
  const perClosing = errorAtClosing(ppm, leadNumber(lead) * judged.cycle, 0);
  return {
    perClosing,
    ppm: Math.abs(ppm),
    cycle: judged.cycle,
    passes,
    planned: count !== null,
    sum: errorByPass(perClosing, passes),
    allowed: judged.allowed,
  };
};
