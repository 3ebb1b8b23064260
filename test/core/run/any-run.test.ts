import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DialSetting, PlannedPass } from '../../../src/core/cut/pass';
import { blankJob, INFEEDS, MATERIALS, type Job } from '../../../src/core/job';
import { ratio, stated } from '../../../src/core/quantity';
import { OUTCOMES, readRun, storeRun, type Run } from '../../../src/core/run';
import { openStorage } from '../../../src/storage';
import { planOf, runOf } from './support';

const size = fc.double({ min: 0, max: 1e4, noNaN: true });
const at = fc.integer({ min: 0, max: 4e12 });
const exact = fc
  .tuple(fc.bigInt(-(10n ** 30n), 10n ** 30n), fc.bigInt(1n, 10n ** 30n), fc.constantFrom('mm', 'in', 'um'))
  .map(([n, d, unit]) => stated(ratio(n, d), unit as 'mm'));
const dial: fc.Arbitrary<DialSetting> = fc.record({
  divisions: fc.integer({ min: -5000, max: 5000 }),
  reading: exact,
  turns: fc.option(fc.nat(100)),
  past: fc.nat(200),
});
const pass: fc.Arbitrary<PlannedPass> = fc.record({
  n: fc.integer({ min: 1, max: 300 }),
  kind: fc.constantFrom('cut', 'spring'),
  cross: fc.option(dial),
  top: fc.option(dial),
  depth: size,
  step: size,
  chip: size,
});
const job: fc.Arbitrary<Job> = fc
  .record({
    thread: fc.option(
      fc.oneof(
        fc.constant({ kind: 'catalogue', id: 'iso-coarse:M10' } as const),
        fc.bigInt(3n, 900n).map((n) => ({ kind: 'pitch', pitch: stated(ratio(n, 100n), 'mm') }) as const),
      ),
    ),
    starts: fc.integer({ min: 1, max: 60 }),
    hand: fc.constantFrom('right', 'left'),
    side: fc.constantFrom('external', 'internal'),
    rpm: fc.option(fc.bigInt(1n, 20_000n).map((n) => ratio(n))),
    blank: fc.option(fc.bigInt(30n, 9000n).map((n) => stated(ratio(n, 100n), 'mm'))),
    infeed: fc.constantFrom(...INFEEDS, null),
    material: fc.constantFrom(...MATERIALS, null),
    outwards: fc.boolean(),
  })
  .map((part) => ({ ...blankJob(), ...part }));
const text = fc.string({ maxLength: 200, unit: 'grapheme' });
const run: fc.Arbitrary<Run> = fc
  .record({
    machine: fc.string({ minLength: 1, maxLength: 32 }),
    machineName: text,
    workshop: text,
    threadName: text,
    job,
    plans: fc.array(fc.array(pass, { maxLength: 8 }), { maxLength: 4 }),
    begun: at,
    ended: fc.option(at),
    taken: fc.array(fc.record({ n: fc.nat(300), at, plan: fc.nat(5), pass }), { maxLength: 8 }),
    readings: fc.array(
      fc.record({
        at,
        way: fc.constantFrom('wires', 'thread-micrometer', 'gauge'),
        reading: fc.option(exact),
        felt: fc.constantFrom('goes', 'tight', 'does-not-go', null),
        pitchDiameter: fc.option(size),
        uncertainty: fc.option(size),
        after: fc.nat(300),
      }),
      { maxLength: 4 },
    ),
    paused: fc.boolean(),
    outcome: fc.constantFrom(...OUTCOMES, null),
    notes: text,
    machineThen: fc.option(fc.dictionary(fc.stringMatching(/^machine\.[a-zA-Z]{1,20}$/), text), {
      nil: undefined,
    }),
  })
  .map(({ machineThen, ...rest }): Run => ({ ...rest, ...(machineThen ? { machineThen } : {}) }));

const stored = (r: Run): Record<string, unknown> =>
  JSON.parse(JSON.stringify(storeRun(r))) as Record<string, unknown>;

describe('any run', () => {
  it('comes back from the disk exactly as it went, as text and as plain data', () => {
    fc.assert(
      fc.property(run, (r) => {
        expect(readRun(stored(r))).toEqual(r);
        expect(readRun(structuredClone(storeRun(r)))).toEqual(r);
      }),
      { numRuns: 80 },
    );
  });

  it('goes through the store, and is found among the open ones exactly while it has not ended', async () => {
    const s = await openStorage({ onBlocked: () => undefined, onClosed: () => undefined });
    let k = 0;
    await fc.assert(
      fc.asyncProperty(run, async (r) => {
        const id = `r${(k += 1)}`;
        await s.runs.put(id, null, r);
        expect((await s.runs.get(id))?.value).toEqual(r);
        const open = (await s.runs.by('open', null)).kept.map((x) => x.id);
        expect(open.includes(id)).toBe(r.ended === null);
        const mine = (await s.runs.by('machine', r.machine)).kept.map((x) => x.id);
        expect(mine).toContain(id);
      }),
      { numRuns: 20 },
    );
  });

  it('keeps what a newer version added to it', () => {
    const row = { ...stored(runOf(planOf([30, 45]))), later: { some: 'thing' } };
    const read = readRun(row);
    expect(read).toMatchObject({ later: { some: 'thing' }, threadName: 'M10×1.5' });
    expect(stored(read as Run)).toEqual(row);
  });
});

describe('a run that can’t be read', () => {
  it('is none; rubbish never throws', () => {
    const keys = Object.keys(storeRun(runOf(planOf([30]))));
    const rubbish = fc.oneof(fc.anything(), fc.dictionary(fc.constantFrom(...keys), fc.anything()));
    fc.assert(
      fc.property(rubbish, (x) => {
        const read = readRun(x);
        if (read) expect(readRun(storeRun(read))).toEqual(read);
      }),
    );
    const hostile = new Proxy(
      {},
      {
        get: () => {
          throw new Error('torn');
        },
      },
    );
    expect(readRun(hostile)).toBeNull();
  });

  const good = stored(
    runOf(planOf([30, 45]), { taken: [{ n: 1, at: 5, plan: 0, pass: planOf([30])[0] as PlannedPass }] }),
  );
  const [first] = (good.plans as Record<string, unknown>[][])[0] ?? [];
  it.each([
    ['a pass of no kind', { plans: [[{ ...first, kind: 'bored' }]] }],
    [
      'a dial reading that is no number',
      { plans: [[{ ...first, cross: { divisions: 1, reading: '3', turns: 0, past: 1 } }]] },
    ],
    ['a depth that is no number', { plans: [[{ ...first, depth: null }]] }],
    ['passes taken that are none', { taken: [{ n: 1, at: 1, plan: 0, pass: {} }] }],
    ['no machine', { machine: 7 }],
    ['an outcome unheard of', { outcome: 'perfect' }],
    ['neither paused nor not', { paused: 1 }],
    ['a reading in a way unheard of', { readings: [{ way: 'eye' }] }],
    ['no job', { job: null }],
    ['a text without end', { notes: 'x'.repeat(10_001) }],
  ])('%s', (_what, part) => {
    expect(readRun(good)).not.toBeNull();
    expect(readRun({ ...good, ...part })).toBeNull();
  });
});
