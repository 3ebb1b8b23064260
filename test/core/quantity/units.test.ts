import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as q from '../../../src/core/quantity';

describe('units', () => {
  it('an inch is 127/5 mm', () => {
    expect(q.inBase(q.stated(q.ONE, 'in'))).toEqual(q.ratio(127, 5));
  });
  it('8 tpi is 127/40 mm, 11 1/2 tpi is 254/115 mm', () => {
    expect(q.inBase(q.stated(q.ratio(8), 'tpi'))).toEqual(q.ratio(127, 40));
    expect(q.inBase(q.stated(q.ratio(23, 2), 'tpi'))).toEqual(q.ratio(254, 115));
  });
  it('speeds and times', () => {
    expect(q.inBase(q.stated(q.ratio(60), 'in/min'))).toEqual(q.ratio(127, 5));
    expect(q.inBase(q.stated(q.ratio(90), 'mm/min'))).toEqual(q.ratio(3, 2));
    expect(q.inBase(q.stated(q.ratio(5, 2), 'us'))).toEqual(q.ratio(1, 400_000));
  });
  it('there and back is the same value in every unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(q.UNITS) as q.Unit[])),
        fc.bigInt({ min: 1n, max: 10n ** 9n }),
        fc.bigInt({ min: 1n, max: 10n ** 9n }),
        (unit, n, d) => {
          const x = q.ratio(n, d);
          expect(q.fromBase(q.inBase(q.stated(x, unit)), unit)).toEqual(x);
        },
      ),
    );
  });
  it('refuses 0 tpi', () => {
    expect(() => q.inBase(q.stated(q.ZERO, 'tpi'))).toThrow(q.NotExactError);
  });
});

describe('leads', () => {
  it('carry π apart and are bounded on both sides by it', () => {
    // π to 20 decimals: Abramowitz and Stegun, Table 1.1.
    const pi = 314159265358979323846n;
    const scale = 10n ** 20n;
    expect(q.PI_LOW.n * scale < pi * q.PI_LOW.d).toBe(true);
    expect(q.PI_HIGH.n * scale > pi * q.PI_HIGH.d).toBe(true);
  });
  it('of a worm: module 2, two starts is 4π mm', () => {
    const l = q.timesStarts(q.leadFrom(q.stated(q.ratio(2), 'module')), 2);
    expect(l).toEqual(q.lead(q.ratio(4), true));
    expect(q.leadNumber(l)).toBeCloseTo(12.566370614359172, 12);
    expect(q.less(q.leadLow(l), q.leadHigh(l))).toBe(true);
  });
  it('of a diametral pitch: 20 DP is π × 1.27 mm', () => {
    expect(q.leadFrom(q.stated(q.ratio(20), 'dp'))).toEqual(q.lead(q.ratio(127, 100), true));
  });
  it('refuses what is no pitch', () => {
    expect(() => q.leadFrom(q.stated(q.ONE, 'rpm'))).toThrow(RangeError);
  });
  it('ppm of stand-ins', () => {
    // Convergents of π: Hardy and Wright, An Introduction to the Theory of Numbers, §10.
    expect(q.ppm(q.ratio(22, 7), q.ONE, true)).toBeCloseTo(402.4994, 3);
    expect(q.ppm(q.ratio(355, 113), q.ONE, true)).toBeCloseTo(0.0849, 4);
    // 37/47 for 100/127.
    expect(q.ppm(q.ratio(37, 47), q.ratio(100, 127))).toBeCloseTo(-212.766, 3);
  });
});

describe('preferred numbers', () => {
  it('are the R40 series of ISO 3:1973, Table 1', () => {
    expect([0, 1, 10, 20, 30, 39, 40, -40].map(q.r40At)).toEqual([1, 1.06, 1.8, 3.15, 5.6, 9.5, 10, 0.1]);
  });
  it('find their own index again', () => {
    for (let i = -60; i <= 120; i += 1) expect(q.r40Index(q.r40At(i))).toBe(i);
  });
});
