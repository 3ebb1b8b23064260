import { decimalText, fractionText, isExactDecimal, type Ratio } from '../quantity';
import { familyById } from './catalogue';
import type { Thread } from './thread';

/** One way to find a thread: the figures that a person types for it. */
export interface Entry {
  readonly key: string;
  /** How much of the key is the size; nothing when the key is a pitch. */
  readonly size: number;
  /** Number of the thread in its index. */
  readonly at: number;
}

export interface SearchIndex {
  readonly threads: readonly Thread[];
  /** Words by which each thread may be asked for, each after a blank. */
  readonly words: readonly string[];
  /** In order of key, for looking up by beginnings. */
  readonly entries: readonly Entry[];
}

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

/** Makes an index of threads; equal matches are later shown in the order given here. */
export const buildIndex = (threads: readonly Thread[]): SearchIndex => {
  const entries: Entry[] = [];
  threads.forEach((thread, at) => {
    const pitches = ways(thread.pitch.value, thread.pitch.unit === 'mm');
    // A worm's size is its pitch. The diameter of a taper thread isn't what a person calls it by.
    const sizes = new Set(thread.major ? [sizeFigures(thread.size)] : []);
    if (thread.major && !thread.taper)
      for (const w of ways(thread.major.value, thread.major.unit === 'mm')) sizes.add(w);
    sizes.delete('');
    for (const size of sizes)
      for (const p of pitches) entries.push({ key: `${size} ${p}`, size: size.length, at });
    for (const key of pitches) entries.push({ key, size: 0, at });
  });
  entries.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  return { threads, words: threads.map(wordsOf), entries };
};
