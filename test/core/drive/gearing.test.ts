import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as drive from '../../../src/core/drive';
import { lead, leadFrom, ratio, stated, timesStarts, type Ratio } from '../../../src/core/quantity';

const r = (n: number, d = 1): Ratio => ratio(n, d);

/** Own calculations: regression tests, not counted as published. */
describe('counts and steps', () => {
  it.each([
    [1024, 4, 1, 1, 4096, 1],
    [600, 4, 60, 30, 4800, 1],
    [1000, 4, 50, 60, 10000, 3],
  ])('%s lines × %s, %s:%s pulleys', (lines, edges, spindle, encoder, n, d) => {
    const counts = drive.countsPerRev({
      lines: r(lines),
      edges: r(edges),
      spindle: r(spindle),
      encoder: r(encoder),
    });
    expect(counts).toEqual(ratio(n, d));
  });
  it('motor revs per screw rev: the screw’s pulley over the motor’s', () => {
    expect(drive.motorPerScrew({ motor: r(24), screw: r(48), gearbox: r(1) })).toEqual(r(2));
    expect(drive.motorPerScrew({ motor: r(20), screw: r(30), gearbox: r(2) })).toEqual(r(3));
  });
});

describe('steps per count, exact', () => {
  const inch8 = ratio(127, 40);
  it.each([
    ['1.5 mm on 8 tpi', lead(r(3, 2)), inch8, 6400, 4096, 375, 508],
    ['20 tpi on 3 mm', leadFrom(stated(r(20), 'tpi')), r(3), 6000, 4800, 127, 240],
    ['1.25 mm on 3 mm', lead(r(5, 4)), r(3), 6000, 4800, 25, 48],
    ['2 mm, 3 starts, on 3 mm', timesStarts(lead(r(2)), 3), r(3), 6000, 4800, 5, 2],
    ['feed 0.1 mm on 8 tpi', lead(r(1, 10)), inch8, 6400, 4096, 25, 508],
  ] as const)('%s', (_name, l, screw, steps, counts, n, d) => {
    expect(drive.stepsPerCount(l, screw, r(steps), r(counts))).toEqual(lead(ratio(n, d)));
  });
  it('module 1 keeps its π: 5/12 π', () => {
    const worm = drive.stepsPerCount(leadFrom(stated(r(1), 'module')), r(3), r(6000), r(4800));
    expect(worm).toEqual(lead(r(5, 12), true));
  });
});

/** The nearest fraction within bounds by trying every one: what the continued fraction has to agree with. */
const byTrying = (x: number, topMax: number, bottomMax: number): number => {
  let best = Infinity;
  for (let q = 1; q <= bottomMax; q += 1) {
    for (const p of [Math.floor(x * q), Math.ceil(x * q), topMax]) {
      if (p < 1 || p > topMax) continue;
      best = Math.min(best, Math.abs(p / q - x));
    }
  }
  return best;
};

describe('the best fraction that fits', () => {
  it('is never beaten by any fraction within both bounds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 60 }),
        (n, d, topMax, bottomMax) => {
          const held = drive.bestFraction(r(n, d), BigInt(topMax), BigInt(bottomMax));
          if (!held) throw new Error('some fraction always fits');
          expect(held.top >= 1n && held.top <= BigInt(topMax)).toBe(true);
          expect(held.bottom >= 1n && held.bottom <= BigInt(bottomMax)).toBe(true);
          const off = Math.abs(Number(held.top) / Number(held.bottom) - n / d);
          expect(off).toBeLessThanOrEqual(byTrying(n / d, topMax, bottomMax) + 1e-12);
          expect(held.exact).toBe(off === 0 || held.top * BigInt(d) === held.bottom * BigInt(n));
        },
      ),
      { numRuns: 2000 },
    );
  });
  it('is the ratio itself where that fits', () => {
    expect(drive.bestFraction(r(375, 508), 508n, 508n)).toEqual({ top: 375n, bottom: 508n, exact: true });
    expect(drive.bestFraction(r(375, 508), 374n, 508n)?.exact).toBe(false);
    expect(drive.bestFraction(r(375, 508), 375n, 507n)?.exact).toBe(false);
  });
  it('finds 355/113 for π', () => {
    // Best approximations of π: Hardy and Wright, An Introduction to the Theory of Numbers, §10.
    const pi = ratio(314159265358979323846n, 10n ** 20n);
    expect(drive.bestFraction(pi, 500n, 500n)).toEqual({ top: 355n, bottom: 113n, exact: false });
    expect(drive.bestFraction(pi, 30n, 30n)).toEqual({ top: 22n, bottom: 7n, exact: false });
  });
});
