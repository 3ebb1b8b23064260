/** Smallest step of 1, 2 or 5 × 10^k that leaves at most six numbered lines after zero. */
export const numberStep = (max: number): number => {
  const rough = max / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * ([1, 2, 5, 10].find((m) => m * power >= rough * 0.999) ?? 10);
};
