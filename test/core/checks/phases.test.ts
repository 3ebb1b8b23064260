import { describe, expect, it } from 'vitest';
import {
  checkState,
  ITEMS,
  itemById,
  makeRecord,
  phaseState,
  type Item,
  type ItemId,
} from '../../../src/core/checks';
import type { CheckRecord } from '../../../src/core/context';
import { figuresFor } from '../../../src/core/figures';
import { event, exactly, inputsOf, is, NOON, record, sheetOf, type Parts } from './support';

/** Answers whatever is asked next, one at a time, a second apart, until nothing is left to answer. */
const walk = (parts: Parts = {}) => {
  const records: CheckRecord[] = [];
  for (let i = 0; i < 100; i++) {
    const inputs = inputsOf({ ...parts, context: { ...parts.context, records, now: NOON + i * 1000 } });
    const sheet = figuresFor(inputs);
    const p = phaseState('before', sheet);
    if (!p.nextToAnswer) return { records, p, last: NOON + i * 1000 };
    records.push(record(p.nextToAnswer.item, sheet));
  }
  throw new Error('never ends');
};

describe('walking through the checks', () => {
  it('asks after change, day, job and start, each once, and says when all were recorded', () => {
    const { records, p, last } = walk();
    const tiers = records.map((r) => itemById(r.item as ItemId).tier);
    expect([...new Set(tiers)]).toEqual(['change', 'day', 'job', 'start']);
    expect(tiers).toEqual([...tiers].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)));
    expect(new Set(records.map((r) => r.item)).size).toBe(records.length);
    expect(p.left).toBe(0);
    expect(p.next).toBeNull();
    expect(p.allRecordedAt).toBe(last - 1000);
  });
  const ORDER: readonly string[] = ['change', 'day', 'job', 'start'];

  it('ends with exactly six at each start, from headstock to tailstock', () => {
    const { records } = walk();
    expect(records.slice(-6).map((r) => r.item)).toEqual([
      'chuck-key',
      'work-tight',
      'guard',
      'clothing',
      'handwheel-nut',
      'speed-set',
    ]);
    expect((ITEMS as readonly Item[]).filter((i) => i.tier === 'start')).toHaveLength(6);
  });

  it('one record settles one check and no other: nothing ticks them all', () => {
    const before = phaseState('before', sheetOf());
    for (const s of before.items.filter((x) => x.answerable && x.item.id !== 'ramp-test')) {
      const after = phaseState('before', sheetOf({ context: { records: [record(s.item, sheetOf())] } }));
      expect(after.left, s.item.id).toBe(before.left - 1);
    }
  });

  it('a ramp test at this lead and speed settles itself and the torque margin, two in all', () => {
    const made = record(itemById('ramp-test'), sheetOf());
    const after = phaseState('before', sheetOf({ context: { records: [made] } }));
    expect(after.left).toBe(phaseState('before', sheetOf()).left - 2);
    expect(after.items.find((s) => s.item.id === 'torque')?.finding?.why).toBe('ramp-covers');
  });

  it('asks for inside, left-hand and multi-start threads only what belongs to them', () => {
    const ids = (job: Parts['job']) =>
      phaseState('before', sheetOf(job ? { job } : {})).items.map((s) => s.item.id);
    const own = ['bar-reach', 'retract-way', 'left-hand', 'start-index'];
    expect(ids(undefined).filter((i) => own.includes(i))).toEqual([]);
    expect(ids({ side: 'internal' }).filter((i) => own.includes(i))).toEqual(['bar-reach', 'retract-way']);
    expect(ids({ hand: 'left' }).filter((i) => own.includes(i))).toEqual(['left-hand']);
    expect(ids({ starts: 2 }).filter((i) => own.includes(i))).toEqual(['start-index']);
    expect(ids(undefined)).not.toContain('recovery');
    const stopped = sheetOf({ context: { events: [event('stopped-in-cut', NOON - 9)] } });
    expect(phaseState('before', stopped).items.map((s) => s.item.id)).toContain('recovery');
  });
});

describe('all recorded', () => {
  const { records, last } = walk();
  const look = (parts: Parts = {}) =>
    phaseState('before', sheetOf({ ...parts, context: { records, now: last, ...parts.context } }));

  it('is said with everything done, and the time of the newest record', () => {
    expect(look().allRecordedAt).toBe(last - 1000);
  });

  it('takes its time from records that count: an outdated one beside a test that answers for it does not', () => {
    const faster = sheetOf({ context: { now: last }, job: { rpm: exactly('80') } });
    const old = record(itemById('torque'), faster);
    expect(look({ context: { records: [...records, old] } }).allRecordedAt).toBe(last - 1000);
  });

  it.each(records.map((r) => r.item))('is not said without %s', (id) => {
    expect(
      look({ context: { records: records.filter((r) => r.item !== id), now: last } }).allRecordedAt,
    ).toBeNull();
  });

  it('is not said with anything unknown, however much is recorded', () => {
    const forgotten: Parts['machine'][] = [
      { chuckMaxRpm: null },
      { ratioHeld: null },
      { wholeStopTime: null },
      { controllerMaxSteps: null },
      { overload: null },
      { stopCuts: null },
    ];
    for (const machine of forgotten) {
      const p = look(machine ? { machine } : {});
      expect(p.unknown.length, JSON.stringify(machine)).toBeGreaterThan(0);
      expect(p.allRecordedAt).toBeNull();
    }
    expect(look({ job: { room: null } }).allRecordedAt).toBeNull();
  });

  it('is not said when something computed flips to failed, which then comes first', () => {
    const p = look({ job: { room: is('2.9', 'mm') } });
    expect(p.items[0]?.item.id).toBe('stopping-room');
    expect(p.next?.item.id).toBe('stopping-room');
    expect(p.failed.map((s) => s.item.id)).toContain('stopping-room');
    expect(p.allRecordedAt).toBeNull();
  });

  it('is not said while one stands recorded as not OK, and that one stays so through every change', () => {
    const bad = record(itemById('guard'), sheetOf({ context: { now: last } }), 'not-ok');
    const p = look({ context: { records: [...records, bad] } });
    expect([p.left, p.allRecordedAt]).toEqual([1, null]);
    const muchLater = { records: [...records, bad], now: last + 86_400_000, day: '2026-05-04' };
    expect(checkState(itemById('guard'), sheetOf({ context: muchLater })).state).toBe('not-ok');
    const anew = record(itemById('guard'), sheetOf({ context: { now: last } }));
    expect(look({ context: { records: [...records, bad, anew] } }).allRecordedAt).toBe(last);
  });

  it('is not said of a phase in which nothing was recorded', () => {
    for (const phase of ['scratch', 'pass', 'service'] as const)
      expect(phaseState(phase, sheetOf()).allRecordedAt).toBeNull();
    const feed = { kind: 'feed', perRev: is('0.1', 'mm') } as const;
    const nothing = phaseState('scratch', sheetOf({ job: { thread: feed } }));
    expect([nothing.items.length, nothing.allRecordedAt]).toEqual([0, null]);
  });
});

describe('making a record', () => {
  const sheet = sheetOf();
  const code = (
    id: ItemId,
    reading = null as Parameters<typeof makeRecord>[3],
    answer: 'done' | 'not-ok' = 'done',
  ) => {
    const made = makeRecord(itemById(id), sheet, answer, reading, 'x');
    return made.ok ? 'made' : made.refusal.code;
  };

  it('refuses what can’t be recorded', () => {
    expect(code('ratio-held')).toBe('computed');
    expect(code('gap')).toBe('reading-needed');
    expect(code('gap', is('5', 'rpm'))).toBe('wrong-unit');
    expect(code('gap', is('5001', 'mm'))).toBe('out-of-range');
    expect(code('plan', is('7.5', 'count'))).toBe('not-whole');
    expect(code('guard', is('5', 'mm'))).toBe('no-reading-here');
    expect(code('gap', null, 'not-ok')).toBe('made');
    expect(code('groove')).toBe('made');
  });

  it('keeps an inch reading exact in millimetres: 3/8 in is 9.525 mm', () => {
    const made = makeRecord(itemById('blank'), sheet, 'done', is('3/8', 'in'), 'x');
    expect(made.ok && made.record.reading).toEqual(exactly('9.525'));
  });

  it('ties a ramp test to its lead, and refuses one without', () => {
    const made = record(itemById('ramp-test'), sheetOf({ job: { starts: 2 } }));
    expect(made.inputs['lead']).toBe('3/1');
    const worm = { kind: 'pitch', pitch: is('1', 'module') } as const;
    const [n, d] = (
      record(itemById('ramp-test'), sheetOf({ job: { thread: worm } })).inputs['lead'] ?? ''
    ).split('/');
    // π is 3.14159265358979323846…: what is kept is never below it.
    expect(BigInt(n ?? 0) * 10n ** 20n).toBeGreaterThan(314159265358979323846n * BigInt(d ?? 0));
    const none = makeRecord(
      itemById('ramp-test'),
      sheetOf({ job: { thread: null } }),
      'done',
      is('200', 'rpm'),
      'x',
    );
    expect(none).toEqual({ ok: false, refusal: { code: 'lead-unknown' } });
  });

  it('marks the cut that is running', () => {
    const made = record(itemById('scratch-pitch'), sheetOf({ context: { cuttingSince: NOON - 5 } }));
    expect(made.cut).toBe(NOON - 5);
  });
});
