import { describe, expect, it } from 'vitest';
import { numberStep } from '../../src/elements/gauge-scale';
import { corners, flats, roundedPath, type ProfileShape } from '../../src/elements/profile-path';

const shape = (s: Partial<ProfileShape>): ProfileShape => ({
  pitch: 1,
  flanks: [30, 30],
  depth: 1,
  pitchDepth: 0.5,
  crestRadius: 0,
  rootRadius: 0,
  ...s,
});

/** Arc of the path: start, radius, sweep, end. */
const arcs = (path: string) =>
  [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)A([\d.]+) [\d.]+ 0 0 ([01]) (-?[\d.]+) (-?[\d.]+)/g)].map((m) =>
    m.slice(1).map(Number),
  );

describe('flats of a drawn profile', () => {
  it('are P/8 and P/4 for the ISO metric basic profile', () => {
    // ISO 68-1: H = 0.866025P, crest truncation H/8, root truncation H/4, pitch line 3H/8 below the crest.
    const h = Math.sqrt(3) / 2;
    const f = flats(shape({ depth: (5 / 8) * h, pitchDepth: (3 / 8) * h }));
    expect(f.crest).toBeCloseTo(1 / 8, 12);
    expect(f.root).toBeCloseTo(1 / 4, 12);
  });

  it('are 0.366P for a trapezoidal thread without clearance', () => {
    // ISO 2901: H1 = 0.5P, flats 0.366P.
    const f = flats(shape({ flanks: [15, 15], depth: 0.5, pitchDepth: 0.25 }));
    expect(f.crest).toBeCloseTo(0.366, 3);
    expect(f.root).toBeCloseTo(0.366, 3);
  });

  it('are 0.26384P at the crest of a 3°/30° buttress thread', () => {
    // DIN 513: H1 = 0.75P, w = 0.26384P; the pitch line halves the thread.
    const f = flats(shape({ flanks: [3, 30], depth: 0.75, pitchDepth: 0.375 }));
    expect(f.crest).toBeCloseTo(0.26384, 4);
  });
});

describe('rounded outline', () => {
  it('touches crest and root of a Whitworth thread with one arc each', () => {
    // BS 84: depth 0.640327P, radius 0.137329P, both ends rounded, 27.5° flanks.
    const path = roundedPath(
      corners(
        shape({
          flanks: [27.5, 27.5],
          depth: 0.640327,
          pitchDepth: 0.3201635,
          crestRadius: 0.137329,
          rootRadius: 0.137329,
        }),
        2,
      ),
      1000,
    );
    const all = arcs(path);
    expect(all).toHaveLength(3); // crest, root, crest between the two cut ends
    for (const [x1 = 0, y1 = 0, r = 0, sweep, x2 = 0, y2 = 0] of all) {
      expect(r).toBeCloseTo(137.33, 1);
      expect(y1).toBeCloseTo(y2, 1);
      const sagitta = r - Math.sqrt(r * r - ((x2 - x1) / 2) ** 2);
      expect(sweep === 1 ? y1 - sagitta : y1 + sagitta).toBeCloseTo(sweep === 1 ? 0 : 640.33, 0);
    }
  });

  it('rounds two corners where the radius is too small to reach both flanks', () => {
    const path = roundedPath(
      corners(shape({ flanks: [15, 15], depth: 0.5, pitchDepth: 0.25, rootRadius: 0.05 }), 2),
      1000,
    );
    expect(arcs(path)).toHaveLength(4); // two in the whole groove, one in each half groove at the ends
  });
});

describe('numbers of the speed scale', () => {
  it('are 1, 2 or 5 times a power of ten and six at most', () => {
    for (let max = 10; max < 9000; max += 7) {
      const step = numberStep(max);
      expect(max / step).toBeLessThanOrEqual(6.01);
      expect(max / step).toBeGreaterThan(2);
      expect([1, 2, 5]).toContain(Number(step.toExponential().charAt(0)));
    }
  });
});
