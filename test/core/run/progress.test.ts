import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  backOne,
  canGoBack,
  cutNumber,
  cutsInAll,
  depthLeft,
  endRun,
  nextPass,
  passesLeft,
  takePass,
  withReading,
  type Run,
} from '../../../src/core/run';
import { planOf, runOf } from './support';

const taken = (run: Run, times: number): Run => {
  let now = run;
  for (let k = 0; k < times; k += 1) now = takePass(now, cutNumber(now), 2000 + k) ?? now;
  return now;
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
    const anew = withReading(two, READING, planOf([50, 55]));
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
