/**
 * A low-pass of one coil in series and one capacitor across, between a real source and a real load. Ohms, henries,
 * farads, hertz; gains in dB, above 0 where more arrives than would without the filter.
 */
export interface LowPass {
  readonly inductance: number;
  readonly capacitance: number;
  /** Resistance of what feeds it, and of the coil's wire: 0 or more. */
  readonly source: number;
  readonly coil: number;
  /** Resistance of what it feeds, above 0. */
  readonly load: number;
  /** A resistor and a capacitor in series, across the load; null: none. */
  readonly damping: { readonly resistance: number; readonly capacitance: number } | null;
}

const TURN = 2 * Math.PI;
export const decibels = (ratio: number): number => 20 * Math.log10(ratio);

/** Corner frequency, Hz: 1 ÷ (2π√(L·C)). Circuit theory; L in H and C in F, both above 0. */
export const corner = (inductance: number, capacitance: number): number =>
  1 / (TURN * Math.sqrt(inductance * capacitance));

/** Below this an undamped filter with no load amplifies, Hz: √2 · f0, where |1 − (f/f0)²| is 1. */
export const amplifiesTo = (f0: number): number => Math.SQRT2 * f0;

/** Gain with neither loss nor load, dB: −20·log|1 − (f/f0)²|; −40 dB per decade well above, without bound at f0. */
export const idealGain = (f: number, f0: number): number => -decibels(Math.abs(1 - (f / f0) ** 2));

/**
 * What arrives at the load with the filter, as a complex share of what would without it: (1 + Rs/Rl) ÷ (1 + Zs·Y), with
 * Zs = Rs + r + jωL and Y = 1/Rl + jωC + 1/(Rd + 1/jωCd). Circuit theory (voltage divider); f above 0, Hz.
 */
export const response = (f: number, p: LowPass): readonly [re: number, im: number] => {
  const w = TURN * f;
  const [zr, zi] = [p.source + p.coil, w * p.inductance];
  let [yr, yi] = [1 / p.load, w * p.capacitance];
  if (p.damping) {
    const { resistance: r } = p.damping;
    const x = -1 / (w * p.damping.capacitance);
    const size = r * r + x * x;
    yr += r / size;
    yi -= x / size;
  }
  const [dr, di] = [1 + zr * yr - zi * yi, zr * yi + zi * yr];
  const size = dr * dr + di * di;
  const top = 1 + p.source / p.load;
  return [(top * dr) / size, (-top * di) / size];
};

/** Insertion gain, dB: above 0 the filter amplifies. Its negative is the insertion loss of CISPR 17. */
export const gain = (f: number, p: LowPass): number => decibels(Math.hypot(...response(f, p)));

/** The pairs of source and load by which filters are stated: 50/50 Ω, and 0.1/100 Ω either way round (CISPR 17). */
export const STATED = { even: [50, 50], low: [0.1, 100], high: [100, 0.1] } as const;
export type StatedPair = keyof typeof STATED;
export const STATED_PAIRS = Object.keys(STATED) as StatedPair[];

/** Insertion loss between one of those pairs, dB; below 0 it amplifies. */
export const insertionLoss = (f: number, p: LowPass, pair: StatedPair): number => {
  const [source, load] = STATED[pair];
  return -gain(f, { ...p, source, load });
};

const STEPS = 600;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where the gain is highest, Hz and dB. Looked for from a tenth of the lowest resonance to ten times the corner. */
export const peak = (p: LowPass): { readonly f: number; readonly db: number } => {
  const top = corner(p.inductance, p.capacitance);
  const low = corner(p.inductance, p.capacitance + (p.damping?.capacitance ?? 0)) / 10;
  // On a log scale, with the corner itself on it: a sharp peak stands there.
  const step = Math.log((top * 10) / low) / STEPS;
  const at = (i: number): number => Math.log(top) + (i - STEPS) * step;
  const db = (x: number): number => gain(Math.exp(x), p);
  let best = 0;
  const count = STEPS + Math.ceil(Math.log(10) / step);
  for (let i = 0; i <= count; i += 1) if (db(at(i)) > db(at(best))) best = i;
  let [a, b] = [at(best - 1), at(best + 1)];
  while (b - a > 1e-9) {
    const [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
    if (db(c) >= db(d)) b = d;
    else a = c;
  }
  const x = (a + b) / 2;
  return { f: Math.exp(x), db: db(x) };
};

/** Highest frequency up to which the filter amplifies, Hz; null: it does so nowhere. */
export const crossing = (p: LowPass): number | null => {
  const { f, db } = peak(p);
  if (db <= 0) return null;
  let [low, high] = [f, f * 2];
  while (gain(high, p) > 0) high *= 2;
  while (high - low > high * 1e-9) {
    const mid = (low + high) / 2;
    if (gain(mid, p) > 0) low = mid;
    else high = mid;
  }
  return high;
};

/**
 * What quiets the peak: about √(L/C) Ω in series with at least 3·C, across the load. Common practice in the design of
 * supply filters.
 */
export const dampingFor = (inductance: number, capacitance: number) => ({
  resistance: Math.sqrt(inductance / capacitance),
  capacitance: 3 * capacitance,
});

/** An inverter's switching frequency and whole multiples of it, Hz. How strong each is depends on the inverter. */
export const harmonics = (carrier: number, count = 5): readonly number[] =>
  Array.from({ length: count }, (_, i) => carrier * (i + 1));
