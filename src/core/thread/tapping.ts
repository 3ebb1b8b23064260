import {
  abs,
  compare,
  div,
  greater,
  isPositive,
  isWhole,
  less,
  mul,
  sub,
  toNumber,
  type Ratio,
} from '../quantity';
import { DRILL_KINDS, drillsOf, type Drill, type DrillKind } from './drills';

/**
 * What the hole is aimed at: major less pitch (metric custom, about 77 % of thread), a percentage of thread
 * (inch custom, 75 %), or major less half the pitch for a tap that forms without cutting. All common practice.
 */
export type TappingAim =
  | { readonly kind: 'major-less-pitch' }
  | { readonly kind: 'percent'; readonly percent: number }
  | { readonly kind: 'forming' };

export interface TappingQuestion {
  /** Nominal major diameter and pitch, mm. */
  readonly major: Ratio;
  readonly pitch: Ratio;
  /** Height of the full thread on one side ÷ pitch: 60° 0.649519 (default), 55° 0.640327, BA 0.6. */
  readonly height?: number;
  readonly aim: TappingAim;
  /**
   * What there is to choose from. Left out: metric drills for the two metric customs, inch drills (number, letter,
   * fraction) for a percentage, since M8 should not ask for a letter drill that happens to lie nearest.
   */
  readonly from?: readonly Drill[];
  /** Limits of the internal minor diameter, mm, where the class gives them. */
  readonly bore?: { readonly min: Ratio | null; readonly max: Ratio | null };
  /** How many drills to list each side of the recommended one; 2 when left out. */
  readonly neighbours?: number;
}

/** Where the drill's diameter lies in the limits of the internal minor diameter. */
export type InBore = 'within' | 'below' | 'above' | 'unknown';

export interface TappingDrill {
  readonly drill: Drill;
  /** 100 (D − d) ÷ (2 h P). Above 100 the hole is smaller than the thread's own minor diameter. */
  readonly percent: number;
  readonly bore: InBore;
}

export type Tapping =
  | {
      readonly ok: true;
      readonly recommended: TappingDrill;
      /** Smallest first, the recommended one among them. */
      readonly list: readonly TappingDrill[];
      /** For a drawer of the other sort: of each kind not chosen from, the drill nearest to the recommended one, if 50 to 90 % is left. */
      readonly equivalents: readonly TappingDrill[];
    }
  | { readonly ok: false; readonly refusal: 'not-positive' | 'no-drill-near' };

/** Height of the 60° thread with a crest of P/8 and a root of P/8: 3/4 H = 0.649519 P. */
export const HEIGHT_60 = (3 / 8) * Math.sqrt(3);

/** Percentage of full thread left by a hole. Same unit for all three. @example percentOfThread(6.35, 5.1054, 1.27) // 75.4 */
export const percentOfThread = (major: number, hole: number, pitch: number, height = HEIGHT_60): number =>
  (100 * (major - hole)) / (2 * height * pitch);

const inBore = (d: Ratio, bore: TappingQuestion['bore']): InBore => {
  if (bore?.min && less(d, bore.min)) return 'below';
  if (bore?.max && greater(d, bore.max)) return 'above';
  return bore?.min && bore.max ? 'within' : 'unknown';
};

const evenTenths = (d: Drill): boolean => {
  const tenths = mul(d.diameter, 10);
  return isWhole(tenths) && tenths.n % 2n === 0n;
};

/** Nearest to D − P (or D − P/2). A tie goes to the even tenth: 6.75 → 6.8, 10.25 → 10.2, as printed lists have it. */
const nearestTo = (aim: Ratio, from: readonly Drill[]): number => {
  let best = 0;
  from.forEach((d, i) => {
    const held = from[best] ?? d;
    const c = compare(abs(sub(d.diameter, aim)), abs(sub(held.diameter, aim)));
    if (c < 0 || (c === 0 && evenTenths(d) && !evenTenths(held))) best = i;
  });
  return best;
};

const customary = (aim: TappingAim): readonly DrillKind[] =>
  aim.kind === 'percent' ? ['number', 'letter', 'fraction'] : ['metric'];

const nearestToPercent = (q: TappingQuestion, percent: number, from: readonly Drill[]): number => {
  const aim = toNumber(q.major) - (percent / 100) * 2 * (q.height ?? HEIGHT_60) * toNumber(q.pitch);
  let best = 0;
  const gap = (d: Drill | undefined): number => (d ? Math.abs(toNumber(d.diameter) - aim) : Infinity);
  from.forEach((d, i) => {
    if (gap(d) < gap(from[best]) - 1e-9) best = i;
  });
  return best;
};

/**
 * The tapping drill to recommend, with its neighbours and the thread each leaves. When limits of the minor
 * diameter are given and the nearest drill lies outside them, the nearest one inside is recommended.
 * `no-drill-near`: none in the list leaves between 30 and 100 % of thread.
 */
export const tappingDrill = (q: TappingQuestion): Tapping => {
  if (!isPositive(q.major) || !isPositive(q.pitch) || !((q.height ?? 1) > 0)) {
    return { ok: false, refusal: 'not-positive' };
  }
  const measure = (drill: Drill): TappingDrill => ({
    drill,
    percent: percentOfThread(toNumber(q.major), toNumber(drill.diameter), toNumber(q.pitch), q.height),
    bore: inBore(drill.diameter, q.bore),
  });
  const from = q.from ?? drillsOf(customary(q.aim));
  const all = from.map(measure);
  const usable = all.filter((t) => t.percent >= 30 && t.percent <= 100);
  const fitting = usable.filter((t) => t.bore === 'within');
  const pool = (fitting.length > 0 ? fitting : usable).map((t) => t.drill);
  if (pool.length === 0) return { ok: false, refusal: 'no-drill-near' };

  const index =
    q.aim.kind === 'percent'
      ? nearestToPercent(q, q.aim.percent, pool)
      : nearestTo(sub(q.major, q.aim.kind === 'forming' ? div(q.pitch, 2) : q.pitch), pool);
  const chosen = pool[index];
  const at = all.findIndex((t) => t.drill === chosen);
  const recommended = all[at];
  if (!recommended) return { ok: false, refusal: 'no-drill-near' };
  const n = q.neighbours ?? 2;
  const equivalents = DRILL_KINDS.filter((kind) => !from.some((d) => d.kind === kind)).flatMap((kind) => {
    const others = drillsOf([kind]);
    const near = others[nearestTo(recommended.drill.diameter, others)];
    const found = near && measure(near);
    return found && found.percent >= 50 && found.percent <= 90 ? [found] : [];
  });
  return { ok: true, recommended, list: all.slice(Math.max(0, at - n), at + n + 1), equivalents };
};
