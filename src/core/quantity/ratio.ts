import Fraction from 'fraction.js';

/**
 * An exact rational number. Numerator and denominator are coprime, the denominator is positive, the sign is
 * the numerator's. Made only in this folder; frozen, so that nobody's copy changes behind their back.
 */
export interface Ratio {
  readonly n: bigint;
  readonly d: bigint;
  readonly [brand]: 'ratio';
}
declare const brand: unique symbol;

/** What a number can be made from without rounding: an existing ratio, a whole number or a BigInt. */
export type Whole = number | bigint;
export type Exact = Ratio | Whole;

/** Thrown for a denominator of zero or a JavaScript number that is not a safe whole number: a bug, not user input. */
export class NotExactError extends Error {
  override name = 'NotExactError';
}

const big = (x: Whole): bigint => {
  if (typeof x === 'bigint') return x;
  if (!Number.isSafeInteger(x)) throw new NotExactError(`${x} is not a whole number; read it from text`);
  return BigInt(x);
};

const freeze = (n: bigint, d: bigint): Ratio => Object.freeze({ n, d }) as Ratio;
const fromFraction = (f: Fraction): Ratio => freeze(f.s * f.n, f.d);
const parts = (x: Exact): Pick<Ratio, 'n' | 'd'> => (typeof x === 'object' ? x : { n: big(x), d: 1n });
const toFraction = (x: Exact): Fraction =>
  typeof x === 'object' ? new Fraction(x.n, x.d) : new Fraction(big(x), 1n);

/**
 * n/d in lowest terms. @example ratio(6, 4) // 3/2
 * @throws NotExactError when d is 0 or a part is not a whole number
 */
export const ratio = (n: Whole, d: Whole = 1): Ratio => {
  const den = big(d);
  if (den === 0n) throw new NotExactError('denominator is zero');
  if (den === 1n) return freeze(big(n), den);
  return fromFraction(new Fraction(big(n), den));
};

export const ZERO = ratio(0);
export const ONE = ratio(1);

export const isRatio = (x: unknown): x is Ratio =>
  typeof x === 'object' &&
  x !== null &&
  typeof (x as Ratio).n === 'bigint' &&
  typeof (x as Ratio).d === 'bigint' &&
  (x as Ratio).d > 0n;

export const add = (a: Exact, b: Exact): Ratio => fromFraction(toFraction(a).add(toFraction(b)));
export const sub = (a: Exact, b: Exact): Ratio => fromFraction(toFraction(a).sub(toFraction(b)));
/** Product of all arguments. @example mul(ratio(3, 2), 4) // 6 */
export const mul = (...xs: Exact[]): Ratio => {
  let [n, d] = [1n, 1n];
  for (const x of xs) {
    const p = parts(x);
    n *= p.n;
    d *= p.d;
  }
  // Reduced once, at the end.
  return ratio(n, d);
};
/** a ÷ b. @throws NotExactError when b is 0 */
export const div = (a: Exact, b: Exact): Ratio => {
  const by = toFraction(b);
  if (by.n === 0n) throw new NotExactError('division by zero');
  return fromFraction(toFraction(a).div(by));
};
export const neg = (a: Exact): Ratio => fromFraction(toFraction(a).neg());
export const abs = (a: Exact): Ratio => fromFraction(toFraction(a).abs());
/** -1, 0 or 1 as a is less than, equal to or greater than b. Crosswise: tables are sorted by it, and nothing has to be reduced. */
export const compare = (a: Exact, b: Exact): -1 | 0 | 1 => {
  const [x, y] = [parts(a), parts(b)];
  const [left, right] = [x.n * y.d, y.n * x.d];
  return left < right ? -1 : left > right ? 1 : 0;
};
export const equal = (a: Exact, b: Exact): boolean => compare(a, b) === 0;
export const less = (a: Exact, b: Exact): boolean => compare(a, b) < 0;
export const greater = (a: Exact, b: Exact): boolean => compare(a, b) > 0;
export const min = (a: Ratio, ...rest: Ratio[]): Ratio => rest.reduce((m, x) => (less(x, m) ? x : m), a);
export const max = (a: Ratio, ...rest: Ratio[]): Ratio => rest.reduce((m, x) => (greater(x, m) ? x : m), a);
export const isWhole = (a: Ratio): boolean => a.d === 1n;
export const isPositive = (a: Ratio): boolean => a.n > 0n;

/** Largest whole number not above a. @example floor(ratio(-5, 2)) // -3n */
export const floor = (a: Ratio): bigint => {
  const q = a.n / a.d;
  return a.n % a.d < 0n ? q - 1n : q;
};
/** Smallest whole number not below a. @example ceil(ratio(5, 2)) // 3n */
export const ceil = (a: Ratio): bigint => -floor(neg(a));

/** Greatest common divisor of two whole numbers, never negative. */
export const gcd = (a: bigint, b: bigint): bigint => {
  let x = a < 0n ? -a : a;
  let y = b < 0n ? -b : b;
  while (y) [x, y] = [y, x % y];
  return x;
};

/**
 * The nearest double, correctly rounded to about 1e-16 whatever the size of the parts: for drawing, physics
 * with measured inputs and display only, never to make another ratio.
 */
export const toNumber = (a: Ratio): number => {
  const n = Number(a.n);
  const d = Number(a.d);
  if (Number.isFinite(n) && Number.isFinite(d)) return n / d;
  const shift = BigInt(Math.max(0, Math.max(a.n.toString(2).length, a.d.toString(2).length) - 1000));
  return Number(a.n >> shift) / Number(a.d >> shift);
};
