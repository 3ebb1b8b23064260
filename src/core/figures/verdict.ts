import type { InputPath } from '../context';
import { ratio, type Ratio } from '../quantity';
import { define } from './define';
import { isOfNoSpeed, limitStanding, type LimitReading } from './limit';
import { worst, type Standing } from './standing';

/** The highest speed that a group of limits allows, and which of them binds. */
export interface Ceiling {
  /** Highest whole rpm within all of them; null while a limit that counts isn't known. */
  readonly highest: bigint | null;
  /** The same over the known ones alone: an upper bound, never an answer. */
  readonly atMost: bigint | null;
  readonly binds: LimitReading | null;
  readonly next: LimitReading | null;
  readonly unknown: readonly LimitReading[];
}

export interface SpeedVerdict {
  /** All limits together: a speed for this job. */
  readonly job: Ceiling;
  /** What the drive alone follows: not a threading speed. */
  readonly drive: Ceiling;
  /** How each limit stands at the speed set; null while none is set. */
  readonly atSet: readonly { readonly limit: LimitReading; readonly standing: Standing }[] | null;
  readonly standing: Standing | null;
  readonly driveStanding: Standing | null;
  /** The spindle's own speeds with their standing, rising; empty where it has a range. */
  readonly own: readonly { readonly rpm: Ratio; readonly standing: Standing; readonly drive: Standing }[];
  /** Fastest of its own speeds that is within everything; null if none is, or something isn't known. */
  readonly fastest: Ratio | null;
  /** Fastest of its own speeds that the drive alone follows: not a threading speed. */
  readonly fastestDrive: Ratio | null;
}

const answers = (l: LimitReading): bigint | null =>
  l.within ?? (l.need === 'supporting' && l.answeredTo ? l.answeredTo.n / l.answeredTo.d : null);

/** The ceiling of a group of limits. */
export const ceilingOf = (limits: readonly LimitReading[]): Ceiling => {
  const known = limits
    .flatMap((l) => {
      const rpm = answers(l);
      // What is kept at any speed binds at none.
      return rpm === null || isOfNoSpeed(l) ? [] : [{ l, rpm }];
    })
    .sort((a, b) => (a.rpm < b.rpm ? -1 : a.rpm > b.rpm ? 1 : 0));
  const unknown = limits.filter((l) => answers(l) === null);
  const atMost = known[0]?.rpm ?? null;
  return {
    highest: unknown.length > 0 ? null : atMost,
    atMost,
    binds: known[0]?.l ?? null,
    next: known[1]?.l ?? null,
    unknown,
  };
};

/** The standing of a set of limits at a speed. */
export const standingAt = (limits: readonly LimitReading[], rpm: Ratio): Standing =>
  worst(limits.map((l) => limitStanding(l, rpm)));

/** Is the speed set a speed for this job, and what is the highest? */
export const speed = define({
  reads: ['job.rpm', 'machine.spindleDrive', 'machine.spindleSpeeds'],
  uses: ['limits', 'lead'],
  rule: 1,
  compute: (ask) => {
    const limits = ask.figure('limits').value ?? [];
    const driveLimits = limits.filter((l) => l.side === 'drive');
    const rpm = ask.input('job.rpm');
    const speeds =
      ask.input('machine.spindleDrive') === 'speeds' ? (ask.input('machine.spindleSpeeds') ?? []) : [];
    const own = speeds.map((s) => ({
      rpm: s.value,
      standing: standingAt(limits, s.value),
      drive: standingAt(driveLimits, s.value),
    }));
    const value: SpeedVerdict = {
      job: ceilingOf(limits),
      drive: ceilingOf(driveLimits),
      atSet: rpm && limits.map((limit) => ({ limit, standing: limitStanding(limit, rpm) })),
      standing: rpm && standingAt(limits, rpm),
      driveStanding: rpm && standingAt(driveLimits, rpm),
      own,
      fastest: own.findLast((s) => s.standing === 'within')?.rpm ?? null,
      fastestDrive: own.findLast((s) => s.drive === 'within')?.rpm ?? null,
    };
    const missing: InputPath[] = [...new Set(limits.flatMap((l) => (answers(l) === null ? l.missing : [])))];
    return {
      value,
      standing: value.standing,
      missing: rpm ? missing : ['job.rpm', ...missing],
      why: {
        formula: 'speed',
        terms: { rpm: { amount: rpm && { kind: 'exact', value: rpm, unit: 'rpm' }, from: 'job.rpm' } },
        result:
          value.job.highest === null ? null : { kind: 'exact', value: ratio(value.job.highest), unit: 'rpm' },
        source: 'rates',
        notes: [],
      },
    };
  },
});
