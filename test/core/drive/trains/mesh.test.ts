import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fit,
  meshes,
  seatsOf,
  sums,
  unchecked,
  type Banjo,
  type Stages,
} from '../../../../src/core/drive/trains';

const OPEN: Banjo = { shafts: null, least: null, most: null, studGap: null, studs: null, clearance: null };
const ruleOf = (stages: Stages, banjo: Partial<Banjo>): string => {
  const f = fit(stages, { ...OPEN, ...banjo });
  return f.fits ? 'fits' : f.misfit.rule;
};

/** Distances are tooth sums, so each case can be laid out with compasses. */
describe('what a banjo allows', () => {
  it('two wheels reach exactly when their sum is the distance', () => {
    expect(ruleOf([[60, 40]], { shafts: 100 })).toBe('fits');
    expect(ruleOf([[60, 40]], { shafts: 101 })).toBe('reach');
    expect(ruleOf([[60, 40]], { shafts: 99 })).toBe('reach');
  });
  it('an idler spans what a triangle spans', () => {
    // 40+50 and 50+40: from taut at 180 down; at 84 the 40 and 40 would just touch (40+40+4).
    expect(ruleOf([[40, 50, 40]], { shafts: 180 })).toBe('fits');
    expect(ruleOf([[40, 50, 40]], { shafts: 181 })).toBe('reach');
    expect(ruleOf([[40, 50, 40]], { shafts: 84 })).toBe('fits');
    expect(ruleOf([[40, 50, 40]], { shafts: 83 })).toBe('wheels-touch');
  });
  it('a compound wheel clears the shaft beside it: A + B > C + clearance, C + D > B + clearance', () => {
    expect(
      ruleOf(
        [
          [30, 40],
          [54, 60],
        ],
        { clearance: 15 },
      ),
    ).toBe('fits');
    expect(
      ruleOf(
        [
          [30, 40],
          [55, 60],
        ],
        { clearance: 15 },
      ),
    ).toBe('wheel-on-shaft');
    expect(
      ruleOf(
        [
          [30, 60],
          [36, 40],
        ],
        { clearance: 15 },
      ),
    ).toBe('fits');
    expect(
      ruleOf(
        [
          [30, 60],
          [35, 40],
        ],
        { clearance: 15 },
      ),
    ).toBe('wheel-on-shaft');
  });
  it('first and last wheel clear the other shaft', () => {
    expect(
      ruleOf(
        [
          [70, 40],
          [40, 60],
        ],
        { clearance: 15, shafts: 85 },
      ),
    ).toBe('wheel-on-shaft');
    expect(
      ruleOf(
        [
          [70, 40],
          [40, 60],
        ],
        { clearance: 15, shafts: 86 },
      ),
    ).toBe('fits');
  });
  it('the last stud stays in its slot', () => {
    const train: Stages = [
      [30, 40],
      [30, 60],
    ];
    expect(ruleOf(train, { least: 90, most: 90 })).toBe('fits');
    expect(ruleOf(train, { least: 91 })).toBe('slot');
    expect(ruleOf(train, { most: 89 })).toBe('slot');
  });
  it('studs: no more than there are, not nearer than their collars', () => {
    const train: Stages = [
      [30, 40],
      [30, 20],
      [40, 60],
    ];
    expect(ruleOf(train, { studs: 1 })).toBe('studs');
    expect(ruleOf(train, { studs: 2, studGap: 50 })).toBe('fits');
    expect(ruleOf(train, { studs: 2, studGap: 51 })).toBe('stud-gap');
  });
  it('says what could not be looked at', () => {
    expect(unchecked({ ...OPEN, clearance: 15 })).toEqual(['shafts', 'least', 'most', 'studGap', 'studs']);
  });

  it('where it fits, wheels in mesh stand as far apart as their teeth, and no others touch', () => {
    const teeth = fc.integer({ min: 20, max: 80 });
    const stage = fc.array(teeth, { minLength: 2, maxLength: 4 });
    const trains = fc
      .array(stage, { minLength: 1, maxLength: 3 })
      .filter((s) => s.reduce((n, c) => n + c.length - 1, 0) <= 3);
    let fitted = 0;
    fc.assert(
      fc.property(trains, fc.integer({ min: 60, max: 300 }), (stages, shafts) => {
        const f = fit(stages, { ...OPEN, shafts, clearance: 15 });
        if (!f.fits) return;
        fitted += 1;
        const away = (i: number, j: number) =>
          Math.hypot((f.at[i]?.x ?? 0) - (f.at[j]?.x ?? 0), (f.at[i]?.y ?? 0) - (f.at[j]?.y ?? 0));
        expect(f.at.length).toBe(meshes(stages) + 1);
        expect(away(0, meshes(stages))).toBeCloseTo(shafts, 6);
        sums(stages).forEach((d, i) => expect(away(i, i + 1)).toBeCloseTo(d, 2));
        const seats = seatsOf(stages);
        for (const a of seats)
          for (const b of seats)
            if (b.shaft - a.shaft > 1 && a.stage === b.stage)
              expect(away(a.shaft, b.shaft)).toBeGreaterThanOrEqual(a.teeth + b.teeth + 4 - 1e-6);
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(fitted).toBeGreaterThan(40);
  });
});
