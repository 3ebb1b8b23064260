/**
 * What diameter a thread's crests really have. Nobody measures the nominal size: crests are turned a little
 * under it, wear, are plated, or were turned by eye. Millimetres.
 */
export type CrestState = 'as-cut' | 'under' | 'far-under' | 'over';

export interface CrestPart {
  readonly state: CrestState;
  readonly weight: number;
  /** How far short of nominal, from … to (for a hole: how far above its basic minor diameter). */
  readonly from: number;
  readonly to: number;
}

/** Share of real threads in each state. A judgement, not a statistic; all are kept well above nought. */
const WEIGHT = { 'as-cut': 0.68, under: 0.18, 'far-under': 0.07, over: 0.07 } as const;

/** Plating and swelling of the crest, mm on diameter: two layers of up to 15 µm and a little for a rolled crest. */
const OVER = 0.035;

/** Fundamental deviation g and grade 6 tolerance of the major diameter, ISO 965-1 annex, mm: good for any form's scale. */
const majorTolerance = (pitch: number): number => (15 + 11 * pitch + 180 * pitch ** (2 / 3)) / 1000;

/** A tapered thread is measured somewhere along it: this many pitches either way from the gauge plane. */
const TAPER_PITCHES = 6;

/** Pitch in mm, taper on diameter. For a hole the span starts at the basic minor diameter and goes outward. */
export const crestParts = (p: number, taper: number, side: 'external' | 'internal'): readonly CrestPart[] => {
  const slack = taper * TAPER_PITCHES * p;
  // A hole: from the basic minor diameter to a generous tapping drill, then to a badly oversize one.
  const cut = side === 'external' ? majorTolerance(p) : 0.22 * p;
  const under = cut + 0.1 * p;
  const far = cut + 0.25 * p;
  return [
    { state: 'as-cut', weight: WEIGHT['as-cut'], from: -slack, to: cut + slack },
    { state: 'under', weight: WEIGHT.under, from: cut + slack, to: under + slack },
    { state: 'far-under', weight: WEIGHT['far-under'], from: under + slack, to: far + slack },
    { state: 'over', weight: WEIGHT.over, from: -OVER - slack, to: -slack },
  ];
};

/** Normal distribution function, to 1.5e-7 (Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26). */
const below = (z: number): number => {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - poly * Math.exp(-x * x);
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2;
};

/** Anything at all may have happened to a crest; also keeps the logarithm above the error of `below`. Per mm. */
export const FLOOR = 1e-5;

const share = (p: CrestPart, short: number, u: number): number => {
  // Six standard deviations outside a span, the blur has nothing left to give.
  if (short < p.from - 6 * u || short > p.to + 6 * u) return 0;
  const within = below((p.to - short) / u) - below((p.from - short) / u);
  return (p.weight * Math.max(0, within)) / (p.to - p.from);
};

/** Density of reading so far short of nominal, per mm: each state equally likely over its span, blurred by u. */
export const crestDensity = (parts: readonly CrestPart[], short: number, u: number): number => {
  let density = FLOOR;
  for (const p of parts) density += share(p, short, u);
  return density;
};

/** The state that best explains the reading. */
export const crestState = (parts: readonly CrestPart[], short: number, u: number): CrestState =>
  parts.reduce<{ state: CrestState; most: number }>(
    (best, p) => {
      const s = share(p, short, u);
      return s > best.most ? { state: p.state, most: s } : best;
    },
    { state: short < 0 ? 'over' : 'far-under', most: 0 },
  ).state;

/** Standard deviation of an as-cut crest, mm: a span equally likely throughout. */
export const crestSpread = (parts: readonly CrestPart[]): number => {
  const cut = parts.find((p) => p.state === 'as-cut');
  return cut ? (cut.to - cut.from) / Math.sqrt(12) : 0;
};
