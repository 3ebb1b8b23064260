import { describe, expect, it } from 'vitest';
import { byRatio, type Hypothesis } from '../../../src/core/prove/faults/hypotheses';
import { nextSteps } from '../../../src/core/prove/faults/next';
import { atOnce } from '../../../src/core/prove/faults/steps';
import { ratio } from '../../../src/core/quantity';

// A 3 mm screw, 4800 counts, 1.5 mm set: what each test would show.
const EXPECTED = { counts: ratio(4800), screw: ratio(1, 2), carriage: ratio(3) };
const says = (counts: number, screw: number, carriage: number): Hypothesis => ({
  causes: [],
  odds: 1,
  says: byRatio(counts, screw, carriage),
});
const even = (...hs: Hypothesis[]) => hs.map((h) => ({ h, weight: 1 / hs.length }));
const next = (...hs: Hypothesis[]) => atOnce(nextSteps(even(...hs), EXPECTED));

// Shannon: telling n equal ones apart for certain is worth log2 n bits.
describe('the next test', () => {
  it('two that only the counts part: one bit, by counts', () => {
    const n = next(says(0.5, 0.5, 1), says(1, 0.5, 1));
    expect(n?.test).toBe('counts');
    expect(n?.bits).toBeCloseTo(1, 6);
    expect(n?.over).toBe(10);
  });
  it('two that only the screw’s turns part, with the travel the same', () => {
    const n = next(says(1, 0.5, 2), says(1, 2, 0.5));
    expect(n?.test).toBe('screw');
    expect(n?.over).toBe(20);
  });
  it('four: the test that parts all rather than two and two', () => {
    const n = next(says(1, 1, 1), says(1, 2, 1.3), says(2, 1, 0.7), says(2, 2, 0.2));
    expect(n?.test).toBe('carriage');
    expect(n?.bits).toBeCloseTo(2, 6);
  });
  it('none where all say the same, or only one is left', () => {
    expect(next(says(1, 0.5, 1), says(1, 0.5, 1))).toBeNull();
    expect(next(says(1, 0.5, 1))).toBeNull();
    expect(atOnce(nextSteps([], EXPECTED))).toBeNull();
  });
  it('none that the profile can say nothing of', () => {
    const n = atOnce(nextSteps(even(says(0.5, 0.5, 1), says(1, 0.5, 1)), { ...EXPECTED, counts: null }));
    expect(n).toBeNull();
  });
  it('of two that overlap, near what the integral over the reading gives', () => {
    // Travel over 100 mm, ±0.03 at each end: u = 0.03 √(2/3) / 100. Two equal ones k·u apart.
    const u = (0.03 * Math.sqrt(2 / 3)) / 100;
    for (const apart of [2, 3, 4]) {
      // Mutual information of a fair bit seen through a normal of width 1: 1 − E[log2(1 + e^−(d²/2 + d z))].
      let lost = 0;
      const step = 0.001;
      for (let z = -8; z < 8; z += step)
        lost +=
          ((step * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)) *
          Math.log2(1 + Math.exp(-((apart * apart) / 2 + apart * z)));
      const n = atOnce(
        nextSteps(even(says(1, 1, 1), says(1, 1 + apart * u, 1)), {
          counts: null,
          screw: null,
          carriage: null,
        }),
      );
      expect(n?.test).toBe('travel');
      expect(Math.abs((n?.bits ?? 0) - (1 - lost))).toBeLessThan(0.1);
    }
  });
});
