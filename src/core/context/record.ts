import type { Ratio } from '../quantity';
import type { Recorded } from './order';
import type { Made } from '../recall';

/**
 * What a person recorded about one pre-start check. Add-only: a later record for the same item counts, the
 * older ones stay. `inputs` holds the exact values, by path, of everything the item declares that it rests on.
 */
export interface CheckRecord extends Recorded {
  readonly id: string;
  readonly item: string;
  readonly answer: 'done' | 'not-ok';
  readonly day: string;
  /** Running hours when it was recorded; null where no log is kept. */
  readonly hours: number | null;
  readonly inputs: Readonly<Record<string, string>>;
  /** Version of the item's rule when recorded: a corrected rule makes older records stale. */
  readonly rule: number;
  /** What was read off, in the item's base unit, where the item asks for a figure. */
  readonly reading: Ratio | null;
  /** Which cut it belongs to, for checks made while cutting. */
  readonly cut: number | null;
  /** By which version it was recorded; not there in one from before that was kept. */
  readonly made?: Made;
}
