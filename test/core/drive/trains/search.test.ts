import { describe, expect, it } from 'vitest';
import {
  fit,
  handOf,
  searchTrains,
  trainRatio,
  type Gearing,
  type SearchOptions,
  type Stages,
} from '../../../../src/core/drive/trains';
import { compare, lead, mul, ratio, sub, type Lead, type Ratio } from '../../../../src/core/quantity';

const OPEN = { shafts: null, least: null, most: null, studGap: null, studs: null, clearance: null };
const gearing = (wheels: readonly number[], more: Partial<Gearing> = {}): Gearing => ({
  wheels: [...wheels].sort((a, b) => a - b),
  fixed: ratio(1),
  box: [],
  screwLead: ratio(127, 40),
  shaftTurns: 'either',
  banjo: OPEN,
  mounted: null,
  ...more,
});
const OPTIONS: SearchOptions = { hand: 'right', pairs: 2, order: 'error', keep: 12, within: 20_000 };
const best = (g: Gearing, l: Lead, o: Partial<SearchOptions> = {}) =>
  searchTrains(g, l, { ...OPTIONS, ...o }).trains[0];
const mm = (n: number, d = 1): Lead => lead(ratio(n, d));
const inch = (tpi: number): Lead => lead(ratio(127, 5 * tpi));
const driven = (s: Stages) => s.map((c) => [c[0], c.at(-1)]);

/** 1 in = 25.4 mm = 127/5 mm, so a wheel of 127 teeth turns inches into millimetres without a rest. */
describe('conversion wheels, by arithmetic', () => {
  it('3 mm on a 6 tpi screw is 90 to 127', () => {
    const t = best(gearing([90, 127], { screwLead: ratio(127, 30) }), mm(3), { pairs: 1 });
    expect(t).toBeUndefined(); // No third wheel to make them meet while the shafts' distance isn't known.
    const direct = gearing([90, 127], { screwLead: ratio(127, 30), banjo: { ...OPEN, shafts: 217 } });
    expect(best(direct, mm(3), { pairs: 1 })).toMatchObject({ stages: [[90, 127]], exact: true, ppm: 0 });
  });
  it('127 with 120 and 127 with 100 cut inch threads exactly from a 3 mm screw', () => {
    // 20 tpi = 127/100 mm; ÷ 3 mm = 127/300 = (127/120)·(40/100) = (127/100)·(30/90).
    const screw = { screwLead: ratio(3) };
    expect(best(gearing([127, 120, 40, 100], screw), inch(20))).toMatchObject({
      exact: true,
      lead: ratio(127, 100),
    });
    const t = best(gearing([127, 100, 30, 90], screw), inch(20));
    expect(t?.exact).toBe(true);
    expect(t && compare(trainRatio(t.stages), ratio(127, 300))).toBe(0);
  });
  it('63 and 80 stand in for 100 and 127 at +125 ppm: 63·127 = 8001', () => {
    // 1.5 mm on 8 tpi wants 60/127; 63/80 in place of 100/127 gives 60/100 × 63/80 = 189/400.
    const t = best(gearing([63, 80, 60, 100]), mm(3, 2));
    expect(t?.exact).toBe(false);
    expect(t?.ppm).toBeCloseTo(125, 9);
    expect(t?.lead).toEqual(mul(ratio(3, 2), ratio(8001, 8000)));
  });
  it('37 and 47 at −212.77 ppm: 37·127 = 4699', () => {
    const t = best(gearing([37, 47, 60, 100]), mm(3, 2));
    expect(t?.ppm).toBeCloseTo(-1e6 / 4700, 6);
  });
  it('a module worm by 22/7 for π is +402.5 ppm', () => {
    // Lead π·1 mm on a 2 mm screw wants π/2; 22/7 ÷ 2 = 11/7 = 55/35.
    const t = best(gearing([55, 35, 44], { screwLead: ratio(2) }), lead(ratio(1), true), { pairs: 1 });
    expect(t?.exact).toBe(false);
    expect(driven(t?.stages ?? [])).toEqual([[55, 35]]);
    expect(t?.ppm).toBeCloseTo((22 / 7 / Math.PI - 1) * 1e6, 3);
  });
});

describe('what a train is made of', () => {
  const set = [20, 24, 30, 32, 40, 50, 60, 80];
  it('fixed gearing and box levers are part of the ratio', () => {
    const g = gearing(set, {
      fixed: ratio(1, 2),
      box: [
        { name: 'A', ratio: ratio(1) },
        { name: 'B', ratio: ratio(2) },
      ],
    });
    const found = searchTrains(g, inch(20), { ...OPTIONS, keep: 60, within: 0 }).trains;
    // 20 tpi on 8 tpi wants 2/5: 4/5 of the wheels at lever A, 2/5 at B, the spindle's own half taken off.
    expect(found.length).toBeGreaterThan(4);
    for (const t of found) {
      expect(t.exact).toBe(true);
      expect(compare(trainRatio(t.stages), t.box === 'A' ? ratio(4, 5) : ratio(2, 5))).toBe(0);
    }
    expect(new Set(found.map((t) => t.box))).toEqual(new Set(['A', 'B']));
  });
  it('only wheels of the set are used, each as often as there are', () => {
    const found = searchTrains(gearing(set), inch(13), {
      ...OPTIONS,
      keep: 200,
      pairs: 3,
      within: 100_000,
    }).trains;
    expect(found.length).toBeGreaterThan(50);
    for (const t of found) {
      const used = t.stages.flat();
      expect(new Set(used).size).toBe(used.length);
      expect(used.every((z) => set.includes(z))).toBe(true);
    }
  });
  it('no set of drivers and driven wheels stands twice', () => {
    const found = searchTrains(gearing(set), inch(10), { ...OPTIONS, keep: 500 }).trains;
    const names = found.map((t) =>
      JSON.stringify([t.stages.map((s) => s[0]).sort(), t.stages.map((s) => s.at(-1)).sort(), t.box]),
    );
    expect(new Set(names).size).toBe(names.length);
  });
  it('fewest changes first, where ease is asked for', () => {
    // 10 tpi on 8 tpi wants 4/5. Mounted is 40 by 60 to 80, which cuts 16 tpi: 4/5 = 24/30 changes two wheels,
    // 64/80 would change one but isn't in the set; 40/50 changes one.
    const g = gearing(set, { mounted: { stages: [[40, 60, 80]], box: null } });
    const [first, second] = searchTrains(g, inch(10), { ...OPTIONS, order: 'ease', within: 0 }).trains;
    expect(first).toMatchObject({ stages: [[40, 60, 50]], changes: 1, changed: [[false, false, true]] });
    expect(second?.changes).toBeGreaterThan(1);
  });
});

describe('hand of thread', () => {
  it('each mesh turns the sense round; work and screw in one sense cut the hand of the screw', () => {
    expect(handOf([[40, 60, 80]], 'same')).toBe('right');
    expect(handOf([[40, 60, 80]], 'opposite')).toBe('left');
    expect(handOf([[40, 60, 50, 80]], 'same')).toBe('left');
    expect(
      handOf(
        [
          [40, 60],
          [20, 80],
        ],
        'same',
      ),
    ).toBe('right');
    expect(
      handOf(
        [
          [40, 60],
          [20, 30, 80],
        ],
        'same',
      ),
    ).toBe('left');
    expect(handOf([[40, 60]], 'either')).toBeNull();
    expect(handOf([[40, 60]], null)).toBeNull();
  });
  it.each(['right', 'left'] as const)('a %s-hand search gives trains of that hand alone', (hand) => {
    const g = gearing([20, 25, 30, 40, 45, 50, 60, 80], { shaftTurns: 'same' });
    const { trains } = searchTrains(g, inch(16), { ...OPTIONS, hand, keep: 40 });
    expect(trains.length).toBeGreaterThan(5);
    for (const t of trains) expect(handOf(t.stages, 'same')).toBe(hand);
  });
});

/** Every train by trying every arrangement, with its own arithmetic. */
const bruteForce = (wheels: readonly number[], target: Ratio, allow: (s: Stages) => boolean): number[] => {
  const sets = new Map<string, number>();
  const n = wheels.length;
  const note = (s: Stages): void => {
    if (!allow(s)) return;
    const name = JSON.stringify([
      s.map((c) => c[0] ?? 0).sort((x, y) => x - y),
      s.map((c) => c.at(-1) ?? 0).sort((x, y) => x - y),
    ]);
    const r = s.reduce((p, c) => mul(p, ratio(c[0] ?? 1, c.at(-1) ?? 1)), ratio(1));
    const off = sub(mul(r, ratio(target.d, target.n)), 1);
    sets.set(name, Math.abs(Number(off.n) / Number(off.d)));
  };
  const w = (i: number): number => wheels[i] ?? 0;
  for (let a = 0; a < n; a += 1)
    for (let b = 0; b < n; b += 1) {
      if (a === b) continue;
      for (let i = 0; i < n; i += 1) {
        if (i === a || i === b) continue;
        note([[w(a), w(i), w(b)]]);
      }
      for (let c = 0; c < n; c += 1)
        for (let d = 0; d < n; d += 1)
          if (new Set([a, b, c, d]).size === 4)
            note([
              [w(a), w(b)],
              [w(c), w(d)],
            ]);
    }
  return [...sets.values()].sort((x, y) => x - y);
};

/** A small generator of its own, so that a failure can be run again. */
const random = (seed: number) => () => {
  seed = (seed * 1103515245 + 12345) % 2147483648;
  return seed / 2147483648;
};

describe('the clever search against trying everything', () => {
  it.each([1, 2, 3, 4, 5, 6])('random set %i: the same errors in the same order', (seed) => {
    const next = random(seed);
    const wheels = Array.from({ length: 9 }, () => 20 + Math.floor(next() * 60)).sort((a, b) => a - b);
    const target = ratio(1 + Math.floor(next() * 300), 1 + Math.floor(next() * 300));
    // No limit but what parity leaves: one idler in a simple train, none in a compound one.
    const g = gearing(wheels, { screwLead: ratio(1), shaftTurns: 'same' });
    const expected = bruteForce(wheels, target, () => true).filter((e) => e <= 0.02);
    const found = searchTrains(g, lead(target), { ...OPTIONS, keep: 10_000 }).trains;
    expect(found.length).toBe(expected.length);
    found.forEach((t, i) => expect(Math.abs(t.ppm) / 1e6).toBeCloseTo(expected[i] ?? -1, 12));
    expect(found.filter((t) => t.exact).length).toBe(expected.filter((e) => e === 0).length);
    // A short list is the head of the long one.
    const few = searchTrains(g, lead(target), { ...OPTIONS, keep: 5 }).trains;
    expect(few).toEqual(found.slice(0, 5));
  });

  it.each([11, 12, 13])(
    'random set %i on a banjo with limits: what it leaves is what fits in some order',
    (seed) => {
      const next = random(seed);
      const wheels = Array.from({ length: 9 }, () => 20 + Math.floor(next() * 60)).sort((a, b) => a - b);
      const banjo = { shafts: 140, least: 60, most: 130, studGap: 50, studs: 1, clearance: 15 };
      const g = gearing(wheels, { screwLead: ratio(1), shaftTurns: 'same', banjo });
      const target = ratio(1, 2);
      const expected = bruteForce(wheels, target, (s) => fit(s, banjo).fits).filter((e) => e <= 0.05);
      const found = searchTrains(g, lead(target), { ...OPTIONS, keep: 10_000, within: 50_000 }).trains;
      expect(found.map((t) => Math.round(Math.abs(t.ppm) * 1e3))).toEqual(
        expected.map((e) => Math.round(e * 1e9)),
      );
      for (const t of found) expect(fit(t.stages, banjo).fits).toBe(true);
    },
  );
});
