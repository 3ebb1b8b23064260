import { describe, expect, it } from 'vitest';
import { bestFraction, stepsPerSpindleRev } from '../../src/core/drive';
import { decimalText, inBase, leadFrom, ONE, ratio, stated, type Unit } from '../../src/core/quantity';

const pitch = (n: number, unit: Unit) => leadFrom(stated(ratio(n), unit)).mm;

describe('gear trains, screw to spindle', () => {
  // American Mechanic (19th century), rule of the ratio of threads: to cut 5 threads per inch on a screw of 2, with 40
  // teeth on the spindle, 100 on the screw.
  it('5 tpi on a 2 tpi screw: 40 to 100', () => {
    expect(stepsPerSpindleRev(pitch(5, 'tpi'), inBase(stated(ratio(2), 'tpi')), ONE)).toEqual(ratio(40, 100));
  });
});

describe('pitches of pipe threads in mm', () => {
  // ISO 228-1 Table 1, pitch column, three decimals as printed: 28 and 19 tpi.
  it.each([
    [28, '0.907'],
    [19, '1.337'],
  ])('%s tpi: %s mm', (tpi, printed) => {
    expect(decimalText(pitch(tpi, 'tpi'), { places: 3 })).toBe(printed);
  });
});

describe('convergents of π', () => {
  // Hardy and Wright, An Introduction to the Theory of Numbers, chapter 10: 3, 22/7, 333/106, 355/113. Its digits:
  // Abramowitz and Stegun, Handbook of Mathematical Functions, Table 1.1. Both from memory.
  const PI = ratio(314159265358979323846n, 10n ** 20n);
  it.each([
    [1n, 3n, 1n],
    [7n, 22n, 7n],
    [106n, 333n, 106n],
    [113n, 355n, 113n],
  ])('denominators up to %s', (most, top, bottom) => {
    expect(bestFraction(PI, 10n ** 6n, most)).toEqual({ top, bottom, exact: false });
  });
});
