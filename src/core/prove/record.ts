import {
  testInputs,
  TEST_BOUNDS,
  type Inputs,
  type LapseRule,
  type TestId,
  type TestRecord,
  type TestResult,
} from '../context';
import type { Stated } from '../quantity';

export { newestTest, readTest, storeTest, testLapse, testNow } from '../context';
export type { TestNow, TestRecord, TestResult } from '../context';

/** What a person says of a test: everything of its record but what follows from the machine and the time. */
export interface Said {
  readonly result: TestResult;
  readonly readings: Readonly<Record<string, Stated>>;
  readonly choices: Readonly<Record<string, string>>;
  readonly note?: string;
}

/** The record of a test as the inputs are now; `id` is the record's own. A longer note is cut to what is kept. */
export const makeTest = (test: TestId, rule: LapseRule, inputs: Inputs, id: string, said: Said): TestRecord =>
  Object.freeze({
    id,
    at: inputs.context.now,
    test,
    rule: rule.version,
    result: said.result,
    readings: Object.freeze({ ...said.readings }),
    choices: Object.freeze({ ...said.choices }),
    inputs: testInputs(inputs, rule),
    note: (said.note ?? '').slice(0, TEST_BOUNDS.note),
  });
