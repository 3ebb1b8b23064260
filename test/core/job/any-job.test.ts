import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ENDINGS,
  HOLDINGS,
  INFEEDS,
  MATERIALS,
  PASS_HOLDS,
  PASS_RULES,
  TOOL_MATERIALS,
} from '../../../src/core/job';
import { blankJob, readJob, readThread, storeJob, type Job } from '../../../src/core/job';
import { ratio, stated, type Unit } from '../../../src/core/quantity';

const parts = fc.tuple(fc.bigInt(1n, 90n), fc.bigInt(1n, 9n));
const length = (unit: Unit) => parts.map(([n, d]) => stated(ratio(n + 90n, 9n + d), unit));
const thread = fc.oneof(
  fc.stringMatching(/^[a-z]{1,9}:[A-Za-z0-9]{1,9}$/).map((id) => ({ kind: 'catalogue', id }) as const),
  fc
    .oneof(
      ...(['mm', 'in', 'tpi', 'module', 'dp'] as const).map((u) =>
        parts.map(([n]) => stated(ratio(n + 9n, 100n), u)),
      ),
    )
    .filter((p) => p.unit !== 'tpi' && p.unit !== 'dp')
    .map((pitch) => ({ kind: 'pitch', pitch }) as const),
  fc.bigInt(1n, 200n).map((n) => ({ kind: 'pitch', pitch: stated(ratio(n, 2n), 'tpi') }) as const),
  fc.bigInt(1n, 300n).map((n) => ({ kind: 'feed', perRev: stated(ratio(n + 1n, 200n), 'mm') }) as const),
);

const job: fc.Arbitrary<Job> = fc.record({
  thread: fc.option(thread),
  starts: fc.integer({ min: 1, max: 60 }),
  hand: fc.constantFrom('right', 'left'),
  side: fc.constantFrom('external', 'internal'),
  classId: fc.option(fc.constantFrom('6g', '6H', '2A', 'medium')),
  noseKind: fc.constantFrom('radius', 'flat', 'sharp', null),
  noseSize: fc.option(fc.bigInt(1n, 20n).map((n) => stated(ratio(n, 100n), 'in'))),
  rpm: fc.option(fc.bigInt(1n, 20_000n).map((n) => ratio(n))),
  room: fc.option(fc.oneof(length('mm'), length('in'))),
  use: fc.constantFrom('fastener', 'leadscrew', 'worm', null),
  length: fc.option(fc.oneof(length('mm'), length('in'))),
  material: fc.constantFrom(...MATERIALS, null),
  blank: fc.option(fc.oneof(length('mm'), length('in'))),
  ending: fc.constantFrom(...ENDINGS, null),
  groove: fc.option(length('mm')),
  shoulder: fc.option(length('mm')),
  roomFrom: fc.option(fc.string({ maxLength: 60 })),
  gap: fc.option(fc.oneof(length('mm'), length('in'))),
  holding: fc.constantFrom(...HOLDINGS, null),
  toolMaterial: fc.constantFrom(...TOOL_MATERIALS, null),
  infeed: fc.constantFrom(...INFEEDS, null),
  topSlide: fc.option(fc.bigInt(0n, 180n).map((n) => stated(ratio(n, 2n), 'deg'))),
  passRule: fc.constantFrom(...PASS_RULES, null),
  passHold: fc.constantFrom(...PASS_HOLDS, null),
  firstPass: fc.option(
    parts.map(([n, d]) => stated(ratio(n, 100n * d), 'mm')).filter((s) => s.value.n * 200n >= s.value.d),
  ),
  leastPass: fc.option(parts.map(([n]) => stated(ratio(n, 100n), 'mm'))),
  passCount: fc.option(fc.bigInt(1n, 200n).map((n) => stated(ratio(n), 'count'))),
  chipArea: fc.option(parts.map(([n]) => stated(ratio(n, 100n), 'mm2'))),
  springPasses: fc.option(fc.bigInt(0n, 10n).map((n) => stated(ratio(n), 'count'))),
  outwards: fc.boolean(),
});

describe('any job that can be chosen', () => {
  it('comes back from the disk exactly as it went', () => {
    fc.assert(
      fc.property(job, (j) => {
        expect(readJob(JSON.parse(JSON.stringify(storeJob(j))))).toEqual(j);
        expect(readJob(structuredClone(storeJob(j)))).toEqual(j);
      }),
    );
  });

  it('read from rubbish, is a job that is stored and read again as itself', () => {
    const row = fc.dictionary(fc.constantFrom(...Object.keys(blankJob()), '__proto__'), fc.anything());
    fc.assert(
      fc.property(row, (x) => {
        const got = readJob(x);
        expect(Object.keys(got).sort()).toEqual(Object.keys(blankJob()).sort());
        expect(readJob(storeJob(got))).toEqual(got);
      }),
      { numRuns: 200 },
    );
  });
});

describe('numbers that no person could have typed are not chosen', () => {
  const kept = (n: string, d: string, unit: Unit) => ({ n, d, unit });
  it.each([
    ['a room of 10^30 mm', 'room', kept('1' + '0'.repeat(30), '1', 'mm')],
    ['a room of nothing', 'room', kept('0', '1', 'mm')],
    ['a room below nothing', 'room', kept('-1', '1', 'mm')],
    ['a room in rpm', 'room', kept('4', '1', 'rpm')],
    ['a room in tpi', 'room', kept('4', '1', 'tpi')],
    ['a nose of a metre', 'noseSize', kept('1000', '1', 'mm')],
    ['a nose of nothing', 'noseSize', kept('0', '1', 'mm')],
    ['a speed of nothing', 'rpm', { n: '0', d: '1' }],
    ['a speed over the range', 'rpm', { n: '200001', d: '10' }],
    ['a hand unheard of', 'hand', 'both'],
    ['a use unheard of', 'use', 'ornament'],
    ['a length in rpm', 'length', kept('4', '1', 'rpm')],
    ['a length of six metres', 'length', kept('6000', '1', 'mm')],
    ['half a start', 'starts', 1.5],
    ['starts in words', 'starts', '2'],
  ])('%s', (_what, field, value) => {
    expect(readJob({ [field]: value })).toEqual(blankJob());
  });

  it('their bounds are', () => {
    expect(readJob({ rpm: { n: '1', d: '1' } }).rpm).toEqual(ratio(1));
    expect(readJob({ rpm: { n: '20000', d: '1' } }).rpm).toEqual(ratio(20_000));
    expect(readJob({ starts: 60 }).starts).toBe(60);
    expect(readJob({ room: kept('1', '100', 'mm') }).room).toEqual(stated(ratio(1, 100), 'mm'));
  });

  it.each([
    [{ kind: 'pitch', pitch: kept('-1', '1', 'mm') }],
    [{ kind: 'pitch', pitch: kept('0', '1', 'tpi') }],
    [{ kind: 'pitch', pitch: kept('1' + '0'.repeat(20), '1', 'mm') }],
    [{ kind: 'feed', perRev: kept('11', '1', 'mm') }],
    [{ kind: 'feed', pitch: kept('1', '10', 'mm') }],
    [{ kind: 'pitch', perRev: kept('1', '1', 'mm') }],
  ])('%j is no thread', (x) => {
    expect(readThread(x)).toBeNull();
  });
});
