import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { R40, r40At, r40Index } from '../../../src/core/quantity';

/** Numbers of the R10 series and the R20 series between them: ISO 3:1973 Table 1 (from memory). */
const R10 = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];
const R20 = [1.12, 1.4, 1.8, 2.24, 2.8, 3.55, 4.5, 5.6, 7.1, 9];

describe('preferred numbers R40', () => {
  it('hold R10 and R20 at every fourth and second place', () => {
    expect(R40.filter((_, i) => i % 4 === 0)).toEqual(R10);
    expect(R40.filter((_, i) => i % 4 === 2)).toEqual(R20);
  });

  it('lie within +1.26 and −1.01 % of the geometric series as ISO 3 states them, to the printed hundredth', () => {
    expect(R40).toHaveLength(40);
    R40.forEach((value, i) => {
      const off = value / 10 ** (i / 40) - 1;
      const printed = Math.round(off * 10_000);
      expect(printed).toBeLessThanOrEqual(126);
      expect(printed).toBeGreaterThanOrEqual(-101);
    });
  });

  it('repeat in every decade, up and down', () => {
    expect([r40At(0), r40At(40), r40At(-40), r40At(42), r40At(-1), r40At(85)]).toEqual([
      1, 10, 0.1, 11.2, 0.95, 132,
    ]);
    fc.assert(
      fc.property(fc.integer({ min: -120, max: 160 }), (i) => {
        expect(r40At(i) / r40At(i - 40)).toBeCloseTo(10, 9);
        expect(r40At(i)).toBeGreaterThan(r40At(i - 1));
      }),
    );
    expect(() => r40At(0.5)).toThrow(RangeError);
  });

  it('the nearest is the nearest of all in three decades', () => {
    const all = Array.from({ length: 161 }, (_, k) => k - 40);
    fc.assert(
      fc.property(fc.double({ min: 0.11, max: 900, noNaN: true }), (x) => {
        const best = Math.min(...all.map((i) => Math.abs(r40At(i) - x)));
        expect(Math.abs(r40At(r40Index(x)) - x)).toBe(best);
      }),
    );
    // ISO 965-1: 130.2 µm rounds to 132, 171.2 to 170, 279.2 to 280 (table cells seen in handbooks).
    expect([130.2, 171.2, 279.2].map((x) => r40At(r40Index(x)))).toEqual([132, 170, 280]);
    for (const bad of [0, -1, Number.NaN]) expect(() => r40Index(bad)).toThrow(RangeError);
  });
});
