import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  backOne,
  canGoBack,
  cutNumber,
  cutsInAll,
  cutsLeft,
  depthLeft,
  endRun,
  midRound,
  nextPass,
  passesLeft,
  takePass,
  turnOf,
  withReading,
  type Run,
} from '../../../src/core/run';
import { planOf, runOf } from './support';

const taken = (run: Run, times: number): Run => {
  let now = run;
  for (let k = 0; k < times; k += 1) now = takePass(now, cutNumber(now), 2000 + k) ?? now;
  return now;
};
/** The run with a plan made anew from a reading. */
const replanned = (run: Run, depths: readonly number[]): Run => {
  const anew = withReading(run, READING, planOf(depths));
  if (!anew) throw new Error('refused');
  return anew;
};
const READING = {
  at: 5,
  way: 'gauge',
  reading: null,
  felt: 'tight',
  pitchDiameter: null,
  uncertainty: null,
  after: 3,
} as const;

// The counting is checked by hand: three cuts to 30, 45, 60 divisions of 0.01 mm of depth, one spring pass.
describe('a run', () => {
  const fresh = runOf(planOf([30, 45, 60], 1));

  it('begins with the first pass of its plan', () => {
    expect([cutNumber(fresh), cutsInAll(fresh), depthLeft(fresh)]).toEqual([1, 4, 0.6]);
    expect(nextPass(fresh)?.cross?.divisions).toBe(30);
    expect(canGoBack(fresh)).toBe(false);
    expect(backOne(fresh)).toBeNull();
  });

  it('goes on by what is said to be taken', () => {
    const two = taken(fresh, 2);
    expect([cutNumber(two), cutsInAll(two), passesLeft(two).length]).toEqual([3, 4, 2]);
    expect(depthLeft(two)).toBeCloseTo(0.15, 9);
    const all = taken(fresh, 4);
    expect([nextPass(all), passesLeft(all).length, depthLeft(all)]).toEqual([null, 0, 0]);
    expect(takePass(all, 5, 0)).toBeNull();
  });

  it('counts no pass twice: a number seen before is not the next', () => {
    const one = taken(fresh, 1);
    expect(takePass(one, 1, 9)).toBeNull();
    expect(takePass(one, 3, 9)).toBeNull();
    expect(takePass(one, 2, 9)?.taken.length).toBe(2);
  });

  it('counts on over a plan made anew from a reading, and doesn’t go back across it', () => {
    const two = taken(fresh, 2);
    const anew = replanned(two, [50, 55]);
    expect([cutNumber(anew), cutsInAll(anew), nextPass(anew)?.cross?.divisions]).toEqual([3, 4, 50]);
    expect(canGoBack(anew)).toBe(false);
    const three = taken(anew, 1);
    expect(three.taken.map((t) => [t.n, t.plan])).toEqual([
      [1, 0],
      [2, 0],
      [3, 1],
    ]);
    expect(backOne(three)).toEqual(anew);
    expect(anew.readings).toEqual([READING]);
  });

  it('that has ended takes no more passes', () => {
    const over = endRun(taken(fresh, 1), 'scrapped', 'chipped', 99);
    expect(takePass(over, 2, 100)).toBeNull();
    expect(canGoBack(over)).toBe(false);
    expect([over.ended, over.outcome, over.notes]).toEqual([99, 'scrapped', 'chipped']);
  });
});

// By hand: 1.2.3 at the first setting, 1.2.3 at the second; two settings of three starts are six cuts.
describe('a run of a thread of three starts', () => {
  const fresh = runOf(planOf([30, 45]));
  const three: Run = { ...fresh, job: { ...fresh.job, starts: 3 } };

  it('takes each setting in every start before the next setting', () => {
    const seen = Array.from({ length: 6 }, (_, k) => {
      const run = taken(three, k);
      const { round, start } = turnOf(run);
      return [round, start, nextPass(run)?.cross?.divisions, cutsLeft(run)];
    });
    expect(seen).toEqual([
      [1, 1, 30, 6],
      [1, 2, 30, 5],
      [1, 3, 30, 4],
      [2, 1, 45, 3],
      [2, 2, 45, 2],
      [2, 3, 45, 1],
    ]);
    const all = taken(three, 6);
    expect([nextPass(all), cutsLeft(all), cutsInAll(all), depthLeft(all)]).toEqual([null, 0, 6, 0]);
    const back = backOne(all);
    expect(back && turnOf(back)).toEqual({ round: 2, start: 3 });
  });

  it('is planned anew only where all starts stand at one depth', () => {
    const mid = taken(three, 2);
    expect(midRound(mid)).toBe(true);
    expect(withReading(mid, READING, planOf([40]))).toBeNull();
    expect(withReading(mid, READING)?.readings).toEqual([READING]);
    const anew = replanned(taken(three, 3), [40, 50]);
    expect([cutNumber(anew), cutsInAll(anew), turnOf(anew)]).toEqual([4, 9, { round: 2, start: 1 }]);
  });
});

// Against counting with a plain list of strokes on the wall.
it('after any taking and going back stands where a tally does', () => {
  fc.assert(
    fc.property(fc.array(fc.boolean(), { maxLength: 60 }), (steps) => {
      let run = runOf(planOf([10, 20, 30, 40, 50], 2));
      let tally = 0;
      for (const forward of steps) {
        run = (forward ? takePass(run, cutNumber(run), 1) : backOne(run)) ?? run;
        tally = forward ? Math.min(7, tally + 1) : Math.max(0, tally - 1);
        expect(run.taken.length).toBe(tally);
        expect(passesLeft(run).length).toBe(7 - tally);
        expect(run.taken.map((t) => t.n)).toEqual(Array.from({ length: tally }, (_, i) => i + 1));
      }
    }),
    { numRuns: 60 },
  );
});
