import { describe, expect, it } from 'vitest';
import { decimalText } from '../../src/core/quantity';
import { threadById } from '../../src/core/thread/catalogue';
import { limits, type Band } from '../../src/core/thread/limits';

const text = (b: Band): string =>
  [b.max, b.min].map((x) => (x ? decimalText(x, { places: 3, keepZeros: true }) : '-')).join(' ');
const printed = (id: string, cls: string): string => {
  const thread = threadById(id);
  if (!thread) throw new Error(`no thread ${id}`);
  const l = limits(thread, cls);
  return l.ok ? `${text(l.major)} | ${text(l.pitch)} | ${text(l.minor)}` : l.refusal;
};

/** Largest and smallest major, pitch, minor, mm. */
describe('ISO 965-2 limits as a fastener maker prints them (Fabory data sheet "ISO 965 Part 2")', () => {
  it.each([
    ['iso-coarse:M1.6', '6g', '1.581 1.496 | 1.354 1.291 | 1.152 1.075'],
    ['iso-coarse:M1.8', '6g', '1.781 1.696 | 1.554 1.491 | 1.352 1.275'],
    ['iso-coarse:M2.2', '6g', '2.180 2.080 | 1.888 1.817 | 1.628 1.540'],
    ['iso-coarse:M1.6', '6H', '- 1.600 | 1.458 1.373 | 1.321 1.221'],
    ['iso-coarse:M2', '6H', '- 2.000 | 1.830 1.740 | 1.679 1.567'],
    ['iso-coarse:M3', '6H', '- 3.000 | 2.775 2.675 | 2.599 2.459'],
    ['iso-coarse:M3.5', '6H', '- 3.500 | 3.222 3.110 | 3.010 2.850'],
    ['iso-coarse:M1.2', '5H', '- 1.200 | 1.094 1.038 | 0.985 0.929'],
  ])('%s %s', (id, cls, expected) => {
    expect(printed(id, cls)).toBe(expected);
  });
});

describe('classes that ISO 965-1 does not define are refused', () => {
  it.each([
    ['iso-coarse:M1', '6H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M1.2', '6H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M2', '6e', 'no-deviation-at-this-pitch'],
    ['iso-coarse:M3', '8g', 'no-grade-at-this-pitch'],
    ['iso-coarse:M10', '5Q', 'class-unreadable'],
    ['iso-coarse:M10', '6g6H', 'class-unreadable'],
    ['iso-coarse:M10', '9H', 'class-not-in-standard'],
  ])('%s %s', (id, cls, code) => {
    expect(printed(id, cls)).toBe(code);
  });
});
