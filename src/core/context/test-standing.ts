import type { Inputs, InputPath } from './inputs';
import { lapseOf, snapshot, type Lapse, type LapseRule, type Lapsing } from './staleness';
import type { TestId } from './test-ids';
import type { TestRecord } from './test-record';

/** When it was recorded, kept among the inputs so that days and hours can run out. */
const WHEN = ['context.day', 'context.hours'] as const satisfies readonly InputPath[];

/** What a record keeps of everything its test rests on, as things are now. */
export const testInputs = (inputs: Inputs, rule: LapseRule): Readonly<Record<string, string>> =>
  Object.freeze(snapshot(inputs, [...rule.reads, ...WHEN]));

const kept = (record: TestRecord, path: (typeof WHEN)[number]): unknown => {
  try {
    return JSON.parse(record.inputs[path] ?? 'null');
  } catch {
    return null;
  }
};

const lapsing = (record: TestRecord): Lapsing => {
  const [day, hours] = WHEN.map((path) => kept(record, path));
  return {
    ...record,
    day: typeof day === 'string' ? day : '',
    hours: typeof hours === 'number' ? hours : null,
    cut: null,
  };
};

/** Why a test record no longer holds, or null while it does. */
export const testLapse = (rule: LapseRule, record: TestRecord, inputs: Inputs): Lapse | null =>
  lapseOf(rule, lapsing(record), inputs);

/** The newest record of a test; records come oldest first. */
export const newestTest = (inputs: Inputs, test: TestId): TestRecord | null =>
  inputs.context.tests?.findLast((r) => r.test === test) ?? null;

/**
 * How a test stands now. What failed stays failed, whatever has changed since, until it is done again; what passed or was
 * left undecided lapses.
 */
export type TestNow =
  | { readonly code: 'not-done' }
  | { readonly code: 'failed' | 'undecided' | 'passed'; readonly record: TestRecord }
  | { readonly code: 'lapsed'; readonly record: TestRecord; readonly lapse: Lapse };

export const testNow = (inputs: Inputs, test: TestId, rule: LapseRule): TestNow => {
  const record = newestTest(inputs, test);
  if (!record) return { code: 'not-done' };
  const lapse = record.result === 'failed' ? null : testLapse(rule, record, inputs);
  return lapse ? { code: 'lapsed', record, lapse } : { code: record.result, record };
};
