import {
  add,
  div,
  isWhole,
  leadNumber,
  mul,
  PI_HIGH,
  PI_LOW,
  ratio,
  roundWhole,
  sub,
  toNumber,
} from '../quantity';
import type { Lead, Ratio } from '../quantity';

/** A thread of several starts: its lead and how many. */
export interface Started {
  readonly lead: Lead;
  readonly starts: number;
}

/** Starts are numbered from 1; the first is where the tool stands without any indexing. */
const each = <V>(starts: number, of: (i: number) => V): V[] =>
  Array.from({ length: starts }, (_, i) => of(i));

/** A rational so near to a length that carries π that no dial tells them apart. */
const near = (l: Lead): Ratio => (l.pi ? mul(l.mm, div(add(PI_LOW, PI_HIGH), 2)) : l.mm);

export interface ByCounts {
  readonly start: number;
  /** Where the start lies, exact, in counts from the first. */
  readonly exact: Ratio;
  /** That rounded, once. */
  readonly nearest: bigint;
  /** What the rounding moves the groove by along the work, µm, with its sign. */
  readonly off: number;
}

/**
 * Each start by spindle counts: i·C/z held as a fraction and rounded once, so that no rounding is added to another.
 * Own derivation. @param counts per spindle rev, above 0
 */
export const byCounts = ({ lead, starts }: Started, counts: Ratio): readonly ByCounts[] =>
  each(starts, (i) => {
    const exact = div(mul(counts, i), starts);
    const nearest = roundWhole(exact, 'nearest');
    const off = (toNumber(div(sub(nearest, exact), counts)) * leadNumber(lead) + 0) * 1000;
    return { start: i + 1, exact, nearest, off };
  });

/** What the top slide's dial shows, where that is known. */
export interface TopDial {
  /** One division, mm. */
  readonly division: Ratio;
  readonly perTurn: number | null;
}

export interface ByTopSlide {
  readonly start: number;
  /** Along the bed from the first start, mm. */
  readonly mm: number;
  /** In divisions of the dial, rounded once from the first start; null where the dial isn't known. */
  readonly dial: {
    readonly divisions: bigint;
    /** Whole turns, and the divisions past them; null where a turn isn't known. */
    readonly turns: bigint | null;
    readonly past: bigint;
    /** What the rounding moves the groove by, µm, with its sign. */
    readonly off: number;
  } | null;
}

/** Each start by the top slide set parallel to the bed: i × pitch, each counted from the first start. Own derivation. */
export const byTopSlide = ({ lead, starts }: Started, dial: TopDial | null): readonly ByTopSlide[] =>
  each(starts, (i) => {
    const exact = div(mul(near(lead), i), starts);
    if (!dial) return { start: i + 1, mm: toNumber(exact), dial: null };
    const divisions = roundWhole(div(exact, dial.division), 'nearest');
    const turn = dial.perTurn === null ? null : BigInt(dial.perTurn);
    return {
      start: i + 1,
      mm: toNumber(exact),
      dial: {
        divisions,
        turns: turn && divisions / turn,
        past: turn ? divisions % turn : divisions,
        off: toNumber(sub(mul(dial.division, divisions), exact)) * 1000,
      },
    };
  });

/** What the top slide's scale has to be set to, degrees, for the slide to stand along the bed. */
export const alongTheBed = (scale: 'from-cross-slide' | 'from-axis'): 0 | 90 =>
  scale === 'from-axis' ? 0 : 90;

export interface ByNut {
  readonly start: number;
  /** Fewest half-nut pitches by which the carriage is moved along the screw; null where none reaches this start. */
  readonly pitches: bigint | null;
  /** Lines of the dial at which the start is met, counted like those of the rule; empty where none stands there. */
  readonly lines: readonly number[];
}

/** Smallest k from 0 on with k·a ≡ want (mod b), a and b in lowest terms. */
const smallest = (a: bigint, want: bigint, b: bigint): bigint => {
  // Extended Euclid: x·a ≡ 1 (mod b).
  let [r0, r1, x0, x1] = [a % b, b, 1n, 0n];
  while (r1 !== 0n) {
    const q = r0 / r1;
    [r0, r1, x0, x1] = [r1, r0 - q * r1, x1, x0 - q * x1];
  }
  return (((want * x0) % b) + b) % b;
};

/**
 * Each start by closing the half-nut elsewhere on the screw: k pitches on, where k·p_s comes to i·L/z past a whole
 * number of leads. With p_s ÷ L = a/b in lowest terms that is k·a ≡ i·b/z (mod b): it can be only where b·i/z is whole.
 * Null for a lead with π, which no number of pitches meets. Own derivation.
 * @param nutPitch mm @param dial null: the lathe has none
 */
export const byNut = (
  { lead, starts }: Started,
  nutPitch: Ratio,
  dial: { readonly teeth: number; readonly lines: number } | null,
): readonly ByNut[] | null => {
  if (lead.pi) return null;
  const { n: a, d: b } = div(nutPitch, lead.mm);
  return each(starts, (i) => {
    const want = div(b * BigInt(i), starts);
    const pitches = isWhole(want) ? smallest(a, want.n, b) : null;
    return { start: i + 1, pitches, lines: pitches === null ? [] : linesAt(pitches, b, dial) };
  });
};

/** Lines at which the dial has gone on by so many teeth, or by so many and any number of b more. */
const linesAt = (
  pitches: bigint,
  b: bigint,
  dial: { readonly teeth: number; readonly lines: number } | null,
): number[] => {
  // Where the gear doesn't come round in step, a line means another groove each turn.
  if (!dial || BigInt(dial.teeth) % b !== 0n) return [];
  return Array.from({ length: dial.lines }, (_, m) => m + 1).filter((m) =>
    isWhole(div(sub(ratio(m * dial.teeth, dial.lines), pitches), b)),
  );
};

/** Angle from one start to the next between slots of the faceplate, degrees. */
export const slotAngle = (starts: number): Ratio => ratio(360, starts);

/** What a slot that stands off by `slot` mm at a radius of `radius` mm moves its groove by, µm: L × s ÷ 2πr. */
export const slotError = (lead: number, slot: number, radius: number): number | null =>
  lead > 0 && slot >= 0 && radius > 0 ? ((lead * slot) / (2 * Math.PI * radius)) * 1000 : null;

/** Which start is cut next, and in which round; a round takes every start to the same depth. Both from 1. */
export interface Turn {
  readonly round: number;
  readonly start: number;
}
export const turnAfter = ({ round, start }: Turn, starts: number): Turn =>
  start < starts ? { round, start: start + 1 } : { round: round + 1, start: 1 };
export const turnBefore = ({ round, start }: Turn, starts: number): Turn =>
  start > 1
    ? { round, start: start - 1 }
    : round > 1
      ? { round: round - 1, start: starts }
      : { round: 1, start: 1 };
