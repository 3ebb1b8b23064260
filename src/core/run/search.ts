/**
 * Looking up finished runs by what a person types: "m10 heron march". Words are handed in with each record (they belong to
 * text); here they are only made alike and compared.
 */

/** A record ready to be searched: its words made alike, each after a blank. */
export interface Findable {
  readonly key: string;
  readonly words: string;
}

const MARKS = /\p{Mn}/gu;

/** Small letters without accents; a times sign is an x, a decimal comma a point, whatever parts words a blank. */
const alike = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(MARKS, '')
    .replace(/×/g, 'x')
    .replace(/(\d),(?=\d)/g, '$1.')
    .replace(/[^\p{L}\p{N}.:/+\-#]+/gu, ' ')
    .trim();

/** "m10x1.5" is also asked for as "m10", "10" and "1.5": the figures in a word, by themselves. */
const partsOf = (word: string): readonly string[] => {
  const cut = word.split(/[x\-/:]/).filter((p) => p !== '');
  const parts = cut.length > 1 ? cut : [];
  const figures = [word, ...parts].flatMap((p) => /^\p{L}+(\d.*)$/u.exec(p)?.[1] ?? []);
  return [...parts, ...figures];
};

/** @param text everything that the record may be asked by, as it is read on screen */
export const findable = (key: string, text: string): Findable => {
  const words = new Set<string>();
  for (const word of alike(text).split(' ')) {
    words.add(word.replace(/\.$/, ''));
    for (const part of partsOf(word)) words.add(part);
  }
  words.delete('');
  return { key, words: ` ${[...words].join(' ')} ` };
};

const ends = (digit: string | undefined): boolean => digit === undefined || !/[\d.]/.test(digit);
const FIGURE = /\d$/;

interface Asked {
  /** What was typed, after a blank: the beginning of a word. */
  readonly word: string;
  /** What ends in a figure must end there in the record too: 3 is not 30, M1 not M10. */
  readonly whole: boolean;
}

const has = (words: string, { word, whole }: Asked): boolean => {
  for (let at = words.indexOf(word); at >= 0; at = words.indexOf(word, at + 1)) {
    if (!whole || ends(words[at + word.length])) return true;
  }
  return false;
};

const askedOf = (query: string): readonly Asked[] =>
  alike(query)
    .split(' ')
    .map((w) => w.replace(/\.$/, ''))
    // "M10 x 1.5" is typed as often as "M10x1.5".
    .filter((w) => w !== '' && w !== 'x')
    .map((w) => ({ word: ` ${w}`, whole: FIGURE.test(w) }));

/**
 * Keys of the records that hold every word typed, in the order in which the records are given. Nothing typed: all of them.
 * @param limit most keys to give
 */
export const findRuns = (
  records: readonly Findable[],
  query: string,
  limit = Infinity,
): readonly string[] => {
  const asked = askedOf(query);
  const found: string[] = [];
  for (const { key, words } of records) {
    if (found.length >= limit) break;
    if (asked.every((a) => has(words, a))) found.push(key);
  }
  return found;
};
