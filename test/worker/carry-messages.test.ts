import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CarriedRow, VersionRow } from '../../src/core/carry';
import { PIECE, Pieces, piecesOf } from '../../src/worker/carry-messages';

const rowsOf = (store: string, many: number): CarriedRow[] =>
  Array.from({ length: many }, (_, n) => ({ id: `${store}/${n}`, value: n }));

/** Around the places where one piece ends. */
const many = fc.oneof(fc.nat(3), fc.constantFrom(PIECE - 1, PIECE, PIECE + 1, 2 * PIECE), fc.nat(4 * PIECE));

describe('rows on their way to and from the worker', () => {
  it('go in pieces of a bounded size, and arrive as they went: stores without any too', () => {
    fc.assert(
      fc.property(many, many, many, (runs, evidence, before) => {
        const whole = {
          records: { runs: rowsOf('runs', runs), evidence: rowsOf('evidence', evidence) },
          earlier: rowsOf('before', before) as unknown as VersionRow[],
        };
        const pieces = [...piecesOf(whole)];
        for (const { rows } of pieces) expect(rows.length).toBeLessThanOrEqual(PIECE);
        const taken = new Pieces();
        for (const piece of pieces) taken.add(piece);
        expect({ ...taken }).toEqual(whole);
        expect(Object.keys(taken.records)).toEqual(Object.keys(whole.records));
      }),
      { numRuns: 40 },
    );
  });
});
