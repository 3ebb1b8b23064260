import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grooveArea, pointOf, type Point } from '../../../src/core/cut/chip';
import { chipsOf, depthsBy, planPasses, type PassQuestion } from '../../../src/core/cut/passes';
import { PASS_HOLDS, PASS_RULES } from '../../../src/core/job';

const SHARP: Point = { half: 30, flat: 0, radius: 0 };
const steps = (list: readonly number[]): number[] => list.map((x, i) => x - (list[i - 1] ?? 0));

describe('insert makers’ rule', () => {
  // Tool makers' tables of infeed, radial depth per pass, P 1.5 and P 3.
  it.each([
    [0.866, [0.237, 0.196, 0.179, 0.138, 0.116]],
    [1.732, [0.387, 0.32, 0.293, 0.225, 0.189, 0.167, 0.151]],
  ])('%d mm deep', (depth, printed) => {
    const mine = steps(depthsBy('constant-chip', depth, printed.length, SHARP));
    mine.forEach((s, i) => expect(Math.abs(s - (printed[i] ?? 0))).toBeLessThan(0.0011));
  });
  it('after the first two every chip has the same area, and those two make one', () => {
    const depths = depthsBy('constant-chip', 1.04, 12, SHARP);
    const areas = steps(depths.map((x) => grooveArea(SHARP, x)));
    for (const a of areas.slice(2)) expect(a).toBeCloseTo((areas[0] ?? 0) + (areas[1] ?? 0), 12);
  });
  it('equal areas: a·√(i ÷ n); a flat tip shares out what it really takes', () => {
    expect(depthsBy('equal-area', 1, 4, SHARP)).toEqual([0.5, Math.SQRT1_2, Math.sqrt(0.75), 1]);
    const flat: Point = { half: 15, flat: 1.6, radius: 0 };
    const areas = steps(depthsBy('equal-area', 3.5, 9, flat).map((x) => grooveArea(flat, x)));
    for (const a of areas) expect(a).toBeCloseTo(grooveArea(flat, 3.5) / 9, 10);
  });
});

describe('area of a chip', () => {
  // tan 30° · 0.23² by a table of functions.
  it('of a sharp tool', () => expect(grooveArea(SHARP, 0.23)).toBeCloseTo(0.0305418, 6));

  /** By counting strips: half the width at each height, on the arc or on the flank. */
  const strips = (angle: number, radius: number, flat: number, depth: number): number => {
    const a = (angle * Math.PI) / 180;
    const n = 20_000;
    let sum = 0;
    for (let i = 0; i < n; i += 1) {
      const h = ((i + 0.5) * depth) / n;
      const tangent = radius * (1 - Math.sin(a));
      const half =
        h < tangent
          ? Math.sqrt(radius ** 2 - (radius - h) ** 2)
          : radius * Math.cos(a) + (h - tangent) * Math.tan(a);
      sum += (2 * half + flat) * (depth / n);
    }
    return sum;
  };
  it.each([
    [30, 0.2, 0, 1],
    [30, 0.2, 0, 0.05],
    [27.5, 0.3, 0, 0.9],
    [15, 0, 1.6, 3],
  ])('half angle %d°, nose %d, flat %d, depth %d: against strips', (half, radius, flat, depth) => {
    expect(grooveArea({ half, radius, flat }, depth)).toBeCloseTo(strips(half, radius, flat, depth), 4);
  });
  it('of an insert it is the standard’s own root', () => {
    expect(pointOf(30, { kind: 'full-form', size: 0.43 }, 0.25, 0).flat).toBe(0.25);
    expect(pointOf(30, { kind: 'full-form', size: 0.43 }, 0.1, 0.2)).toEqual({
      half: 30,
      flat: 0,
      radius: 0.2,
    });
  });
});

const question = fc.record({
  rule: fc.constantFrom(...PASS_RULES),
  hold: fc.constantFrom(...PASS_HOLDS),
  depth: fc.double({ min: 0.15, max: 6, noNaN: true }),
  least: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
  division: fc.constantFrom(0.005, 0.01, 0.0127, 0.0125, 0.02, 0.0174, 0.025),
  half: fc.constantFrom(30, 27.5, 15, 14.5, 0),
  nose: fc.constantFrom<Pick<Point, 'flat' | 'radius'>>(
    { flat: 0, radius: 0 },
    { flat: 0, radius: 0.1 },
    { flat: 0.4, radius: 0 },
  ),
  first: fc.double({ min: 0.03, max: 0.5, noNaN: true }),
  count: fc.integer({ min: 1, max: 60 }),
  chip: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
});
type Any = typeof question extends fc.Arbitrary<infer T> ? T : never;
const asked = (x: Any): PassQuestion => ({
  rule: x.rule,
  hold: x.hold,
  held: x.hold === 'first' ? x.first : x.hold === 'count' ? x.count : x.chip,
  least: x.least,
  depth: x.depth,
  division: x.division,
  // Between parallel flanks a sharp tool would take nothing.
  point: { half: x.half, ...(x.half === 0 ? { flat: 0.5, radius: 0 } : x.nose) },
});

describe('any plan', () => {
  it('reaches the depth to a division, never past it, and no pass but a lone one is below the least', () => {
    fc.assert(
      fc.property(question, (x) => {
        const q = asked(x);
        const a = planPasses(q);
        if (!a.ok) return;
        const end = (a.marks.at(-1) ?? 0) * q.division;
        expect(end).toBeLessThanOrEqual(q.depth + 2e-6 * q.division);
        expect(q.depth - end).toBeLessThan(q.division);
        if (a.marks.length === 1) return;
        for (const s of steps(a.marks))
          expect(s * q.division).toBeGreaterThanOrEqual(q.least - 2e-6 * q.division);
      }),
      { numRuns: 400 },
    );
  });
  it('keeps what is held: the chip, the first pass, the count', () => {
    fc.assert(
      fc.property(question, (x) => {
        const q = asked(x);
        const a = planPasses(q);
        if (!a.ok) return;
        if (q.hold === 'count') expect(a.marks.length).toBeLessThanOrEqual(q.held);
        if (q.hold === 'first') expect((a.marks[0] ?? 0) * q.division).toBeLessThanOrEqual(q.held + 1e-6);
        if (q.hold === 'chip')
          for (const c of chipsOf(a.marks, q.division, q.point))
            expect(c).toBeLessThanOrEqual(q.held * (1 + 1e-6));
      }),
      {
        numRuns: 400,
        // Filling the last passes up to the least made one larger than the chip.
        examples: [
          [
            {
              rule: 'constant-chip',
              hold: 'chip',
              depth: 0.15,
              least: 0.05220001740000001,
              division: 0.0174,
              half: 30,
              nose: { flat: 0, radius: 0.1 },
              first: 0.03,
              count: 1,
              chip: 0.013340828986228398,
            },
          ],
        ],
      },
    );
  });
  it('refuses a chip only where even the least pass passes it, or the passes would be far too many', () => {
    fc.assert(
      fc.property(question, (x) => {
        const q = asked({ ...x, hold: 'chip' });
        const a = planPasses(q);
        if (a.ok || a.refusal === 'too-many' || a.refusal === 'dial-too-coarse') return;
        // Brute force: whether any rising whole settings keep both, counted back from the full depth.
        const last = Math.floor(q.depth / q.division + 1e-6);
        const least = Math.max(1, Math.ceil(q.least / q.division - 1e-6));
        const area = (m: number): number => grooveArea(q.point, m * q.division);
        const reachable = new Array<boolean>(last + 1).fill(false);
        reachable[0] = true;
        for (let to = 1; to <= last; to += 1)
          for (let from = 0; from < to && !reachable[to]; from += 1)
            reachable[to] =
              (reachable[from] ?? false) &&
              (to - from >= least || (to === last && from === 0)) &&
              area(to) - area(from) <= q.held * (1 + 1e-9);
        expect(reachable[last]).toBe(false);
      }),
      { numRuns: 150 },
    );
  });
  it('each setting is within half a division of its own cumulative depth where no least is in the way', () => {
    fc.assert(
      fc.property(question, (x) => {
        const q = { ...asked(x), hold: 'count', held: x.count, least: 1e-6 } as const;
        const a = planPasses(q);
        if (!a.ok || a.marks.length < x.count) return;
        const exact = depthsBy(q.rule, q.depth, x.count, q.point);
        a.marks.forEach((m, i) => {
          // Where rule's steps are finer than the dial one division each is the least there is.
          if (steps(exact).some((s) => s < q.division)) return;
          const off = Math.abs(m * q.division - (exact[i] ?? 0));
          expect(off).toBeLessThanOrEqual(q.division * (i === a.marks.length - 1 ? 1 : 0.5) + 1e-6);
        });
      }),
      { numRuns: 300 },
    );
  });
});

describe('what can’t be', () => {
  const q: PassQuestion = {
    rule: 'constant-chip',
    hold: 'count',
    held: 10,
    least: 0.025,
    depth: 1,
    division: 0.01,
    point: SHARP,
  };
  it.each([
    [{ depth: 0 }, 'not-positive'],
    [{ depth: Number.NaN }, 'not-positive'],
    [{ depth: 0.005 }, 'dial-too-coarse'],
    [{ held: 500 }, 'too-many'],
    [{ hold: 'chip', held: 0.001 }, 'chip-below-least'],
    [{ hold: 'first', held: 0.015 }, 'first-below-least'],
  ] as const)('%o: %s', (over, refusal) => {
    expect(planPasses({ ...q, ...over })).toMatchObject({ ok: false, refusal });
  });
  it('fewer passes rather than rubbing: 40 asked of 1 mm, none under 0.05', () => {
    const a = planPasses({ ...q, held: 40, least: 0.05 });
    expect(a.ok && a.marks.length).toBeLessThanOrEqual(20);
    expect(a.ok && a.byRule).toBe(40);
    expect(a.ok && Math.min(...steps(a.marks))).toBeGreaterThanOrEqual(5);
  });
});
