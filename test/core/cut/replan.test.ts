import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { settingAt } from '../../../src/core/cut/dial';
import type { Handwheel } from '../../../src/core/cut/handwheels';
import type { PlannedPass } from '../../../src/core/cut/pass';
import { replan, type Rest } from '../../../src/core/cut/replan';
import { equal, ratio, stated, sub, type Ratio } from '../../../src/core/quantity';

const TAN30 = Math.tan(Math.PI / 6);
/** 0.02 mm on the diameter, a hundred to the turn. */
const wheel: Handwheel = { division: stated(ratio(2, 100), 'mm'), perTurn: 100, travel: 0.01, radial: 0.01 };

const standing = (divisions: number, chip: number): PlannedPass => ({
  n: 7,
  kind: 'cut',
  cross: settingAt(wheel, divisions),
  top: null,
  depth: divisions * 0.01,
  step: 0.04,
  chip,
});
const rest = (part: Partial<Rest>): Rest => ({
  divisions: 14,
  slide: 'cross',
  wheel,
  at: standing(80, 0.05),
  left: [],
  least: 0.025,
  point: { half: 30, flat: 0, radius: 0 },
  springs: 0,
  ...part,
});
const steps = (passes: readonly PlannedPass[], from: number, slide: 'cross' | 'top' = 'cross'): number[] =>
  passes.map((p, i) => (p[slide]?.divisions ?? 0) - (passes[i - 1]?.[slide]?.divisions ?? from));

describe('the plan after a reading', () => {
  it('goes on from what the dial reads', () => {
    const passes = replan(rest({ springs: 1 }));
    expect(passes[0]?.n).toBe(8);
    expect(passes.at(-1)).toMatchObject({ kind: 'spring', chip: 0, cross: { divisions: 94, turns: 0 } });
    expect(passes.at(-1)?.step).toBeCloseTo(0, 12);
    expect(passes.filter((p) => p.kind === 'cut').at(-1)?.depth).toBeCloseTo(0.94, 9);
  });

  it('takes what is below the least in one pass, and nothing in none', () => {
    expect(steps(replan(rest({ divisions: 2 })), 80)).toEqual([2]);
    expect(replan(rest({ divisions: 0 }))).toEqual([]);
  });

  it('leaves the other slide where the plan’s last pass has it', () => {
    const shift = settingAt(wheel, 3);
    const left = [
      { ...standing(84, 0.05), top: settingAt(wheel, 9) },
      { ...standing(88, 0.05), top: shift },
    ];
    for (const p of replan(rest({ left }))) expect(p.top).toEqual(shift);
  });

  it('counts from where the dials stand when no pass is known', () => {
    const passes = replan(rest({ at: null, slide: 'top' }));
    expect(passes[0]?.n).toBe(1);
    expect(passes.at(-1)?.top?.divisions).toBe(14);
    expect(passes.at(-1)?.cross).toBeNull();
    // Nothing known of the chip: no pass over twice the least.
    expect(Math.max(...steps(passes, 0, 'top'))).toBeLessThanOrEqual(6);
  });

  const any = fc.record({
    divisions: fc.integer({ min: 1, max: 120 }),
    at: fc.integer({ min: 1, max: 300 }),
    chip: fc.double({ min: 0.001, max: 0.2, noNaN: true }),
    least: fc.double({ min: 0.002, max: 0.08, noNaN: true }),
    springs: fc.integer({ min: 0, max: 3 }),
  });

  it('sums exactly to a division, every reading its own', () => {
    fc.assert(
      fc.property(any, ({ divisions, at, chip, least, springs }) => {
        const passes = replan(rest({ divisions, at: standing(at, chip), least, springs }));
        const last = passes.at(-1)?.cross;
        const from = settingAt(wheel, at).reading.value;
        const gone = sub(last?.reading.value as Ratio, from);
        return last?.divisions === at + divisions && equal(gone, ratio(2 * divisions, 100));
      }),
    );
  });

  it('takes no pass below the least unless all that is left is less', () => {
    fc.assert(
      fc.property(any, ({ divisions, at, chip, least }) => {
        const each = steps(replan(rest({ divisions, at: standing(at, chip), least })), at);
        return (
          each.every((s) => s * 0.01 >= least - 1e-9) ||
          (each.length === 1 && divisions * 0.01 < least + 0.01)
        );
      }),
    );
  });

  // Chip between depths x and y of a 60° groove: tan 30° (y² − x²).
  it('cuts no thicker chip than the plan did, but where the least would rub', () => {
    fc.assert(
      fc.property(any, ({ divisions, at, chip, least }) => {
        const passes = replan(rest({ divisions, at: standing(at, chip), least }));
        const floor = Math.ceil(least / 0.01 - 1e-9);
        return passes.every((p, i) => {
          const x = passes[i - 1]?.depth ?? at * 0.01;
          const area = TAN30 * (p.depth ** 2 - x ** 2);
          const step = Math.round((p.depth - x) / 0.01);
          return Math.abs(area - p.chip) < 1e-9 && (area <= chip + 1e-9 || step < 2 * floor);
        });
      }),
    );
  });
});
