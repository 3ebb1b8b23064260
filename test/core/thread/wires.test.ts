import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bestWire,
  chooseWires,
  errorPerDegree,
  gaugeLengths,
  overWires,
  pitchDiameterFromReading,
  pitchDiameterOverWires,
  pitchOverCrests,
  remainingInfeed,
  threadMicrometer,
  wireRange,
  wireSeat,
  type OwnedWire,
  type WireThread,
} from '../../../src/core/thread/wires';

const dbl = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Screws and wires a lathe could meet: lead angle up to about 25°, wires within a quarter of the best one. */
const screw = fc
  .record({
    half: dbl(10, 32),
    pitch: dbl(0.3, 8),
    starts: fc.integer({ min: 1, max: 4 }),
    size: dbl(3, 40),
    share: dbl(0.9, 1.25),
  })
  .map(({ half, pitch, starts, size, share }) => {
    const thread: WireThread = { half, pitch, lead: pitch * starts };
    const e = Math.max(pitch * size, (pitch * starts) / Math.PI / Math.tan((25 * Math.PI) / 180));
    return { thread, e, wire: share * (bestWire(half, pitch) ?? 0) };
  });

/**
 * Least distance from the wire's centre line to a flank, by brute force: points of the helical surface are laid
 * out in space, closer and closer around the nearest, and their distance to a line is taken with vectors.
 */
const nearestFlank = (t: WireThread, e: number, r: number, leanDeg: number, side: 1 | -1): number => {
  const lean = (leanDeg * Math.PI) / 180;
  const u = [0, Math.cos(lean), Math.sin(lean)] as const;
  const half = ((t.half as number) * Math.PI) / 180;
  const distance = (rho: number, theta: number): number => {
    const z = (t.lead * theta) / (2 * Math.PI) + side * (t.pitch / 4 + (rho - e / 2) * Math.tan(half));
    const v = [rho * Math.cos(theta) - r, rho * Math.sin(theta), z] as const;
    const c = [v[1] * u[2] - v[2] * u[1], v[2] * u[0] - v[0] * u[2], v[0] * u[1] - v[1] * u[0]] as const;
    return Math.hypot(...c);
  };
  let [rho, theta, dr, dt] = [e / 2, 0, t.pitch * 0.8, 0.5];
  let best = distance(rho, theta);
  for (let level = 0; level < 24; level += 1) {
    const [r0, t0] = [rho, theta];
    for (let i = -6; i <= 6; i += 1) {
      for (let j = -6; j <= 6; j += 1) {
        const d = distance(r0 + (i * dr) / 6, t0 + (j * dt) / 6);
        if (d < best) [best, rho, theta] = [d, r0 + (i * dr) / 6, t0 + (j * dt) / 6];
      }
    }
    [dr, dt] = [dr / 2, dt / 2];
  }
  return best;
};

describe('a wire in a helical groove', () => {
  it('touches both flanks and enters neither', () => {
    fc.assert(
      fc.property(screw, ({ thread, e, wire }) => {
        const seat = wireSeat(thread, e, wire);
        if (!seat) throw new Error('no seat');
        for (const side of [1, -1] as const) {
          const d = nearestFlank(thread, e, seat.centreRadius, seat.lean, side);
          expect(Math.abs(d - wire / 2)).toBeLessThan(2e-5 * thread.pitch);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('lies as deep as it can: leaning more or less at that depth, it would enter the metal', () => {
    const thread: WireThread = { half: 14.5, pitch: 5.08, lead: 20.32 };
    const seat = wireSeat(thread, 26, 2.62);
    if (!seat) throw new Error('no seat');
    for (const change of [-1.5, 1.5]) {
      const d = nearestFlank(thread, 26, seat.centreRadius, seat.lean + change, 1);
      expect(d).toBeLessThan(2.62 / 2 - 1e-5);
    }
  });

  it('gives back the pitch diameter to a thousandth of a micrometre', () => {
    fc.assert(
      fc.property(screw, ({ thread, e, wire }) => {
        const m = overWires(thread, e, wire);
        if (!m.ok) throw new Error(m.refusal);
        expect(Math.abs((pitchDiameterOverWires(thread, m.over, wire) ?? 0) - e)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('comes to the plain formula as the lead comes to nought', () => {
    const t: WireThread = { half: 30, pitch: 1, lead: 1 };
    const m = overWires(t, 5000, 0.577);
    expect(m.ok && m.over - 5000).toBeCloseTo(3 * 0.577 - Math.sqrt(3) / 2, 6);
  });

  it('series and root form agree with each other, and with space, for small leads', () => {
    const t: WireThread = { half: 30, pitch: 1, lead: 1 };
    const [a, b, c] = (['solved', 'series', 'root'] as const).map((how) => {
      const m = overWires(t, 20, 0.577, how);
      return m.ok ? m.over : Number.NaN;
    }) as [number, number, number];
    expect(Math.abs(a - b)).toBeLessThan(1e-5);
    expect(Math.abs(b - c)).toBeLessThan(1e-6);
  });

  it.each([
    ['not-positive', { half: 30, pitch: 0, lead: 1 }, 9, 0.8],
    ['not-positive', { half: 30, pitch: 1.5, lead: 1.5 }, 9, Number.NaN],
    ['angle-out-of-range', { half: 85, pitch: 1.5, lead: 1.5 }, 9, 0.8],
    ['parallel-flanks', { half: 0, pitch: 1.5, lead: 1.5 }, 9, 0.8],
    // The flanks would meet beyond the axis, and so thin a wire lies there.
    ['no-seat', { half: 30, pitch: 1.5, lead: 0.1 }, 0.4, 0.05],
  ] as const)('refuses: %s', (refusal, thread, e, wire) => {
    const m = overWires(thread, e, wire);
    expect(m.ok ? 'accepted' : m.refusal).toBe(refusal);
  });

  it('a buttress thread: circle against both flanks, found by bisection, and no lead term claimed', () => {
    const t: WireThread = { half: { leading: 7, trailing: 45 }, pitch: 3, lead: 3 };
    const w = 1.6;
    const [a, b] = [7, 45].map((x) => (x * Math.PI) / 180) as [number, number];
    // Centre (x, y) over the flanks' meeting point, w/2 from both lines: by bisection on x for equal distances.
    const dist = (x: number, y: number, slope: number, sign: number): number =>
      y * Math.sin(slope) - sign * x * Math.cos(slope);
    let [lo, hi] = [-2, 2];
    const yFor = (x: number): number => (w / 2 + x * Math.cos(b)) / Math.sin(b);
    for (let i = 0; i < 80; i += 1) {
      const x = (lo + hi) / 2;
      if (dist(x, yFor(x), a, -1) > w / 2) hi = x;
      else lo = x;
    }
    const apex = 1.5 / (Math.tan(a) + Math.tan(b));
    const m = overWires(t, 30, w);
    expect(m.ok && m.over).toBeCloseTo(30 + 2 * (yFor(lo) - apex) + w, 9);
    expect(m.ok && m.method).toBe('none');
  });
});

describe('a reading and its doubt', () => {
  const t: WireThread = { half: 30, pitch: 1.5, lead: 1.5 };
  const e = 8.95;
  const w = 0.9;
  const over = ((): number => {
    const m = overWires(t, e, w);
    return m.ok ? m.over : Number.NaN;
  })();

  it('one wire and three wires tell the same of a round thread', () => {
    const r = pitchDiameterFromReading(
      t,
      { kind: 'one-wire', reading: { value: (over + 9.9) / 2, u: 0.002 }, major: { value: 9.9, u: 0.004 } },
      { value: w, u: 0 },
    );
    expect(r.ok && r.pitchDiameter).toBeCloseTo(e, 9);
    expect(r.ok && r.u).toBeCloseTo(Math.hypot(2 * 0.002, 0.004), 5);
  });

  it('compared with a cylinder, an error of the wires counts once, not three times (60°)', () => {
    const r = pitchDiameterFromReading(
      t,
      {
        kind: 'compared',
        cylinder: { value: 9, u: 0.001 },
        difference: { value: over - 2 * w - 9, u: 0.001 },
      },
      { value: w, u: 0.002 },
    );
    expect(r.ok && r.pitchDiameter).toBeCloseTo(e, 9);
    expect(r.ok && r.parts.wire).toBeCloseTo(0.002, 4);
  });

  it('agrees with errors thrown at random', () => {
    // A fixed linear congruence and the sum of twelve uniforms: no help from the module.
    let seed = 12345;
    const uniform = (): number => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648;
    const normal = (): number => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b, -6);
    const sqrt3 = Math.sqrt(3);
    const found: number[] = [];
    for (let i = 0; i < 20_000; i += 1) {
      const [m, wire, p] = [over + 0.003 * normal(), w + 0.001 * normal(), 1.5 + 0.002 * normal()];
      const cot = sqrt3;
      found.push(m - wire * 3 + (p / 2) * cot);
    }
    const mean = found.reduce((a, b) => a + b, 0) / found.length;
    const spread = Math.sqrt(found.reduce((a, x) => a + (x - mean) ** 2, 0) / found.length);
    const r = pitchDiameterFromReading(
      t,
      { kind: 'over', over: { value: over, u: 0.003 } },
      { value: w, u: 0.001 },
      0.002,
    );
    expect(r.ok && r.u !== null && Math.abs(r.u / spread - 1)).toBeLessThan(0.03);
  });

  it('a doubt that is not known leaves the whole not known', () => {
    const r = pitchDiameterFromReading(
      t,
      { kind: 'over', over: { value: over, u: 0.003 } },
      { value: w, u: null },
    );
    expect(r.ok && [r.u, r.parts.wire]).toEqual([null, null]);
    const m = { value: 1, u: null };
    expect(threadMicrometer({ value: 9, u: 0.01 }, { actual: m, shown: { value: 1.01, u: 0 } })).toEqual({
      value: 8.99,
      u: null,
    });
  });

  it('a wrong flank angle does no harm with the best wire', () => {
    const best = bestWire(30, 1.5) ?? 0;
    expect(errorPerDegree(30, 1.5, best)).toBeCloseTo(0, 12);
    // Direct difference of the plain formula, M held.
    const found = (half: number, wire: number): number => {
      const a = (half * Math.PI) / 180;
      return 10.4 - wire * (1 + 1 / Math.sin(a)) + 0.75 / Math.tan(a);
    };
    expect(errorPerDegree(30, 1.5, 1.1)).toBeCloseTo((found(30.01, 1.1) - found(29.99, 1.1)) / 0.02, 5);
  });
});

describe('what to measure with', () => {
  const shank = (id: string, diameter: number, count = 3): OwnedWire => ({
    id,
    diameter,
    measured: true,
    count,
  });
  const range = wireRange(30, 1.5, (3 / 8) * 1.5 * 0.866025, (1 / 4) * 1.5 * 0.866025) ?? {
    least: 0,
    most: 0,
  };

  it('a 60° wire works between level with the crest and touching at its edge (drawn with circles)', () => {
    // Apex to crest 7/8 H: circle with its top there, circle with its contact there.
    const crest = (7 / 8) * 0.8660254 * 1.5;
    expect(range.least).toBeCloseTo(crest / 1.5, 5);
    expect(range.most).toBeCloseTo(crest / 0.75, 5);
  });

  it('takes the nearest to the best wire that is usable and owned in threes', () => {
    const owned = [
      shank('thin', 0.7),
      shank('near', 0.9),
      shank('pair', 0.87, 2),
      shank('thick', 1.6),
      shank('far', 1.2),
    ];
    const order = chooseWires(30, 1.5, range, owned);
    expect(order.map((c) => c.wire.id)).toEqual(['near', 'far', 'pair', 'thin', 'thick']);
    expect(order.map((c) => c.fit)).toEqual(['suits', 'suits', 'suits', 'too-thin', 'too-thick']);
    expect(chooseWires(30, 1.5, range, owned, 2)[0]?.wire.id).toBe('pair');
    expect(chooseWires(0, 1.5, range, owned)).toEqual([]);
  });

  it('no-go gauges: turns are of the lead, not the pitch', () => {
    expect(gaugeLengths('iso-1502', 6, 30)).toMatchObject({ noGoTurns: 2, noGoLength: 12, goLength: 30 });
    expect(gaugeLengths('asme-b1.2', 2, 30)?.noGoLength).toBe(6);
    expect(gaugeLengths('iso-1502', 0, 30)).toBeNull();
  });

  it('eleven crests are ten pitches', () => {
    expect(pitchOverCrests({ value: 15, u: 0.1 }, 11)).toEqual({ value: 1.5, u: 0.01 });
    expect(pitchOverCrests({ value: 15, u: 0.1 }, 1)).toBeNull();
  });

  it('half of the excess is left to feed, more along a top slide at 29.5°', () => {
    // 0.1457 radially and 0.1674 along the slide: worked by hand for M10×1.5, E 9.2191 against 8.9277.
    const r = remainingInfeed(9.2191 - 8.9277, 29.5);
    expect(r.radial).toBeCloseTo(0.1457, 4);
    expect(r.along).toBeCloseTo(0.1674, 4);
    expect(remainingInfeed(0.2, null).along).toBeNull();
  });
});
