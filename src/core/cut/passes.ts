import type { PassHold, PassRule } from '../job';
import { opening } from '../thread/groove';
import { grooveArea, type Point } from './chip';

/** Most passes that a plan may have; more than that is a mistake in what was entered. */
export const MOST_PASSES = 200;
/** Share of the first pass in the insert makers' rule. */
const FIRST_SHARE = 0.3;

export interface PassQuestion {
  readonly rule: PassRule;
  /** What is held, and how much of it: first pass mm, a count, area of the chip mm². */
  readonly hold: PassHold;
  readonly held: number;
  /** Least radial depth of a pass, mm. */
  readonly least: number;
  /** Radial depth from first touch to the finished thread, mm. */
  readonly depth: number;
  /** Radial depth of one division of the dial that feeds, mm. */
  readonly division: number;
  readonly point: Point;
}

export type PassRefusal =
  'not-positive' | 'dial-too-coarse' | 'too-many' | 'chip-below-least' | 'first-below-least';
export type PassAnswer =
  | {
      readonly ok: true;
      /** Divisions from zero after each pass, rising. */
      readonly marks: readonly number[];
      /** Passes that the rule alone would have made, before any would have rubbed. */
      readonly byRule: number;
    }
  | {
      readonly ok: false;
      readonly refusal: PassRefusal;
      /** Of `chip-below-least`: the area that the least pass takes at full depth, mm². */
      readonly area: number | null;
    };

/** Shares of the groove's area after each pass by the insert makers' rule: φ = 0.3, 1, 2 … n − 1, over n − 1. */
const chipShares = (count: number): number[] =>
  count === 1 ? [1] : Array.from({ length: count }, (_, i) => (i === 0 ? FIRST_SHARE : i) / (count - 1));

/** The depth at which a groove with so much of its area is: x = a·√share for a V, with a flat tip the root of f·x + k·x². */
const depthAtShare = (depth: number, share: number, { half, flat }: Point): number => {
  const k = opening(half) / 2;
  if (flat === 0 && k > 0) return depth * Math.sqrt(share);
  if (k === 0) return depth * share;
  const area = share * (flat * depth + k * depth ** 2);
  return (Math.sqrt(flat ** 2 + 4 * k * area) - flat) / (2 * k);
};

/**
 * Cumulative radial depths by a rule, mm. `constant-chip`: a_p ÷ √(n − 1) · √φ with φ = 0.3, 1, 2 … (insert makers);
 * `equal-area`: a·√(i ÷ n); `fixed-step`: a·i ÷ n. A round nose is taken as sharp, as the makers do; a flat one shares
 * out the area that it really takes.
 */
export const depthsBy = (rule: PassRule, depth: number, count: number, point: Point): readonly number[] => {
  if (rule === 'fixed-step') return Array.from({ length: count }, (_, i) => (depth * (i + 1)) / count);
  const shares =
    rule === 'equal-area' ? Array.from({ length: count }, (_, i) => (i + 1) / count) : chipShares(count);
  return shares.map((s) => depthAtShare(depth, s, point));
};

/**
 * Whole divisions for each depth: each rounded from its own cumulative depth, none past the last, none nearer than the
 * least to the one before. Where what is left is too little for a pass of its own, the last pass takes it along.
 */
const inDivisions = (depths: readonly number[], division: number, last: number, least: number): number[] => {
  const marks: number[] = [];
  for (const x of depths.slice(0, -1)) {
    const mark = Math.max((marks.at(-1) ?? 0) + least, Math.round(x / division));
    if (mark > last - least) break;
    marks.push(mark);
  }
  return [...marks, last];
};

const chipBetween = (from: number, to: number, division: number, point: Point): number =>
  grooveArea(point, to * division) - grooveArea(point, from * division);

/** Areas of the chips between the marks, mm². */
export const chipsOf = (marks: readonly number[], division: number, point: Point): readonly number[] =>
  marks.map((m, i) => chipBetween(marks[i - 1] ?? 0, m, division, point));

/** Room for a float's own error. */
const within = (value: number, limit: number): boolean => value <= limit * (1 + 1e-9);

/**
 * The fewest passes in whole divisions of which none is below the least and each fits, the early ones as deep as they
 * may be; null where there are none. For the few cases in which no number of passes by the rule comes out.
 */
const fullest = (
  last: number,
  least: number,
  fits: (from: number, to: number) => boolean,
): readonly number[] | null => {
  // For each setting the fewest passes that come to it, and the setting before it.
  const fewest = [0];
  const before = [0];
  for (let to = 1; to <= last; to += 1) {
    fewest[to] = Infinity;
    // A longer step back takes a larger chip: the first that doesn't fit ends the search. A lone pass may be below the least.
    for (
      let from = to === last ? Math.max(0, to - least) : to - least;
      from >= 0 && fits(from, to);
      from -= 1
    ) {
      const count = (fewest[from] ?? Infinity) + 1;
      if (count < (fewest[to] ?? Infinity)) [fewest[to], before[to]] = [count, from];
    }
  }
  if (!Number.isFinite(fewest[last])) return null;
  const marks: number[] = [];
  for (let at = last; at > 0; at = before[at] ?? 0) marks.unshift(at);
  return marks;
};

/**
 * The passes of a plan as whole divisions of the dial that feeds. The last is the most that doesn't pass the depth.
 * With a count held there are at most so many; with a first pass held it is at most that; with a chip held none is
 * larger. Fewer passes rather than any that takes less than the least and rubs; where chip and least can't both be kept
 * it is refused.
 */
export const planPasses = (q: PassQuestion): PassAnswer => {
  const refuse = (refusal: PassRefusal, area: number | null = null): PassAnswer => ({
    ok: false,
    refusal,
    area,
  });
  const { rule, hold, held, depth, division, point } = q;
  if (![held, q.least, depth, division].every((x) => x > 0 && Number.isFinite(x)))
    return refuse('not-positive');
  const last = Math.floor(depth / division + 1e-6);
  if (last < 1) return refuse('dial-too-coarse');
  const least = Math.max(1, Math.ceil(q.least / division - 1e-6));
  const marksOf = (count: number): number[] =>
    inDivisions(depthsBy(rule, depth, count, point), division, last, least);
  if (hold === 'count') {
    const count = Math.round(held);
    if (count > MOST_PASSES) return refuse('too-many');
    return { ok: true, marks: marksOf(count), byRule: count };
  }
  const most = hold === 'first' ? Math.floor(held / division + 1e-6) : 0;
  if (hold === 'first' && most < Math.min(least, last)) return refuse('first-below-least');
  const fits = (marks: readonly number[]): boolean =>
    hold === 'first'
      ? (marks[0] ?? last) <= most
      : chipsOf(marks, division, point).every((c) => within(c, held));
  for (let count = 1; count <= MOST_PASSES; count += 1) {
    const marks = marksOf(count);
    if (fits(marks)) return { ok: true, marks, byRule: count };
  }
  if (hold === 'first') return refuse('first-below-least');
  const marks = fullest(last, least, (from, to) => within(chipBetween(from, to, division, point), held));
  if (marks && marks.length <= MOST_PASSES) return { ok: true, marks, byRule: marks.length };
  return refuse(marks ? 'too-many' : 'chip-below-least', chipBetween(last - least, last, division, point));
};
