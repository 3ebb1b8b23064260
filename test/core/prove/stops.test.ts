import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkState, itemById, type CheckState } from '../../../src/core/checks';
import { EVENT_KINDS, STOP_TESTS, type Context, type StopTestId } from '../../../src/core/context';
import { figuresFor } from '../../../src/core/figures';
import { blankProfile, FIELDS, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import {
  appliesTo,
  ARRANGEMENT,
  cautionsOf,
  judgeArrangement,
  makeStopTest,
  stopNow,
  stopsNow,
  stopTestById,
  STOP_PROTOCOL,
  type StopNow,
  type StopTest,
} from '../../../src/core/prove/stops';
import {
  event,
  HOUR,
  inputsOf,
  is,
  NOON,
  record,
  STOPS_DONE,
  stopRecord,
  type Parts,
} from '../checks/support';

const GOOD = EXAMPLES.heron();
const judge = (over: Partial<MachineProfile>) => judgeArrangement({ ...GOOD, ...over });
const codes = (over: Partial<MachineProfile>, severity: string) =>
  judge(over)
    .filter((f) => f.severity === severity)
    .map((f) => f.code);
const test = (id: string): StopTest => {
  const found = stopTestById(id);
  if (!found) throw new Error(id);
  return found;
};

/**
 * What no emergency stop may be, as summaries of the standards have it: it stays in and its release starts nothing (ISO
 * 13850, 4.3), category 0 or 1 and never 2 (IEC 60204-1, 9.2), a broken wire stops (IEC 60204-1), returning power starts
 * nothing (IEC 60204-1, 7.5), it is effective at all times, whatever a program does (ISO 13850, 4.1).
 */
const INADEQUATE: readonly (readonly [string, Partial<MachineProfile>])[] = [
  ['by-software', { stopCuts: 'input' }],
  ['no-stop', { stopCuts: 'none' }],
  ['enabled-by-open', { stopCuts: 'enable', enableOpen: 'on', stopSpindle: 'contactor' }],
  ['held-by-current', { motorAtStop: 'held' }],
  ['follows-coasting', { motorAtStop: 'follows' }],
  ['follows-coasting', { motorAtStop: 'until-rest', spindleRests: 'coasts' }],
  ['release-restarts', { stopReset: 'release' }],
  ['springs-back', { stopDevice: 'springs-back' }],
  ['open-contacts', { stopContacts: 'no' }],
  ['starts-with-power', { powerReturn: 'live' }],
  ['spindle-goes-on', { stopCuts: 'power-drive', stopSpindle: 'no' }],
];

describe('a stop as it is described', () => {
  it('has nothing against it where power of both goes, the button stays in and a separate key starts', () => {
    expect(judge({}).map((f) => f.severity)).toEqual(judge({}).map(() => 'can'));
    expect(judge({}).length).toBe(8);
  });

  it.each(INADEQUATE)('%s: none, whatever else is right', (code, over) => {
    expect(codes(over, 'cannot')).toContain(code);
    expect(judge(over)[0]?.severity).toBe('cannot');
    expect(judge(over)[0]?.sources.length).toBeGreaterThan(0);
    const inputs = inputsOf({ machine: over });
    const tests = STOP_TESTS.map((id) => stopRecord(id, inputs));
    expect(stopsNow({ ...inputs, context: { ...inputs.context, tests } }).standing).toBe('over');
  });

  it('and no other entries beside such a one make it better', () => {
    const entry = fc.record(
      Object.fromEntries(
        ARRANGEMENT.map((f) => {
          const spec = FIELDS[f];
          return [f, fc.constantFrom(...(spec.kind === 'choice' ? spec.options : []), null)];
        }),
      ),
    );
    // Two of them need the entry that makes them one: what it is when the enable is open, how the spindle rests.
    fc.assert(
      fc.property(entry, fc.constantFrom(...INADEQUATE), (any, [code, over]) => {
        const found = judgeArrangement({ ...GOOD, ...(any as Partial<MachineProfile>), ...over });
        expect(found.filter((f) => f.severity === 'cannot').map((f) => f.code)).toContain(code);
      }),
    );
  });

  it('kept in gear is category 1 where the spindle is braked, and nothing is claimed while that isn’t known', () => {
    expect(codes({ motorAtStop: 'until-rest', spindleRests: 'brake' }, 'can')).toContain('category-1');
    const open = judge({ motorAtStop: 'until-rest', spindleRests: null });
    expect(open.find((f) => f.field === 'motorAtStop')).toBeUndefined();
    expect(open[0]).toMatchObject({ code: 'not-known', severity: 'unknown', field: 'spindleRests' });
  });

  it.each([
    ['not-direct-opening', { stopDevice: 'latching-other' }],
    ['enable-signal', { stopCuts: 'enable', enableOpen: 'off', stopSpindle: 'contactor' }],
    ['spindle-signal', { stopCuts: 'drive-sto', stopSpindle: 'run' }],
    ['power-cycle', { stopReset: 'power' }],
    ['not-watched', { stopMonitor: 'none' }],
    ['channel-missing', { stopMonitor: 'channels', stopContacts: 'nc-one' }],
  ] as const)('%s is a weak point', (code, over) => {
    expect(codes(over, 'weak')).toEqual([code]);
    expect(codes(over, 'cannot')).toEqual([]);
  });

  it('what isn’t entered is not known, each by its name', () => {
    const nothing = judgeArrangement(blankProfile('a', 'b'));
    expect(nothing.every((f) => f.severity === 'unknown')).toBe(true);
    // The enable is asked of a stop that takes the enable away.
    expect(nothing.map((f) => f.field)).toEqual(ARRANGEMENT.filter((f) => f !== 'enableOpen'));
    for (const field of ARRANGEMENT.filter((f) => f !== 'enableOpen' && f !== 'stopSpindle'))
      expect(
        judge({ stopSpindle: 'contactor', [field]: null }).filter((f) => f.severity === 'unknown'),
      ).toMatchObject([{ field }]);
    expect(codes({ stopCuts: 'enable', stopSpindle: 'contactor' }, 'unknown')).toEqual(['not-known']);
    expect(judge({ stopCuts: 'power-drive' })[0]).toMatchObject({ field: 'stopSpindle' });
  });

  it('with change gears there is no motor to ask about', () => {
    const gears = judgeArrangement({
      ...blankProfile('a', 'b'),
      driveKind: 'change-gears',
      stopCuts: 'enable',
    });
    expect(gears.map((f) => f.field)).not.toContain('motorAtStop');
    expect(gears.map((f) => f.field)).not.toContain('enableOpen');
  });
});

/** The protocol of common practice, by its numbers. */
describe('the protocol', () => {
  const numbers = (which: (t: StopTest) => boolean) => STOP_PROTOCOL.filter(which).map((t) => t.number);
  const cautioned = (...all: string[]) =>
    numbers((t) => all.some((c) => (t.cautions as readonly string[]).includes(c)));

  it('has twenty tests in order, of which 1 to 5 and 7 are due each day', () => {
    expect(STOP_PROTOCOL.map((t) => t.id)).toEqual(STOP_TESTS);
    expect(numbers(() => true)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
    expect(numbers((t) => t.daily)).toEqual([1, 2, 3, 4, 5, 7]);
  });

  it('cautions as it should: nut, hand, helper, extra-low voltage, competent people', () => {
    // Nut open but in 2 and 7; the carriage of 15 and 17 can't be tested otherwise.
    expect(cautioned('nut-closed')).toEqual([2, 7, 15, 17]);
    expect(cautioned('nut-open', 'nut-closed')).toEqual(numbers((t) => t.number <= 18));
    expect(cautioned('tool-clear')).toEqual(numbers((t) => t.number <= 18));
    expect(cautioned('low-rpm')).toEqual(numbers((t) => t.number <= 18));
    expect(cautioned('hand-on-main')).toEqual(numbers((t) => t.number <= 18));
    // The spindle is turned by hand in 1 and 4.
    expect(cautioned('isolate-spindle')).toEqual([1, 4]);
    expect(cautioned('helper')).toEqual([7, 8]);
    expect(test('stop-power-returns').cautions.slice(0, 2)).toEqual(['helper', 'hands-clear']);
    expect(cautioned('power-off-wires')).toEqual([9, 10, 11, 18]);
    expect(cautioned('extra-low')).toEqual([10, 11]);
    expect(cautioned('competent')).toEqual([9, 10, 11, 18, 19]);
    expect(test('stop-wire-short').cautions[0]).toBe('extra-low');
    expect(cautioned('never-unplug')).toEqual([12, 13]);
  });

  it('asks no lathe to open a nut that stays closed', () => {
    for (const t of STOP_PROTOCOL) {
      const said = cautionsOf(t, { ...GOOD, halfNut: 'always-closed' });
      expect(said).not.toContain('nut-open');
      expect(said.includes('nut-stays')).toBe(t.number <= 18);
    }
  });

  it('leaves out what doesn’t apply, and says why; where it isn’t known, that', () => {
    const why = (over: Partial<MachineProfile>) =>
      Object.fromEntries(
        STOP_PROTOCOL.flatMap((t) => {
          const a = appliesTo(t, { ...GOOD, chuckMount: 'locked', ...over });
          return a.code === 'yes' ? [] : [[t.number, a.code === 'not-here' ? a.why : a.field]];
        }),
      );
    expect(why({})).toEqual({});
    expect(why({ stopMonitor: 'none' })).toEqual({ 11: 'one-channel', 18: 'no-feedback' });
    expect(why({ stopMonitor: 'feedback' })).toEqual({ 11: 'one-channel' });
    expect(why({ stopMonitor: 'channels' })).toEqual({ 18: 'no-feedback' });
    expect(why({ chuckMount: 'screw-on' })).toEqual({ 16: 'screw-on' });
    expect(why({ chuckMount: null, stopMonitor: null })).toEqual({
      11: 'stopMonitor',
      16: 'chuckMount',
      18: 'stopMonitor',
    });
    expect(why({ driveKind: 'change-gears' })).toEqual({
      1: 'change-gears',
      12: 'change-gears',
      13: 'change-gears',
      14: 'change-gears',
      15: 'change-gears',
      16: 'change-gears',
    });
  });
});

/** A lathe on which every test applies. */
const WHOLE: Partial<MachineProfile> = { chuckMount: 'locked' };
const all = (parts: Parts, more: Partial<Context> = {}) => {
  const before = inputsOf({ machine: WHOLE, ...parts });
  const tests = STOP_TESTS.map((id) => stopRecord(id, before));
  return (after: Parts = {}): Record<number, StopNow> => {
    const inputs = inputsOf({
      ...parts,
      ...after,
      machine: { ...WHOLE, ...after.machine },
      context: { ...parts.context, ...more, tests, ...after.context },
    });
    return Object.fromEntries(STOP_PROTOCOL.map((t) => [t.number, stopNow(inputs, t)]));
  };
};
const lapses = (now: Record<number, StopNow>): Record<number, string> =>
  Object.fromEntries(
    Object.entries(now).flatMap(([n, s]) => (s.code === 'lapsed' ? [[n, s.lapse.code]] : [])),
  );
const each = (code: string, which = STOP_PROTOCOL) => Object.fromEntries(which.map((t) => [t.number, code]));
const DAILY = STOP_PROTOCOL.filter((t) => t.daily);

describe('records of the stop', () => {
  const done = all({});

  it('hold while nothing changes', () => {
    expect(lapses(done())).toEqual({});
    expect(Object.values(done()).every((s) => s.code === 'passed')).toBe(true);
  });

  it('1 to 5 and 7 last for the day', () => {
    expect(lapses(done({ context: { now: NOON + 24 * HOUR, day: '2026-05-04' } }))).toEqual(
      each('new-day', DAILY),
    );
  });

  it.each(EVENT_KINDS)('%s: all of them go with wiring, firmware or drive, and with nothing else', (kind) => {
    const electric = kind === 'wiring' || kind === 'firmware' || kind === 'driver';
    expect(lapses(done({ context: { events: [event(kind)], now: NOON + 2 } }))).toEqual(
      electric ? each('event') : {},
    );
  });

  it('none is older than half a year', () => {
    const later = (days: number) => done({ context: { now: NOON + days * 24 * HOUR } });
    expect(lapses(later(179))).toEqual({});
    expect(lapses(later(180))).toEqual(each('days'));
  });

  it('or 50 running hours, where those are logged and only there', () => {
    expect(lapses(done({ context: { hours: 149 } }))).toEqual({});
    expect(lapses(done({ context: { hours: 150 } }))).toEqual(each('hours'));
    const unlogged = all({ context: { hours: null } });
    expect(lapses(unlogged({ context: { hours: null, now: NOON + HOUR } }))).toEqual({});
    expect(lapses(unlogged({ context: { hours: null, day: '2026-05-04', now: NOON + 24 * HOUR } }))).toEqual(
      each('new-day', DAILY),
    );
  });

  it.each([
    ['stopDevice', 'latching-other'],
    ['stopContacts', 'nc-one'],
    ['stopCuts', 'power-drive'],
    ['enableOpen', 'off'],
    ['motorAtStop', 'spring-brake'],
    ['stopSpindle', 'contactor'],
    ['spindleRests', 'brake'],
    ['stopReset', 'power'],
    ['powerReturn', 'live'],
    ['driveKind', 'change-gears'],
  ] as const)('all go when %s is changed, and hold again when it is changed back', (field, to) => {
    const changed = done({ machine: { [field]: to } });
    const applying = STOP_PROTOCOL.filter((t) => changed[t.number]?.code !== 'not-here');
    expect(applying.length).toBeGreaterThan(13);
    expect(lapses(changed)).toEqual(each('input-changed', applying));
    expect(lapses(done())).toEqual({});
  });

  it('a clock set back leaves none of them known', () => {
    expect(lapses(done({ context: { now: NOON - 1 } }))).toEqual(each('clock-back'));
  });

  it('what failed stays so through every change, until it is recorded anew', () => {
    const bad = stopRecord('stop-release', inputsOf({}), 'not-as-said');
    const now = (more: Partial<Context>) =>
      stopNow(
        inputsOf({ machine: { stopReset: 'power' }, context: { tests: [bad], ...more } }),
        test('stop-release'),
      );
    expect(now({}).code).toBe('failed');
    expect(now({ day: '2026-07-01', now: NOON + 60 * 24 * HOUR, events: [event('wiring')] }).code).toBe(
      'failed',
    );
    const anew = stopRecord('stop-release', inputsOf({ context: { now: NOON + 1 } }));
    expect(
      stopNow(inputsOf({ context: { tests: [bad, anew], now: NOON + 2 } }), test('stop-release')).code,
    ).toBe('passed');
  });
});

describe('repeated among the daily checks', () => {
  const today = (id: 'stop-latches' | 'stop-reach', answer: 'done' | 'not-ok' = 'done') =>
    record(itemById(id), figuresFor(inputsOf()), answer);
  const now = (id: StopTestId, context: Partial<Context>) => stopNow(inputsOf({ context }), test(id)).code;

  it('a record of before holds for the day, but not without one', () => {
    expect(now('stop-stays-in', {})).toBe('lapsed');
    expect(now('stop-stays-in', { records: [today('stop-latches')] })).toBe('repeated');
    expect(now('stop-stays-in', { records: [today('stop-latches')], tests: [] })).toBe('not-done');
    expect(now('stop-release', { records: [today('stop-latches')] })).toBe('lapsed');
    // An answer that can't be read (context/stored.ts) vouches for nothing.
    expect(now('stop-stays-in', { records: [{ ...today('stop-latches'), rule: 0 }] })).toBe('lapsed');
  });

  it('it saves no record that something else made lapse', () => {
    const records = [today('stop-latches')];
    const later = { records, now: NOON + 2 };
    expect(now('stop-stays-in', { ...later, events: [event('wiring')] })).toBe('lapsed');
    expect(now('stop-stays-in', { ...later, events: [event('power')] })).toBe('lapsed');
    expect(now('stop-stays-in', { ...later, events: [event('wiring', NOON - HOUR)] })).toBe('lapsed');
    expect(now('stop-stays-in', { ...later, events: [event('belt')] })).toBe('repeated');
    expect(now('stop-stays-in', { ...later, day: '2026-05-04' })).toBe('lapsed');
  });

  it('not OK there is not OK here, and what failed here is not mended there', () => {
    expect(now('stop-stays-in', { records: [today('stop-latches', 'not-ok')] })).toBe('not-ok');
    const bad = stopRecord('stop-stays-in', inputsOf({ context: { now: NOON - 1 } }), 'not-as-said');
    expect(now('stop-stays-in', { records: [today('stop-latches')], tests: [bad] })).toBe('failed');
  });
});

describe('what is recorded', () => {
  const moving = test('stop-press-moving');
  const inputs = inputsOf({ job: { room: is('4', 'mm') } });

  it('the carriage’s distance is as said only where it is measured, and within the room of the job', () => {
    const refused = (...args: Parameters<typeof makeStopTest>) => {
      const made = makeStopTest(...args);
      return made.ok ? made.record.result : made.refusal;
    };
    expect(refused(moving, inputs, 'a', 'as-said', null)).toBe('distance-needed');
    expect(refused(moving, inputsOf({ job: { room: null } }), 'a', 'as-said', is('2', 'mm'))).toBe(
      'room-not-known',
    );
    expect(refused(moving, inputs, 'a', 'as-said', is('4', 'mm'))).toBe('passed');
    expect(refused(moving, inputs, 'a', 'as-said', is('0.15', 'in'))).toBe('passed');
    expect(refused(moving, inputs, 'a', 'as-said', is('0.16', 'in'))).toBe('failed');
    expect(refused(moving, inputs, 'a', 'not-as-said', null)).toBe('failed');
    expect(refused(moving, inputs, 'a', 'none-here', null)).toBe('not-lacking');
  });

  it('a smaller room for another job is too small for the distance recorded before', () => {
    const tests = [stopRecord('stop-press-moving', inputs, 'as-said', is('3', 'mm'))];
    const now = (room: string) =>
      stopNow(inputsOf({ job: { room: is(room, 'mm') }, context: { tests } }), moving);
    expect(now('3').code).toBe('passed');
    expect(now('2.9').code).toBe('further');
  });

  it('nothing of the kind is only recorded where a lathe may have none', () => {
    const lacking = STOP_PROTOCOL.filter((t) => makeStopTest(t, inputs, 'a', 'none-here', null).ok);
    // A stop circuit on mains isn't shorted; not every drive has an alarm contact, nor every carriage a limit.
    expect(lacking.map((t) => t.number)).toEqual([10, 13, 17]);
    const tests = [stopRecord('stop-drive-alarm', inputs, 'none-here')];
    expect(stopNow(inputsOf({ context: { tests } }), test('stop-drive-alarm')).code).toBe('lacking');
    expect(
      stopNow(
        inputsOf({ context: { tests, now: NOON + 2, events: [event('driver')] } }),
        test('stop-drive-alarm'),
      ).code,
    ).toBe('lapsed');
  });
});

describe('the pre-start check of the stop', () => {
  const item = itemById('stop-tests');
  const look = (parts: Parts = {}): CheckState => checkState(item, figuresFor(inputsOf(parts)));
  const fresh = STOP_TESTS.map((id) => stopRecord(id, inputsOf()));
  const without = (id: string) => fresh.filter((r) => r.test !== id);
  const said = (s: CheckState) => [s.state, s.standing, s.finding?.why];

  it('holds once everything that applies is recorded', () => {
    expect(said(look({ context: { tests: fresh } }))).toEqual(['done', 'within', 'stop-tests-recorded']);
    expect(look().answerable).toBe(false);
  });

  it('is not known with one of them missing or stale, or with nothing described', () => {
    for (const id of STOP_TESTS) {
      const applies = appliesTo(test(id), GOOD).code === 'yes';
      expect(said(look({ context: { tests: without(id) } })), id).toEqual(
        applies ? ['unknown', 'unknown', 'stop-tests-due'] : ['done', 'within', 'stop-tests-recorded'],
      );
    }
    expect(said(look({ context: { tests: STOPS_DONE } }))[2]).toBe('stop-tests-due');
    expect(said(look({ context: { tests: [] } }))).toEqual(['unknown', 'unknown', 'stop-tests-due']);
    expect(said(look({ machine: { stopReset: null }, context: { tests: fresh } }))[2]).toBe(
      'stop-not-described',
    );
  });

  it('is over with one that failed, whatever else is missing', () => {
    const bad = stopRecord('stop-wire-open', inputsOf(), 'not-as-said');
    expect(said(look({ context: { tests: [bad] } }))).toEqual(['failed', 'over', 'stop-tests-failed']);
    expect(said(look({ machine: { stopReset: null }, context: { tests: [bad] } }))[2]).toBe(
      'stop-tests-failed',
    );
  });

  it('is over with an arrangement that can’t stop, however its tests were recorded', () => {
    for (const [, over] of INADEQUATE) {
      const tests = STOP_TESTS.map((id) => stopRecord(id, inputsOf({ machine: over })));
      expect(said(look({ machine: over, context: { tests } }))).toEqual([
        'failed',
        'over',
        'stop-inadequate',
      ]);
    }
  });

  it('is close at best with weak points, or with nothing of the kind to test', () => {
    const machine = { stopMonitor: 'none' } as const;
    const tests = STOP_TESTS.map((id) => stopRecord(id, inputsOf({ machine })));
    expect(said(look({ machine, context: { tests } }))).toEqual(['done', 'near', 'stop-tests-close']);
    const lacking = [...without('stop-drive-alarm'), stopRecord('stop-drive-alarm', inputsOf(), 'none-here')];
    expect(said(look({ context: { tests: lacking } }))).toEqual(['done', 'near', 'stop-tests-close']);
  });

  it('a test speaks for the daily check that repeats it, for the day', () => {
    const latches = (tests: typeof fresh, more: Partial<Context> = {}) =>
      checkState(itemById('stop-latches'), figuresFor(inputsOf({ context: { tests, ...more } })));
    expect(said(latches(fresh))).toEqual(['done', 'within', 'stop-seen']);
    expect(latches(fresh, { day: '2026-05-04', now: NOON + 24 * HOUR }).state).toBe('not-done');
    const bad = stopRecord('stop-stays-in', inputsOf(), 'not-as-said');
    expect(said(latches([bad]))).toEqual(['failed', 'over', 'stop-not-seen']);
  });
});
