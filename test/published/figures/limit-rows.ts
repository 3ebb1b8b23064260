import { decimalText, type Ratio } from '../../../src/core/quantity';
import { basicSizes } from '../../../src/core/thread/forms';
import { limits, type Band } from '../../../src/core/thread/limits';
import { thread } from '../printed';
import { placesOf, type Figure, type Source, type Table } from './figure';

/** Thread, class, and "major | pitch | minor", each largest first; "-" where nothing is printed. */
export type LimitRow = readonly [id: string, cls: string, cells: string];

const COLUMNS = ['major', 'pitch', 'minor'] as const;

/** Both families of fine pitches are one table in ISO 261, and are counted as one. */
export const headingOf = (family: string): string => (family === 'iso-constant' ? 'iso-fine' : family);

/**
 * Limits of size. A limit that is the basic size is named so, whatever its class, so that it counts once for its
 * thread. `flatRoot`: the source prints the largest minor diameter of an external thread at a flat root.
 */
export const limitTable = (source: Source, rows: readonly LimitRow[], flatRoot = false): Table => ({
  source,
  figures: rows.flatMap(([id, cls, cells]) => {
    const t = thread(id);
    const l = limits(t, cls);
    const basic = basicSizes(t);
    return cells.split(' | ').flatMap((cell, c) =>
      cell.split(' ').flatMap((printed, i): Figure[] => {
        if (printed === '-') return [];
        const column = COLUMNS[c] ?? 'major';
        const end = i ? 'min' : 'max';
        const flat = flatRoot && column === 'minor' && end === 'max';
        const ours = (): Ratio | string => {
          if (!l.ok) return l.refusal;
          const band: Band = l[column];
          return (flat ? l.minorFlat : band[end]) ?? 'none';
        };
        const at = basic?.[column];
        const same = at && decimalText(at, { places: placesOf(printed), keepZeros: true }) === printed;
        const name = same ? `${id} basic ${column}` : `${id} ${cls} ${flat ? 'flat ' : ''}${column} ${end}`;
        return [{ family: headingOf(t.family), name, printed, ours: ours() }];
      }),
    );
  }),
});
