import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  div,
  lead,
  leadFrom,
  leadHigh,
  leadLow,
  leadNumber,
  less,
  PI_HIGH,
  PI_LOW,
  ppm,
  ratio,
  stated,
  timesStarts,
} from '../../../src/core/quantity';
import { anyRatio, is } from './arbitrary';

/** π to 25 decimals: Abramowitz and Stegun, Handbook of Mathematical Functions, Table 1.1 (from memory). */
const PI_25 = 31415926535897932384626433n;
const SCALE = 10n ** 25n;

describe('bounds of π', () => {
  it('hold π between them, one unit of the 18th decimal apart', () => {
    expect(PI_LOW.n * SCALE < PI_25 * PI_LOW.d).toBe(true);
    expect((PI_25 + 1n) * PI_HIGH.d < PI_HIGH.n * SCALE).toBe(true);
    expect(is(ratio(PI_HIGH.n * PI_LOW.d - PI_LOW.n * PI_HIGH.d, PI_HIGH.d * PI_LOW.d), 1n, 10n ** 18n)).toBe(
      true,
    );
  });
});

describe('leads', () => {
  it('of every kind of pitch (own derivation: 25.4 ÷ tpi, π × module, π × 25.4 ÷ DP)', () => {
    const of = (n: number, d: number, unit: Parameters<typeof stated>[1]) =>
      leadFrom(stated(ratio(n, d), unit));
    expect(of(5, 4, 'mm')).toEqual({ mm: ratio(5, 4), pi: false });
    expect(of(23, 2, 'tpi')).toEqual({ mm: ratio(254, 115), pi: false });
    expect(of(1, 8, 'in')).toEqual({ mm: ratio(127, 40), pi: false });
    expect(of(2, 1, 'module')).toEqual({ mm: ratio(2), pi: true });
    expect(of(10, 1, 'dp')).toEqual({ mm: ratio(254, 100), pi: true });
    expect(of(20, 1, 'dp')).toEqual({ mm: ratio(127, 100), pi: true });
    expect(() => of(1, 1, 'rpm')).toThrow(RangeError);
  });

  it('a multi-start lead is starts × pitch (ISO 5408)', () => {
    expect(timesStarts(lead(ratio(2)), 3)).toEqual({ mm: ratio(6), pi: false });
    // Worked example O07, lead of a worm z·π·m: module 2, two starts, 12.566370614359172 mm.
    expect(leadNumber(timesStarts(lead(ratio(2), true), 2))).toBeCloseTo(12.566370614359172, 12);
    expect(Object.isFrozen(lead(ratio(1)))).toBe(true);
  });

  it('bounds of a lead with π lie on their own sides of it; without π they are the lead', () => {
    fc.assert(
      fc.property(anyRatio, (mm) => {
        if (mm.n <= 0n) return;
        const worm = lead(mm, true);
        expect(leadHigh(worm).n * SCALE * mm.d > mm.n * (PI_25 + 1n) * leadHigh(worm).d).toBe(true);
        expect(leadLow(worm).n * SCALE * mm.d < mm.n * PI_25 * leadLow(worm).d).toBe(true);
        expect(less(leadLow(worm), leadHigh(worm))).toBe(true);
        expect([leadHigh(lead(mm)), leadLow(lead(mm))]).toEqual([mm, mm]);
      }),
    );
  });
});

describe('error of a stand-in, ppm', () => {
  it('22/7 and 355/113 for π (worked examples G12, G13: own calculation, agreeing with figures from memory)', () => {
    expect(ppm(ratio(22, 7), ratio(1), true)).toBeCloseTo(402.499434770682, 6);
    expect(ppm(ratio(355, 113), ratio(1), true)).toBeCloseTo(0.08491367865837086, 8);
  });

  it('37/47 for 100/127, and 63/80 (worked example G27, own calculation)', () => {
    expect(ppm(ratio(37, 47), ratio(100, 127))).toBeCloseTo(-212.7659574468085, 9);
    expect(ppm(ratio(63, 80), ratio(100, 127))).toBeCloseTo(125, 9);
    expect(ppm(ratio(6, 4), ratio(3, 2))).toBe(0);
  });

  it('is (approx ÷ exact − 1) × 10⁶ for small errors of both signs', () => {
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), (k) => {
        expect(ppm(div(ratio(1_000_000 + k), 1_000_000), ratio(1))).toBeCloseTo(k, 9);
      }),
    );
  });
});
