import { div, mul, ratio, type Ratio } from './ratio';

/** Millimetres in an inch, exact by international agreement of 1959 (ISO 31-1, BS 350). */
export const MM_PER_INCH = ratio(127, 5);

/**
 * Every unit in which a person states a value. The names are also what is stored, so they never change.
 * `turns` counts revolutions; `module` and `dp` state a worm's axial module (mm) or diametral pitch (1/in).
 */
export const UNITS = {
  mm: { dimension: 'length', factor: ratio(1) },
  in: { dimension: 'length', factor: MM_PER_INCH },
  um: { dimension: 'length', factor: ratio(1, 1000) },
  m: { dimension: 'length', factor: ratio(1000) },
  ft: { dimension: 'length', factor: ratio(1524, 5) },
  mm2: { dimension: 'area', factor: ratio(1) },
  tpi: { dimension: 'length', factor: MM_PER_INCH, reciprocal: true },
  module: { dimension: 'pi-length', factor: ratio(1) },
  dp: { dimension: 'pi-length', factor: MM_PER_INCH, reciprocal: true },
  rpm: { dimension: 'rpm', factor: ratio(1) },
  teeth: { dimension: 'count', factor: ratio(1) },
  lines: { dimension: 'count', factor: ratio(1) },
  count: { dimension: 'count', factor: ratio(1) },
  steps: { dimension: 'count', factor: ratio(1) },
  turns: { dimension: 'count', factor: ratio(1) },
  times: { dimension: 'number', factor: ratio(1) },
  percent: { dimension: 'number', factor: ratio(1, 100) },
  Hz: { dimension: 'frequency', factor: ratio(1) },
  kHz: { dimension: 'frequency', factor: ratio(1000) },
  MHz: { dimension: 'frequency', factor: ratio(1_000_000) },
  us: { dimension: 'time', factor: ratio(1, 1_000_000) },
  ms: { dimension: 'time', factor: ratio(1, 1000) },
  s: { dimension: 'time', factor: ratio(1) },
  h: { dimension: 'hours', factor: ratio(1) },
  'mm/s': { dimension: 'speed', factor: ratio(1) },
  'mm/min': { dimension: 'speed', factor: ratio(1, 60) },
  'in/min': { dimension: 'speed', factor: ratio(127, 300) },
  deg: { dimension: 'angle', factor: ratio(1) },
  N: { dimension: 'force', factor: ratio(1) },
  kg: { dimension: 'mass', factor: ratio(1) },
  Nm: { dimension: 'torque', factor: ratio(1) },
  V: { dimension: 'voltage', factor: ratio(1) },
  A: { dimension: 'current', factor: ratio(1) },
  mA: { dimension: 'current', factor: ratio(1, 1000) },
  mH: { dimension: 'inductance', factor: ratio(1, 1000) },
  uH: { dimension: 'inductance', factor: ratio(1, 1_000_000) },
  uF: { dimension: 'capacitance', factor: ratio(1, 1_000_000) },
  nF: { dimension: 'capacitance', factor: ratio(1, 1_000_000_000) },
  pF: { dimension: 'capacitance', factor: ratio(1, 1_000_000_000_000) },
  'pF/m': { dimension: 'capacitance-per-metre', factor: ratio(1, 1_000_000_000_000) },
  ohm: { dimension: 'resistance', factor: ratio(1) },
  kohm: { dimension: 'resistance', factor: ratio(1000) },
  'ohm/km': { dimension: 'resistance-per-metre', factor: ratio(1, 1000) },
  'kV/us': { dimension: 'slew', factor: ratio(1_000_000_000) },
  kgcm2: { dimension: 'inertia', factor: ratio(1, 10_000) },
} as const satisfies Record<string, { dimension: string; factor: Ratio; reciprocal?: true }>;

export type Unit = keyof typeof UNITS;
export type Dimension = (typeof UNITS)[Unit]['dimension'];

export const isUnit = (x: unknown): x is Unit => typeof x === 'string' && Object.hasOwn(UNITS, x);
export const dimensionOf = (unit: Unit): Dimension => UNITS[unit].dimension;

/** A value as a person stated it: the exact number and the unit they said it in. 8 tpi stays 8 tpi. */
export interface Stated {
  readonly value: Ratio;
  readonly unit: Unit;
}

export const stated = (value: Ratio, unit: Unit): Stated => Object.freeze({ value, unit });

/**
 * The value in its dimension's base unit: mm, s, Hz, mm/s, rpm, deg, H, F, Ω, V/s, or a plain number. For `module` and `dp`
 * the result is to be multiplied by π (mm).
 * @throws NotExactError for 0 tpi or 0 DP
 * @example inBase(stated(ratio(8), 'tpi')) // 127/40 mm
 */
export const inBase = ({ value, unit }: Stated): Ratio => {
  const u: { factor: Ratio; reciprocal?: true } = UNITS[unit];
  return u.reciprocal ? div(u.factor, value) : mul(u.factor, value);
};

/**
 * A base value stated in a unit of the same dimension. @example fromBase(ratio(127, 40), 'tpi') // 8
 * @throws NotExactError for a base value of 0 in a reciprocal unit
 */
export const fromBase = (base: Ratio, unit: Unit): Ratio => {
  const u: { factor: Ratio; reciprocal?: true } = UNITS[unit];
  return u.reciprocal ? div(u.factor, base) : div(base, u.factor);
};
