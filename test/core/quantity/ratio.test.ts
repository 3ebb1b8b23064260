import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import * as q from '../../../src/core/quantity';
import { anyRatio, is, made, pair, slowGcd } from './arbitrary';

/** The judge throughout is the algebra of fractions on plain BigInts, by cross multiplication. */
describe('exact arithmetic against plain BigInt algebra', () => {
  it('adds, subtracts, multiplies and divides', () => {
    fc.assert(
      fc.property(pair, pair, (x, y) => {
        const [a, b] = [made(x), made(y)];
        const [n, d] = x;
        const [m, e] = y;
        expect(is(q.add(a, b), n * e + m * d, d * e)).toBe(true);
        expect(is(q.sub(a, b), n * e - m * d, d * e)).toBe(true);
        expect(is(q.mul(a, b), n * m, d * e)).toBe(true);
        expect(is(q.mul(a, b, a), n * m * n, d * e * d)).toBe(true);
        if (m !== 0n) expect(is(q.div(a, b), n * e, d * m)).toBe(true);
        else expect(() => q.div(a, b)).toThrow(q.NotExactError);
        expect(is(q.neg(a), -n, d)).toBe(true);
        expect(is(q.abs(a), n < 0n ? -n : n, d)).toBe(true);
      }),
    );
  });

  it('compares', () => {
    fc.assert(
      fc.property(pair, pair, (x, y) => {
        const [a, b] = [made(x), made(y)];
        const cross = x[0] * y[1] - y[0] * x[1];
        expect(q.compare(a, b)).toBe(cross < 0n ? -1 : cross > 0n ? 1 : 0);
        // The reference library; and a whole number in the place of either.
        const of = ([n, d]: readonly [bigint, bigint]) => new Fraction(n, d);
        expect(q.compare(a, b)).toBe(Math.sign(of(x).compare(of(y))));
        expect(q.compare(a, y[0])).toBe(Math.sign(of(x).compare(of([y[0], 1n]))));
        expect(q.compare(x[0], b)).toBe(Math.sign(of([x[0], 1n]).compare(of(y))));
        expect(q.less(a, b)).toBe(cross < 0n);
        expect(q.greater(a, b)).toBe(cross > 0n);
        expect(q.equal(a, b)).toBe(cross === 0n);
        expect(q.min(a, b)).toEqual(cross <= 0n ? a : b);
        expect(q.max(a, b)).toEqual(cross >= 0n ? a : b);
        expect(q.isPositive(a)).toBe(x[0] > 0n);
        expect(q.isWhole(a)).toBe(x[0] % x[1] === 0n);
      }),
    );
  });

  it('finds the least and the greatest of many wherever they stand', () => {
    const three = [q.ratio(2, 3), q.ratio(-1, 2), q.ratio(3, 4)] as const;
    const [a, b, c] = three;
    for (const [x, y, z] of [[a, b, c] as const, [b, c, a] as const, [c, a, b] as const]) {
      expect(q.min(x, y, z)).toEqual(b);
      expect(q.max(x, y, z)).toEqual(c);
    }
  });

  it('every result is in lowest terms with a positive denominator, and frozen', () => {
    fc.assert(
      fc.property(pair, pair, (x, y) => {
        const [a, b] = [made(x), made(y)];
        for (const r of [a, q.add(a, b), q.sub(a, b), q.mul(a, b), q.neg(a), q.abs(a)]) {
          expect(r.d > 0n).toBe(true);
          const size = r.n < 0n ? -r.n : r.n;
          if (size < 2000n && r.d < 2000n && size > 0n) expect(slowGcd(size, r.d)).toBe(1n);
          expect(q.gcd(r.n, r.d)).toBe(1n);
          expect(Object.isFrozen(r)).toBe(true);
        }
      }),
    );
  });

  it('takes whole numbers and BigInts beside ratios', () => {
    expect(q.mul(q.ratio(3, 2), 4)).toEqual(q.ratio(6));
    expect(q.add(1, 2n)).toEqual(q.ratio(3));
    expect(q.mul()).toEqual(q.ONE);
    expect(q.ratio(6, -4)).toEqual(q.ratio(-3, 2));
  });

  it('floor and ceil are the whole numbers next below and above', () => {
    fc.assert(
      fc.property(pair, ([n, d]) => {
        const [low, high] = [q.floor(made([n, d])), q.ceil(made([n, d]))];
        expect(low * d <= n && n < (low + 1n) * d).toBe(true);
        expect((high - 1n) * d < n && n <= high * d).toBe(true);
      }),
    );
    expect(q.floor(q.ratio(-5, 2))).toBe(-3n);
    expect(q.ceil(q.ratio(-5, 2))).toBe(-2n);
  });

  it('gcd divides both and nothing larger does', () => {
    fc.assert(
      fc.property(fc.bigInt(1n, 400n), fc.bigInt(1n, 400n), fc.boolean(), (a, b, minus) => {
        expect(q.gcd(minus ? -a : a, b)).toBe(slowGcd(a, b));
      }),
    );
    expect(q.gcd(0n, 6n)).toBe(6n);
    expect(q.gcd(0n, 0n)).toBe(0n);
  });

  it('never lets a JavaScript number with a fraction, or a zero below, in', () => {
    for (const bad of [1.5, Number.NaN, Infinity, 2 ** 53]) {
      expect(() => q.ratio(bad)).toThrow(q.NotExactError);
      expect(() => q.add(q.ONE, bad)).toThrow(q.NotExactError);
    }
    expect(() => q.ratio(1, 0)).toThrow(q.NotExactError);
    expect(q.ratio(2 ** 53 - 1).n).toBe(9007199254740991n);
  });

  it('leaves its operands alone and survives a structured clone', () => {
    fc.assert(
      fc.property(anyRatio, (a) => {
        const copy = structuredClone(a);
        expect(copy).toEqual(a);
        expect(q.isRatio(copy)).toBe(true);
        expect(q.equal(q.add(copy, 1), q.add(a, 1))).toBe(true);
        expect(copy).toEqual(a);
      }),
    );
  });

  it('knows a ratio from what only looks like one', () => {
    for (const x of [
      null,
      undefined,
      3,
      '3/4',
      {},
      { n: 1, d: 2 },
      { n: 1n },
      { n: 1n, d: 0n },
      { n: 1n, d: -2n },
    ])
      expect(q.isRatio(x)).toBe(false);
  });

  it('its double is the correctly rounded quotient where that is exact, and stays finite for huge parts', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), fc.integer({ min: 0, max: 20 }), (n, k) => {
        expect(q.toNumber(q.ratio(n, 2n ** BigInt(k)))).toBe(n / 2 ** k);
      }),
    );
    const huge = 10n ** 400n;
    expect(q.toNumber(q.ratio(huge + 1n, huge * 4n))).toBeCloseTo(0.25, 14);
    expect(q.toNumber(q.ratio(-3n * huge, huge + 1n))).toBeCloseTo(-3, 14);
  });
});
