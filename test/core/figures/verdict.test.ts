import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ceilingOf,
  limitStanding,
  LIMIT_IDS,
  MARGIN_ELECTRONIC,
  standingAt,
  standingOf,
  worst,
  type LimitReading,
  type Standing,
} from '../../../src/core/figures';
import { ratio } from '../../../src/core/quantity';
import { is, pitchJob, rpm, sheet } from './support';

const STANDINGS: readonly Standing[] = ['within', 'near', 'unknown', 'over'];

/** A limit by what matters to a verdict. */
const reading = fc
  .record({
    id: fc.constantFrom(...LIMIT_IDS),
    need: fc.constantFrom('required' as const, 'supporting' as const),
    limit: fc.option(fc.integer({ min: 1, max: 500 })),
    answered: fc.option(fc.integer({ min: 1, max: 500 })),
  })
  .map(({ id, need, limit, answered }): LimitReading => ({
    id,
    need,
    side: 'drive',
    unit: 'rpm',
    perRpm: ratio(1),
    course: null,
    limit: limit === null ? null : ratio(limit),
    margin: MARGIN_ELECTRONIC,
    within: limit === null ? null : BigInt(Math.floor((limit * 4) / 5)),
    bearable: limit === null ? null : BigInt(limit),
    missing: [],
    answeredTo: limit === null && answered !== null ? ratio(answered) : null,
    terms: {},
    source: 'test',
  }));

/** What is known of one limit, said in one line each. */
const highestOf = (l: LimitReading): number | null => {
  if (l.limit) return Math.floor((Number(l.limit.n) * 4) / 5);
  return l.need === 'supporting' && l.answeredTo ? Number(l.answeredTo.n) : null;
};

describe('the verdict over any limits', () => {
  const some = fc.array(reading, { maxLength: 8 });

  it('there is a highest speed only where each limit that counts is answered, and it is the least', () => {
    fc.assert(
      fc.property(some, (limits) => {
        const c = ceilingOf(limits);
        const all = limits.map(highestOf);
        const known = all.filter((x) => x !== null);
        const least = known.length > 0 ? BigInt(Math.min(...known)) : null;
        expect(c.atMost).toBe(least);
        expect(c.highest).toBe(known.length === all.length ? least : null);
        expect(c.unknown).toEqual(limits.filter((l) => highestOf(l) === null));
        if (least !== null) expect(c.binds && highestOf(c.binds)).toBe(Number(least));
        else expect(c.binds).toBeNull();
      }),
    );
  });

  it('is never fine with an over or an unknown, and over hides no unknown nor unknown an over', () => {
    fc.assert(
      fc.property(some, fc.integer({ min: 1, max: 600 }), (limits, n) => {
        const each = limits.map((l) => limitStanding(l, rpm(n)));
        const all = standingAt(limits, rpm(n));
        if (each.includes('over')) expect(all).toBe('over');
        else if (each.includes('unknown') || each.length === 0) expect(all).toBe('unknown');
        else expect(all).toBe(each.includes('near') ? 'near' : 'within');
      }),
    );
  });

  it('the worst of several is the same in any order', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...STANDINGS), { minLength: 1, maxLength: 6 }), (list) => {
        expect(worst([...list].reverse())).toBe(worst(list));
        expect(list).toContain(worst(list));
      }),
    );
  });

  it('a standing by whole numbers: 5 × demand against 4 × limit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 1, max: 900 }), (demand, limit) => {
        const expected = demand > limit ? 'over' : demand * 5 > limit * 4 ? 'near' : 'within';
        expect(standingOf(ratio(demand), ratio(limit), MARGIN_ELECTRONIC)).toBe(expected);
      }),
    );
  });
});

describe('a spindle with a range', () => {
  const range = { spindleDrive: 'range', spindleMax: is('500', 'rpm'), spindleMin: is('40', 'rpm') } as const;
  const job = pitchJob('0.5', { room: is('25', 'mm') });

  it('has no speeds of its own, and its top is a limit', () => {
    const v = sheet(range, { ...job, rpm: rpm(501) }).get('speed').value;
    expect([v?.own, v?.fastest, v?.fastestDrive]).toEqual([[], null, null]);
    expect([v?.job.highest, v?.job.binds?.id, v?.standing]).toEqual([500n, 'spindle-range', 'over']);
    // What the drive follows is another matter: the counter binds at 0.8 × 200 000 × 60 ÷ 4096 with no spindle in it.
    expect(v?.drive.binds?.side).toBe('drive');
  });
  it('of which the top isn’t known has no highest speed; nor has one of which nothing is known', () => {
    for (const over of [{ ...range, spindleMax: null }, { spindleDrive: null }, { spindleSpeeds: [] }]) {
      const s = sheet(over, { ...job, rpm: rpm(100) }).get('speed');
      expect([s.value?.job.highest, s.standing]).toEqual([null, 'unknown']);
    }
  });
});
