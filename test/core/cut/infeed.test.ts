import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alongFlank,
  handleTo,
  onScale,
  pastFlank,
  shiftBound,
  shifts,
  travelOf,
  usualAngle,
  usualInfeed,
} from '../../../src/core/cut/infeed';

const RAD = Math.PI / 180;

describe('along the top slide', () => {
  // Depth charts of the trade for 29°: 20 tpi 0.0371, 8 tpi 0.0928 in, of a depth of 0.649519 P.
  it.each([
    [20, 0.0371],
    [8, 0.0928],
  ])('%d tpi at 29°', (tpi, printed) =>
    expect(Math.abs(alongFlank(0.649519 / tpi, 29, 30).advance - printed)).toBeLessThan(0.0001),
  );
  // 1 ÷ cos, from a table of functions.
  it.each([
    [29, 1.14335],
    [29.5, 1.14896],
    [30, 1.1547],
  ])('1 ÷ cos %d°', (angle, printed) => expect(alongFlank(1, angle, 30).advance).toBeCloseTo(printed, 5));
  it('0.92 mm at 29.5°: 1.0570 along it, 0.52 along the axis, 0.0107 shaved off the other flank', () => {
    const a = alongFlank(0.92, 29.5, 30);
    expect(a.advance).toBeCloseTo(1.05704, 5);
    expect(a.creep).toBeCloseTo(0.5205, 4);
    expect(a.shaved).toBeCloseTo(0.0107, 4);
  });
  it('29.5° from square is 60.5° on a scale that counts from the axis, and back', () => {
    expect(onScale(29.5, 'from-axis')).toBe(60.5);
    expect(onScale(60.5, 'from-axis')).toBe(29.5);
    expect(onScale(29.5, 'from-cross-slide')).toBe(29.5);
  });
});

describe('what is usual', () => {
  it.each([
    [30, 29.5],
    [27.5, 27],
    [15, 14.5],
    [14.5, 14],
  ])('half angle %d°: modified flank at %d°', (half, angle) =>
    expect(usualAngle('modified-flank', half)).toBe(angle),
  );
  it('straight in for fine pitches, brass and inserts of the full form; square threads always', () => {
    const q = { pitch: 2, half: 30, material: 'mild-steel', nose: 'radius' };
    expect(usualInfeed(q)).toBe('modified-flank');
    expect(usualInfeed({ ...q, pitch: 1.5 })).toBe('radial');
    expect(usualInfeed({ ...q, material: 'brass' })).toBe('radial');
    expect(usualInfeed({ ...q, nose: 'full-form' })).toBe('radial');
    expect(usualInfeed({ ...q, half: 0 })).toBe('radial');
  });
  it('right-hand external is swung to the tailstock; internal and left-hand each the other way', () => {
    const way = (side: 'external' | 'internal', hand: 'right' | 'left', outwards = false) =>
      handleTo(side, travelOf(hand, outwards));
    expect(way('external', 'right')).toBe('tailstock');
    expect(way('internal', 'right')).toBe('headstock');
    expect(way('external', 'left')).toBe('headstock');
    expect(way('internal', 'left')).toBe('tailstock');
    expect(way('external', 'right', true)).toBe('headstock');
  });
  it('steeper than the flank is too steep', () => {
    expect(pastFlank(60.5, 30)).toBe(true);
    expect(pastFlank(30, 30)).toBe(false);
  });
});

describe('alternate flanks', () => {
  const plan = fc
    .array(fc.double({ min: 0.02, max: 0.4, noNaN: true }), { minLength: 1, maxLength: 25 })
    .map((list) =>
      list.map(
        (
          (sum) => (x: number) =>
            (sum += x)
        )(0),
      ),
    );
  const half = fc.constantFrom(30, 27.5, 15, { leading: 7, trailing: 45 }, { leading: 45, trailing: 7 });
  const angles = (h: number | { leading: number; trailing: number }) =>
    typeof h === 'number' ? { leading: h, trailing: h } : h;

  it('stay inside the finished groove, end in its middle, and never go behind it', () => {
    fc.assert(
      fc.property(plan, half, (depths, h) => {
        const at = shifts(h, depths);
        const end = depths.at(-1) ?? 0;
        const { leading, trailing } = angles(h);
        at.forEach((s, i) => {
          const x = depths[i] ?? 0;
          // The tool's corners at the surface against those of the finished groove.
          expect(s + x * Math.tan(leading * RAD)).toBeLessThanOrEqual(end * Math.tan(leading * RAD) + 1e-9);
          expect(-s + x * Math.tan(trailing * RAD)).toBeLessThanOrEqual(
            end * Math.tan(trailing * RAD) + 1e-9,
          );
          expect(s).toBeGreaterThanOrEqual(0);
        });
        expect(at.at(-1)).toBe(0);
      }),
      { numRuns: 300 },
    );
  });
  it('cut one flank at a time while steps grow no larger', () => {
    const depths = Array.from({ length: 10 }, (_, i) => 2 * Math.sqrt((i + 1) / 10));
    const at = shifts(15, depths);
    const t = Math.tan(15 * RAD);
    const front = at.map((s, i) => s + (depths[i] ?? 0) * t);
    const behind = at.map((s, i) => (depths[i] ?? 0) * t - s);
    for (let i = 1; i < 8; i += 1) {
      const [moves, stays] = i % 2 === 1 ? [front, behind] : [behind, front];
      expect((moves[i] ?? 0) - (moves[i - 1] ?? 0)).toBeGreaterThan(0);
      expect((stays[i] ?? 0) - (stays[i - 1] ?? 0)).toBeCloseTo(0, 9);
    }
  });
  it('a shift is bounded by (full depth − depth) × tan of the flank', () =>
    expect(shiftBound(30, 1, 0.4).ahead).toBeCloseTo(0.6 * Math.tan(30 * RAD), 12));
});
