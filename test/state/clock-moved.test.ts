import { describe, expect, it } from 'vitest';
import { blankProfile } from '../../src/core/machine';
import { blankJob } from '../../src/core/job';
import { lapseOf, newestOf, type CheckRecord, type LapseRule } from '../../src/core/context';
import { Evidence } from '../../src/storage/evidence';
import { memoryBacking } from '../../src/storage/memory';
import { Records } from '../../src/state/records';

const NOON = Date.UTC(2026, 4, 3, 12);
const DAY = 86_400_000;
const RULE: LapseRule = { version: 1, reads: [], events: ['belt'] };

const check = (id: string, at: number): CheckRecord => ({
  ...{ id, at, item: 'belts', answer: 'done', day: '', hours: null, inputs: {} },
  ...{ rule: 1, reading: null, cut: null },
});

/** A phone whose person records things, each at what the clock then says. */
const phone = async () => {
  const records = new Records(new Evidence(memoryBacking()), () => undefined);
  await records.open('m');
  const lapse = (now: number) => {
    const record = newestOf(records.checks, 'belts');
    const context = { now, day: '', hours: null, records: records.checks, events: records.events };
    const inputs = { machine: blankProfile('', ''), job: blankJob() };
    return (
      record &&
      lapseOf(RULE, record, { ...inputs, context: { ...context, cuttingSince: null, cuttingDay: null } })
    );
  };
  return { records, lapse };
};

describe('a phone whose clock was wrong for a while', () => {
  it('set back: what happened then ends what was recorded before', async () => {
    const { records, lapse } = await phone();
    await records.addCheck(check('a', NOON));
    expect(lapse(NOON)).toBeNull();
    await records.addEvent('belt', NOON - 3 * DAY);
    expect(lapse(NOON - 3 * DAY)?.code).toBe('clock-back');
    expect(lapse(NOON + 1)?.code).toBe('event');
    await records.addCheck(check('b', NOON + 2));
    expect(lapse(NOON + 2)).toBeNull();
  });

  it('set forward: what was recorded then is not known, and what is recorded anew holds', async () => {
    const { records, lapse } = await phone();
    await records.addEvent('belt', NOON + 300 * DAY);
    await records.addCheck(check('a', NOON + 300 * DAY));
    expect(lapse(NOON + 300 * DAY)).toBeNull();
    expect(lapse(NOON)?.code).toBe('clock-back');
    await records.addCheck(check('b', NOON));
    expect(lapse(NOON)).toBeNull();
    expect(records.checks.map((c) => c.id)).toEqual(['a', 'b']);
  });

  it('what came from another phone stands among them by the clock', async () => {
    const backing = memoryBacking();
    const evidence = new Evidence(backing);
    const records = new Records(evidence, () => undefined);
    await records.open('m');
    await records.addHours(10, NOON);
    await records.addHours(11, NOON - DAY);
    await backing.run('readwrite', ['evidence'], (w) => {
      const row = { schema: 1, kind: 'hours', machine: 'm', body: { hours: 5 } };
      w.put('evidence', { ...row, id: 'theirs', at: NOON - 2 * DAY, device: 'other', counter: 900 });
      w.put('evidence', { ...row, id: 'before numbers', at: NOON - 3 * DAY, device: '', body: { hours: 4 } });
      return Promise.resolve();
    });
    await records.reload();
    expect(records.hours.map((h) => h.hours)).toEqual([4, 5, 10, 11]);
    expect(records.newestHours).toBe(11);
  });
});
