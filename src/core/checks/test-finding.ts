import {
  isAfter,
  newestTest,
  STOP_TESTS,
  testLapse,
  testNow,
  type CheckRecord,
  type TestId,
} from '../context';
import type { Sheet } from '../figures';
import { finding } from './findings';
import type { Finding, Item } from './item';

/**
 * What the machine's test records say to an item; null where they say nothing: there is none, it was left undecided, it no
 * longer holds, or the item itself was answered since. A test that covers a lead and a speed passes by `answered` alone.
 */
export const testFinding = (item: Item, sheet: Sheet, own: CheckRecord | null): Finding | null => {
  const { test } = item;
  const record = test && newestTest(sheet.inputs, test.id);
  if (!test || !record || (own && isAfter(own, record))) return null;
  const { code } = testNow(sheet.inputs, test.id, test.rule);
  const ofStop = (STOP_TESTS as readonly TestId[]).includes(test.id);
  if (code === 'failed') return finding('over', ofStop ? 'stop-not-seen' : 'test-failed');
  if (code !== 'passed' || item.answered) return null;
  // As long as an answer of the item's own would hold: daily ones for the day.
  const asItem = { ...item.rule, version: record.rule, reads: [] };
  return testLapse(asItem, record, sheet.inputs)
    ? null
    : finding('within', ofStop ? 'stop-seen' : 'test-passed');
};
