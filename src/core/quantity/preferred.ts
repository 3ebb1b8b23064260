/**
 * R40 preferred numbers, one decade, as rounded in ISO 3:1973 Table 1 (from memory of that table).
 */
export const R40 = [
  1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15,
  3.35, 3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
] as const;

/** The R40 number at an index counted from 1 (index 0 = 1, 40 = 10, −40 = 0.1). Whole index. */
export const r40At = (index: number): number => {
  const decade = Math.floor(index / 40);
  const value = R40[index - decade * 40];
  if (value === undefined) throw new RangeError('R40 index is not a whole number');
  return Number(`${value}e${decade}`);
};

/** Index of the R40 number nearest to a positive value, by ratio. */
export const r40Index = (value: number): number => {
  if (!(value > 0)) throw new RangeError('R40 needs a positive value');
  const guess = Math.round(Math.log10(value) * 40);
  let best = guess;
  for (const i of [guess - 1, guess, guess + 1]) {
    if (Math.abs(r40At(i) - value) < Math.abs(r40At(best) - value)) best = i;
  }
  return best;
};
