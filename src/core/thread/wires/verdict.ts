/** Where a measured pitch diameter lies in its limits, its uncertainty counted. */
export type Verdict = 'within' | 'above' | 'below' | 'unsure' | 'unknown';

/**
 * Verdict on a value with expanded uncertainty U, in the limits' unit. Within (or beyond) only when the whole of
 * value ± U is: ISO 14253-1's rule that uncertainty counts against whoever makes the claim. Unknown U or an open
 * limit is never within.
 */
export const verdictOf = (
  value: number,
  expanded: number | null,
  min: number | null,
  max: number | null,
): Verdict => {
  if (min === null || max === null || expanded === null || !(expanded >= 0)) return 'unknown';
  if (value + expanded < min) return 'below';
  if (value - expanded > max) return 'above';
  return value - expanded >= min && value + expanded <= max ? 'within' : 'unsure';
};

/** How each stands, as figures do: what is above may still be taken off, what is below can't be put back. */
export const VERDICT_STANDING = {
  within: 'within',
  above: 'near',
  below: 'over',
  unsure: 'unknown',
  unknown: 'unknown',
} as const satisfies Readonly<Record<Verdict, string>>;
