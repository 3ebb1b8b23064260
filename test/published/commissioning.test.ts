import { describe, expect, it } from 'vitest';
import { countsPerRev } from '../../src/core/drive';
import { lengthUncertainty, ppmOf, roundedUp, travelFor, turnsFor, USUAL } from '../../src/core/prove';
import { div, mul, ratio, sub, toNumber } from '../../src/core/quantity';

/**
 * Worked by hand from the rules of the GUM (JCGM 100:2008, 4.3.7, 5.1.2, 6.2.1, F.2.2.1) and from the arithmetic of counts;
 * figures typed in.
 */
describe('commissioning, worked figures', () => {
  it('5 µm of readout alone: 4.08 µm (k = 2), so that 50 ppm wants 81.65 mm', () => {
    const u = lengthUncertainty({ step: ratio(5, 1000), accuracy: ratio(0) });
    expect(u * 1000).toBeCloseTo(4.0825, 4);
    expect(u / 50e-6).toBeCloseTo(81.65, 2);
    // As shown, from what was rounded up: 82 mm, 54.7 turns of 1.5 mm.
    expect(toNumber(travelFor(roundedUp(u), ratio(50)))).toBeCloseTo(82, 6);
  });

  it('readout ±10 µm in steps of 5 µm, repeating to ±3 µm: 13 µm, and 100 mm shows nothing finer than 130 ppm', () => {
    const u = lengthUncertainty(USUAL.readout, 0.003);
    expect(u * 1000).toBeCloseTo(12.73, 2);
    expect(ppmOf(ratio(0), ratio(100), roundedUp(u))).toEqual({ kind: 'inside', uncertainty: 130n });
  });

  it('caliper ±0.03 mm over 20 pitches of 1.5 mm: 1.5 µm a pitch, 1000 ppm before its own steps', () => {
    const length = mul(ratio(20), ratio(3, 2));
    expect(toNumber(div(ratio(30, 1000), 20)) * 1000).toBeCloseTo(1.5, 9);
    expect(toNumber(div(ratio(30, 1000), length)) * 1e6).toBeCloseTo(1000, 6);
    // ±0.03 mm as bounds is 0.0173 mm standard, 0.0346 mm expanded; two readings to 0.01 mm make it 0.0356.
    expect(lengthUncertainty(USUAL.caliper)).toBeCloseTo(0.0356, 4);
  });

  it('3 counts of 4096 at a lead of 1.5 mm are 1.1 µm of travel', () => {
    expect(toNumber(mul(ratio(3, 4096), ratio(3, 2))) * 1000).toBeCloseTo(1.0986, 4);
  });

  it('one count of 4096 is 10 ppm only after 24.4 turns: 25', () => {
    expect(turnsFor(ratio(1), ratio(4096), ratio(10))).toBe(25n);
  });

  it('40 955 counts for 40 960: −122 ppm', () => {
    const counts = countsPerRev({
      lines: ratio(1024),
      edges: ratio(4),
      spindle: ratio(1),
      encoder: ratio(1),
    });
    const off = sub(ratio(40955), mul(counts, 10));
    expect(toNumber(div(off, 40960)) * 1e6).toBeCloseTo(-122.07, 2);
    expect(ppmOf(off, ratio(40960), ratio(1))).toEqual({ kind: 'seen', ppm: -120n, uncertainty: 25n });
  });
});
