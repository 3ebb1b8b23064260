import { read, type Ratio } from '../quantity';

const seen = new Map<string, Ratio>();

/**
 * A figure of a table as an exact ratio: "1.25", "3/8", "1-1/2". Remembered, since tables repeat their pitches.
 * @throws RangeError for anything else: a slip in a table, never a person's typing
 */
export const figure = (text: string): Ratio => {
  const known = seen.get(text);
  if (known) return known;
  const result = read(text);
  if (!result.ok) throw new RangeError(`"${text}" in a thread table: ${result.error}`);
  seen.set(text, result.value);
  return result.value;
};
