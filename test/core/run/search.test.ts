import { describe, expect, it } from 'vitest';
import { findable, findRuns } from '../../../src/core/run/search';

const records = [
  findable(
    'a',
    'M10×1.5 6g Heron Example shed Mild steel Finished: within limits 3 March 2026 14:32 for the gate',
  ),
  findable('b', '1/4-20 UNC 2A Kestrel Barn Brass Scrapped 30 March 2026 09:05'),
  findable('c', 'M1×0.25 Heron Example shed Stainless steel Given up 12 May 2025 17:40 Zuführung, klemmt'),
];
const found = (query: string): string => findRuns(records, query).join('');

describe('looking up records', () => {
  it.each([
    ['', 'abc'],
    ['m10 heron march', 'a'],
    ['HERON', 'ac'],
    ['m10x1.5', 'a'],
    ['M10 x 1,5', 'a'],
    ['10x1.5', 'a'],
    ['1/4', 'b'],
    ['1/4-20', 'b'],
    ['20', 'b'],
    ['unc brass', 'b'],
    ['3 march', 'a'],
    ['30 mar', 'b'],
    ['march 2026', 'ab'],
    ['m1', 'c'],
    ['0.25', 'c'],
    ['stain', 'c'],
    ['zufuhr', 'c'],
    ['scrapped heron', ''],
    ['within.', 'a'],
    ['14:32', 'a'],
  ])('%s finds %s', (query, keys) => {
    expect(found(query)).toBe(keys);
  });

  it('stops at the limit, the first given first', () => {
    expect(findRuns(records, 'march', 1)).toEqual(['a']);
  });
});
