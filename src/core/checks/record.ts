import { snapshot, type CheckRecord } from '../context';
import { RAMP_LEAD, RAMP_TEST, type Sheet } from '../figures';
import { leadHigh, type Ratio, type Stated } from '../quantity';
import type { Item } from './item';
import { takeReading, type ReadingRefusal } from './reading';

/** Why no record was made. */
export type RecordRefusal =
  | ReadingRefusal
  | { readonly code: 'computed' }
  | { readonly code: 'reading-needed' }
  | { readonly code: 'no-reading-here' }
  | { readonly code: 'lead-unknown' };

export type Made =
  | { readonly ok: true; readonly record: CheckRecord }
  | { readonly ok: false; readonly refusal: RecordRefusal };

const no = (refusal: RecordRefusal): Made => ({ ok: false, refusal });

/**
 * The record of one answer to one item, as the inputs are now. `id` is the new record's own; `reading` is what
 * was read off, in any of the item's units. Refused: a computed item, a "done" without the figure that the item
 * asks for, a figure out of its plausible range, a ramp test with no lead known. "Not OK" needs no figure.
 */
export const makeRecord = (
  item: Item,
  sheet: Sheet,
  answer: CheckRecord['answer'],
  reading: Stated | null,
  id: string,
): Made => {
  if (item.kind === 'computed') return no({ code: 'computed' });
  let value: Ratio | null = null;
  if (reading) {
    if (!item.reading) return no({ code: 'no-reading-here' });
    const taken = takeReading(item.reading, reading);
    if (!taken.ok) return no(taken.refusal);
    value = taken.value;
  } else if (item.kind === 'reading' && answer === 'done') return no({ code: 'reading-needed' });

  const inputs = snapshot(sheet.inputs, item.rule.reads);
  if (item.id === RAMP_TEST) {
    const lead = sheet.get('lead').value;
    if (!lead && answer === 'done') return no({ code: 'lead-unknown' });
    if (lead) {
      const { n, d } = leadHigh(lead);
      inputs[RAMP_LEAD] = `${n}/${d}`;
    }
  }
  const { now, day, hours, cuttingSince } = sheet.inputs.context;
  return {
    ok: true,
    record: Object.freeze({
      id,
      item: item.id,
      answer,
      at: now,
      day,
      hours,
      inputs: Object.freeze(inputs),
      rule: item.rule.version,
      reading: value,
      cut: cuttingSince,
    }),
  };
};
