import { describe, expect, it } from 'vitest';
import { ratio, stated, sub, toNumber } from '../../src/core/quantity';
import { limits } from '../../src/core/thread/limits';
import type { Thread } from '../../src/core/thread/thread';
import { printed, thread } from './printed';

describe('ISO 965-2 limits, mm: Fabory data sheet "ISO 965 Part 2"', () => {
  it.each([
    ['iso-coarse:M1.1', '6h', '1.100 1.033 | 0.938 0.885 | 0.793 0.730'],
    ['iso-coarse:M1.2', '6h', '1.200 1.133 | 1.038 0.985 | 0.893 0.830'],
    ['iso-coarse:M1.6', '6g', '1.581 1.496 | 1.354 1.291 | 1.152 1.075'],
    ['iso-coarse:M1.8', '6g', '1.781 1.696 | 1.554 1.491 | 1.352 1.275'],
    ['iso-coarse:M2.2', '6g', '2.180 2.080 | 1.888 1.817 | 1.628 1.540'],
    ['iso-coarse:M3', '6g', '2.980 2.874 | 2.655 2.580 | 2.367 2.273'],
    ['iso-coarse:M3.5', '6g', '3.479 3.354 | 3.089 3.004 | 2.743 2.635'],
    ['iso-coarse:M1.1', '5H', '- 1.100 | 0.994 0.938 | 0.885 0.829'],
    ['iso-coarse:M1.2', '5H', '- 1.200 | 1.094 1.038 | 0.985 0.929'],
    ['iso-coarse:M1.6', '6H', '- 1.600 | 1.458 1.373 | 1.321 1.221'],
    ['iso-coarse:M2', '6H', '- 2.000 | 1.830 1.740 | 1.679 1.567'],
    ['iso-coarse:M3', '6H', '- 3.000 | 2.775 2.675 | 2.599 2.459'],
    ['iso-coarse:M3.5', '6H', '- 3.500 | 3.222 3.110 | 3.010 2.850'],
  ])('%s %s', (id, cls, row) => {
    expect(printed(thread(id), cls)).toBe(row);
  });
});

/** The minor diameter is printed there with a flat root or not at all, so only major and pitch are compared. */
describe('6g, mm: Mastik catalogue pp. 711–712, "limits according to ISO 965"', () => {
  it.each([
    ['iso-coarse:M4', '3.978 3.838 | 3.523 3.433'],
    ['iso-coarse:M5', '4.976 4.826 | 4.456 4.361'],
    ['iso-fine:M12x1.25', '11.972 11.760 | 11.160 11.028'],
    ['iso-fine:M12x1.5', '11.968 11.732 | 10.994 10.854'],
    ['iso-fine:M14x1.5', '13.968 13.732 | 12.994 12.854'],
    ['iso-fine:M20x2', '19.962 19.682 | 18.663 18.503'],
  ])('%s', (id, row) => {
    expect(printed(thread(id), '6g')).toMatch(new RegExp(`^${row.replaceAll('|', '\\|')} \\|`));
  });
});

describe('6H, mm, minor then pitch: Iscar taps guide 2022 p. 56', () => {
  it.each([
    ['iso-coarse:M4', '- 4.000 | 3.663 3.545 |', 3.242],
    ['iso-coarse:M5', '- 5.000 | 4.605 4.480 |', 4.134],
    ['iso-coarse:M9', '- 9.000 | 8.348 8.188 |', 7.647],
    ['iso-coarse:M12', '- 12.000 | 11.063 10.863 |', 10.106],
    ['iso-coarse:M14', '- 14.000 | 12.913 12.701 |', 11.835],
    ['iso-coarse:M18', '- 18.000 | 16.600 16.376 |', 15.294],
  ])('%s', (id, row, minor) => {
    const text = printed(thread(id), '6H');
    expect(text.startsWith(row)).toBe(true);
    expect(Number(text.split(' ').at(-1))).toBe(minor);
  });
});

/** Tolerance on pitch diameter in µm as the class limits differ, for a thread of any diameter and pitch. */
const pitchTolerance = (d: number, pitchHundredths: number, cls: string): number | string => {
  const t: Thread = {
    ...thread('iso-fine:M10x1'),
    major: stated(ratio(d), 'mm'),
    pitch: stated(ratio(pitchHundredths, 100), 'mm'),
  };
  const l = limits(t, cls);
  if (!l.ok) return l.refusal;
  return l.pitch.max && l.pitch.min ? toNumber(sub(l.pitch.max, l.pitch.min)) * 1000 : 'open';
};

describe("pitch diameter tolerance of external threads, µm: Machinery's Handbook 31 p. 2025 Table 11", () => {
  it.each([
    [2, 35, '3h6h', 32],
    [2, 40, '5g6g', 53],
    [2, 45, '6g', 71],
    [2, 45, '7g6g', 90],
    [4, 50, '6g', 75],
    [4, 60, '4h', 53],
    [4, 70, '6g', 90],
    [5, 80, '8g', 150],
    [5, 80, '9g8g', 190],
    [8, 100, '3h4h', 56],
    [8, 125, '7g6g', 150],
    [10, 150, '6g', 132],
    [10, 150, '9g8g', 265],
    [14, 100, '5g6g', 95],
    [14, 125, '8g', 212],
    [16, 150, '4h', 90],
    [16, 175, '6g', 150],
    [20, 200, '9g8g', 315],
    [20, 250, '6g', 170],
  ])('%d mm, pitch %d/100, %s', (d, p, cls, um) => {
    expect(pitchTolerance(d, p, cls)).toBeCloseTo(um, 6);
  });
});

describe("pitch diameter tolerance of internal threads, µm: Machinery's Handbook 31 p. 2025 Table 10", () => {
  it.each([
    [100, 200, '4H', 160],
    [100, 200, '6H', 250],
    [100, 300, '5H', 236],
    [100, 400, '7H', 425],
    [100, 600, '8H', 630],
    [100, 800, '6H', 450],
    [200, 300, '4H', 212],
    [200, 300, '7H', 425],
  ])('%d mm, pitch %d/100, %s', (d, p, cls, um) => {
    expect(pitchTolerance(d, p, cls)).toBeCloseTo(um, 6);
  });
});

describe('what ISO 965-1 does not define is refused with the reason', () => {
  it.each([
    ['iso-coarse:M1', '6H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M1.2', '6H', 'no-grade-at-this-pitch'],
    ['iso-fine:M2x0.25', '6H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M3', '7H', 'ok'],
    ['iso-coarse:M2', '7H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M3', '8g', 'no-grade-at-this-pitch'],
    ['iso-coarse:M2', '6e', 'no-deviation-at-this-pitch'],
    ['iso-coarse:M1', '6f', 'no-deviation-at-this-pitch'],
    ['iso-coarse:M10', '5Q', 'class-unreadable'],
    ['iso-coarse:M10', '6g6H', 'class-unreadable'],
    ['iso-coarse:M10', '', 'class-unreadable'],
    ['iso-coarse:M10', '9H', 'class-not-in-standard'],
    ['iso-coarse:M10', '7g', 'class-not-in-standard'],
    ['optical:M58x0.75', '6g', 'pitch-too-fine-for-diameter'],
    ['optical:M28x0.6', '6g', 'pitch-not-in-standard'],
  ])('%s %s', (id, cls, code) => {
    const l = limits(thread(id), cls);
    expect(l.ok ? 'ok' : l.refusal).toBe(code);
  });

  it('a pitch that no ISO thread has, and a diameter beyond the tables', () => {
    expect(pitchTolerance(10, 110, '6g')).toBe('pitch-not-in-standard');
    expect(pitchTolerance(400, 600, '6g')).toBe('diameter-not-in-standard');
    expect(pitchTolerance(10, 600, '6g')).toBe('pitch-not-in-standard');
  });
});
