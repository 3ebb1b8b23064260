import { describe, expect, it } from 'vitest';
import { nearestShank, pitchDiameterFromReading } from '../../../src/core/thread/wires';

describe('the standard drill whose shank serves as a wire', () => {
  // Diameters of ASME B94.11M (No. 65 is 0.0350 in) and metric drills in steps of 0.05.
  it.each([
    ['M10 × 1.5', 0.866, { least: 0.84, most: 1.35 }, 'metric', '0.85'],
    ['0.889 mm, the size of No. 65', 0.889, { least: 0.8, most: 1 }, 'number', '65'],
  ] as const)('%s', (_what, best, range, kind, name) => {
    expect(nearestShank(best, range)).toMatchObject({ kind, name });
  });
  it('is none where the nearest is not usable: drills begin at 0.3 mm (No. 80, 0.343 mm)', () => {
    expect(nearestShank(0.04, { least: 0.039, most: 0.063 })).toBeNull();
  });
});

describe('a form that is not symmetrical', () => {
  it('has its unknown lean in the uncertainty: nought without a lead, more with several starts', () => {
    const buttress = (lead: number) =>
      pitchDiameterFromReading(
        { half: { leading: 7, trailing: 45 }, pitch: 3, lead },
        { kind: 'over', over: { value: 32, u: 0.004 } },
        { value: 1.7, u: 0.0005 },
      );
    const parts = [3, 6].map((lead) => {
      const r = buttress(lead);
      return r.ok && r.u !== null ? r.parts.lean : null;
    });
    // Twice the lead is very nearly twice the tangent, and the H28 term goes with its square.
    expect((parts[1] ?? 0) / (parts[0] ?? 1)).toBeCloseTo(4, 1);
    expect(parts[0]).toBeGreaterThan(0);
  });
  it('adds nothing for a symmetrical form, whose lean is solved', () => {
    const r = pitchDiameterFromReading(
      { half: 30, pitch: 1.5, lead: 1.5 },
      { kind: 'over', over: { value: 10.23, u: 0.004 } },
      { value: 0.866, u: 0.0005 },
    );
    expect(r.ok && r.parts.lean).toBe(0);
  });
});
