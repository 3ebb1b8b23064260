import { compare, inBase, isWhole, read, stated, type Ratio, type Stated, type Unit } from '../quantity';
import type { Reading } from './item';

/** Why a figure was refused. `low` and `high` are the plausible range in the reading's first unit. */
export type ReadingRefusal =
  | { readonly code: 'wrong-unit' }
  | { readonly code: 'not-whole' }
  | { readonly code: 'out-of-range'; readonly low: string; readonly high: string; readonly unit: Unit };

const bound = (text: string, unit: Unit): Ratio => {
  const r = read(text);
  if (!r.ok) throw new RangeError(`range bound is not a number: ${text}`);
  return inBase(stated(r.value, unit));
};

/** Holds a reading, in base units, to its plausible range; null when it is usable. */
export const readingRefusal = (reading: Reading, base: Ratio): ReadingRefusal | null => {
  if (reading.whole && !isWhole(base)) return { code: 'not-whole' };
  const [unit] = reading.units;
  return compare(base, bound(reading.min, unit)) < 0 || compare(base, bound(reading.max, unit)) > 0
    ? { code: 'out-of-range', low: reading.min, high: reading.max, unit }
    : null;
};

/** A stated reading in base units, or why it is refused. */
export const takeReading = (
  reading: Reading,
  value: Stated,
):
  { readonly ok: true; readonly value: Ratio } | { readonly ok: false; readonly refusal: ReadingRefusal } => {
  if (!reading.units.includes(value.unit)) return { ok: false, refusal: { code: 'wrong-unit' } };
  const base = inBase(value);
  const refusal = readingRefusal(reading, base);
  return refusal ? { ok: false, refusal } : { ok: true, value: base };
};
