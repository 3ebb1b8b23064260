import { decimalText, fractionText, isExactDecimal, type Ratio } from '../quantity';
import { familyById } from './catalogue';
import type { Thread } from './thread';

/**
 * Threads ready to be searched. A key is what a person types for a thread: size and pitch parted by a blank, or the
 * pitch alone. The three lists of keys run side by side, in order of key, for looking up by beginnings.
 */
export interface SearchIndex {
  readonly threads: readonly Thread[];
  /** Words by which each thread may be asked for, each after a blank. */
  readonly words: readonly string[];
  readonly place: ReadonlyMap<string, number>;
  readonly keys: readonly string[];
  /** How much of a key is the size; nothing when the key is a pitch. */
  readonly sizes: Uint8Array;
  /** Number of the key's thread in `threads`. */
  readonly at: Uint16Array;
}

/** Most threads in one index. */
export const INDEX_ROOM = 0xffff;

const seen = new Map<string, readonly string[]>();

/** "11 1/2" and "11.5": the ways in which one figure is typed; metric ones as decimals only. */
const ways = (r: Ratio, metric: boolean): readonly string[] => {
  if (r.d === 1n) return [r.n.toString()];
  // Pitches and sizes repeat across families; working one out costs more than remembering it.
  const key = `${r.n}/${r.d}${metric ? 'm' : ''}`;
  let found = seen.get(key);
  if (!found) {
    if (metric) found = [decimalText(r, { places: 6 })];
    else found = isExactDecimal(r, 6) ? [decimalText(r, { places: 6 }), fractionText(r)] : [fractionText(r)];
    seen.set(key, found);
  }
  return found;
};

const wordsOf = (t: Thread): string => {
  const text = `${t.designation} ${t.size} ${t.family} ${familyById(t.family)?.words ?? ''}`.toLowerCase();
  return ` ${[...new Set(text.match(/[a-z]+/g) ?? [])].join(' ')}`;
};

/** The figures on a size key: "M10" is typed 10, "No. 6" 6, "1 1/2" as it stands. */
const sizeFigures = (size: string): string => /\d[\d./ ]*/.exec(size)?.[0] ?? '';

/**
 * Makes an index of threads; equal matches are later shown in the order given here.
 * @throws RangeError for more than INDEX_ROOM threads
 */
export const buildIndex = (threads: readonly Thread[]): SearchIndex => {
  if (threads.length > INDEX_ROOM) throw new RangeError('too many threads for one index');
  const found: { key: string; size: number; at: number }[] = [];
  threads.forEach((thread, at) => {
    const pitches = ways(thread.pitch.value, thread.pitch.unit === 'mm');
    // A worm's size is its pitch. The diameter of a taper thread isn't what a person calls it by.
    const sizes = new Set(thread.major ? [sizeFigures(thread.size)] : []);
    if (thread.major && !thread.taper) {
      for (const w of ways(thread.major.value, thread.major.unit === 'mm')) sizes.add(w);
    }
    sizes.delete('');
    for (const size of sizes)
      for (const p of pitches) found.push({ key: `${size} ${p}`, size: size.length, at });
    for (const key of pitches) found.push({ key, size: 0, at });
  });
  found.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  return {
    threads,
    words: threads.map(wordsOf),
    place: new Map(threads.map((t, i) => [t.id, i])),
    keys: found.map((f) => f.key),
    sizes: Uint8Array.from(found, (f) => f.size),
    at: Uint16Array.from(found, (f) => f.at),
  };
};
