import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change } from '../../src/storage/backing';
import { piecesOf, readNote, upTo, type Note } from '../../src/storage/notes';

const device = (counter: number): Change => ({
  store: 'meta',
  id: 'device',
  row: { id: 'device', value: { device: 'd', counter } },
});
const rows = (many: number): Change[] =>
  Array.from({ length: many }, (_, n) => ({ store: 'evidence', id: `e${n}`, row: null }));
const note = (from: number, to = from): Note => ({ name: '', changes: [], from, to });

describe('notes of the copy', () => {
  it('hold every change once, in order, and count with the last piece', () => {
    fc.assert(
      fc.property(fc.nat(900), fc.integer({ min: 1, max: 50 }), (many, first) => {
        const changes = [device(first), ...rows(many), device(first + many)];
        const pieces = piecesOf(changes);
        expect(pieces.flatMap((p) => p.changes)).toEqual(changes);
        expect(pieces.at(-1)).toMatchObject({ from: first, to: first + many });
        for (const p of pieces.slice(0, -1)) expect([p.from, p.to]).toEqual([0, 0]);
      }),
    );
  });

  it('count up to the first that is missing', () => {
    expect(upTo(4, [note(5), note(6, 9), note(10)])).toBe(10);
    expect(upTo(4, [note(5), note(7)])).toBe(5);
    expect(upTo(4, [note(0), note(2), note(5)])).toBe(5);
    expect(upTo(4, [])).toBe(4);
    const all = fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 1 });
    fc.assert(
      fc.property(all, (numbers) => {
        const sorted = [...numbers].sort((a, b) => a - b);
        const reached = upTo(
          0,
          sorted.map((n) => note(n)),
        );
        for (let n = 1; n <= reached; n += 1) expect(sorted).toContain(n);
        expect(sorted).not.toContain(reached + 1);
      }),
    );
  });

  it('that can’t be read hold nothing and count for nothing', () => {
    for (const x of [null, 7, [], {}, { changes: 3, from: 1, to: 2 }, { changes: [] }])
      expect(readNote('n', x)).toEqual({ name: 'n', changes: [], from: 0, to: 0 });
    const kept = { changes: [rows(1)[0], { store: 'nowhere', id: 'a' }, 5], from: 1, to: 2 };
    expect(readNote('n', kept)).toEqual({ name: 'n', changes: rows(1), from: 1, to: 2 });
  });
});
