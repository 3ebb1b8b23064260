import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeFields } from '../../src/state/merge';

const record = fc.record({
  a: fc.integer({ min: 0, max: 3 }),
  b: fc.integer({ min: 0, max: 3 }),
  c: fc.constantFrom(null, 1),
});

describe('merging two changes to one record', () => {
  it('takes each field from the side that changed it', () => {
    expect(mergeFields({ a: 1, b: 1 }, { a: 2, b: 1 }, { a: 1, b: 3 })).toEqual({
      value: { a: 2, b: 3 },
      both: [],
    });
  });
  it('names what both changed, and keeps ours', () => {
    expect(mergeFields({ a: 1 }, { a: 2 }, { a: 3 })).toEqual({ value: { a: 2 }, both: ['a'] });
    expect(mergeFields({ a: 1 }, { a: 2 }, { a: 2 })).toEqual({ value: { a: 2 }, both: [] });
  });
  it('of a change with itself is that change', () => {
    fc.assert(
      fc.property(record, record, (base, ours) => {
        expect(mergeFields(base, ours, ours)).toEqual({ value: ours, both: [] });
      }),
    );
  });
  it('is the same both ways round where nothing conflicts', () => {
    fc.assert(
      fc.property(record, record, record, (base, ours, theirs) => {
        const one = mergeFields(base, ours, theirs);
        if (one.both.length === 0) expect(mergeFields(base, theirs, ours).value).toEqual(one.value);
      }),
    );
  });
  it('loses no change of either side: what differs from the base differs still, or is named', () => {
    fc.assert(
      fc.property(record, record, record, (base, ours, theirs) => {
        const { value, both } = mergeFields(base, ours, theirs);
        for (const key of ['a', 'b', 'c'] as const) {
          if (ours[key] !== base[key]) expect(value[key]).toBe(ours[key]);
          else if (theirs[key] !== base[key]) expect(value[key]).toBe(theirs[key]);
          if (both.includes(key)) expect(theirs[key]).not.toBe(ours[key]);
        }
      }),
    );
  });
});
