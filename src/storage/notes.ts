import type { Change } from './backing';
import { COPIED, counterOf } from './copied';
import { newId } from './id';

/** Where the notes lie, in the order in which they were made. */
export const NOTES = 'notes/';
/** Rows that are written at once in a note. */
const PAGE = 200;

/** Changes that lie in the copy under a name of their own until its parts hold them, in the order in which they were saved. */
export interface Note {
  readonly name: string;
  readonly changes: readonly Change[];
  /** The numbers, from first to last, of what it holds whole; 0 for a piece of something larger. */
  readonly from: number;
  readonly to: number;
}
/** Names of one page sort as they were made, whatever becomes of the clock; between two tabs the rows' own numbers decide. */
const PAGE_NAME = `${NOTES}${Date.now().toString(36).padStart(9, '0')}-${newId().slice(0, 6)}-`;
let made = 0;
export const noteName = (): string => {
  made += 1;
  return PAGE_NAME + made.toString(36).padStart(6, '0');
};
const isChange = (x: unknown): x is Change =>
  typeof x === 'object' &&
  x !== null &&
  COPIED.includes((x as Change).store) &&
  typeof (x as Change).id === 'string';
export const readNote = (name: string, x: unknown): Note => {
  const { changes, from, to } = (x ?? {}) as Partial<Note>;
  const known = Array.isArray(changes) && typeof from === 'number' && typeof to === 'number';
  return known
    ? { name, changes: changes.filter(isChange), from, to }
    : { name, changes: [], from: 0, to: 0 };
};

/** Numbers of the device among these, each of which is one piece of work or several. */
const numbersOf = (changes: readonly Change[]): number[] =>
  changes.flatMap(({ store, id, row }) =>
    store === 'meta' && id === 'device'
      ? counterOf((row as { value?: unknown } | null | undefined)?.value)
      : [],
  );
/** Up to which number nothing is left out: where a note before one was lost, that one doesn't count. */
export const upTo = (counter: number, notes: readonly Note[]): number =>
  notes.reduce((now, { from, to }) => (from > 0 && from <= now + 1 ? Math.max(now, to) : now), counter);
/** What one piece of work saved, as it goes into notes: what is large in pieces, which count with the last. */
export const piecesOf = (changes: readonly Change[]): Omit<Note, 'name'>[] => {
  const numbers = numbersOf(changes);
  const pieces: Omit<Note, 'name'>[] = [];
  for (let at = 0; at < changes.length; at += PAGE) {
    const whole = at + PAGE >= changes.length && numbers.length > 0;
    const span = whole ? { from: Math.min(...numbers), to: Math.max(...numbers) } : { from: 0, to: 0 };
    pieces.push({ changes: changes.slice(at, at + PAGE), ...span });
  }
  return pieces;
};
