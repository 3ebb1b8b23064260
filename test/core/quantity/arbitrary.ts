import fc from 'fast-check';
import { ratio, type Ratio } from '../../../src/core/quantity';

const BIG = 10n ** 15n;
const small = fc.bigInt(-40n, 40n);
/** Numerators small and large, with zero often enough. */
export const top = fc.oneof(small, fc.bigInt(-BIG, BIG));
export const below = fc.oneof(fc.bigInt(1n, 40n), fc.bigInt(1n, BIG));

/** A fraction as two plain BigInts, not reduced: what the tests reckon with. */
export type Pair = readonly [bigint, bigint];
export const pair: fc.Arbitrary<Pair> = fc.tuple(top, below);
export const made = ([n, d]: Pair): Ratio => ratio(n, d);
export const anyRatio: fc.Arbitrary<Ratio> = pair.map(made);

/** Greatest common divisor by trying every number down: slow, and nothing like the one under test. */
export const slowGcd = (a: bigint, b: bigint): bigint => {
  let g = a < b ? a : b;
  while (a % g !== 0n || b % g !== 0n) g -= 1n;
  return g;
};

/** True when the ratio is the fraction n/d, told by cross multiplication. */
export const is = (r: Ratio, n: bigint, d: bigint): boolean => r.n * d === n * r.d;
