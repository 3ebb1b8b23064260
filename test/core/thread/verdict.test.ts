import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../src/core/thread/wires';

/** ISO 14253-1: a value conforms only if it does so with the whole of its uncertainty. */
describe('a pitch diameter against its limits', () => {
  it.each([
    [8.929, 0.009, 'within'],
    [8.863, 0.009, 'unsure'],
    [8.993, 0.009, 'unsure'],
    [9.219, 0.009, 'above'],
    [8.839, 0.009, 'below'],
    [8.854, 0.009, 'unsure'],
    [8.871, 0.009, 'within'],
    [8.928, 0.2, 'unsure'],
  ] as const)('M10 6g, 8.862 to 8.994: %s ± %s is %s', (value, U, verdict) => {
    expect(verdictOf(value, U, 8.862, 8.994)).toBe(verdict);
  });
  it('is never said to be within with a limit or its uncertainty not known', () => {
    expect(verdictOf(8.929, null, 8.862, 8.994)).toBe('unknown');
    expect(verdictOf(8.929, 0.009, null, 8.994)).toBe('unknown');
    expect(verdictOf(8.929, Number.NaN, 8.862, 8.994)).toBe('unknown');
  });
});
