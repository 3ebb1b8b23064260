import {
  isAfter,
  lapseOf,
  newestOf,
  testLapse,
  testNow,
  type Inputs,
  type TestNow,
  type TestRecord,
} from '../../context';
import { roomOf } from '../../figures/room-from';
import { compare, inBase, type Stated } from '../../quantity';
import { ELECTRIC } from '../rules';
import { stopRule } from './rules';
import { appliesTo, type Applies, type StopTest } from './tests';

/** What a person saw, kept among a record's choices under this name. */
export const SEEN = 'seen';
export const SEEN_OPTIONS = ['as-said', 'not-as-said', 'none-here'] as const;
export type Seen = (typeof SEEN_OPTIONS)[number];

/** How a test of the stop stands now. */
export type StopNow =
  | Exclude<Applies, { code: 'yes' }>
  | TestNow
  /** The carriage ran on further than there is room for in this job. */
  | { readonly code: 'further'; readonly record: TestRecord; readonly room: Stated }
  /** There is nothing of the kind on this lathe, as a person recorded. */
  | { readonly code: 'lacking'; readonly record: TestRecord }
  /** Recorded here before, and repeated among today's checks; or found not OK there since. */
  | { readonly code: 'repeated' | 'not-ok'; readonly at: number };

/** Today's answer to the check that repeats a test, where it is newer than the test's own record. */
const repeated = (inputs: Inputs, test: StopTest, own: TestRecord | null): StopNow | null => {
  const check = test.check === null ? undefined : newestOf(inputs.context.records, test.check);
  if (!check || (own && isAfter(own, check))) return null;
  if (check.answer === 'not-ok') return { code: 'not-ok', at: check.at };
  if (own?.result !== 'passed' || check.rule < 1) return null;
  // The check repeats a test, it doesn't stand for one: whatever else makes the record lapse still does.
  const { daily: _daily, ...whole } = stopRule(test.id, inputs);
  const today = { version: check.rule, reads: [], daily: true, events: ['power', ...ELECTRIC] } as const;
  return testLapse(whole, own, inputs) || lapseOf(today, check, inputs)
    ? null
    : { code: 'repeated', at: check.at };
};

/** Further than the room of this job, by a reading recorded before; null where it isn't, or one of them isn't known. */
const further = (inputs: Inputs, record: TestRecord): StopNow | null => {
  const { distance } = record.readings;
  const room = roomOf(inputs);
  return distance && room && compare(inBase(distance), inBase(room)) > 0
    ? { code: 'further', record, room }
    : null;
};

/** How a test stands on this machine now. What failed stays failed until it is recorded anew. */
export const stopNow = (inputs: Inputs, test: StopTest): StopNow => {
  const applies = appliesTo(test, inputs.machine);
  if (applies.code !== 'yes') return applies;
  const now = testNow(inputs, test.id, stopRule(test.id, inputs));
  if (now.code === 'failed') return now;
  const own = now.code === 'not-done' ? null : now.record;
  const again = repeated(inputs, test, own);
  if (again?.code === 'not-ok') return again;
  if (now.code === 'undecided' && test.mayLack && now.record.choices[SEEN] === 'none-here')
    return { code: 'lacking', record: now.record };
  const holds = now.code === 'passed' || again;
  return (holds && own && further(inputs, own)) || again || now;
};
