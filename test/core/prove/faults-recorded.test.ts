import { describe, expect, it } from 'vitest';
import { testInputs, type TestId, type TestRecord } from '../../../src/core/context';
import { expectedOf, recordedFor, standard } from '../../../src/core/prove/faults';
import { RULES } from '../../../src/core/prove';
import { toNumber, type Stated } from '../../../src/core/quantity';
import { event, inputsOf, is, NOON, type Parts } from '../checks/support';

const LEAD = is('1.5', 'mm');
const made = (
  test: keyof typeof RULES & TestId,
  readings: Record<string, Stated>,
  choices: Record<string, string> = {},
  more: Partial<TestRecord> = {},
): TestRecord => ({
  ...{ id: `r-${test}`, at: NOON, test, rule: RULES[test].version, result: 'failed', readings, choices },
  ...{ inputs: testInputs(inputsOf(), RULES[test]), note: '' },
  ...more,
});
const from = (tests: readonly TestRecord[], parts: Parts = {}) => {
  const inputs = inputsOf({ ...parts, context: { tests, ...parts.context } });
  return recordedFor(inputs, expectedOf(inputs.machine, LEAD.value));
};
const TRAVEL = { turns: is('60', 'turns'), travel: is('22.5', 'mm'), lead: LEAD };

describe('test records as the fault finder’s readings', () => {
  it('are what was measured, over what was turned or commanded', () => {
    const all = from([
      made('counts', { turns: is('10', 'turns'), counts: is('12000', 'count') }, { mark: 'indicator' }),
      made('screw-turns', { spindle: is('20', 'turns'), screw: is('10', 'turns'), lead: LEAD }),
      made('screw-travel', { turns: is('10', 'turns'), travel: is('30', 'mm') }, { instrument: 'readout' }),
      made('travel', TRAVEL, { instrument: 'caliper' }),
    ]).map(({ slot, reading, lead }) => [slot, toNumber(reading.got), toNumber(reading.over), lead?.n]);
    expect(all).toEqual([
      ['counts', 12000, 10, undefined],
      ['screw', 10, 20, 3n],
      ['carriage', 30, 10, undefined],
      // 60 turns at 1.5 mm were commanded.
      ['travel', 22.5, 90, 3n],
    ]);
  });

  it('bring the uncertainty of the record along: U (k = 2) is twice the finder’s own', () => {
    // Readout: step 5 µm, ±10 µm, repeats within ±3 µm: U = 13 µm, as the test itself shows it (JCGM 100:2008, 4.3.7, 5.1.2).
    const [one] = from([
      made('travel', { ...TRAVEL, repeats: is('0.003', 'mm') }, { instrument: 'readout' }),
    ]);
    const u = standard(toNumber(one?.reading.half ?? LEAD.value));
    expect(2 * u).toBeGreaterThanOrEqual(0.0127);
    expect(2 * u).toBeLessThan(0.0129);
  });

  it('counts by a line’s mark may be off by 1/600 of a turn, up to whole counts', () => {
    const [one] = from([made('counts', { turns: is('10', 'turns'), counts: is('48000', 'count') })]);
    expect(toNumber(one?.reading.half ?? LEAD.value)).toBe(8); // 4800 / 600
  });

  it('the newest of a test counts alone, and not once something it rests on has changed', () => {
    const old = made('travel', { ...TRAVEL, travel: is('90', 'mm') }, { instrument: 'caliper' });
    const late = made('travel', TRAVEL, { instrument: 'caliper' }, { at: NOON + 1 });
    const context = { now: NOON + 2 };
    expect(from([old, late], { context }).map((r) => toNumber(r.reading.got))).toEqual([22.5]);
    expect(from([late], { context, machine: { microsteps: is('20', 'count') } })).toEqual([]);
    expect(from([late], { context: { now: NOON + 3, events: [event('belt', NOON + 2)] } })).toEqual([]);
  });

  it('none where a figure is missing, runs backwards, or the instrument reads no length', () => {
    expect(
      from([made('travel', { ...TRAVEL, travel: is('-22.5', 'mm') }, { instrument: 'caliper' })]),
    ).toEqual([]);
    expect(
      from([made('travel', { turns: is('60', 'turns'), lead: LEAD }, { instrument: 'caliper' })]),
    ).toEqual([]);
    expect(from([made('travel', TRAVEL)])).toEqual([]);
    expect(from([made('counts', { counts: is('12000', 'count') })])).toEqual([]);
  });
});
