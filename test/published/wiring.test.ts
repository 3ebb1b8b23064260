import { describe, expect, it } from 'vitest';
import { ratio, toNumber } from '../../src/core/quantity';
import {
  awgResistance,
  bitRate,
  commonModeCurrent,
  corner,
  cornerOf,
  delayTo,
  differentialReach,
  edgeGapAt,
  idealGain,
  longestSupply,
  riseTime,
  strandedResistance,
  supplyDrop,
  tailReactance,
  timeConstant,
} from '../../src/core/wiring';

/** Each figure with where it was printed, or what it was worked out from by hand. */
describe('wiring, printed and worked figures', () => {
  it('1 mH and 1 µF: 5.033 kHz; 39.80 dB at 50 kHz, 3.67 dB at a carrier of 8 kHz (worked by hand)', () => {
    const f0 = corner(1e-3, 1e-6);
    expect(f0).toBeCloseTo(5032.92, 1);
    expect(-idealGain(50_000, f0)).toBeCloseTo(39.7975, 3);
    expect(-idealGain(8000, f0)).toBeCloseTo(3.6746, 3);
  });

  it('1 nF at 1 kV/µs: 1 A; 5 cm of tail at 10 MHz: 3.14 Ω (worked by hand)', () => {
    expect(commonModeCurrent(1e-9, 1e9)).toBeCloseTo(1, 12);
    expect(tailReactance(0.05, 10e6)).toBeCloseTo(3.1416, 3);
  });

  it('4.7 kΩ, 5 m of 100 pF/m and 47 pF: 2.571 µs, 61.9 kHz, 5.656 µs (RC, worked by hand; 2.2 τ for the rise)', () => {
    const tau = timeConstant(4700, 100e-12, 5, 47e-12);
    expect(tau * 1e6).toBeCloseTo(2.5709, 4);
    expect(cornerOf(tau) / 1000).toBeCloseTo(61.906, 2);
    expect(riseTime(tau) * 1e6).toBeCloseTo(2.1972 * 2.5709, 3);
    expect(Math.abs(riseTime(tau) * 1e6 - 5.656)).toBeLessThan(0.01);
  });

  it('1 kΩ and 547 pF: 0.6586 µs to 70 % of the supply (worked by hand)', () => {
    expect(delayTo(timeConstant(1000, 0, 5, 547e-12), 0.7) * 1e6).toBeCloseTo(0.6586, 4);
  });

  it('edges of 1024 lines at 1000 rpm: 14.65 µs apart, 9.77 µs with channels 30° off (worked by hand)', () => {
    const channel = ratio(1024 * 1000, 60);
    expect(toNumber(edgeGapAt(channel, ratio(0))) * 1e6).toBeCloseTo(14.648, 3);
    expect(toNumber(edgeGapAt(channel, ratio(30))) * 1e6).toBeCloseTo(9.7656, 4);
  });

  it.each([
    // A control maker's cable table, 100 mA over 10 m: resistance in Ω/m, volts there and back.
    [0.131, 10, 0.1, 0.26],
    [0.235, 10, 0.1, 0.47],
    [0.075, 10, 0.1, 0.15],
  ])('supply drop at %d Ω/m over %d m with %d A: %d V', (perMetre, length, current, volts) => {
    expect(Math.abs(supplyDrop(length, current, perMetre) - volts)).toBeLessThan(0.0051);
  });

  it('longest supply: 9.4 m (a drive maker’s example: 0.18 mm², 0.017 Ω mm²/m, 0.14 A, 0.25 V)', () => {
    expect(Math.abs(longestSupply(5, 4.75, 0.14, 0.017 / 0.18) - 9.4)).toBeLessThan(0.06);
  });

  it('longest supply: 6.04 m (0.14 mm² at 138 Ω/km, 0.15 A, 5 to 4.75 V; worked by hand)', () => {
    expect(longestSupply(5, 4.75, 0.15, 0.138)).toBeCloseTo(6.0386, 3);
  });

  it.each([
    // Standard Handbook for Electrical Engineers, solid copper at 20 °C, Ω/km.
    [20, 33.3],
    [22, 53],
    [24, 84.2],
    [26, 134],
    [28, 213],
  ])('AWG %d: %d Ω/km', (awg, perKm) => {
    expect(Math.abs(awgResistance(awg) * 1000 - perKm)).toBeLessThan(perKm * 0.003);
  });

  it.each([
    // IEC 60228 class 5, from memory, and cable makers' tables: the largest printed for each, Ω/km.
    [0.14, 138],
    [0.25, 78],
    [0.5, 39],
    [0.75, 26],
    [1, 19.5],
  ])('stranded %d mm²: %d Ω/km, no less and hardly more', (area, perKm) => {
    const own = strandedResistance(area) * 1000;
    expect(own).toBeGreaterThanOrEqual(perKm * 0.9999);
    expect(own).toBeLessThan(perKm * 1.02);
  });

  it.each([
    // TIA/EIA-422, guide in its annex.
    [10e6, 12],
    [1e6, 122],
    [100e3, 1219],
  ])('a differential pair at %d b/s: %d m', (rate, length) => {
    expect(differentialReach(rate)).toBeCloseTo(length, 9);
  });

  it('a channel of 50 kHz is 100 kb/s', () => expect(bitRate(50_000)).toBe(100_000));
});
