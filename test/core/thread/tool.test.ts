import { describe, expect, it } from 'vitest';
import { catalogue, threadById, type Thread } from '../../../src/core/thread';
import { profileFigures } from '../../../src/core/thread/basic-profile';
import { infeedFromCrest, largestReaching, type Nose } from '../../../src/core/thread/depth';
import { toolForm } from '../../../src/core/thread/tool';

const get = (id: string): Thread => {
  const t = threadById(id);
  if (!t) throw new Error(id);
  return t;
};

/** Depth from the crest with a nose, mm. */
const depth = (id: string, nose: Nose, side: 'external' | 'internal' = 'external'): number => {
  const { half, pitch, addendum, reach } = toolForm(get(id), side);
  const a = infeedFromCrest({ half, pitch, nose, addendum, reach });
  if (!a.ok) throw new Error(a.refusal);
  return a.radial;
};
const full = (id: string, side: 'external' | 'internal' = 'external'): number =>
  depth(id, { kind: 'full-form', size: toolForm(get(id), side).tip }, side);
const round = (id: string, r: number): number => depth(id, { kind: 'radius', size: r });
const flat = (id: string, f: number, side: 'external' | 'internal' = 'external'): number =>
  depth(id, { kind: 'flat', size: f }, side);
const IN = 25.4;

describe('depth of a full-form insert: the standard’s own depth of thread', () => {
  // P 1.5: ISO 68-1 h3 = 0.613434 P = 0.920; H1 = 0.541266 P = 0.812.
  it('M10', () => {
    expect(full('iso-coarse:M10')).toBeCloseTo(0.92, 3);
    expect(full('iso-coarse:M10', 'internal')).toBeCloseTo(0.812, 3);
  });
  it.each([
    // BS 84 ½ in, 12 tpi: depth of thread 0.0534 in.
    ['bsw:1/2-12', 0.0534 * IN, 0.0013],
    // BS 93, 0 BA: depth 0.6 mm.
    ['ba:0', 0.6, 5e-6],
    // ISO 2901 (Table of profile dimensions): P 5, h3 = 2.75; P 1.5, h3 = 0.9; P 12, h3 = 6.5; P 14, h3 = 8.
    ['tr:Tr28x5', 2.75, 1e-9],
    ['tr:Tr8x1.5', 0.9, 1e-9],
    ['tr:Tr50x12', 6.5, 1e-9],
    ['tr:Tr60x14', 8, 1e-9],
    // ASME B1.5, 10 tpi: 0.0500 basic + 0.010 clearance; 16 tpi: 0.03125 + 0.005.
    ['acme:1/2-10', 0.06 * IN, 1e-9],
    ['acme:1/4-16', 0.03625 * IN, 1e-9],
    // ASME B1.8, 10 tpi: 0.3 P + 0.010.
    ['stub-acme:1/2-10', 0.04 * IN, 1e-9],
    // ASME B1.9: h = 0.66271 P.
    ['buttress:2-8', 0.66271 * (IN / 8), 1e-5],
    // DIN 405-1: h3 = 0.5 P.
    ['round:Rd20x1/8', 0.5 * (IN / 8), 2e-5],
    // BS 811: 0.5327 P.
    ['cycle:5/16-26', 0.5327 * (IN / 26), 1e-4],
    // ASME B1.20.1: height 0.8 P.
    ['npt:1/2-14', 0.8 * (IN / 14), 1e-9],
    // Handbook of gearing, 14½° worms: whole depth 0.6866 of the axial pitch; 20°: 2.2 modules.
    ['worm-dp-29:10', 0.6866 * ((Math.PI * IN) / 10), 5e-4],
    ['worm-module:2', 4.4, 1e-9],
    // ASME B1.15: UNJ external minor D − 1.15470 P with the largest root radius.
    ['unj:1/4-20', (1.1547 / 2) * (IN / 20), 1e-4],
  ])('%s', (id, printed, within) => {
    expect(Math.abs(full(id) - printed)).toBeLessThanOrEqual(within);
  });
});

describe('the half-angle in the depth, form by form', () => {
  // Multiples of P printed by the standards for their own roots, cut with a plain tool of that nose.
  it('60°: 0.757772 P − r', () => expect(round('iso-coarse:M10', 0.1)).toBeCloseTo(0.757772 * 1.5 - 0.1, 5));
  it('55°: 0.640327 P at r = 0.137329 P', () =>
    expect(round('bsw:1-8', 0.137329 * 3.175)).toBeCloseTo(0.640327 * 3.175, 5));
  it('47.5°: 0.6 P at r = 0.1808346 P', () => expect(round('ba:0', 0.1808346)).toBeCloseTo(0.6, 5));
  it('30°: 0.5 P + 0.25 with a flat of 0.366 P − 0.536 × 0.25', () =>
    expect(flat('tr:Tr28x5', 0.3660254 * 5 - 0.5358984 * 0.25)).toBeCloseTo(2.75, 6));
  // Flat of the tool for 10 tpi Acme: 0.0319 in (handbook table of Acme tool widths).
  it('29°: 0.060 in at 10 tpi with the handbook’s tool of 0.0319 in', () =>
    expect(flat('acme:1/2-10', 0.0319 * IN) / IN).toBeCloseTo(0.06, 3));
  it('7° and 45°: 0.66271 P at r = 0.07141 P', () =>
    expect(round('buttress:2-8', 0.07141 * 3.175)).toBeCloseTo(0.66271 * 3.175, 4));
  it('round: 0.5 P at r = 0.23851 P', () =>
    expect(round('round:Rd20x1/8', 0.23851 * 3.175)).toBeCloseTo(0.5 * 3.175, 4));
  // Width of the worm tool at its end 0.31 of the pitch (handbook).
  it('14½° worm: 0.6866 P with a tool 0.31 P wide', () => {
    const P = (Math.PI * IN) / 10;
    expect(flat('worm-dp-29:10', 0.3095 * P) / P).toBeCloseTo(0.6866, 3);
  });
});

describe('the largest nose that reaches the root', () => {
  const largest = (id: string, kind: 'radius' | 'flat', side: 'external' | 'internal' = 'external') => {
    const { half, pitch, reach } = toolForm(get(id), side);
    return (largestReaching(kind, half, pitch, reach) ?? NaN) / pitch;
  };
  it('is the basic profile’s own flat, P/4 outside and P/8 inside, and H/4 as a radius (ISO 68-1)', () => {
    expect(largest('iso-coarse:M10', 'flat')).toBeCloseTo(1 / 4, 9);
    expect(largest('iso-coarse:M10', 'flat', 'internal')).toBeCloseTo(1 / 8, 9);
    expect(largest('iso-coarse:M10', 'radius')).toBeCloseTo(0.216506, 6);
  });
  it('is the standard’s root radius where crests are rounded alike', () => {
    expect(largest('bsw:1/2-12', 'radius')).toBeCloseTo(0.137329, 5);
    expect(largest('ba:0', 'radius')).toBeCloseTo(0.1808346, 5);
    expect(largest('cycle:5/16-26', 'radius')).toBeCloseTo(1 / 6, 4);
  });
  it('is 0.366 P for Tr and 0.3707 P for Acme, the flats without clearance', () => {
    expect(largest('tr:Tr28x5', 'flat')).toBeCloseTo(0.366, 3);
    expect(largest('acme:1/2-10', 'flat')).toBeCloseTo(0.3707, 4);
  });
  it('leaves a root exactly where the mating crest stands, and short beyond it, for every family', () => {
    const seen = new Set<string>();
    for (const t of catalogue()) {
      if (t.form === 'square' || seen.has(t.form)) continue;
      seen.add(t.form);
      for (const side of ['external', 'internal'] as const)
        for (const kind of ['radius', 'flat'] as const) {
          const { half, pitch, addendum, reach } = toolForm(t, side);
          const size = largestReaching(kind, half, pitch, reach) ?? NaN;
          const at = (s: number) => {
            const a = infeedFromCrest({ half, pitch, nose: { kind, size: s }, addendum, reach });
            return a.ok ? (a.rootShort ?? NaN) : NaN;
          };
          expect(at(size * 0.999999)).toBeLessThan(0.0005);
          expect(at(size * 0.9)).toBeLessThan(at(size * 0.95));
          if (Number.isFinite(at(size * 1.05))) expect(at(size * 1.05)).toBeGreaterThan(0);
        }
    }
    expect(seen.size).toBe(14);
  });
});

describe('the basic profile in figures', () => {
  const of = (id: string) => profileFigures(get(id));
  it('M10 (ISO 68-1, P 1.5): H 1.299, overlap 0.812, screw 0.920 deep, crest 0.188, root R 0.217', () => {
    const f = of('iso-coarse:M10');
    expect(f.sharpHeight).toBeCloseTo(1.299, 3);
    expect(f.engaged).toBeCloseTo(0.812, 3);
    expect(f.screw.depth).toBeCloseTo(0.92, 3);
    expect(f.screw.crest.kind).toBe('flat');
    expect(f.screw.crest.size).toBeCloseTo(0.1875, 6);
    expect(f.screw.root.kind).toBe('radius');
    expect(f.screw.root.size).toBeCloseTo(0.2165, 4);
    expect(f.nut?.crest.size).toBeCloseTo(0.375, 6);
    expect(f.nut?.root.size).toBeCloseTo(0.1875, 6);
  });
  it('½ BSW (BS 84): H 0.0800, depth 0.0534, radius 0.0114 in', () => {
    const f = of('bsw:1/2-12');
    expect([f.sharpHeight, f.screw.depth, f.screw.root.size].map((x) => x?.toFixed(4))).toEqual([
      '0.0800',
      '0.0534',
      '0.0114',
    ]);
    expect(f.screw.crest).toEqual(f.screw.root);
  });
  it('Acme 10 tpi (ASME B1.5): crest flat 0.0371, root flat of the screw 0.0319 in', () => {
    const f = of('acme:1/2-10');
    expect(f.screw.crest.size.toFixed(4)).toBe('0.0371');
    expect(f.screw.root.size.toFixed(4)).toBe('0.0319');
  });
  it('Tr P 5 (ISO 2901): H 9.330, flats 1.830 and 1.696', () => {
    const f = of('tr:Tr28x5');
    expect([f.sharpHeight, f.screw.crest.size, f.screw.root.size].map((x) => x?.toFixed(3))).toEqual([
      '9.330',
      '1.830',
      '1.696',
    ]);
  });
  it('round (DIN 405-1, 8 tpi): both 0.5 P deep, root radii 0.23851 P and 0.22105 P', () => {
    const f = of('round:Rd20x1/8');
    expect(f.screw.depth).toBeCloseTo(1.5875, 4);
    expect(f.nut?.depth).toBeCloseTo(1.5875, 4);
    expect(f.screw.root.size).toBeCloseTo(0.757, 3);
    expect(f.nut?.root.size).toBeCloseTo(0.702, 3);
  });
  it('worms: axial pitch π m, addendum m, depth 2.2 m; 14½° flats 0.335 and 0.310 of the pitch', () => {
    const m2 = of('worm-module:2');
    expect([m2.pitch, m2.screw.addendum, m2.screw.depth].map((x) => x.toFixed(3))).toEqual([
      '6.283',
      '2.000',
      '4.400',
    ]);
    expect(m2.nut).toBeNull();
    const dp = of('worm-dp-29:10');
    expect((dp.screw.crest.size / dp.pitch).toFixed(3)).toBe('0.335');
    expect((dp.screw.root.size / dp.pitch).toFixed(2)).toBe('0.31');
    expect(dp.unit).toBe('in');
  });
  it('screw and nut never touch at crest or root, and overlap; for every catalogued thread', () => {
    for (const t of catalogue()) {
      const f = profileFigures(t);
      expect(f.screw.depth, t.id).toBeGreaterThanOrEqual(f.engaged - 1e-6);
      if (f.nut) expect(f.nut.depth, t.id).toBeGreaterThanOrEqual(f.engaged - 1e-6);
      expect(f.engaged, t.id).toBeGreaterThan(0);
      for (const m of [f.screw, f.nut])
        if (m) {
          expect(m.crest.size, t.id).toBeGreaterThan(0);
          expect(m.root.size, t.id).toBeGreaterThan(0);
        }
    }
  });
});
