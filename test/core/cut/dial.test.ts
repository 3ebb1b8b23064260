import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dialOf, divisionsFor, settingAt } from '../../../src/core/cut/dial';
import { equal, inBase, mul, ratio, stated, toNumber } from '../../../src/core/quantity';
import { is } from '../figures/support';

describe('a dial', () => {
  it('reads diameter: one division moves the slide by half of it', () => {
    expect(dialOf(is('0.04', 'mm'), null, 'diameter').travel).toBe(0.02);
    expect(dialOf(is('0.04', 'mm'), null, 'radius').travel).toBe(0.04);
    expect(dialOf(is('0.001', 'in'), null, 'radius').travel).toBeCloseTo(0.0254, 12);
  });
  it('counts on past a full turn: 236 of 100 divisions of 0.04 mm', () => {
    const s = settingAt(dialOf(is('0.04', 'mm'), is('100', 'count'), 'diameter'), 236);
    expect([s.turns, s.past, s.divisions]).toEqual([2, 36, 236]);
    expect(equal(s.reading.value, ratio(944, 100))).toBe(true);
    expect(s.reading.unit).toBe('mm');
  });
  it('whose divisions in a turn aren’t known has no turns', () => {
    const s = settingAt(dialOf(is('0.02', 'mm'), null, 'radius'), 236);
    expect([s.turns, s.past]).toEqual([null, 236]);
  });

  const dial = fc.record({
    n: fc.integer({ min: 1, max: 500 }),
    unit: fc.constantFrom('mm' as const, 'in' as const),
    per: fc.integer({ min: 10, max: 500 }),
    reads: fc.constantFrom('diameter' as const, 'radius' as const),
  });
  it('any: the reading is divisions times one, and off by half a division at most', () => {
    fc.assert(
      fc.property(dial, fc.double({ min: 0, max: 20, noNaN: true }), (d, travel) => {
        const division = stated(ratio(d.n, 10_000), d.unit);
        const x = dialOf(division, stated(ratio(d.per), 'count'), d.reads);
        const s = settingAt(x, divisionsFor(x, travel, 'nearest'));
        expect(equal(s.reading.value, mul(division.value, s.divisions))).toBe(true);
        expect((s.turns ?? 0) * d.per + s.past).toBe(s.divisions);
        expect(s.past).toBeLessThan(d.per);
        // As the dial counts it, half of it where it reads diameter.
        const moved = toNumber(inBase(s.reading)) / (d.reads === 'diameter' ? 2 : 1);
        expect(Math.abs(moved - travel)).toBeLessThanOrEqual(x.travel / 2 + 1e-9);
        expect(divisionsFor(x, travel, 'down') * x.travel).toBeLessThanOrEqual(travel + 2e-6 * x.travel);
        expect(divisionsFor(x, travel, 'up') * x.travel).toBeGreaterThanOrEqual(travel - 2e-6 * x.travel);
      }),
      { numRuns: 300 },
    );
  });
});
