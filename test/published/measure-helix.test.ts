import { describe, expect, it } from 'vitest';
import { helixAngles, leadAngle, normalToFlank, sideClearance } from '../../src/core/thread/helix';

/** Degrees and minutes as handbooks print them. */
const dm = (d: number, m: number): number => d + m / 60;

describe('lead angle', () => {
  // ASME B1.1 basic dimension tables print the lead angle at the basic pitch diameter in degrees and minutes
  // (the column is copied in every handbook; figures from memory).
  it.each([
    ['1/4-20', 0.2175, 20, dm(4, 11)],
    ['3/8-16', 0.3344, 16, dm(3, 24)],
    ['1/2-13', 0.45, 13, dm(3, 7)],
    ['3/4-10', 0.685, 10, dm(2, 40)],
    ['1-8', 0.9188, 8, dm(2, 29)],
  ])('%s', (_, e, tpi, printed) => {
    expect(Math.abs((leadAngle(1 / tpi, e) ?? 0) - printed)).toBeLessThanOrEqual(0.51 / 60);
  });

  it('is the angle of the unrolled turn: measured by walking the helix in small steps', () => {
    const [lead, d] = [6, 18];
    const n = 10_000;
    let along = 0;
    let around = 0;
    for (let i = 0; i < n; i += 1) {
      along += lead / n;
      around += 2 * (d / 2) * Math.sin(Math.PI / n);
    }
    expect(Math.tan(((leadAngle(lead, d) ?? 0) * Math.PI) / 180)).toBeCloseTo(along / around, 6);
  });

  it('is steepest at the root, and unknown where a diameter is', () => {
    const a = helixAngles(1.5, { major: 10, pitch: 9.026, minor: 8.16 });
    expect(a.major).toBeLessThan(a.pitch ?? 0);
    expect(a.pitch).toBeLessThan(a.minor ?? 0);
    expect(helixAngles(1.5, { major: 10, pitch: 9.026, minor: null }).minor).toBeNull();
    expect(leadAngle(0, 10)).toBeNull();
    expect(leadAngle(1.5, 0)).toBeNull();
  });
});

describe('side clearance', () => {
  it('adds the lead angle on the leading side and takes it off the trailing side', () => {
    expect(sideClearance(4, 2)).toEqual({ leading: 6, trailing: -2, leftLeading: null, leftTrailing: null });
  });
  it('a tool with 5° on both sides rubs in front on a 7° helix', () => {
    const c = sideClearance(7, 2, 5);
    expect([c?.leftLeading, c?.leftTrailing]).toEqual([-2, 12]);
  });
  it('against the flank the clearance is smaller: a plane through the edge, worked out with vectors', () => {
    // Edge along (sin A, cos A, 0) in (axial, radial, up); side face also holds (−tan s, 0, −1).
    const [A, s] = [30, 6].map((x) => (x * Math.PI) / 180) as [number, number];
    const edge = [Math.sin(A), Math.cos(A), 0] as const;
    const down = [-Math.tan(s), 0, -1] as const;
    const normal = [
      edge[1] * down[2] - edge[2] * down[1],
      edge[2] * down[0] - edge[0] * down[2],
      edge[0] * down[1] - edge[1] * down[0],
    ] as const;
    const upright = Math.abs(normal[2]) / Math.hypot(...normal);
    expect(normalToFlank(6, 30)).toBeCloseTo((Math.asin(upright) * 180) / Math.PI, 9);
  });
  it('refuses angles that are none', () => {
    expect(sideClearance(-1)).toBeNull();
    expect(sideClearance(4, Number.NaN)).toBeNull();
  });
});
