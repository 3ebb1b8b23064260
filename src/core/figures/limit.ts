import type { InputPath } from '../context';
import { highestRpm } from '../drive';
import { highestOn, TOP_RPM, type Course } from './course';
import { compare, mul, ratio, toNumber, type Ratio } from '../quantity';
import { standingOf, type Standing } from './standing';
import type { ShownUnit, Term } from './why';

export const LIMIT_IDS = [
  'step-rate',
  'step-input',
  'burst',
  'counter',
  'encoder-channel',
  'encoder-speed',
  'motor-speed',
  'carriage',
  'edge-gap',
  'direction',
  'torque',
  'whip',
  'chuck',
  'spindle-range',
  'stopping-room',
] as const;
export type LimitId = (typeof LIMIT_IDS)[number];

/**
 * `required`: not known means the speed is not known. `supporting`: a current test record that covers this
 * lead and speed may answer for it, so that nobody is pushed to invent a number.
 */
export type Need = 'required' | 'supporting';

/** One limit looked at for this job: what is asked of it per rpm, what it bears, and the speeds that follow. */
export interface LimitReading {
  readonly id: LimitId;
  readonly need: Need;
  /** `drive`: what the electronics, motor and carriage follow. `work`: what chuck, spindle and stopping room allow. */
  readonly side: 'drive' | 'work';
  readonly unit: ShownUnit;
  readonly perRpm: Ratio | null;
  readonly limit: Ratio | null;
  readonly margin: Ratio;
  /** Where what is asked or borne is no straight line over speed; then `perRpm` and `limit` are null. */
  readonly course: Course | null;
  /** Highest whole rpm that is still within; rounded down. TOP_RPM: the speed doesn't matter. */
  readonly within: bigint | null;
  /** Highest whole rpm that is not over; between the two it is near. */
  readonly bearable: bigint | null;
  readonly missing: readonly InputPath[];
  /** A current test record that answers for a limit that isn't known, up to this rpm. */
  readonly answeredTo: Ratio | null;
  readonly terms: Readonly<Record<string, Term>>;
  readonly source: string;
}

export interface LimitBasis {
  readonly id: LimitId;
  readonly need: Need;
  readonly side: 'drive' | 'work';
  readonly unit: ShownUnit;
  readonly margin: Ratio;
  readonly source: string;
  readonly terms: Record<string, Term>;
  readonly missing: readonly InputPath[];
  readonly perRpm: Ratio | null;
  readonly limit: Ratio | null;
  readonly course: Course | null;
}

const speedsOf = (b: LimitBasis): Pick<LimitReading, 'within' | 'bearable'> => {
  if (b.missing.length > 0) return { within: null, bearable: null };
  if (b.course)
    return {
      within: BigInt(highestOn(b.course, toNumber(b.margin))),
      bearable: BigInt(highestOn(b.course, 1)),
    };
  if (!b.perRpm || !b.limit) return { within: null, bearable: null };
  return { within: highestRpm(b.perRpm, b.limit, b.margin), bearable: highestRpm(b.perRpm, b.limit, mul(1)) };
};

export const readLimit = (b: LimitBasis, answeredTo: Ratio | null): LimitReading => {
  const speeds = speedsOf(b);
  return { ...b, ...speeds, answeredTo: speeds.within === null ? answeredTo : null };
};

/** Whether a limit is kept or broken at any speed alike. */
export const isOfNoSpeed = (l: LimitReading): boolean => l.within === BigInt(TOP_RPM);

const alongCourse = (l: LimitReading, rpm: Ratio): Standing => {
  if (l.within === null || l.bearable === null) return 'unknown';
  if (compare(rpm, ratio(l.within)) <= 0) return 'within';
  return compare(rpm, ratio(l.bearable)) <= 0 ? 'near' : 'over';
};

/** How a limit stands at a spindle speed: reckoned where it is known, else by a test record that covers the speed. */
export const limitStanding = (l: LimitReading, rpm: Ratio): Standing => {
  if (l.within !== null && l.course) return alongCourse(l, rpm);
  if (l.within !== null && l.perRpm && l.limit) return standingOf(mul(l.perRpm, rpm), l.limit, l.margin);
  if (l.need === 'supporting' && l.answeredTo) return standingOf(rpm, l.answeredTo, mul(1));
  return 'unknown';
};
