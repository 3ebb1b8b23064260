import { describe, expect, it } from 'vitest';
import { linesFrom, nutRule } from '../../src/core/cut';
import { lead, ratio, type Ratio } from '../../src/core/quantity';

/**
 * Lathe makers' threading-dial plates for a leadscrew of 8 threads per inch and a dial gear of 16 teeth, which agree with
 * one another: how many of the sixteen places may be used. One plate calls 4 tpi "any", which the carriage itself
 * disproves: 4 tpi repeats at every second tooth.
 */
const PLATE: readonly (readonly [string, Ratio, number])[] = [
  ['24', ratio(24), 16],
  ['12', ratio(12), 8],
  ['20', ratio(20), 8],
  ['36', ratio(36), 8],
  ['10', ratio(10), 4],
  ['14', ratio(14), 4],
  ['18', ratio(18), 4],
  ['22', ratio(22), 4],
  ['11', ratio(11), 2],
  ['13', ratio(13), 2],
  ['27', ratio(27), 2],
  ['11 1/2', ratio(23, 2), 1],
];

const on8tpi = (threads: Ratio) =>
  nutRule({
    lead: lead(ratio(127n * threads.d, 5n * threads.n)),
    nutPitch: ratio(127, 40),
    halfNut: true,
    dial: { teeth: 16, lines: 16 },
    exactRatio: true,
  });

describe('dial plates of 8 tpi lathes', () => {
  it.each(PLATE)('%s tpi', (_name, threads, places) => {
    const rule = on8tpi(threads);
    if (places === 16) expect(rule.kind).toBe('anywhere');
    else expect(rule.kind === 'lines' ? rule.lines.length : 0).toBe(places);
  });
  // A line used first shifts the others with it: the plates count from the line one begins on.
  it.each([
    [ratio(10), 3, [3, 7, 11, 15]],
    [ratio(13), 5, [5, 13]],
    [ratio(23, 2), 7, [7]],
    [ratio(20), 2, [2, 4, 6, 8, 10, 12, 14, 16]],
  ])('%o tpi, first closed on line %i', (threads, first, lines) => {
    const rule = on8tpi(threads);
    expect(rule.kind === 'lines' ? linesFrom(rule, first) : null).toEqual(lines);
  });
  it('4 tpi: every second place, against the plate that says any', () => {
    const rule = on8tpi(ratio(4));
    expect(rule.kind === 'lines' ? rule.lines.length : 0).toBe(8);
  });
});

describe('the textbook rule for a dial on a 6 tpi screw', () => {
  // F. D. Jones, Turning and Boring, use of the indicator: for an odd number of threads per inch close at lines one inch
  // apart. With 24 teeth on 6 tpi those are four lines a turn. The carriage allows more places, so the rule is safe.
  const on6tpi = (threads: number) =>
    nutRule({
      lead: lead(ratio(127, 5 * threads)),
      nutPitch: ratio(127, 30),
      halfNut: true,
      dial: { teeth: 24, lines: 24 },
      exactRatio: true,
    });
  const INCH_LINES = [6, 12, 18, 24];

  // Own calculations (worked examples H10 and H11).
  it('9 tpi: twelve places, of which the four are a part; 11 1/2: two, every 2 inches', () => {
    expect(on6tpi(9)).toMatchObject({ a: 3n, b: 2n, perTurn: 12n });
    const half = nutRule({
      lead: lead(ratio(127 * 2, 5 * 23)),
      nutPitch: ratio(127, 30),
      halfNut: true,
      dial: { teeth: 24, lines: 24 },
      exactRatio: true,
    });
    expect(half).toMatchObject({ a: 23n, b: 12n, perTurn: 2n, lines: [12, 24] });
  });

  it.each([5, 7, 9, 11, 13, 19, 27])('%s tpi', (threads) => {
    const rule = on6tpi(threads);
    expect(
      rule.kind === 'lines' ? INCH_LINES.filter((line) => !rule.lines.includes(line)) : ['none'],
    ).toEqual([]);
  });
});
