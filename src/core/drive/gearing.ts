import { compare, div, lead, mul, ratio, type Lead, type Ratio } from '../quantity';

/**
 * Counts per spindle rev: lines × edges counted per line × spindle pulley ÷ encoder pulley. May be a fraction
 * (1000 lines over 50/60 teeth give 10000/3) and stays one. Source: quadrature counting, own derivation.
 * @example countsPerRev({ lines: ratio(600), edges: ratio(4), spindle: ratio(60), encoder: ratio(30) }) // 4800
 */
export const countsPerRev = (e: { lines: Ratio; edges: Ratio; spindle: Ratio; encoder: Ratio }): Ratio =>
  div(mul(e.lines, e.edges, e.spindle), e.encoder);

/** Motor revs per leadscrew rev: screw pulley ÷ motor pulley × any gearbox ratio left in the path. */
export const motorPerScrew = (p: { motor: Ratio; screw: Ratio; gearbox: Ratio }): Ratio =>
  mul(div(p.screw, p.motor), p.gearbox);

/** Steps per leadscrew rev: steps per motor rev × motor revs per leadscrew rev. */
export const stepsPerScrewRev = (stepsPerMotorRev: Ratio, motorRevs: Ratio): Ratio =>
  mul(stepsPerMotorRev, motorRevs);

/**
 * Steps per count r = (L ÷ Ls)·(S ÷ C), reduced. Takes the lead, never the pitch, of a multi-start thread.
 * For a lead that carries π the result is to be multiplied by π (`pi`).
 * @example stepsPerCount(lead(ratio(3, 2)), ratio(127, 40), ratio(6400), ratio(4096)).mm // 375/508
 */
export const stepsPerCount = (l: Lead, screwLead: Ratio, steps: Ratio, counts: Ratio): Lead =>
  lead(mul(div(l.mm, screwLead), div(steps, counts)), l.pi);

/** Steps per spindle rev K = (L ÷ Ls)·S for a lead already bounded by a rational. */
export const stepsPerSpindleRev = (leadMm: Ratio, screwLead: Ratio, steps: Ratio): Ratio =>
  mul(div(leadMm, screwLead), steps);

export interface Held {
  readonly top: bigint;
  readonly bottom: bigint;
  readonly exact: boolean;
}

const tryFraction = (top: bigint, bottom: bigint, topMax: bigint, bottomMax: bigint): boolean =>
  top <= topMax && bottom <= bottomMax && bottom > 0n;

/** Largest k with a + k·b within the bound, for a, b ≥ 0. */
const room = (bound: bigint, a: bigint, b: bigint): bigint | null => (b === 0n ? null : (bound - a) / b);

/**
 * The fraction nearest to `target` whose numerator and denominator both fit the controller, by continued
 * fraction with semiconvergents. Exact where the reduced target itself fits. null for a bound below 1.
 * Source: theory of best rational approximations (Khinchin, Continued Fractions, §6).
 * @param target above 0
 */
export const bestFraction = (target: Ratio, topMax: bigint, bottomMax: bigint): Held | null => {
  if (topMax < 1n || bottomMax < 1n) return null;
  if (tryFraction(target.n, target.d, topMax, bottomMax))
    return { top: target.n, bottom: target.d, exact: true };
  let [p0, q0, p1, q1] = [0n, 1n, 1n, 0n];
  let [n, d] = [target.n, target.d];
  while (d !== 0n) {
    const a = n / d;
    const most = [a, room(topMax, p0, p1), room(bottomMax, q0, q1)]
      .filter((x) => x !== null)
      .reduce((m, x) => (x < m ? x : m));
    const p = p0 + most * p1;
    const q = q0 + most * q1;
    if (most < a) return nearer(target, [p, q], [p1, q1]);
    [p0, q0, p1, q1] = [p1, q1, p, q];
    [n, d] = [d, n - a * d];
  }
  return nearer(target, [p1, q1], [p0, q0]);
};

/** Of two neighbouring fractions, the nearer to the target; one with a zero part is no ratio at all. */
const nearer = (target: Ratio, a: [bigint, bigint], b: [bigint, bigint]): Held | null => {
  const usable = [a, b].filter(([p, q]) => p > 0n && q > 0n);
  const [best] = usable.sort(([p, q], [r, s]) => compare(distance(target, p, q), distance(target, r, s)));
  return best ? { top: best[0], bottom: best[1], exact: false } : null;
};

const distance = (target: Ratio, p: bigint, q: bigint): Ratio => {
  const diff = target.n * q - p * target.d;
  return ratio(diff < 0n ? -diff : diff, target.d * q);
};
