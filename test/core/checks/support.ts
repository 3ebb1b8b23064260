import {
  checkState,
  itemById,
  makeRecord,
  type CheckState,
  type Item,
  type ItemId,
} from '../../../src/core/checks';
import {
  STOP_TESTS,
  type CheckRecord,
  type Context,
  type EventKind,
  type Inputs,
  type StopTestId,
  type TestRecord,
} from '../../../src/core/context';
import { figuresFor, type Sheet } from '../../../src/core/figures';
import { blankJob, type Job } from '../../../src/core/job';
import { type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { makeStopTest, stopTestById, type Seen } from '../../../src/core/prove/stops';
import { read, stated, type Ratio, type Stated, type Unit } from '../../../src/core/quantity';

export const HOUR = 3_600_000;
export const NOON = Date.UTC(2026, 4, 3, 12);

export const exactly = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new Error(text);
  return r.value;
};
export const is = (text: string, unit: Unit): Stated => stated(exactly(text), unit);

export interface Parts {
  readonly machine?: Partial<MachineProfile>;
  readonly job?: Partial<Job>;
  readonly context?: Partial<Context>;
}

/** Heron, its stop as the example describes it, and M10 coarse; ten days before NOON. */
const BEFORE: Inputs = {
  machine: EXAMPLES.heron(),
  job: { ...blankJob(), thread: { kind: 'catalogue', id: 'iso-coarse:M10' }, room: is('4', 'mm') },
  context: {
    now: NOON - 240 * HOUR,
    day: '2026-04-23',
    hours: 90,
    records: [],
    events: [],
    cuttingSince: null,
    cuttingDay: null,
  },
};

/** One test of the stop as a person records it. */
export const stopRecord = (
  id: StopTestId,
  inputs: Inputs = BEFORE,
  seen: Seen = 'as-said',
  distance: Stated | null = is('2', 'mm'),
): TestRecord => {
  const test = stopTestById(id);
  const made = test && makeStopTest(test, inputs, `${id}-${inputs.context.now}`, seen, distance);
  if (!made?.ok) throw new Error(`${id}: ${made?.refusal}`);
  return made.record;
};

/** The whole protocol, done ten days ago: what is due each day is due again. */
export const STOPS_DONE: readonly TestRecord[] = STOP_TESTS.map((id) => stopRecord(id));

/** Heron, M10 coarse, 160 rpm, 4 mm of stopping room: everything known, everything within. */
export const inputsOf = (parts: Parts = {}): Inputs => ({
  machine: { ...EXAMPLES.heron(), ...parts.machine },
  job: {
    ...blankJob(),
    thread: { kind: 'catalogue', id: 'iso-coarse:M10' },
    rpm: exactly('160'),
    room: is('4', 'mm'),
    noseKind: 'radius',
    noseSize: is('0.2', 'mm'),
    ...parts.job,
  },
  context: {
    now: NOON,
    day: '2026-05-03',
    hours: 100,
    records: [],
    events: [],
    cuttingSince: null,
    cuttingDay: null,
    tests: STOPS_DONE,
    ...parts.context,
  },
});
export const sheetOf = (parts: Parts = {}): Sheet => figuresFor(inputsOf(parts));

/**
 * A passing reading for every item that wants one, reckoned by hand for Heron and M10 at 160 rpm: run-in
 * 0.12 + 3 × 1.5 = 4.62 mm; gap 1.5 × 160 ÷ 60 × 0.5 s × 1.5 = 3 mm; blank 9.732 to 9.968 mm (ISO 965-2, 6g).
 */
export const READINGS: Partial<Record<ItemId, Stated>> = {
  'end-float': is('0.05', 'mm'),
  backlash: is('0.1', 'mm'),
  'stop-time': is('0.4', 's'),
  'ramp-test': is('300', 'rpm'),
  torque: is('30', 'percent'),
  gap: is('3', 'mm'),
  'run-in': is('4.62', 'mm'),
  blank: is('9.9', 'mm'),
  plan: is('12', 'count'),
};

export const record = (
  item: Item,
  sheet: Sheet,
  answer: CheckRecord['answer'] = 'done',
  reading: Stated | null = READINGS[item.id as ItemId] ?? null,
): CheckRecord => {
  const made = makeRecord(item, sheet, answer, reading, `${item.id}-${sheet.inputs.context.now}`);
  if (!made.ok) throw new Error(`${item.id}: ${made.refusal.code}`);
  return made.record;
};

/** Recorded as of `before`, looked at as of `after`. */
export const stateAfter = (id: ItemId, before: Parts, after: Parts, reading?: Stated | null): CheckState => {
  const item = itemById(id);
  const made = record(
    item,
    sheetOf(before),
    'done',
    reading === undefined ? (READINGS[id] ?? null) : reading,
  );
  return checkState(item, sheetOf({ ...after, context: { ...after.context, records: [made] } }));
};

export const event = (kind: EventKind, at = NOON + 1) => ({ kind, at });
