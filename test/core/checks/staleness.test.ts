import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkState, ITEMS, itemById, type Item, type ItemId } from '../../../src/core/checks';
import type { InputPath } from '../../../src/core/context';
import { figuresFor } from '../../../src/core/figures';
import { isRatio, mul, stated, type Ratio, type Stated } from '../../../src/core/quantity';
import { event, exactly, HOUR, inputsOf, is, NOON, record, sheetOf, stateAfter } from './support';

const LATER = { now: NOON + HOUR / 2 };
const lapse = (id: ItemId, after: Parameters<typeof stateAfter>[2], before = {}) => {
  const s = stateAfter(id, before, after);
  return [s.state, s.lapse?.code ?? null] as const;
};

describe('each thing that makes a recorded answer lapse', () => {
  it('holds while nothing changes', () => {
    expect(lapse('direction', { context: LATER })).toEqual(['done', null]);
    expect(lapse('chuck-key', { context: LATER })).toEqual(['done', null]);
    expect(lapse('gap', { context: LATER })).toEqual(['done', null]);
  });

  it('a change of the machine', () => {
    const machine = { microsteps: is('16', 'times') };
    expect(lapse('machine-identity', { machine })).toEqual(['not-done', 'input-changed']);
    expect(lapse('nut-rule', { machine })).toEqual(['not-done', 'input-changed']);
    expect(lapse('overhang', { machine })).toEqual(['done', null]);
  });

  it('a change of thread', () => {
    const job = { thread: { kind: 'catalogue', id: 'iso-coarse:M12' } } as const;
    expect(lapse('direction', { job })).toEqual(['not-done', 'input-changed']);
    expect(lapse('blank', { job })).toEqual(['not-done', 'input-changed']);
    expect(lapse('machine-identity', { job })).toEqual(['done', null]);
  });

  it('a change of speed', () => {
    const job = { rpm: exactly('270') };
    expect(lapse('speed-set', { job })).toEqual(['not-done', 'input-changed']);
    expect(lapse('chuck-secured', { job })).toEqual(['not-done', 'input-changed']);
    expect(lapse('direction', { job })).toEqual(['done', null]);
  });

  it('a change of work', () => {
    const context = { events: [event('work-moved')] };
    expect(lapse('overhang', { context: { ...context, now: NOON + 2 } })).toEqual(['not-done', 'event']);
    expect(lapse('belts', { context: { ...context, now: NOON + 2 } })).toEqual(['done', null]);
  });

  it('an event in the same millisecond counts as after the record', () => {
    expect(lapse('belts', { context: { events: [event('belt', NOON)] } })).toEqual(['not-done', 'event']);
    expect(lapse('belts', { context: { events: [event('belt', NOON - 1)] } })).toEqual(['done', null]);
  });

  it('a new day', () => {
    const context = { now: NOON + 12 * HOUR, day: '2026-05-04' };
    expect(lapse('stop-at-rest', { context })).toEqual(['not-done', 'new-day']);
    expect(lapse('overhang', { context })).toEqual(['done', null]);
  });

  it('running hours: due at 50, not at 49 (52 after 50 is stale: worked example K02, own calculation)', () => {
    const at = (hours: number | null) =>
      lapse('belts', { context: { now: NOON + 48 * HOUR, day: '2026-05-05', hours } });
    expect(at(149)).toEqual(['done', null]);
    expect(at(150)).toEqual(['not-done', 'hours']);
    expect(at(152)).toEqual(['not-done', 'hours']);
    expect(at(null)).toEqual(['not-done', 'hours']);
  });

  it('days since', () => {
    const after = (days: number) => ({ context: { now: NOON + days * 24 * HOUR, day: '2026-11-01' } });
    expect(lapse('end-float', after(179))).toEqual(['done', null]);
    expect(lapse('end-float', after(180))).toEqual(['not-done', 'days']);
  });

  it('a clock or an hours log that went back is not known, neither done nor merely undone', () => {
    expect(lapse('direction', { context: { now: NOON - 1 } })).toEqual(['unknown', 'clock-back']);
    expect(lapse('belts', { context: { hours: 99 } })).toEqual(['unknown', 'hours-back']);
  });

  it('a corrected rule', () => {
    const item: Item = itemById('overhang');
    const made = { ...record(item, sheetOf()), rule: 0 };
    const s = checkState(item, sheetOf({ context: { records: [made] } }));
    expect([s.state, s.lapse?.code]).toEqual(['not-done', 'rule-changed']);
  });

  it('the hour after which a walk past the machine is due again', () => {
    expect(lapse('guard', { context: { now: NOON + HOUR } })).toEqual(['not-done', 'days']);
  });
});

describe('while a cut runs', () => {
  const running = {
    now: NOON + 13 * HOUR,
    day: '2026-05-04',
    cuttingSince: NOON + 1000,
    cuttingDay: '2026-05-03',
  };
  const ended = { now: NOON + 1200, cuttingSince: null, events: [event('cut-ended', NOON + 1100)] };

  it('midnight takes nothing back', () => {
    expect(lapse('stop-at-rest', { context: running })).toEqual(['done', null]);
    expect(lapse('chuck-key', { context: running })).toEqual(['done', null]);
    expect(lapse('chuck-key', { context: { ...running, cuttingSince: null } })[0]).toBe('not-done');
  });

  it('a record of an earlier day is not brought back by beginning a cut', () => {
    const today = {
      now: NOON + 25 * HOUR,
      day: '2026-05-04',
      cuttingSince: NOON + 24.5 * HOUR,
      cuttingDay: '2026-05-04',
    };
    expect(lapse('stop-at-rest', { context: today })).toEqual(['not-done', 'new-day']);
  });

  it('what is recorded during the cut holds past midnight too', () => {
    const before = { context: { cuttingSince: NOON - 10, cuttingDay: '2026-05-03' } };
    const after = { ...running, cuttingSince: NOON - 10 };
    expect(lapse('stop-at-rest', { context: after }, before)).toEqual(['done', null]);
  });

  it('a start check lapses with the cut it was made for', () => {
    expect(lapse('chuck-key', { context: ended })).toEqual(['not-done', 'event']);
    expect(lapse('overhang', { context: ended })).toEqual(['done', null]);
  });

  it('a change still counts', () => {
    expect(lapse('speed-set', { context: running, job: { rpm: exactly('80') } })).toEqual([
      'not-done',
      'input-changed',
    ]);
    const context = { ...running, events: [event('stopped-in-cut', NOON + 2000)] };
    expect(lapse('chuck-key', { context })).toEqual(['not-done', 'event']);
  });

  it('what was recorded in one cut does not count in the next', () => {
    const first = { context: { cuttingSince: NOON - 10 } };
    expect(lapse('scratch-pitch', { context: { cuttingSince: NOON - 10 } }, first)).toEqual(['done', null]);
    expect(lapse('scratch-pitch', { context: { cuttingSince: NOON + 5, now: NOON + 6 } }, first)).toEqual([
      'not-done',
      'other-cut',
    ]);
  });
});

describe('what a changed lead sends back (worked example K03, own calculation)', () => {
  it('half-nut rule, highest speed and stopping distance; not the encoder belt', () => {
    const job = { thread: { kind: 'catalogue', id: 'iso-coarse:M30' } } as const;
    expect(stateAfter('nut-rule', {}, { job }).state).toBe('not-done');
    expect(stateAfter('gap', {}, { job }).state).toBe('not-done');
    expect(stateAfter('belts', {}, { job }).state).toBe('done');
    // The highest speed is computed, so it flips by itself: 3.5 mm at 160 rpm over 0.75 s needs 7 mm, not 4.
    const room = itemById('stopping-room');
    expect(checkState(room, sheetOf()).state).toBe('done');
    expect(checkState(room, sheetOf({ job })).state).toBe('failed');
  });
});

const other = (value: unknown, times: bigint): unknown => {
  if (value === null) return stated(exactly('2'), 'count');
  if (isRatio(value)) return mul(value, times);
  if (typeof value === 'number') return value + Number(times);
  if (typeof value === 'string') return `${value} ${times}`;
  if (Array.isArray(value)) return value.slice(1);
  if ((value as { value?: Ratio }).value)
    return stated(mul((value as Stated).value, times), (value as Stated).unit);
  return { kind: 'catalogue', id: `iso-coarse:other-${times}` };
};

describe('any one of the declared inputs, changed in any way, takes a person’s answer back', () => {
  const cases = (ITEMS as readonly Item[])
    .filter((i) => i.kind !== 'computed')
    .flatMap((item) => item.rule.reads.map((path): [Item, InputPath] => [item, path]));

  it('covers every item a person answers but those that rest on no input at all', () => {
    const bare = (ITEMS as readonly Item[]).filter((i) => i.kind !== 'computed' && i.rule.reads.length === 0);
    expect(bare.map((i) => i.id)).toEqual([
      'chips',
      'recovery',
      'chuck-key',
      'guard',
      'clothing',
      'isolated',
    ]);
    expect(bare.every((i) => i.rule.daily ?? i.rule.events)).toBeTruthy();
  });

  it('never leaves it done, and names the input', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.bigInt(2n, 9n),
        fc.boolean(),
        ([item, path], times, forget) => {
          const inputs = inputsOf();
          const made = record(item, figuresFor(inputs));
          const [room, name = ''] = path.split('.') as ['machine' | 'job', string];
          const was = (inputs[room] as unknown as Record<string, unknown>)[name];
          const now = forget && was !== null && room === 'machine' ? null : other(was, times);
          const context = { ...inputs.context, records: [made] };
          expect(checkState(item, figuresFor({ ...inputs, context })).state).toBe('done');
          const changed = { ...inputs, context, [room]: { ...inputs[room], [name]: now } };
          const s = checkState(item, figuresFor(changed));
          expect(s.state).not.toBe('done');
          expect(s.lapse).toEqual({ code: 'input-changed', path });
        },
      ),
      { numRuns: 400 },
    );
  });
});
