import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkState, itemById } from '../../../src/core/checks';
import { EVENT_KINDS, TEST_BOUNDS, TEST_IDS, type Context, type TestRecord } from '../../../src/core/context';
import { figuresFor, rampCovers } from '../../../src/core/figures';
import { makeTest, readTest, recordOf, RULES, storeTest, testNow } from '../../../src/core/prove';
import { ratio } from '../../../src/core/quantity';
import { inputsOf, sheetOf, stateAfter } from '../checks/support';
import { given, HOUR, is, NOON, test } from './support';

const DAY = 24 * HOUR;
const made = (
  id: 'counts' | 'backlash' | 'ramp' | 'look-over' | 'drift' | 'stopping-time',
  over: Partial<TestRecord> = {},
): TestRecord => ({
  ...makeTest(id, RULES[id], inputsOf(), `r-${id}`, { result: 'passed', readings: {}, choices: {} }),
  ...over,
});
const now = (record: TestRecord, parts: Parameters<typeof inputsOf>[0] = {}) =>
  testNow(
    inputsOf({ ...parts, context: { tests: [record], ...parts.context } }),
    record.test,
    RULES[record.test as keyof typeof RULES],
  );

describe('a test record on the disk', () => {
  const full: TestRecord = {
    ...made('counts'),
    readings: { turns: is('10', 'turns'), lead: is('8', 'tpi'), counts: is('-48000', 'count') },
    choices: { mark: 'line' },
    note: 'Cold shed',
  };
  const again = (x: unknown) => readTest(JSON.parse(JSON.stringify(x)), full.id, full.at);

  it('comes back as it went', () => {
    expect(again(storeTest(full))).toEqual(full);
    for (const id of TEST_IDS) expect(again(storeTest({ ...full, test: id }))?.test).toBe(id);
  });

  it('with any part missing, of another kind or beyond its bounds counts as not recorded', () => {
    const kept = storeTest(full);
    for (const part of ['test', 'rule', 'result', 'readings', 'choices', 'inputs', 'note']) {
      const { [part]: _, ...without } = kept;
      expect([part, again(without)]).toEqual([part, null]);
      for (const bad of [null, 7.5, [], { x: 1 }, { '': 'a' }, { '<b>': 'a' }])
        expect([part, bad, again({ ...kept, [part]: bad })]).toEqual([part, bad, null]);
    }
    expect(again({ ...kept, test: 'toString' })).toBeNull();
    expect(again({ ...kept, result: 'fine' })).toBeNull();
    expect(again({ ...kept, readings: { a: { n: '1', d: '0', unit: 'mm' } } })).toBeNull();
    expect(again({ ...kept, readings: { a: { n: '0', d: '1', unit: 'tpi' } } })).toBeNull();
    expect(again({ ...kept, readings: { a: { n: '1', d: '1', unit: 'furlong' } } })).toBeNull();
    expect(again({ ...kept, note: 'x'.repeat(TEST_BOUNDS.note + 1) })).toBeNull();
    expect(again({ ...kept, choices: { a: 'x'.repeat(TEST_BOUNDS.text + 1) } })).toBeNull();
    const many = (length: number) => Object.fromEntries(Array.from({ length }, (_, i) => [`k${i}`, 'v']));
    expect(again({ ...kept, choices: many(TEST_BOUNDS.choices) })).not.toBeNull();
    expect(again({ ...kept, choices: many(TEST_BOUNDS.choices + 1) })).toBeNull();
  });

  it('never throws, whatever is found there', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), (x, y) => {
        readTest(x, 'a', 1);
        readTest({ ...storeTest(full), readings: y, choices: x }, 'a', 1);
      }),
      { numRuns: 200 },
    );
  });
});

describe('what makes a record lapse', () => {
  it('nothing while nothing changes', () => {
    expect(now(made('counts')).code).toBe('passed');
    expect(testNow(inputsOf(), 'counts', RULES.counts)).toEqual({ code: 'not-done' });
  });

  it('each profile field it rests on, by itself, and no other', () => {
    const record = made('counts');
    expect(now(record, { machine: { encoderPulley: is('2', 'teeth') } })).toMatchObject({
      code: 'lapsed',
      lapse: { code: 'input-changed', path: 'machine.encoderPulley' },
    });
    expect(now(record, { machine: { microsteps: is('16', 'times') } }).code).toBe('passed');
    for (const path of RULES.ramp.reads) {
      const field = path.slice(8);
      const was = inputsOf().machine[field as 'microsteps'];
      const machine = { [field]: was ? null : is('2', 'count') };
      expect([path, now(made('ramp'), { machine }).code]).toEqual([path, 'lapsed']);
    }
  });

  it('the events it lists: wiring, firmware, a crash, a long rest', () => {
    const lapsing = EVENT_KINDS.filter(
      (kind) => now(made('counts'), { context: { events: [{ kind, at: NOON }] } }).code === 'lapsed',
    );
    expect([...lapsing].sort()).toEqual(['belt', 'crash', 'driver', 'firmware', 'long-rest', 'wiring']);
  });

  it('days and running hours, to the last moment; a clock set back leaves it not known', () => {
    const after = (ms: number, id: 'look-over' | 'backlash' = 'look-over', hours = 100) =>
      now(made(id), { context: { now: NOON + ms, hours } }).code;
    expect([after(180 * DAY - 1), after(180 * DAY)]).toEqual(['passed', 'lapsed']);
    expect([after(1, 'backlash', 149.9), after(1, 'backlash', 150)]).toEqual(['passed', 'lapsed']);
    expect(after(-1)).toBe('lapsed');
    expect(now(made('look-over', { rule: 0 })).code).toBe('lapsed');
  });

  it('what failed stays failed, whatever has changed since', () => {
    const failed = made('counts', { result: 'failed' });
    expect(now(failed, { machine: { encoderLines: null }, context: { now: NOON + 999 * DAY } }).code).toBe(
      'failed',
    );
  });
});

describe('the record of what was entered', () => {
  it('keeps its readings, choices and lead, and nothing that was not asked', () => {
    const readings = { rpm: is('160', 'rpm'), spread: is('0.01', 'mm'), other: is('1', 'mm') };
    const choices = { start: 'kept', stop: 'kept', reverse: 'not-used', instrument: 'indicator', x: 'y' };
    const record = recordOf(test('ramp'), given(readings, choices), 'a', 'n'.repeat(2000));
    expect(record).toMatchObject({ test: 'ramp', result: 'passed', at: NOON });
    expect(Object.keys(record?.readings ?? {}).sort()).toEqual(['lead', 'rpm', 'spread']);
    expect(record?.readings.lead).toEqual(is('1.5', 'mm'));
    expect(Object.keys(record?.choices ?? {}).sort()).toEqual(['instrument', 'reverse', 'start', 'stop']);
    expect(record?.note.length).toBe(TEST_BOUNDS.note);
    expect(recordOf(test('ramp'), given({}), 'a')).toBeNull();
    expect(recordOf(test('counts'), given({}, {}, { encoderLines: null }), 'a')).toBeNull();
    expect(record && readTest(storeTest(record), 'a', NOON)).toEqual(record);
  });
});

describe('the lead that a test is made at', () => {
  it('is the one kept with its first reading, whatever the job has by now', () => {
    const readings = { spindle: is('10', 'turns'), screw: is('10', 'turns') };
    const code = (more: object) => test('screw-turns').decide(given({ ...readings, ...more })).code;
    expect(code({})).toBe('turns-differ');
    expect(code({ lead: is('3', 'mm') })).toBe('turns-agree');
    const record = recordOf(test('screw-turns'), given({ ...readings, lead: is('3', 'mm') }), 'a');
    expect(record?.readings.lead).toEqual(is('3', 'mm'));
  });
});

describe('what relies on a test record', () => {
  const ramp = made('ramp', { readings: { lead: is('3', 'mm'), rpm: is('400', 'rpm') } });
  const covers = (tests: readonly TestRecord[], more: Partial<Context> = {}, lead = ratio(3)) =>
    rampCovers(inputsOf({ context: { tests, ...more } }), lead);

  it('supporting limits: a ramp that passed, at its lead and below, while it holds', () => {
    expect(covers([ramp])).toEqual(ratio(400));
    expect(covers([ramp], {}, ratio(3001, 1000))).toBeNull();
    expect(covers([ramp], { now: NOON + 180 * DAY })).toBeNull();
    for (const result of ['failed', 'undecided'] as const) expect(covers([{ ...ramp, result }])).toBeNull();
    expect(covers([ramp, { ...ramp, result: 'failed' }])).toBeNull();
    expect(covers([])).toBeNull();
  });

  const state = (id: Parameters<typeof itemById>[0], tests: readonly TestRecord[], context = {}) =>
    checkState(itemById(id), sheetOf({ context: { tests, ...context } })).state;

  it('a check: done by a test that passed, failed by one that failed, asked where there is none or it lapsed', () => {
    for (const [item, id] of [
      ['belts', 'look-over'],
      ['backlash', 'backlash'],
      ['stop-time', 'stopping-time'],
      ['ten-turns', 'counts'],
      ['drift', 'drift'],
    ] as const) {
      expect([item, state(item, [])]).toEqual([item, 'not-done']);
      expect([item, state(item, [made(id)])]).toEqual([item, 'done']);
      expect([item, state(item, [made(id, { result: 'failed' })])]).toEqual([item, 'failed']);
      expect([item, state(item, [made(id, { result: 'undecided' })])]).toEqual([item, 'not-done']);
      expect([item, state(item, [made(id)], { now: NOON - 1 })]).not.toEqual([item, 'done']);
    }
    expect(state('ramp-test', [ramp])).toBe('done');
    expect(state('ramp-test', [{ ...ramp, result: 'failed' }])).toBe('failed');
    expect(state('torque', [ramp])).toBe('done');
  });

  it('a daily check wants a test of that day', () => {
    expect(state('ten-turns', [made('counts')], { day: '2026-05-04', now: NOON + DAY })).toBe('not-done');
    expect(state('ten-turns', [made('counts')], { events: [{ kind: 'power', at: NOON }] })).toBe('not-done');
  });

  it('the newer of a test and an answer counts', () => {
    const failed = made('counts', { result: 'failed', at: NOON - 5 });
    const answered = stateAfter('ten-turns', {}, { context: { tests: [failed] } }, is('48000', 'count'));
    expect(answered.state).toBe('done');
    const later = made('counts', { result: 'failed', at: NOON });
    expect(stateAfter('ten-turns', {}, { context: { tests: [later] } }, is('48000', 'count')).state).toBe(
      'failed',
    );
    expect(figuresFor(inputsOf()).get('countsPerRev').value).toEqual(ratio(4800));
  });
});
