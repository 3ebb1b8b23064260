import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { infeedDepth, largestNose, pitchDiameterAtInfeed, type Nose } from '../../../src/core/thread/depth';
import type { HalfAngles } from '../../../src/core/thread/groove';

/**
 * Brute force that shares nothing with the module: the tool as a polygon sampled along its outline, sunk to a
 * depth in small slices; the pitch diameter is where the cut is P/2 wide.
 */
const widthAtHeight = (half: { a: number; b: number }, nose: Nose, h: number): number => {
  const ta = Math.tan((half.a * Math.PI) / 180);
  const tb = Math.tan((half.b * Math.PI) / 180);
  if (nose.kind === 'sharp') return h * (ta + tb);
  if (nose.kind === 'flat') return nose.size + h * (ta + tb);
  // Round nose resting on h = 0: at each side the outline is the circle until the flank's slope is met.
  const r = nose.size;
  const side = (t: number, angle: number): number => {
    const leave = r - r * Math.sin((angle * Math.PI) / 180);
    if (h <= leave) return Math.sqrt(r * r - (r - h) ** 2);
    return r * Math.cos((angle * Math.PI) / 180) + (h - leave) * t;
  };
  return side(ta, half.a) + side(tb, half.b);
};

const heightOfWidth = (half: { a: number; b: number }, nose: Nose, width: number): number => {
  let [low, high] = [0, 100];
  for (let i = 0; i < 80; i += 1) {
    const mid = (low + high) / 2;
    if (widthAtHeight(half, nose, mid) < width) low = mid;
    else high = mid;
  }
  return low;
};

const noses = fc.record({
  kind: fc.constantFrom('radius', 'flat'),
  share: fc.double({ min: 0, max: 0.95, noNaN: true }),
});

describe('depth of infeed', () => {
  it('agrees with the tool outline sunk until the groove is P/2 wide at the pitch line', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 45, noNaN: true }),
        fc.double({ min: 5, max: 45, noNaN: true }),
        fc.double({ min: 0.2, max: 12, noNaN: true }),
        noses,
        (a, b, pitch, n) => {
          const half: HalfAngles = { leading: a, trailing: b };
          const kind = n.kind;
          const nose: Nose = { kind, size: n.share * largestNose(kind, half, pitch) };
          const target = 100;
          const from = target + pitch * 0.05;
          const r = infeedDepth({ side: 'external', half, pitch, nose, from, targetPitchDiameter: target });
          if (!r.ok) throw new Error(r.refusal);
          const expected = (from - target) / 2 + heightOfWidth({ a, b }, nose, pitch / 2);
          expect(r.radial).toBeCloseTo(expected, 7);
        },
      ),
    );
  });

  it('is undone by the pitch diameter at that infeed, outside and inside', () => {
    for (const side of ['external', 'internal'] as const) {
      const from = side === 'external' ? 10 : 8.4;
      const q = { side, half: 30, pitch: 1.5, nose: { kind: 'radius', size: 0.1 }, from } as const;
      const r = infeedDepth({ ...q, targetPitchDiameter: 9.026 });
      expect(r.ok && pitchDiameterAtInfeed(q, r.radial)).toBeCloseTo(9.026, 12);
    }
  });

  it('a blunter nose needs less infeed, so one depth for all tools would be wrong', () => {
    const at = (size: number): number => {
      const r = infeedDepth({
        side: 'external',
        half: 30,
        pitch: 1.5,
        nose: { kind: 'radius', size },
        from: 10,
        targetPitchDiameter: 9.026,
      });
      return r.ok ? r.radial : Number.NaN;
    };
    expect(at(0.05) - at(0.2)).toBeCloseTo(0.15, 9);
  });

  it('says how far a blunt nose leaves the root short of the mating crest', () => {
    const r = infeedDepth({
      side: 'external',
      half: 30,
      pitch: 1.5,
      nose: { kind: 'flat', size: 0.5 },
      from: 10,
      targetPitchDiameter: 9.026,
      rootMustReach: 8.376,
    });
    // Flat 0.5 meets the flanks where the groove is 0.5 wide: (0.75 − 0.5)/2 × cot 30° below the pitch line.
    expect(r.ok && r.rootShort).toBeCloseTo((9.026 - 0.25 * Math.sqrt(3) - 8.376) / 2, 9);
  });

  const base = {
    side: 'external',
    half: 30,
    pitch: 1.5,
    nose: { kind: 'sharp' },
    from: 10,
    targetPitchDiameter: 9.026,
  } as const;
  it.each([
    ['nose-too-big', { nose: { kind: 'flat', size: 0.75 } }],
    ['nose-too-big', { nose: { kind: 'radius', size: 0.45 } }],
    ['nose-too-big', { nose: { kind: 'full-form', size: 0.7 } }],
    ['not-positive', { nose: { kind: 'radius', size: -0.1 } }],
    ['not-positive', { nose: { kind: 'flat', size: Number.NaN } }],
    ['not-positive', { pitch: 0 }],
    ['not-positive', { from: Number.NaN }],
    ['parallel-flanks', { half: 0 }],
    ['angle-out-of-range', { half: 85 }],
    ['angle-out-of-range', { half: { leading: -3, trailing: 33 } }],
    ['nothing-to-cut', { from: 9 }],
    ['crest-vanishes', { from: 10.4 }],
    ['root-past-centre', { from: 1, targetPitchDiameter: 0.6 }],
  ] as const)('refuses %s', (refusal, change) => {
    const r = infeedDepth({ ...base, ...change });
    expect(r.ok ? 'accepted' : r.refusal).toBe(refusal);
  });

  it('the largest radius allowed is P/(4 cos A): beyond it the nose, not the flank, cuts at the pitch line', () => {
    expect(largestNose('radius', 30, 1.5)).toBeCloseTo(1.5 / (4 * Math.cos(Math.PI / 6)), 12);
  });
});
