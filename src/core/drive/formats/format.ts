/**
 * How a controller holds the number of steps per count. The names are stored with a machine: never renamed.
 * `rev-count` counts a whole number of steps for each spindle rev and starts afresh at the encoder's index;
 * `rate` sends a step frequency reckoned from the spindle speed it has measured.
 */
export type Format =
  | { readonly kind: 'integers'; readonly topMax: bigint; readonly bottomMax: bigint }
  | { readonly kind: 'decimal'; readonly digits: number }
  | { readonly kind: 'fixed-rounded' | 'fixed-truncated'; readonly bits: number }
  | { readonly kind: 'float32' | 'float32-sum' | 'float64' | 'rev-count' | 'rate' };
export type FormatKind = Format['kind'];

/** What the error adds up with: nothing at all, travel, counts (each addition is rounded), one rev at a time, time. */
export type Grows = 'nothing' | 'travel' | 'counts' | 'rev' | 'time';

/** What an inexact number of this format adds up with. */
export const growsWith = (kind: FormatKind): Grows => {
  if (kind === 'float32-sum') return 'counts';
  if (kind === 'rev-count') return 'rev';
  return kind === 'rate' ? 'time' : 'travel';
};
