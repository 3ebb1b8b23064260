import {
  errorOver,
  FINEST_300,
  passesFor,
  perDiameter,
  pitchErrorAllowed,
  revsPerCycle,
  shiftAfter,
  type Chain,
  type Holding,
} from '../drive/formats';
import type { Job, Use } from '../job';
import { inBase, leadNumber, MM_PER_INCH, sub, toNumber, type Lead, type Ratio } from '../quantity';
import * as t from '../thread';
import { MARGIN_ELECTRONIC, type Standing } from './standing';
import { classOf } from './thread';

/** What the error of a held ratio comes to on this thread, and what is allowed of it. */
export interface HeldJudgement {
  /** What it was judged as; `strictest` where that wasn't said, or no tolerance of the diameter is known. */
  readonly as: Use | 'strictest';
  /** Length over which it was judged, mm. */
  readonly length: number;
  /** Error over that length, with its sign, and what is allowed, µm. */
  readonly um: number;
  readonly allowed: number;
  /** Passes and spindle revs from one to the next: estimates. */
  readonly passes: number;
  readonly cycle: number;
  /** How far the groove has moved by the last pass, µm, with its sign, where each pass is picked up by the nut. */
  readonly shift: number;
  /** What the error over the length adds to an external or takes from an internal thread on its diameter, µm. */
  readonly diameter: number | null;
}

/** Length of engagement where none is said, as a multiple of the major diameter: common practice. */
const ENGAGEMENT = 1.5;
const GRADE_LENGTH = 300;

/** Tolerance of the pitch diameter in the class asked for, mm; null where no limits are known. */
const toleranceOf = (thread: t.Thread, job: Pick<Job, 'classId' | 'side'>): number | null => {
  const classId = classOf(thread, job.classId, job.side);
  const l = classId ? t.limits(thread, classId) : null;
  if (!l?.ok || !l.pitch.min || !l.pitch.max) return null;
  return toNumber(sub(l.pitch.max, l.pitch.min)) * (l.unit === 'in' ? toNumber(MM_PER_INCH) : 1);
};

const flanksOf = (thread: t.Thread): [number, number] => {
  const [a, b] = t.formOf(thread).flanks;
  return [toNumber(a), toNumber(b)];
};

/** A fastener's length of engagement and the error of pitch allowed over it, µm; null where they aren't known. */
const fastener = (
  thread: t.Thread | null,
  job: Pick<Job, 'classId' | 'side'>,
  length: number | null,
): { length: number; allowed: number } | null => {
  const tolerance = thread && toleranceOf(thread, job);
  if (!thread?.major || !tolerance) return null;
  const allowed = pitchErrorAllowed(tolerance * 1000, flanksOf(thread));
  const usual = ENGAGEMENT * toNumber(inBase(thread.major));
  return allowed === null ? null : { length: Math.min(length ?? usual, usual), allowed };
};

/**
 * Judges the error of a held ratio by what the thread is for. A fastener: half of its pitch-diameter tolerance over the
 * length of engagement. Anything else: the finest grade of ball screw, 6 µm in 300 mm (ISO 3408-3 grade 1, from memory).
 */
export const judgeHeld = (
  h: Holding,
  c: Chain,
  about: {
    thread: t.Thread | null;
    pitch: Lead;
    job: Pick<Job, 'use' | 'classId' | 'side'>;
    length: Ratio | null;
  },
): HeldJudgement => {
  const { thread, job } = about;
  const own = about.length && toNumber(about.length);
  const bolt = job.use === 'fastener' ? fastener(thread, job, own) : null;
  const length = bolt?.length ?? GRADE_LENGTH;
  const passes = passesFor(leadNumber(about.pitch));
  const cycle = revsPerCycle(own, leadNumber(c.lead));
  const { um } = errorOver(h, c, length);
  const per = thread && perDiameter(flanksOf(thread));
  return {
    as: bolt ? 'fastener' : job.use === 'fastener' ? 'strictest' : (job.use ?? 'strictest'),
    length,
    um,
    allowed: bolt?.allowed ?? FINEST_300,
    passes,
    cycle,
    shift: shiftAfter(h, c, (passes - 1) * cycle),
    diameter: per === null ? null : Math.abs(um) * per,
  };
};

/**
 * Exact is within. An inexact ratio is never better than near while nobody has said what the thread is for, or where the
 * nut, opened between passes, would move the groove by more than is allowed.
 * @param opens the half-nut can be opened, or that isn't known
 */
export const heldStanding = (exact: boolean, j: HeldJudgement, opens: boolean): Standing => {
  const [error, shift] = [Math.abs(j.um), Math.abs(j.shift)];
  if (exact) return 'within';
  if (error > j.allowed) return 'over';
  if (j.as === 'strictest' || (opens && shift > j.allowed)) return 'near';
  return error > toNumber(MARGIN_ELECTRONIC) * j.allowed ? 'near' : 'within';
};
