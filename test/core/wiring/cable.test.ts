import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withFields } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio } from '../../../src/core/quantity';
import {
  delayTo,
  differentialReach,
  edgeGapOf,
  filterWindow,
  largestPullUp,
  longestSupply,
  smallestPullUp,
  sinkCurrent,
  supplyDrop,
  timeConstant,
} from '../../../src/core/wiring';

const positive = fc.double({ min: 1e-3, max: 1e3, noNaN: true });

describe('reach of a differential pair', () => {
  it('never grows with the rate, never leaves the guide', () => {
    const rate = fc.double({ min: 1, max: 10e6, noNaN: true });
    fc.assert(
      fc.property(rate, rate, (a, b) => {
        const [slow, fast] = [Math.min(a, b), Math.max(a, b)].map((r) => differentialReach(r) ?? NaN);
        expect(slow).toBeGreaterThanOrEqual((fast ?? NaN) * (1 - 1e-12));
        expect(slow).toBeLessThanOrEqual(1219);
        expect(fast).toBeGreaterThanOrEqual(12 * (1 - 1e-12));
      }),
    );
  });
  it('length × rate stays near 1.22 × 10⁸ between its points', () => {
    for (const rate of [150e3, 300e3, 700e3])
      expect((differentialReach(rate) ?? 0) * rate).toBeCloseTo(1.22e8, -6);
  });
  it('says nothing of more than 10 Mb/s', () => expect(differentialReach(10e6 + 1)).toBeNull());
});

describe('open collector', () => {
  it('charges as a capacitor does, step by step', () => {
    // Euler's rule in small steps, from 0 V to 70 % of 5 V.
    const [r, c, supply] = [4700, 547e-12, 5];
    const dt = 1e-11;
    let [v, t] = [0, 0];
    while (v < 0.7 * supply) {
      v += ((supply - v) / (r * c)) * dt;
      t += dt;
    }
    expect(delayTo(timeConstant(r, 100e-12, 5, 47e-12), 0.7)).toBeCloseTo(t, 9);
  });
  it('the largest pull-up just meets the delay, the smallest just the current', () => {
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (us, nF, x) => {
        const r = largestPullUp(us * 1e-6, nF * 1e-9, x);
        expect(delayTo(r * nF * 1e-9, x) / (us * 1e-6)).toBeCloseTo(1, 9);
        expect(sinkCurrent(us, smallestPullUp(us, nF)) / nF).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('supply', () => {
  it('at its longest, just the least voltage arrives', () => {
    fc.assert(
      fc.property(positive, positive, positive, (volts, amperes, perMetre) => {
        const length = longestSupply(volts * 2, volts, amperes, perMetre);
        expect(supplyDrop(length, amperes, perMetre) / volts).toBeCloseTo(1, 9);
      }),
    );
  });
  it('is nothing where too little is fed in', () => expect(longestSupply(4.7, 4.75, 0.1, 0.1)).toBe(0));
});

describe('input filter', () => {
  it('fits as long as the noise is no longer than a third of the gap', () => {
    expect(filterWindow(1e-6, 3.0001e-6).fits).toBe(true);
    expect(filterWindow(1e-6, 2.9999e-6).fits).toBe(false);
  });
});

describe('gap between edges on a machine', () => {
  const heron = EXAMPLES.heron();
  it('1200 lines, 30° off, at 700 rpm: channel 14 kHz, 11.9 µs', () => {
    const gap = edgeGapOf(heron, ratio(700));
    expect(gap?.channel).toBe(14_000);
    expect(gap?.least).toBeCloseTo(1 / 84_000, 12);
    expect(gap?.sure).toBe(true);
  });
  it('isn’t known without lines; without the phase error 17.86 µs at best', () => {
    expect(edgeGapOf(withFields(heron, { encoderLines: null }), ratio(700))).toBeNull();
    const gap = edgeGapOf(withFields(heron, { encoderPhaseError: null }), ratio(700));
    expect(gap?.least).toBeCloseTo(1 / 56_000, 12);
    expect(gap?.sure).toBe(false);
  });
});
