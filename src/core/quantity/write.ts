import { abs, ceil, floor, isWhole, mul, ratio, sub, type Ratio } from './ratio';

/** How a decimal is cut to its places. `nearest` sends halves away from zero, as drawings do. */
export type Rounding = 'nearest' | 'down' | 'up' | 'even';

/** Rounds to a whole number by the named rule; `down` is towards minus infinity, `up` towards plus infinity. */
export const roundWhole = (a: Ratio, rule: Rounding): bigint => {
  if (rule === 'down') return floor(a);
  if (rule === 'up') return ceil(a);
  const size = abs(a);
  const low = floor(size);
  const rest = sub(size, low);
  const twice = mul(rest, 2);
  const up = twice.n > twice.d || (twice.n === twice.d && (rule === 'nearest' || low % 2n === 1n));
  const whole = up ? low + 1n : low;
  return a.n < 0n ? -whole : whole;
};

/** The value cut to a number of decimal places, still exact. @example roundTo(ratio(2, 3), 2) // 67/100 */
export const roundTo = (a: Ratio, places: number, rule: Rounding = 'nearest'): Ratio =>
  ratio(roundWhole(mul(a, 10n ** BigInt(places)), rule), 10n ** BigInt(places));

/** The value as a multiple of a step, e.g. a dial's graduation. @throws NotExactError for a step of 0 */
export const roundToStep = (a: Ratio, step: Ratio, rule: Rounding = 'nearest'): Ratio =>
  mul(roundWhole(mul(a, ratio(step.d, step.n)), rule), step);

export interface DecimalStyle {
  readonly places: number;
  readonly rule?: Rounding;
  /** Keep trailing zeros, for columns and for figures whose last digit says how fine they are. */
  readonly keepZeros?: boolean;
  readonly mark?: '.' | ',';
}

/** Decimal text, rounded by the named rule. @example decimalText(ratio(127, 40), { places: 3 }) // "3.175" */
export const decimalText = (a: Ratio, style: DecimalStyle): string => {
  const { places, rule = 'nearest', keepZeros = false, mark = '.' } = style;
  const scaled = roundWhole(mul(a, 10n ** BigInt(places)), rule);
  const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  let part = places > 0 ? digits.slice(digits.length - places) : '';
  if (!keepZeros) part = part.replace(/0+$/, '');
  const sign = scaled < 0n ? '−' : '';
  return sign + whole + (part ? mark + part : '');
};

/** True when the decimal with so many places is the value itself, not a rounding of it. */
export const isExactDecimal = (a: Ratio, places: number): boolean => isWhole(mul(a, 10n ** BigInt(places)));

/** Mixed fraction as the trade writes it: "11 1/2", "3/8", "7". */
export const fractionText = (a: Ratio): string => {
  const sign = a.n < 0n ? '−' : '';
  const size = abs(a);
  const whole = floor(size);
  const rest = sub(size, whole);
  if (rest.n === 0n) return sign + whole.toString();
  const part = `${rest.n}/${rest.d}`;
  return sign + (whole > 0n ? `${whole} ${part}` : part);
};

/** Plain fraction for ratios: "375/508", "3". */
export const ratioText = (a: Ratio): string => (isWhole(a) ? `${a.n}` : `${a.n}/${a.d}`).replace('-', '−');
