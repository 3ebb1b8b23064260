import { describe, expect, it } from 'vitest';
import { checkState, itemById } from '../../src/core/checks';
import { storeCheck, storeTest, testNow } from '../../src/core/context';
import { makeTest, RULES } from '../../src/core/prove';
import { Records } from '../../src/state/records';
import { Evidence } from '../../src/storage/evidence';
import { memoryBacking } from '../../src/storage/memory';
import { inputsOf, record, sheetOf } from '../core/checks/support';

const NOW = inputsOf().context.now;
const counts = (id: string, at: number) => ({
  ...makeTest('counts', RULES.counts, inputsOf(), id, { result: 'passed', readings: {}, choices: {} }),
  at,
});

const open = async () => {
  const evidence = new Evidence(memoryBacking());
  const records = new Records(evidence, () => undefined);
  await records.open('m');
  return { evidence, records };
};
const now = (records: Records) =>
  testNow(inputsOf({ context: { tests: records.tests } }), 'counts', RULES.counts);

describe('test records of a machine', () => {
  it('are kept in the order of their making, for that machine alone, and can be taken back', async () => {
    const { records } = await open();
    await records.addTest(counts('b', NOW - 1));
    // By the clock it would have come first: a clock that was set back meanwhile doesn't count.
    await records.addTest(counts('a', NOW - 2));
    expect(records.tests.map((r) => r.id)).toEqual(['b', 'a']);
    await records.takeBack('b');
    expect(records.tests.map((r) => r.id)).toEqual(['a']);
    await records.open('other');
    expect(records.tests).toEqual([]);
    await records.open('m');
    expect(now(records).code).toBe('passed');
  });

  it('that can’t be read stay on the disk, are counted, and let no older one stand for them', async () => {
    const { records, evidence } = await open();
    await records.addTest(counts('a', NOW - 2));
    const row = { schema: 1, kind: 'test', machine: 'm', at: NOW - 1 };
    await evidence.add([
      { ...row, id: 'newer', body: { ...storeTest(counts('x', NOW - 1)), result: 'failed in part' } },
    ]);
    await evidence.add([{ ...row, id: 'rubbish', body: 7 }]);
    await records.reload();
    expect(records.unreadableTests).toBe(2);
    expect(now(records).code).toBe('lapsed');
    expect((await evidence.of('m')).map((r) => r.id).sort()).toEqual(['a', 'newer', 'rubbish']);
    await records.reload();
    expect(records.unreadableTests).toBe(2);
  });
});

describe('checks of a machine', () => {
  it('that can’t be read let no older answer stand for them', async () => {
    const { records, evidence } = await open();
    const item = itemById('stop-latches');
    const state = () => checkState(item, sheetOf({ context: { records: records.checks } })).state;
    const made = { ...record(item, sheetOf()), at: NOW - 2 };
    await records.addCheck(made);
    expect(state()).toBe('done');
    const row = { schema: 1, kind: 'check', machine: 'm', at: NOW - 1 };
    await evidence.add([{ ...row, id: 'newer', body: { ...storeCheck(made), answer: 'half' } }]);
    await evidence.add([{ ...row, id: 'rubbish', body: 7 }]);
    await records.reload();
    expect(state()).toBe('not-done');
  });
});
