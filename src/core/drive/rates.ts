import { ceil, compare, div, floor, leadHigh, mul, ratio, type Lead, type Ratio } from '../quantity';

/**
 * What each part must do per spindle rpm. All are linear in rpm, so a limit becomes a highest rpm by one
 * division. Leads that carry π are taken a hair too large, so rounding is on the careful side.
 */

/** Edges per second per rpm: C ÷ 60. */
export const edgesPerRpm = (counts: Ratio): Ratio => div(counts, 60);

/**
 * Channel A (or B) frequency per rpm, Hz: lines × pulleys ÷ 60, whatever the edge setting. This is what
 * encoders and receivers are rated in; counters are rated in edges.
 */
export const channelPerRpm = (e: { lines: Ratio; spindle: Ratio; encoder: Ratio }): Ratio =>
  div(mul(e.lines, e.spindle), mul(e.encoder, 60));

/** Steps per second per rpm: (L ÷ Ls)·S ÷ 60. */
export const stepRatePerRpm = (l: Lead, screwLead: Ratio, steps: Ratio): Ratio =>
  div(mul(div(leadHigh(l), screwLead), steps), 60);

/** Motor rpm per spindle rpm: (L ÷ Ls)·i. */
export const motorPerRpm = (l: Lead, screwLead: Ratio, motorPerScrew: Ratio): Ratio =>
  mul(div(leadHigh(l), screwLead), motorPerScrew);

/** Carriage speed per rpm, mm/s: L ÷ 60. */
export const carriagePerRpm = (l: Lead): Ratio => div(leadHigh(l), 60);

/** Travel per rpm during the whole stopping time with its safety factor, mm: L·t·SF ÷ 60. */
export const stoppingPerRpm = (l: Lead, wholeTime: Ratio, safetyFactor: Ratio): Ratio =>
  div(mul(leadHigh(l), wholeTime, safetyFactor), 60);

/**
 * The step input's own highest frequency from its pulse times, Hz: 1 ÷ (t_high + t_low).
 */
export const pulseRate = (high: Ratio, low: Ratio): Ratio => div(1, addTimes(high, low));
const addTimes = (a: Ratio, b: Ratio): Ratio => ratio(a.n * b.d + b.n * a.d, a.d * b.d);

/**
 * The rate at which pulses follow one another inside a burst, per rpm, Hz, when the controller emits its steps
 * on each edge: with r > 1 steps per count, ⌈r⌉ pulses share one edge interval; with r ≤ 1 they are at least
 * ⌊1/r⌋ intervals apart. Average rate may fit while the burst does not (lost steps).
 */
export const burstPerRpm = (stepsPerCount: Lead, counts: Ratio): Ratio => {
  const r = leadHigh(stepsPerCount);
  const crowd = compare(r, 1) > 0 ? ratio(ceil(r)) : div(1, floor(div(1, r)));
  return mul(edgesPerRpm(counts), crowd);
};

/** The highest whole rpm at which demand stays within limit × margin; rounded down, 0 when not even 1 is within. */
export const highestRpm = (perRpm: Ratio, limit: Ratio, margin: Ratio): bigint =>
  floor(div(mul(limit, margin), perRpm));
