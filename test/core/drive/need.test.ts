import { describe, expect, it } from 'vitest';
import {
  passesFor,
  perDiameter,
  pitchErrorAllowed,
  revsPerCycle,
  SCALE,
} from '../../../src/core/drive/formats';

describe('how good is good enough', () => {
  it('G35: grades of ISO 3408-3 over 300 mm: 6, 12, 23, 52, 210 µm are 20, 40, 76.7, 173.3, 700 ppm', () => {
    const grades = SCALE.filter((m) => m.code.startsWith('grade'));
    expect(grades.map((m) => (m.ppm * 300) / 1000)).toEqual([6, 12, 23, 52, 210]);
    const expected = [20, 40, 76.66666666666667, 173.33333333333334, 700];
    for (const [n, m] of grades.entries()) expect(m.ppm).toBeCloseTo(expected[n] ?? 0, 9);
  });
  it('rises from the finest to the coarsest', () => {
    const ppm = SCALE.map((m) => m.ppm);
    expect(ppm).toEqual([...ppm].sort((a, b) => a - b));
  });
  it('a lathe by ISO 1708, 0.04 mm in 300, 133 ppm; 0.015 in 60, 250', () => {
    expect(SCALE.find((m) => m.code === 'lathe-300')?.ppm).toBeCloseTo(133.3, 1);
    expect(SCALE.find((m) => m.code === 'lathe-60')?.ppm).toBe(250);
  });
});

describe('an error of pitch as an error of diameter', () => {
  it('G29: 0.02 mm at 60° is 0.034641 mm on the diameter', () => {
    expect(0.02 * (perDiameter([30, 30]) ?? 0)).toBeCloseTo(0.034641016151377546, 9);
  });
  it('1.732 for 60°, 1.921 for 55°, 3.87 for 29°; none for a square thread', () => {
    expect(perDiameter([30, 30])).toBeCloseTo(1.732, 3);
    expect(perDiameter([27.5, 27.5])).toBeCloseTo(1.921, 3);
    expect(perDiameter([14.5, 14.5])).toBeCloseTo(3.867, 3);
    expect(perDiameter([0, 0])).toBeNull();
    // Buttress 7° and 45°: 2 ÷ (0.12278 + 1).
    expect(perDiameter([7, 45])).toBeCloseTo(1.7813, 4);
  });
  it('half of the 132 µm of M10 6g allows 38 µm of pitch', () => {
    expect(pitchErrorAllowed(132, [30, 30])).toBeCloseTo(38.1, 1);
    expect(pitchErrorAllowed(132, [0, 0])).toBeNull();
  });
});

describe('passes and revs, as estimates', () => {
  // Small manual lathe, high-speed steel, longer figure of each pair: common practice.
  it.each([
    [0.35, 8],
    [0.5, 8],
    [1, 10],
    [1.27, 14],
    [1.5, 14],
    [3, 24],
    [3.5, 28],
    [5, 30],
  ])('%s mm: %s passes', (pitch, passes) => {
    expect(passesFor(pitch)).toBe(passes);
  });
  it('60 revs a cycle where nothing is known; 30 mm at 1.5 mm, out and back with 20 beside, is 60 too', () => {
    expect(revsPerCycle(null, 1.5)).toBe(60);
    expect(revsPerCycle(30, 1.5)).toBe(60);
    expect(revsPerCycle(10, 3)).toBe(27);
  });
});
