import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_WAIT, waitAtStop } from '../../../src/core/cut/counting';
import { errorAtClosing, errorByPass, offsetCounts, runIn } from '../../../src/core/cut/picking-up';
import { lead, neg, ratio } from '../../../src/core/quantity';

describe('closing by counts at a fixed stop', () => {
  it('3 mm screw, 1.25 mm thread, 4096 counts: 12 revs, 49152 counts (worked example H26, own calculation)', () => {
    expect(waitAtStop(12n, ratio(4096), ratio(120))).toEqual({
      revs: 12n,
      counts: ratio(49_152),
      seconds: ratio(6),
      tooLong: false,
    });
  });
  it('keeps a fraction of a count, and says nothing of time without a speed', () => {
    expect(waitAtStop(5n, ratio(2000, 3), null)).toEqual({
      revs: 5n,
      counts: ratio(10_000, 3),
      seconds: null,
      tooLong: false,
    });
    expect(waitAtStop(5n, null, ratio(60)).counts).toBeNull();
  });
  it('is refused above the longest wait, not at it', () => {
    expect(LONGEST_WAIT).toBe(60);
    expect(waitAtStop(127n, null, ratio(127)).tooLong).toBe(false);
    expect(waitAtStop(127n, null, ratio(126)).tooLong).toBe(true);
  });
});

describe('the offset in counts', () => {
  it('a whole lead is a whole rev; a thirtieth of it at 4096 counts is 136.53', () => {
    expect(offsetCounts(ratio(3, 2), lead(ratio(3, 2)), ratio(4096))).toMatchObject({
      nearest: 4096n,
      off: 0,
    });
    const { exact, nearest, off } = offsetCounts(ratio(1, 20), lead(ratio(3, 2)), ratio(4096));
    expect([exact, nearest]).toEqual([ratio(2048, 15), 137n]);
    // 7/15 of a count of 1500 µm ÷ 4096.
    expect(off).toBeCloseTo((7 / 15) * (1500 / 4096), 9);
  });
  it('turns with its sign, and leaves at most half a count', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 1, max: 400 }),
        fc.boolean(),
        (um, l, pi) => {
          const [dz, thread, counts] = [ratio(um, 1000), lead(ratio(l, 20), pi), ratio(4096)];
          const there = offsetCounts(dz, thread, counts);
          const back = offsetCounts(neg(dz), thread, counts);
          const count = ((l / 20) * (pi ? Math.PI : 1) * 1000) / 4096;
          expect(Math.abs(there.off)).toBeLessThanOrEqual(count / 2 + 1e-9);
          // Halves go away from zero where the count is exact.
          if (there.exact) expect(back.nearest).toBe(-there.nearest);
          expect(Number(there.nearest) * count - um).toBeCloseTo(there.off, 6);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('an inexact ratio at each picking-up', () => {
  // Own calculation: 256 ppm, 1.5 mm, 60 revs a cycle is 23 µm a pass and 0.32 mm by pass 15.
  it('256 ppm over 90 mm is 23 µm, 0.32 mm by pass 15', () => {
    expect(errorAtClosing(256, 40 * 1.5, 20 * 1.5)).toBeCloseTo(23.04, 9);
    expect(errorByPass(23.04, 15)).toBeCloseTo(322.56, 9);
    expect(errorByPass(23.04, 1)).toBe(0);
  });
  it('100 ppm over 150 mm is 15 µm once (own calculation)', () =>
    expect(errorAtClosing(-100, 150, 0)).toBeCloseTo(15, 9));

  it('is what a carriage meets: fifteen passes played through on a screw that turns a little too fast', () => {
    const [thread, ppm, cut, open, nutPitch] = [1.5, 256, 20, 40, 3];
    // What the drive really cuts; the groove of the first pass has this lead.
    const real = thread * (1 + ppm * 1e-6);
    let [revs, carriage, moved] = [0, 0, 0];
    for (let pass = 1; pass <= 15; pass += 1) {
      // Where the tool comes down beside the groove of the first pass.
      const beside = (carriage - revs * real) / real;
      moved = (beside - Math.round(beside)) * real;
      revs += cut + open;
      // Wound back to about where it was, and closed where the nut goes home: any tooth is good for 1.5 on 3 mm.
      const screw = revs * real;
      carriage = screw - Math.round(screw / nutPitch) * nutPitch;
    }
    const last = errorByPass(errorAtClosing(ppm, open * thread, cut * thread), 15);
    // The carriage comes back to within a tooth, not to a hair.
    expect(Math.abs(Math.abs(moved * 1000) - last)).toBeLessThan((ppm * 1e-6 * nutPitch * 1000) / 2 + 0.1);
  });
});

describe('backlash and the run-in', () => {
  // Own calculation (worked example C10): 0.12 mm at lead 1.5 is 28.8° of the spindle.
  it('0.12 mm at 1.5: 28.8°, and a pass begins 4.62 mm behind', () => {
    const way = runIn(0.12, 1.5, 1.5);
    expect(way?.degrees).toBeCloseTo(28.8, 9);
    expect(way?.mm).toBeCloseTo(4.62, 9);
  });
  it('not known is not zero: no angle; nonsense is refused', () => {
    expect(runIn(null, 1.5, 3)).toEqual({ mm: 4.5, degrees: null });
    expect([runIn(-0.1, 1.5, 1.5), runIn(0.1, 0, 1), runIn(NaN, 1, 1)]).toEqual([null, null, null]);
  });
});
