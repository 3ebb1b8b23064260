import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromStored, ratio, toStored } from '../../../src/core/quantity';
import { anyRatio } from './arbitrary';

describe('a ratio on the disk', () => {
  it('comes back as it went, through JSON and through a structured clone', () => {
    fc.assert(
      fc.property(anyRatio, (a) => {
        const kept = toStored(a);
        expect(fromStored(kept)).toEqual(a);
        expect(fromStored(JSON.parse(JSON.stringify(kept)))).toEqual(a);
        expect(fromStored(structuredClone(kept))).toEqual(a);
        expect(Object.isFrozen(fromStored(kept))).toBe(true);
      }),
    );
    expect(toStored(ratio(-375, 508))).toEqual({ n: '-375', d: '508' });
  });

  it('is brought to lowest terms if a file has it otherwise', () => {
    expect(fromStored({ n: '6', d: '4' })).toEqual(ratio(3, 2));
    expect(fromStored({ n: '-0', d: '7' })).toEqual(ratio(0));
  });

  it('is null for everything else', () => {
    const bad: unknown[] = [
      null,
      undefined,
      3,
      '3/4',
      [],
      { n: '1' },
      { n: 1, d: 2 },
      { n: 1n, d: 2n },
      { n: '1', d: '0' },
      { n: '0', d: '0' },
      { n: '1', d: '-2' },
      { n: '1.5', d: '2' },
      { n: ' 1', d: '2' },
      { n: '1\n', d: '2' },
      { n: '+1', d: '2' },
      { n: '0x1', d: '2' },
      { n: '', d: '2' },
      { n: '1'.repeat(41), d: '2' },
      { n: '1', d: '9'.repeat(41) },
    ];
    for (const x of bad)
      expect(
        fromStored(x),
        JSON.stringify(x, (_k, v: unknown) => String(v)),
      ).toBeNull();
    expect(fromStored({ n: '1'.repeat(40), d: '1' })).not.toBeNull();
  });

  it('never throws on rubbish', () => {
    const nearly = fc.record({ n: fc.anything(), d: fc.anything() });
    fc.assert(
      fc.property(fc.oneof(fc.anything(), nearly, fc.record({ n: fc.string(), d: fc.string() })), (x) => {
        const r = fromStored(x);
        if (r) expect(r.d > 0n).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
