import { readStored, storeStated } from '../machine/stored';
import { inBase, type Stated } from '../quantity';
import type { Recorded } from './order';
import type { Made } from '../recall';
import { TEST_IDS, type TestId } from './test-ids';

export const TEST_RESULTS = ['passed', 'failed', 'undecided'] as const;
export type TestResult = (typeof TEST_RESULTS)[number];

/**
 * What a person did and read in one test of the machine. Add-only: the newest record of a test counts, earlier ones
 * stay. `inputs` holds, by path, the exact values of what it rests on, with the day and running hours it was made at.
 */
export interface TestRecord extends Recorded {
  readonly id: string;
  readonly test: TestId;
  /** Version of the rule that decided it: a corrected rule makes older records stale. */
  readonly rule: number;
  readonly result: TestResult;
  /** As typed, by the test's own names. */
  readonly readings: Readonly<Record<string, Stated>>;
  /** Instrument used, what was seen. */
  readonly choices: Readonly<Record<string, string>>;
  readonly inputs: Readonly<Record<string, string>>;
  readonly note: string;
  /** By which version it was recorded; not there in one from before that was kept. */
  readonly made?: Made;
}

/** How much one record may hold; more than any test asks, and little enough for a phone. */
export const TEST_BOUNDS = {
  readings: 64,
  choices: 64,
  inputs: 96,
  key: 48,
  text: 2000,
  note: 1000,
} as const;

const KEY = /^[A-Za-z0-9][A-Za-z0-9.-]*$/;

const entriesOf = (x: unknown, most: number): readonly [string, unknown][] | null => {
  if (typeof x !== 'object' || x === null || Array.isArray(x)) return null;
  const all = Object.entries(x);
  const fits = all.length <= most && all.every(([k]) => k.length <= TEST_BOUNDS.key && KEY.test(k));
  return fits ? all : null;
};

const texts = (x: unknown, most: number): Record<string, string> | null => {
  const all = entriesOf(x, most);
  const good = all?.every(([, s]) => typeof s === 'string' && s.length <= TEST_BOUNDS.text);
  return all && good ? (Object.fromEntries(all) as Record<string, string>) : null;
};

const readingsOf = (x: unknown): Record<string, Stated> | null => {
  const all = entriesOf(x, TEST_BOUNDS.readings);
  const read = all?.map(([k, s]) => [k, readStored(s)] as const);
  return read?.every((pair): pair is readonly [string, Stated] => pair[1] !== null && hasBase(pair[1]))
    ? Object.fromEntries(read)
    : null;
};

/** 0 tpi is no length. */
const hasBase = (s: Stated): boolean => {
  try {
    return inBase(s) !== null;
  } catch {
    return false;
  }
};

/** What of a test record goes into its row's body. */
export const storeTest = ({ id: _id, at: _at, readings, ...rest }: TestRecord): Record<string, unknown> => ({
  ...rest,
  readings: Object.fromEntries(Object.entries(readings).map(([k, s]) => [k, storeStated(s)])),
});

/** A record from its row's body; null for what can't be read: it counts as not done. Never throws. */
export const readTest = (body: unknown, id: string, at: number): TestRecord | null => {
  if (typeof body !== 'object' || body === null) return null;
  const { test, rule, result, note, ...raw } = body as Record<string, unknown>;
  const readings = readingsOf(raw.readings);
  const choices = texts(raw.choices, TEST_BOUNDS.choices);
  const inputs = texts(raw.inputs, TEST_BOUNDS.inputs);
  if (!readings || !choices || !inputs || !Number.isSafeInteger(rule)) return null;
  if (!TEST_IDS.includes(test as TestId) || !TEST_RESULTS.includes(result as TestResult)) return null;
  if (typeof note !== 'string' || note.length > TEST_BOUNDS.note) return null;
  const known = { test: test as TestId, rule: rule as number, result: result as TestResult };
  return Object.freeze({ id, at, ...known, readings, choices, inputs, note });
};

/**
 * What stands for a record that can't be read, where at least its test can be told: undecided, and by no rule there is, so
 * that an older one that passed doesn't take its place. Null for anything else. Never throws.
 */
export const unreadTest = (body: unknown, id: string, at: number): TestRecord | null => {
  const test = (body as { test?: unknown } | null | undefined)?.test;
  return TEST_IDS.includes(test as TestId)
    ? {
        id,
        at,
        test: test as TestId,
        rule: 0,
        result: 'undecided',
        readings: {},
        choices: {},
        inputs: {},
        note: '',
      }
    : null;
};
