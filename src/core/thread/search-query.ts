/** What a person typed, ready to be looked up. */
export interface Query {
  /** Beginnings to look for; any of them may match. Figures in a row are parted by one blank: "10 1.25". */
  readonly figures: readonly string[];
  /** Words, lower case, that a thread's own words must begin with: "unc", "m", "ba". */
  readonly words: readonly string[];
  /** "13 tpi": the figure is threads per inch. */
  readonly tpi: boolean;
}

/** Signs between a size and a pitch that mean the same: a key, a hyphen, a times sign or a blank. */
const BETWEEN = /[\s×x*\-–−]+/;
const WORDS: Readonly<Record<string, string>> = { number: 'no', '#': 'no', thd: 'tpi' };

/** A figure as the keys hold it: point as the mark, no bare point in front. */
const clean = (figure: string): string => (figure.startsWith('.') ? `0${figure}` : figure);

/** "1.250" and "1." as typed may also stand for "1.25" and "1": the second form, if there is one. */
const shorter = (figures: readonly string[]): readonly string[] | null => {
  const last = figures.at(-1) ?? '';
  const cut = last.includes('.') ? last.replace(/\.?0*$/, '') : last;
  return cut === last ? null : [...figures.slice(0, -1), cut];
};

/** Takes a query apart: figures and words in any order, "M10x1", "1/4-20 unc", "1 1/2", "13tpi", "0,8". */
export const readQuery = (query: string): Query => {
  const text = query.toLowerCase().replace(/,/g, '.').replace(/#/g, ' no ').replace(/no\./g, 'no ');
  const figures: string[] = [];
  const words: string[] = [];
  let tpi = false;
  for (const part of text.split(BETWEEN)) {
    for (const token of part.match(/[\d./]+|[^\d./]+/g) ?? []) {
      if (/^[\d./]/.test(token)) {
        figures.push(clean(token));
        continue;
      }
      const word = WORDS[token] ?? token;
      if (word === 'tpi') tpi = true;
      else if (word !== '') words.push(word);
    }
  }
  const other = shorter(figures);
  const lists = figures.length === 0 ? [] : other ? [figures, other] : [figures];
  return { figures: lists.map((l) => l.join(' ')), words, tpi };
};
