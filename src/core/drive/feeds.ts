import { compare, div, mul, ratio, toNumber, type Ratio } from '../quantity';

/** Feed per minute, mm/min: feed per rev × rpm. */
export const feedPerMinute = (perRev: Ratio, rpm: Ratio): Ratio => mul(perRev, rpm);

/**
 * Beyond this part of the nose radius the arcs are no longer shallow: f²/(8r) is then 7 % under the arc's own
 * height (r − √(r² − f²/4)), and soon the edge behind the nose makes the surface, not the nose.
 */
export const MOST_FEED_PER_NOSE = ratio(1);

export type Finish =
  { readonly ok: true; readonly rt: Ratio } | { readonly ok: false; readonly refusal: 'feed-past-nose' };

/**
 * Theoretical peak-to-valley height of a turned surface, mm: f² ÷ (8 r), from feed per rev and nose radius, mm.
 * Geometry of shallow arcs; the real surface is rougher: built-up edge, wear, chatter. Refused where the feed is
 * larger than the nose radius.
 * @example finish(ratio(1, 5), ratio(2, 5)) // 1/80 mm = 12.5 µm
 */
export const finish = (perRev: Ratio, nose: Ratio): Finish =>
  compare(perRev, mul(nose, MOST_FEED_PER_NOSE)) > 0
    ? { ok: false, refusal: 'feed-past-nose' }
    : { ok: true, rt: div(mul(perRev, perRev), mul(nose, 8)) };

/**
 * Mean roughness by the common approximation Ra ≈ Rt ÷ 4 (shallow arcs: 4/(9√3) = 0.2566 of the height).
 */
export const meanRoughness = (rt: Ratio): Ratio => div(rt, 4);

/** Largest feed per rev, mm, for a mean roughness Ra, mm, by the same approximation: √(32 r Ra), at most the nose radius. */
export const feedForRoughness = (ra: Ratio, nose: Ratio): number =>
  Math.min(Math.sqrt(32 * toNumber(nose) * toNumber(ra)), toNumber(nose));
