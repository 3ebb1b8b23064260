import { testLapse, type CommissioningId, type Inputs, type TestRecord } from '../../context';
import { add, compare, div, inBase, mul, ONE, ratio, toNumber, ZERO, type Ratio } from '../../quantity';
import { INSTRUMENT, LEAD_READING } from '../given';
import { RULES } from '../rules';
import { instrumentOf, INSTRUMENTS, lengthUncertainty, markCounts, MARKS, roundedUp } from '../uncertainty';
import type { InstrumentId, MarkId } from '../uncertainty';
import type { Expected, Reading } from './reading';
import type { Slot } from './kept';

/** Which commissioning test reads what a slot asks for. */
const TEST_OF: Readonly<Partial<Record<Slot, CommissioningId>>> = {
  counts: 'counts',
  screw: 'screw-turns',
  carriage: 'screw-travel',
  travel: 'travel',
};

/** A test record as the finder's reading. `lead`: that it was made at, mm; null where the test has none. */
export interface Recorded {
  readonly slot: Slot;
  readonly record: TestRecord;
  readonly reading: Reading;
  readonly lead: Ratio | null;
}

const read = ({ readings }: TestRecord, id: string): Ratio | null => {
  const value = readings[id];
  return value ? inBase(value) : null;
};

const markOf = ({ choices }: TestRecord): Ratio =>
  MARKS[Object.hasOwn(MARKS, choices.mark ?? '') ? (choices.mark as MarkId) : 'line'];

/** A record's U (k = 2) is twice what ±half at each end comes to: half·√(2/3) (reading.ts). Never less: √(3/8) = 0.6124. */
const HALF_OF_U = ratio(613, 1000);

const lengthHalf = (record: TestRecord): Ratio | null => {
  const id = INSTRUMENTS.find((i) => i === record.choices[INSTRUMENT.id]);
  if (!id) return null;
  const { step, accuracy } = record.readings;
  const spread = read(record, 'repeats');
  const instrument = instrumentOf(id satisfies InstrumentId, step ?? null, accuracy ?? null);
  const u = roundedUp(lengthUncertainty(instrument, spread ? toNumber(spread) : 0));
  return mul(u, HALF_OF_U);
};

const readingOf = (slot: Slot, record: TestRecord, e: Expected): Reading | null => {
  const make = (test: Reading['test'], got: Ratio | null, over: Ratio | null, half: Ratio | null) =>
    // Backwards is no ratio: the direction is a test of its own.
    got && over && half && compare(got, ZERO) > 0 && compare(over, ZERO) > 0
      ? { test, got, over, half }
      : null;
  const turns = read(record, 'turns');
  const lead = read(record, LEAD_READING);
  if (slot === 'counts')
    return make('counts', read(record, 'counts'), turns, e.counts && markCounts(e.counts, markOf(record)));
  if (slot === 'screw')
    return make(
      'screw',
      read(record, 'screw'),
      read(record, 'spindle'),
      // The spindle's mark turns the screw along, and the screw has a mark of its own.
      lead && e.carriage && mul(markOf(record), add(div(lead, e.carriage), ONE)),
    );
  if (slot === 'carriage') return make('carriage', read(record, 'travel'), turns, lengthHalf(record));
  return make('travel', read(record, 'travel'), turns && lead && mul(turns, lead), lengthHalf(record));
};

/**
 * What the test records hold for the fault finder: of each test the newest record, whatever it said, as long as nothing it
 * rests on has changed since. The record's own uncertainty goes along.
 */
export const recordedFor = (inputs: Inputs, e: Expected): readonly Recorded[] =>
  (Object.entries(TEST_OF) as [Slot, CommissioningId][]).flatMap(([slot, id]): Recorded[] => {
    const record = inputs.context.tests?.findLast((r) => r.test === id);
    if (!record || testLapse(RULES[id], record, inputs)) return [];
    const reading = readingOf(slot, record, e);
    return reading ? [{ slot, record, reading, lead: read(record, LEAD_READING) }] : [];
  });
