import { catalogue } from './catalogue';
import { buildIndex, type Entry, type SearchIndex } from './search-index';
import { readQuery, type Query } from './search-query';
import type { Thread } from './thread';

export type { SearchIndex } from './search-index';

export interface SearchOptions {
  /** Only threads of this system; `tpi` reads the figure as threads per inch. */
  readonly unit?: 'mm' | 'in' | 'tpi' | null;
  /** Ids that go before others of the same rank. */
  readonly favourites?: ReadonlySet<string>;
  /** Ids last used, newest first; they follow the favourites. */
  readonly recent?: readonly string[];
  /** A person's own threads, from indexThreads; shown before the catalogue's of the same rank. */
  readonly own?: SearchIndex | null;
  /** Most threads to return. */
  readonly limit: number;
}

/** An index of threads outside the catalogue; make it once and hand it to every search. */
export const indexThreads = buildIndex;

let catalogued: SearchIndex | null = null;
const catalogueIndex = (): SearchIndex => (catalogued ??= buildIndex(catalogue()));

/** Builds the catalogue's index ahead of the first key, so that the first search is as quick as the rest. */
export const warmSearch = (): void => void catalogueIndex();

/** First place whose key is not below the beginning. */
const firstAt = (entries: readonly Entry[], beginning: string): number => {
  let [low, high] = [0, entries.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((entries[mid] as Entry).key < beginning) low = mid + 1;
    else high = mid;
  }
  return low;
};

/** Rank of a match, lower first: whole size, whole pitch, beginning of a size, beginning of a pitch. */
const rank = (entry: Entry, typed: string): number => {
  const whole = typed.length === entry.key.length || typed.length === entry.size;
  return (whole ? 0 : 2) + (entry.size === 0 ? 1 : 0);
};

/** Matches of one index: the threads' scores, and which threads have one. */
interface Matches {
  readonly index: SearchIndex;
  readonly score: Float64Array;
  readonly found: number[];
}

const fits = (index: SearchIndex, at: number, q: Query, unit: SearchOptions['unit']): boolean => {
  const pitchUnit = index.threads[at]?.pitch.unit;
  if (unit && (pitchUnit === 'mm' || pitchUnit === 'module') !== (unit === 'mm')) return false;
  if (q.tpi && pitchUnit !== 'tpi') return false;
  return q.words.every((w) => (index.words[at] as string).includes(` ${w}`));
};

const match = (index: SearchIndex, q: Query, options: SearchOptions): Matches => {
  const score = new Float64Array(index.threads.length).fill(Infinity);
  const found: number[] = [];
  const offer = (at: number, s: number): void => {
    if (score[at] === Infinity) found.push(at);
    if (s < (score[at] as number)) score[at] = s;
  };
  const pitchOnly = q.tpi || options.unit === 'tpi';
  const anything = q.words.length === 0 && !q.tpi && !options.unit;
  for (const typed of q.figures) {
    for (let i = firstAt(index.entries, typed); i < index.entries.length; i++) {
      const entry = index.entries[i] as Entry;
      if (!entry.key.startsWith(typed)) break;
      if (pitchOnly && entry.size > 0) continue;
      if (anything || fits(index, entry.at, q, options.unit)) offer(entry.at, rank(entry, typed));
    }
  }
  if (q.figures.length === 0 && (q.words.length > 0 || q.tpi || options.unit)) {
    for (let at = 0; at < index.threads.length; at++) if (fits(index, at, q, options.unit)) offer(at, 0);
  }
  return { index, score, found };
};

/** Favourites before recent ones before the rest: a part of the score below the rank and above the table's order. */
const prefer = ({ index, score, found }: Matches, options: SearchOptions): void => {
  const favourites = options.favourites ?? new Set<string>();
  const recent = new Map((options.recent ?? []).map((id, i) => [id, i]));
  if (favourites.size + recent.size === 0) return;
  for (const at of found) {
    const id = (index.threads[at] as Thread).id;
    const r = recent.get(id);
    if (favourites.has(id)) score[at] = (score[at] as number) - 0.9;
    else if (r !== undefined) score[at] = (score[at] as number) - 0.8 / (r + 1.5);
  }
};

/** What stands before anything is typed: the recent threads, then the favourites. */
const known = (indexes: readonly SearchIndex[], options: SearchOptions): readonly Thread[] => {
  const wanted = new Set([...(options.recent ?? []), ...(options.favourites ?? [])]);
  const byId = new Map(
    indexes.flatMap((i) => i.threads.filter((t) => wanted.has(t.id))).map((t) => [t.id, t]),
  );
  return [...wanted].flatMap((id) => byId.get(id) ?? []).slice(0, options.limit);
};

/**
 * Threads matching what has been typed so far, best first: sizes before pitches of the same wholeness, whole figures
 * before beginnings, then favourites, recent ones, a person's own, and the families' tables (coarse before fine).
 * Nothing typed: the recent threads and favourites. Nothing that matches: an empty list.
 * @example search('10x1', { limit: 8 }) // M10×1, M10×1.5, M10×1.25 …
 */
export const search = (query: string, options: SearchOptions): readonly Thread[] => {
  const q = readQuery(query);
  const indexes = options.own ? [options.own, catalogueIndex()] : [catalogueIndex()];
  if (q.figures.length + q.words.length === 0 && !q.tpi && !options.unit) return known(indexes, options);
  let before = 0;
  const hits: { score: number; thread: Thread }[] = [];
  for (const index of indexes) {
    const m = match(index, q, options);
    prefer(m, options);
    // Of equal ones, the earlier in the indexes comes first.
    for (const at of m.found) {
      hits.push({
        score: (m.score[at] as number) + (before + at) * 1e-9,
        thread: index.threads[at] as Thread,
      });
    }
    before += index.threads.length;
  }
  return best(hits, options.limit).map((h) => h.thread);
};

/** The lowest scores, in order. */
const best = <T extends { readonly score: number }>(hits: readonly T[], limit: number): readonly T[] => {
  if (hits.length <= limit * 4) return [...hits].sort((a, b) => a.score - b.score).slice(0, limit);
  const cut = Float64Array.from(hits, (h) => h.score).sort()[limit - 1] as number;
  return hits
    .filter((h) => h.score <= cut)
    .sort((a, b) => a.score - b.score)
    .slice(0, limit);
};
