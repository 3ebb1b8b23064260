import { describe, expect, it } from 'vitest';
import {
  boundsVariance,
  combined,
  COVERAGE,
  INSTRUMENTS,
  lengthUncertainty,
  markCounts,
  ppmOf,
  roundedUp,
  stepVariance,
  travelFor,
  turnsFor,
  USUAL,
} from '../../../src/core/prove';
import { compare, ratio, toNumber } from '../../../src/core/quantity';

/** A small generator of its own (Park and Miller, 1988), seeded, so that each run throws the same dice. */
const dice = (seed: number) => () => {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
};

const THROWS = 40_000;

/**
 * A measured difference as it comes about: two true places, each read to the nearest division, and an instrument that is
 * off by some amount within its bounds. No formula of the GUM is used here.
 */
const throwLengths = (step: number, accuracy: number): number[] => {
  const next = dice(20260503);
  return Array.from({ length: THROWS }, () => {
    const [from, to] = [next() * 10, 100 + next() * 10];
    const seen = (x: number) => (step > 0 ? Math.round(x / step) * step : x);
    return seen(to) - seen(from) + (2 * next() - 1) * accuracy - (to - from);
  });
};

const deviation = (errors: readonly number[]): number =>
  Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);

describe('uncertainty of a length by two readings (GUM) against thrown dice', () => {
  it.each(INSTRUMENTS)('%s: the spread agrees within 2 %, and twice it holds at least 95 of 100', (id) => {
    const [step, accuracy] = [toNumber(USUAL[id].step), toNumber(USUAL[id].accuracy)];
    const errors = throwLengths(step, accuracy);
    const expanded = lengthUncertainty(USUAL[id]);
    expect(Math.abs(deviation(errors) / (expanded / COVERAGE) - 1)).toBeLessThan(0.02);
    expect(errors.filter((e) => Math.abs(e) <= expanded).length / THROWS).toBeGreaterThan(0.95);
  });

  it('a part left out would be noticed', () => {
    const errors = throwLengths(0.01, 0.01);
    const halves = [combined(boundsVariance(0.01)), combined(2 * stepVariance(0.01))];
    for (const u of halves) expect(Math.abs(deviation(errors) / u - 1)).toBeGreaterThan(0.05);
  });

  it('is never finer for being written down', () => {
    for (const mm of [0.00408248, 0.0127, 0.1, 0.00010001]) {
      const up = roundedUp(mm);
      expect(toNumber(up)).toBeGreaterThanOrEqual(mm);
      expect(toNumber(up) - mm).toBeLessThan(0.0001);
    }
    expect(roundedUp(0.1)).toEqual(ratio(1, 10));
  });
});

describe('what may be shown in ppm', () => {
  const show = (difference: number, uncertainty: number) =>
    ppmOf(ratio(BigInt(difference), 10_000n), ratio(100), ratio(BigInt(uncertainty), 10_000n));

  it('nothing inside the uncertainty, and outside it only as fine as its first figure', () => {
    // 12.7 µm in 100 mm is 127 ppm, shown as 130.
    expect(show(127, 127)).toEqual({ kind: 'inside', uncertainty: 130n });
    expect(show(-130, 127)).toEqual({ kind: 'inside', uncertainty: 130n });
    expect(show(131, 127)).toEqual({ kind: 'seen', ppm: 100n, uncertainty: 130n });
    expect(show(-1849, 127)).toEqual({ kind: 'seen', ppm: -1800n, uncertainty: 130n });
    expect(show(1850, 127)).toEqual({ kind: 'seen', ppm: 1900n, uncertainty: 130n });
    expect(show(58333, 41)).toEqual({ kind: 'seen', ppm: 58330n, uncertainty: 41n });
  });

  it('whatever the readings: its last figure is never below a tenth of the uncertainty', () => {
    const next = dice(7);
    for (let i = 0; i < 300; i++) {
      const p = show(Math.round((next() - 0.5) * 1e5), 1 + Math.round(next() * 5000));
      if (p?.kind !== 'seen') continue;
      const unit = 10n ** BigInt(p.uncertainty.toString().length - 1);
      expect(p.ppm % unit).toBe(0n);
      expect(unit * 10n).toBeGreaterThan(p.uncertainty);
    }
  });

  it('nothing where nothing was expected', () => {
    expect(ppmOf(ratio(1), ratio(0), ratio(1))).toBeNull();
  });
});

describe('what would settle it', () => {
  it('just so many turns are enough, and one less is not', () => {
    const [delta, per, ppm] = [ratio(7), ratio(10000, 3), ratio(100)];
    const n = turnsFor(delta, per, ppm);
    const off = (turns: bigint) => ((7 * 3) / (10000 * Number(turns))) * 1e6;
    expect(off(n)).toBeLessThanOrEqual(100);
    expect(off(n - 1n)).toBeGreaterThan(100);
  });

  it('over the travel it names, the uncertainty is that many ppm', () => {
    const u = roundedUp(lengthUncertainty(USUAL.caliper));
    const travel = travelFor(u, ratio(200));
    expect(compare(travel, ratio(0))).toBe(1);
    expect((toNumber(u) / toNumber(travel)) * 1e6).toBeCloseTo(200, 9);
  });

  it('a mark resolves whole counts, at least one', () => {
    expect(markCounts(ratio(4096))).toEqual(ratio(7));
    expect(markCounts(ratio(100))).toEqual(ratio(1));
  });
});
