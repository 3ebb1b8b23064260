/**
 * The value below which a share of the list lies; null for an empty list.
 * @param {number[]} values
 * @param {number} share 0.5 is the median
 */
export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? null;
}

/** @param {number[]} values */
export const median = (values) => quantile(values, 0.5);

/** @param {number | null | undefined} value */
export const ms = (value) => (value == null ? 'not measured' : `${value.toFixed(value < 10 ? 2 : 0)} ms`);
