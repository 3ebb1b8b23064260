import { newestOf, type CheckRecord, type Lapse } from '../context';
import type { Sheet, Standing } from '../figures';
import { judgeBounds } from './bounds';
import { finding } from './findings';
import type { Finding, Item } from './item';
import { itemLapse } from './lapse';
import { readingRefusal } from './reading';
import { testFinding } from './test-finding';

/**
 * `done` is recorded and current, or computed and within (or near) its limit. `failed` is computed over, or a
 * reading that lies outside its bounds. `unknown` can't be told: an input, a bound or the clock isn't known.
 */
export type State = 'done' | 'not-done' | 'not-ok' | 'failed' | 'unknown';

export interface CheckState {
  readonly item: Item;
  readonly state: State;
  /** The newest record of the item, whether it still holds or not. */
  readonly record: CheckRecord | null;
  /** Why that record no longer holds. */
  readonly lapse: Lapse | null;
  /** How a computed item, a gate or a reading stands. */
  readonly finding: Finding | null;
  readonly standing: Standing | null;
  /** A person can record an answer now: it isn't computed, and nothing has to be entered or put right first. */
  readonly answerable: boolean;
}

const make = (
  item: Item,
  state: State,
  record: CheckRecord | null,
  lapse: Lapse | null,
  found: Finding | null,
  answerable = item.kind !== 'computed',
): CheckState => ({
  item,
  state,
  record,
  lapse,
  finding: found,
  standing: found?.standing ?? null,
  answerable,
});

const OF_STANDING: Record<Standing, State> = {
  within: 'done',
  near: 'done',
  over: 'failed',
  unknown: 'unknown',
};

/** How a reading stands for this job; null where nothing is said of it. */
export const judgeReading = (item: Item, sheet: Sheet, record: CheckRecord): Finding | null => {
  const { reading } = item;
  if (!reading || !record.reading) return null;
  if (reading.judge) return reading.judge(record.reading, sheet, record);
  const bounds = reading.bounds?.(sheet);
  return bounds ? judgeBounds(record.reading, bounds) : null;
};

const usable = (item: Item, record: CheckRecord): boolean => {
  if (!item.reading) return true;
  if (record.reading) return readingRefusal(item.reading, record.reading) === null;
  return item.kind !== 'reading';
};

/** A clock or an hours log that ran backwards leaves it not known whether the record still holds. */
const lapsed = (lapse: Lapse): State =>
  lapse.code === 'clock-back' || lapse.code === 'hours-back' ? 'unknown' : 'not-done';

const recorded = (item: Item, sheet: Sheet): CheckState => {
  const record = newestOf(sheet.inputs.context.records, item.id) ?? null;
  const lapse = record && itemLapse(item, record, sheet.inputs);
  // What a person recorded as not OK stays so, whatever has changed, until they record it anew.
  if (record?.answer === 'not-ok') return make(item, 'not-ok', record, lapse, null);
  const gate = item.evaluate?.(sheet) ?? null;
  if (gate && OF_STANDING[gate.standing] !== 'done')
    return make(item, OF_STANDING[gate.standing], record, lapse, gate, false);
  const tested = testFinding(item, sheet, record);
  if (tested) return make(item, OF_STANDING[tested.standing], record, lapse, tested);
  const answered = item.answered?.(sheet) ?? null;
  if (answered && OF_STANDING[answered.standing] === 'done')
    return make(item, 'done', record, lapse, answered);
  if (!record || !usable(item, record)) return make(item, 'not-done', record, lapse, gate);
  if (lapse) return make(item, lapsed(lapse), record, lapse, gate);
  const judged = judgeReading(item, sheet, record) ?? gate;
  return make(item, judged ? OF_STANDING[judged.standing] : 'done', record, null, judged);
};

/**
 * The state of one item now. Computed items are reckoned anew each time and may flip to failed; physical ones
 * go to not done when what they rest on changes, never to done by themselves. Never throws: what can't be
 * reckoned is unknown.
 */
export const checkState = (item: Item, sheet: Sheet): CheckState => {
  try {
    if (item.kind !== 'computed') return recorded(item, sheet);
    const found = item.evaluate?.(sheet) ?? finding('unknown', 'not-reckoned');
    return make(item, OF_STANDING[found.standing], null, null, found);
  } catch {
    return make(item, 'unknown', null, null, finding('unknown', 'not-reckoned'), false);
  }
};
