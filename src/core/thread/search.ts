import { FAMILIES, threadsOf } from './catalogue';
import { buildIndex, type SearchIndex } from './search-index';
import { readQuery, type Query } from './search-query';
import type { Thread } from './thread';

export type { SearchIndex } from './search-index';

export interface SearchOptions {
  /** Only threads of this system; `tpi` reads the figure as threads per inch. */
  readonly unit?: 'mm' | 'in' | 'tpi' | null;
  /** Only families of these ids; all of them where it isn't given. */
  readonly families?: readonly string[];
  /** Ids that go before others of the same rank. */
  readonly favourites?: ReadonlySet<string>;
  /** Ids last used, newest first; they follow the favourites. */
  readonly recent?: readonly string[];
  /** A person's own threads, from indexThreads; shown before the catalogue's of the same rank. */
  readonly own?: readonly SearchIndex[];
  /** Most threads to return. */
  readonly limit: number;
}

/**
 * An index of threads outside the catalogue; make it once and hand it to every search. Many threads are best made into
 * several indexes of about 500, a few milliseconds each, so that no single one holds up a key.
 */
export const indexThreads = buildIndex;

const catalogued = new Map<string, SearchIndex>();
const indexOf = (family: string): SearchIndex => {
  let index = catalogued.get(family);
  if (!index) {
    index = buildIndex(threadsOf(family));
    catalogued.set(family, index);
  }
  return index;
};

/**
 * Builds the catalogue's indexes ahead of the first key, one family a call, and then looks a few things up, so that it can
 * be spread over idle time.
 * @returns true while there is more to do
 */
export const warmSearch = (): boolean => {
  const next = FAMILIES.find((f) => !catalogued.has(f.id));
  if (next) {
    indexOf(next.id);
    return true;
  }
  // An engine makes a function quick when it has run some dozens of times: better now than at the first keys.
  if (rehearsed < REHEARSALS) search(`${rehearsed % 13}`, NOTHING_PREFERRED);
  rehearsed += 1;
  return rehearsed < REHEARSALS;
};
const REHEARSALS = 60;
const NOTHING_PREFERRED = { unit: null, favourites: new Set<string>(), recent: [], own: [], limit: 24 };
let rehearsed = 0;

/** First place in the sorted keys that is not below a text. */
const firstAt = (keys: readonly string[], text: string): number => {
  let [low, high] = [0, keys.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((keys[mid] as string) < text) low = mid + 1;
    else high = mid;
  }
  return low;
};

/** Ranks of a match, best first: whole size, whole pitch, beginning of a size, beginning of a pitch; then none. */
const RANKS = 4;
const NONE = RANKS;

type Fits = (index: SearchIndex, at: number) => boolean;

const filter = (q: Query, unit: SearchOptions['unit']): Fits | null => {
  if (q.words.length === 0 && !q.tpi && !unit) return null;
  const words = q.words.map((w) => ` ${w}`);
  // Most threads of a family have the same words, so one answer serves many.
  const answers = new Map<string, boolean>();
  const named = (text: string): boolean => {
    let answer = answers.get(text);
    if (answer === undefined) answers.set(text, (answer = words.every((w) => text.includes(w))));
    return answer;
  };
  return (index, at) => {
    const pitchUnit = (index.threads[at] as Thread).pitch.unit;
    if (unit && (pitchUnit === 'mm' || pitchUnit === 'module') !== (unit === 'mm')) return false;
    if (q.tpi && pitchUnit !== 'tpi') return false;
    return named(index.words[at] as string);
  };
};

/** Rank of every thread of an index. */
const ranks = (index: SearchIndex, q: Query, pitchOnly: boolean, fits: Fits | null): Uint8Array => {
  const out = new Uint8Array(index.threads.length).fill(NONE);
  if (q.figures.length === 0) {
    for (let at = 0; at < out.length; at++) if (!fits || fits(index, at)) out[at] = 0;
    return out;
  }
  for (const typed of q.figures) {
    // Nothing that is typed sorts after this sign.
    const end = firstAt(index.keys, `${typed}\uffff`);
    for (let i = firstAt(index.keys, typed); i < end; i++) {
      const size = index.sizes[i] as number;
      if (pitchOnly && size > 0) continue;
      const whole = typed.length === size || typed.length === (index.keys[i] as string).length;
      const rank = (whole ? 0 : 2) + (size === 0 ? 1 : 0);
      const at = index.at[i] as number;
      if (rank < (out[at] as number) && (!fits || fits(index, at))) out[at] = rank;
    }
  }
  return out;
};

/** What goes first among equals: the favourites, then the recent ones. */
const preferred = (indexes: readonly SearchIndex[], options: SearchOptions): readonly [number, number][] =>
  [...new Set([...(options.favourites ?? []), ...(options.recent ?? [])])].flatMap(
    (id): [number, number][] => {
      const i = indexes.findIndex((index) => index.place.has(id));
      return i < 0 ? [] : [[i, indexes[i]?.place.get(id) ?? 0]];
    },
  );

/** What stands before anything is typed: the recent threads, then the favourites. */
const unasked = (indexes: readonly SearchIndex[], options: SearchOptions): readonly Thread[] =>
  [...new Set([...(options.recent ?? []), ...(options.favourites ?? [])])]
    .flatMap((id) => indexes.flatMap((index) => index.threads[index.place.get(id) ?? -1] ?? []))
    .slice(0, options.limit);

/**
 * Threads matching what has been typed so far, best first: whole figures before beginnings, of those sizes before
 * pitches, then favourites, recent ones, a person's own, and the families' tables (coarse before fine).
 * Nothing typed: the recent threads and favourites. Nothing that matches: an empty list.
 * @example search('10x1', { limit: 8 }) // M10×1, M10×1.5, M10×1.25 …
 */
export const search = (query: string, options: SearchOptions): readonly Thread[] => {
  const q = readQuery(query);
  const { own = [], families } = options;
  const searched = FAMILIES.filter((f) => families?.includes(f.id) ?? true);
  const indexes = [...own, ...searched.map((f) => indexOf(f.id))];
  const fits = filter(q, options.unit);
  if (q.figures.length === 0 && !fits) return unasked(indexes, options);
  const pitchOnly = q.tpi || options.unit === 'tpi';
  const ranked = indexes.map((index) => ranks(index, q, pitchOnly, fits));
  const first = preferred(indexes, options);
  const out: Thread[] = [];
  const take = (i: number, at: number): void => {
    (ranked[i] as Uint8Array)[at] = NONE;
    out.push((indexes[i] as SearchIndex).threads[at] as Thread);
  };
  for (let rank = 0; rank < RANKS; rank++) {
    for (const [i, at] of first) if (ranked[i]?.[at] === rank) take(i, at);
    for (const [i, list] of ranked.entries()) {
      for (
        let at = list.indexOf(rank);
        at >= 0 && out.length < options.limit;
        at = list.indexOf(rank, at + 1)
      ) {
        take(i, at);
      }
    }
  }
  return out.slice(0, options.limit);
};
