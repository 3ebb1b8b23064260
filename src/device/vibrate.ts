/** What a finger feels of a key that was taken, ms. */
export const TICK = 12;

/**
 * Shakes the phone; nothing may depend on it alone.
 * @param pattern milliseconds on, off, on …
 * @returns whether the browser took it; false where there is no such thing or the person has not touched the page
 */
export function vibrate(pattern: number | number[]): boolean {
  return 'vibrate' in navigator && navigator.vibrate(pattern);
}
