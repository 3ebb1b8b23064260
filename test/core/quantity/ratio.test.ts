import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as q from '../../../src/core/quantity';

/** Plain BigInt algebra, written here without the library: what exact arithmetic has to agree with. */
const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b));
const lowest = (n: bigint, d: bigint): [bigint, bigint] => {
  const g = gcd(n, d) * (d < 0n ? -1n : 1n);
  return [n / g, d / g];
};

const whole = fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n });
const positive = fc.bigInt({ min: 1n, max: 10n ** 30n });
const pair = fc.tuple(whole, positive);
const make = ([n, d]: [bigint, bigint]) => q.ratio(n, d);

describe('exact arithmetic against plain BigInt algebra', () => {
  it('adds, subtracts, multiplies', () => {
    fc.assert(
      fc.property(pair, pair, (a, b) => {
        const [x, y] = [make(a), make(b)];
        const sum = q.add(x, y);
        expect([sum.n, sum.d]).toEqual(lowest(a[0] * b[1] + b[0] * a[1], a[1] * b[1]));
        const less = q.sub(x, y);
        expect([less.n, less.d]).toEqual(lowest(a[0] * b[1] - b[0] * a[1], a[1] * b[1]));
        const product = q.mul(x, y);
        expect([product.n, product.d]).toEqual(lowest(a[0] * b[0], a[1] * b[1]));
      }),
    );
  });

  it('divides, and refuses to divide by nothing', () => {
    fc.assert(
      fc.property(pair, pair, (a, b) => {
        if (b[0] === 0n) expect(() => q.div(make(a), make(b))).toThrow(q.NotExactError);
        else {
          const quotient = q.div(make(a), make(b));
          expect([quotient.n, quotient.d]).toEqual(lowest(a[0] * b[1], a[1] * b[0]));
        }
      }),
    );
  });

  it('compares by cross multiplication', () => {
    fc.assert(
      fc.property(pair, pair, (a, b) => {
        const cross = a[0] * b[1] - b[0] * a[1];
        expect(q.compare(make(a), make(b))).toBe(cross < 0n ? -1 : cross > 0n ? 1 : 0);
      }),
    );
  });

  it('floor and ceil hold the value between neighbours', () => {
    fc.assert(
      fc.property(pair, (a) => {
        const [low, high] = [q.floor(make(a)), q.ceil(make(a))];
        expect(low * a[1] <= a[0] && a[0] < (low + 1n) * a[1]).toBe(true);
        expect(high * a[1] >= a[0] && a[0] > (high - 1n) * a[1]).toBe(true);
      }),
    );
  });

  it('is frozen, and leaves its arguments alone', () => {
    const x = q.ratio(6, 4);
    expect(Object.isFrozen(x)).toBe(true);
    q.add(x, 1);
    expect([x.n, x.d]).toEqual([3n, 2n]);
  });

  it('refuses a zero denominator and a JavaScript number that is not whole', () => {
    expect(() => q.ratio(1, 0)).toThrow(q.NotExactError);
    expect(() => q.ratio(0.1)).toThrow(q.NotExactError);
    expect(() => q.ratio(2 ** 53)).toThrow(q.NotExactError);
    expect(() => q.mul(q.ONE, 1.5)).toThrow(q.NotExactError);
  });

  it('survives a structured clone and being stored as text', () => {
    fc.assert(
      fc.property(pair, (a) => {
        const x = make(a);
        expect(structuredClone(x)).toEqual(x);
        expect(q.fromStored(JSON.parse(JSON.stringify(q.toStored(x))))).toEqual(x);
      }),
    );
  });

  it('never takes rubbish for a stored ratio', () => {
    for (const x of [
      null,
      1,
      '1/2',
      {},
      { n: '1', d: '0' },
      { n: '1', d: '-2' },
      { n: 1, d: 2 },
      { n: '1e9', d: '1' },
    ])
      expect(q.fromStored(x)).toBeNull();
    expect(q.fromStored({ n: '9'.repeat(41), d: '1' })).toBeNull();
    fc.assert(fc.property(fc.anything(), (x) => void q.fromStored(x)));
  });

  it('gives the nearest double, also of enormous parts', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 1, max: 1e9 }), (n, d) => {
        expect(q.toNumber(q.ratio(n, d))).toBe(n / d);
      }),
    );
    expect(q.toNumber(q.ratio(3n * 10n ** 400n, 2n * 10n ** 400n))).toBe(1.5);
    expect(q.toNumber(q.ratio(10n ** 400n + 1n, 10n ** 399n))).toBeCloseTo(10, 12);
  });
});

describe('rounding', () => {
  const cases: readonly [bigint, bigint, Record<q.Rounding, bigint>][] = [
    [5n, 2n, { nearest: 3n, down: 2n, up: 3n, even: 2n }],
    [-5n, 2n, { nearest: -3n, down: -3n, up: -2n, even: -2n }],
    [7n, 2n, { nearest: 4n, down: 3n, up: 4n, even: 4n }],
    [9n, 4n, { nearest: 2n, down: 2n, up: 3n, even: 2n }],
    [-9n, 4n, { nearest: -2n, down: -3n, up: -2n, even: -2n }],
    [3n, 1n, { nearest: 3n, down: 3n, up: 3n, even: 3n }],
  ];
  it.each(cases)('%s/%s by each rule', (n, d, expected) => {
    for (const rule of ['nearest', 'down', 'up', 'even'] as const)
      expect(q.roundWhole(q.ratio(n, d), rule)).toBe(expected[rule]);
  });

  it('is never further away than half a step, or a whole one by the directed rules', () => {
    fc.assert(
      fc.property(pair, fc.integer({ min: 0, max: 6 }), (a, places) => {
        const x = make(a);
        const step = q.ratio(1n, 10n ** BigInt(places));
        for (const rule of ['nearest', 'even'] as const)
          expect(q.compare(q.mul(2, q.abs(q.sub(q.roundTo(x, places, rule), x))), step)).not.toBe(1);
        expect(q.compare(q.roundTo(x, places, 'down'), x)).not.toBe(1);
        expect(q.compare(q.roundTo(x, places, 'up'), x)).not.toBe(-1);
        expect(q.less(q.sub(x, q.roundTo(x, places, 'down')), step)).toBe(true);
      }),
    );
  });

  it('to a dial’s step', () => {
    const fiveHundredths = q.ratio(1, 20);
    expect(q.roundToStep(q.ratio(12, 100), fiveHundredths)).toEqual(q.ratio(1, 10));
    expect(q.roundToStep(q.ratio(13, 100), fiveHundredths)).toEqual(q.ratio(15, 100));
    expect(q.roundToStep(q.ratio(13, 100), fiveHundredths, 'down')).toEqual(q.ratio(1, 10));
  });
});
