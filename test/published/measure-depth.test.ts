import { describe, expect, it } from 'vitest';
import { infeedDepth, type InfeedQuestion } from '../../src/core/thread/depth';

const H = Math.sqrt(3) / 2;

/** Radial infeed for a 60° external thread of pitch P from nominal major 10 to basic pitch diameter. */
const iso = (pitch: number, nose: InfeedQuestion['nose']): number => {
  const r = infeedDepth({
    side: 'external',
    half: 30,
    pitch,
    nose,
    from: 10,
    targetPitchDiameter: 10 - (3 / 4) * H * pitch,
  });
  if (!r.ok) throw new Error(r.refusal);
  return r.radial;
};

describe('depth of infeed against printed thread depths', () => {
  // h3 = 17/24 H, printed in DIN 13-1 (excerpt) for an external root of radius H/6.
  it.each([
    [1.5, 0.92],
    [2.5, 1.534],
  ])('ISO external, P %s, nose radius H/6: h3 = %s', (p, printed) => {
    expect(iso(p, { kind: 'radius', size: (H * p) / 6 })).toBeCloseTo(printed, 3);
  });

  // H1 = 5/8 H, the basic profile of ISO 68-1: root flat P/4. Figures as DIN 13-1 prints them (from memory).
  it.each([
    [1.5, 0.812],
    [2.5, 1.353],
  ])('ISO basic profile, P %s, nose flat P/4: H1 = %s', (p, printed) => {
    expect(iso(p, { kind: 'flat', size: p / 4 })).toBeCloseTo(printed, 3);
  });

  it('a sharp tool goes to 7/8 H (ISO 68-1 profile: crest truncated by H/8)', () => {
    expect(iso(1.5, { kind: 'sharp' })).toBeCloseTo((7 / 8) * H * 1.5, 9);
  });

  it('an American 8 tpi thread with a flat of P/8, fed at 29°: chart prints 0.0928 in along the top slide', () => {
    // Thread depth chart for a compound set at 29°, depth 0.649519 P: 8 tpi, 0.0928 in.
    expect(iso(1 / 8, { kind: 'flat', size: 1 / 64 }) / Math.cos((29 * Math.PI) / 180)).toBeCloseTo(
      0.0928,
      4,
    );
  });

  it('Whitworth 55° with the standard radius 0.137329 P: depth 0.640327 P (BS 84)', () => {
    const p = 25.4 / 12;
    const r = infeedDepth({
      side: 'external',
      half: 27.5,
      pitch: p,
      nose: { kind: 'radius', size: 0.137329 * p },
      from: 12.7,
      targetPitchDiameter: 12.7 - 0.640327 * p,
    });
    expect(r.ok && r.radial / p).toBeCloseTo(0.640327, 5);
  });

  it('BA 47.5° with radius 0.1808346 p: depth 0.6 p (BS 93)', () => {
    const r = infeedDepth({
      side: 'external',
      half: 23.75,
      pitch: 1,
      nose: { kind: 'radius', size: 0.1808346 },
      from: 6,
      targetPitchDiameter: 5.4,
    });
    expect(r.ok && r.radial).toBeCloseTo(0.6, 4);
  });

  it('Tr 20×4: root flat 0.366 P − 0.536 ac gives h3 = P/2 + ac = 2.25 (ISO 2904)', () => {
    const r = infeedDepth({
      side: 'external',
      half: 15,
      pitch: 4,
      nose: { kind: 'flat', size: 0.36602540378 * 4 - 0.53589838486 * 0.25 },
      from: 20,
      targetPitchDiameter: 18,
    });
    expect(r.ok && r.radial).toBeCloseTo(2.25, 6);
    expect(r.ok && r.rootDiameter).toBeCloseTo(15.5, 6); // d3 of Tr 20×4, ISO 2904
  });

  it('1-5 Acme, 29°: a flat of 0.3707 P − 0.259 × 0.020 gives depth P/2 + 0.010 in (ASME B1.5)', () => {
    const r = infeedDepth({
      side: 'external',
      half: 14.5,
      pitch: 0.2,
      nose: { kind: 'flat', size: 0.3707 * 0.2 - 0.259 * 0.02 },
      from: 1,
      targetPitchDiameter: 0.9,
    });
    expect(r.ok && r.radial).toBeCloseTo(0.11, 4);
  });

  it('internal ISO from a bore of D1 with a flat of P/8: 0.541266 P (ISO 68-1, 5/8 H)', () => {
    const p = 1.5;
    const r = infeedDepth({
      side: 'internal',
      half: 30,
      pitch: p,
      nose: { kind: 'flat', size: p / 8 },
      from: 10 - (5 / 4) * H * p,
      targetPitchDiameter: 10 - (3 / 4) * H * p,
      rootMustReach: 10,
    });
    expect(r.ok && r.radial / p).toBeCloseTo(0.541266, 6);
    expect(r.ok && r.rootDiameter).toBeCloseTo(10, 9);
    expect(r.ok && r.rootShort).toBeCloseTo(0, 9);
  });
});
