import type { Job, ThreadChoice } from '../job';
import { MM_PER_INCH, mul, toNumber, type Ratio } from '../quantity';
import { basicSizes, limits, threadById, threadOfOwn, type LimitRefusal, type Thread } from '../thread';
import type { LimitSource } from '../thread/limits';
import {
  pitchDiameterFromReading,
  threadMicrometer,
  verdictOf,
  wireThreadOf,
  type Measured,
  type Verdict,
  type WireRefusal,
} from '../thread/wires';

/** From a reading to what is left to take. Lengths in mm, as drawing and physics use them. */

/** Of what is left, so much is taken before it is measured again. Common practice. */
export const PART = 0.7;

/** The thread that a job names, with the job's starts; null for a bare pitch or a feed. */
export const threadOfJob = ({ thread: choice, starts }: Pick<Job, 'thread' | 'starts'>): Thread | null => {
  const found = ((c: ThreadChoice | null): Thread | null => {
    if (c?.kind === 'catalogue') return threadById(c.id) ?? null;
    return c?.kind === 'own' ? threadOfOwn(c.id, c.own) : null;
  })(choice);
  return found && { ...found, starts };
};

const inMm = (x: Ratio, unit: 'mm' | 'in'): number => toNumber(unit === 'in' ? mul(x, MM_PER_INCH) : x);

export interface Target {
  readonly min: number | null;
  readonly max: number | null;
  /** Pitch diameter to come to. */
  readonly aim: number;
  readonly by: 'middle' | 'one-limit' | 'basic';
  readonly source: LimitSource | null;
  /** Why there are no limits. */
  readonly refusal: LimitRefusal | null;
}

/**
 * The pitch diameter to come to: the middle of the class's limits; with one limit alone the basic size where that
 * keeps it, else the limit; with none the basic size. Null for a thread without a diameter and for a taper.
 */
export const targetOf = (thread: Thread, classId: string | null, side: Job['side']): Target | null => {
  const sizes = thread.taper ? null : basicSizes(thread);
  if (!sizes) return null;
  const basic = inMm(sizes.pitch, sizes.unit);
  const l = limits(thread, classId ?? '');
  if (!l.ok || l.kind !== side)
    return { min: null, max: null, aim: basic, by: 'basic', source: null, refusal: l.ok ? null : l.refusal };
  const [min, max] = [l.pitch.min, l.pitch.max].map((x) => x && inMm(x, l.unit)) as [
    number | null,
    number | null,
  ];
  const limited = { min, max, source: l.source, refusal: null };
  if (min !== null && max !== null) return { ...limited, aim: (min + max) / 2, by: 'middle' };
  if (min === null && max === null) return { ...limited, aim: basic, by: 'basic' };
  return { ...limited, aim: Math.min(max ?? Infinity, Math.max(min ?? -Infinity, basic)), by: 'one-limit' };
};

/** How a pitch diameter is read during a cut: over three wires, or by a micrometer set on a standard. */
export type FinishReading =
  | { readonly way: 'wires'; readonly over: Measured; readonly wire: Measured }
  | {
      readonly way: 'thread-micrometer';
      readonly work: Measured;
      readonly standard: { readonly actual: Measured; readonly shown: Measured };
    };

export type FinishFound =
  | { readonly ok: true; readonly value: number; /** Standard uncertainty. */ readonly u: number | null }
  | { readonly ok: false; readonly refusal: WireRefusal | 'internal-thread' | 'taper-thread' };

/** Pitch diameter by wires or thread micrometer (core/thread/wires). Wires can't be laid in an internal thread. */
export const foundBy = (thread: Thread, side: Job['side'], r: FinishReading): FinishFound => {
  if (thread.taper) return { ok: false, refusal: 'taper-thread' };
  if (r.way === 'thread-micrometer') return { ok: true, ...threadMicrometer(r.work, r.standard) };
  if (side === 'internal') return { ok: false, refusal: 'internal-thread' };
  const e = pitchDiameterFromReading(wireThreadOf(thread), { kind: 'over', over: r.over }, r.wire);
  return e.ok ? { ok: true, value: e.pitchDiameter, u: e.u } : e;
};

/** Where a thread stands on its way: `beyond` can't be cured by infeed, `to-take` still has metal to come off. */
export type Lies = 'within' | 'to-take' | 'beyond' | 'unsure' | 'unknown';

export interface Left {
  readonly lies: Lies;
  /** Twice the standard uncertainty; null where that isn't known. */
  readonly expanded: number | null;
  /** Change of the pitch diameter that is still to come; below 0 when it is past its target. */
  readonly excess: number;
  /** Radial infeed to the target, half of it; 0 where nothing more is to be taken. */
  readonly radial: number;
  /** Radial infeed that brings it just within, and that which may not be passed, uncertainty counted; null: open. */
  readonly least: number | null;
  readonly most: number | null;
}

const LIES: Readonly<Record<Job['side'], Readonly<Record<Verdict, Lies>>>> = {
  external: { within: 'within', above: 'to-take', below: 'beyond', unsure: 'unsure', unknown: 'unknown' },
  internal: { within: 'within', above: 'beyond', below: 'to-take', unsure: 'unsure', unknown: 'unknown' },
};

/**
 * What is left to take: a screw's pitch diameter comes down to its target, a nut's goes up to it; the tool goes in by
 * half the difference. Nothing more is advised where a limit is already passed.
 */
export const leftToTake = (
  side: Job['side'],
  { value, u }: { readonly value: number; readonly u: number | null },
  target: Target,
): Left => {
  const expanded = u === null ? null : 2 * u;
  const lies = LIES[side][verdictOf(value, expanded, target.min, target.max)];
  const sign = side === 'external' ? 1 : -1;
  const excess = sign * (value - target.aim);
  const [near, far] = side === 'external' ? [target.max, target.min] : [target.min, target.max];
  return {
    lies,
    expanded,
    excess,
    radial: lies === 'beyond' || lies === 'within' ? 0 : Math.max(0, excess) / 2,
    least: near === null ? null : Math.max(0, (sign * (value - near)) / 2),
    most: far === null || expanded === null ? null : (sign * (value - far) - expanded) / 2,
  };
};

/** A thousandth of a micrometre: less than that is the float's, not the thread's. */
const SPECK = 1e-6;

/**
 * Whole divisions of a handwheel for a radial infeed: the most that don't pass it. Where a coarse dial would so stop
 * outside the limits, one more if even that stays within them, uncertainty counted. Never past the farther limit.
 * @param perDivision radial depth of one division, mm, above 0
 */
export const wholeDivisions = (
  radial: number,
  perDivision: number,
  { least, most }: Pick<Left, 'least' | 'most'>,
): number => {
  if (!(radial > 0) || !(perDivision > 0)) return 0;
  const under = Math.floor((radial + SPECK) / perDivision);
  const one = (under + 1) * perDivision;
  const short = least !== null && under * perDivision < least;
  return short && most !== null && one <= most ? under + 1 : under;
};
