import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nutRule, type NutRule } from '../../../src/core/cut';
import { lead, ratio } from '../../../src/core/quantity';

/**
 * A carriage in whole units of length. The spindle has turned so that the screw has carried a closed nut `x` units;
 * the groove repeats every `groove` units along the work, the places where the nut can close every `tooth` units
 * along the screw. The tool is in its groove when (z − x) is a whole number of grooves, the nut can close when it is
 * a whole number of teeth. Nothing of the rule's algebra (fractions in lowest terms) is used.
 */
const inGroove = (z: number, x: number, groove: number): boolean => (z - x) % groove === 0;
const canClose = (z: number, x: number, tooth: number): boolean => (z - x) % tooth === 0;

const size = fc.integer({ min: 1, max: 48 });
const teeth = fc.integer({ min: 4, max: 48 });
const rule = (tooth: number, groove: number, dial: { teeth: number; lines: number } | null): NutRule =>
  nutRule({
    lead: lead(ratio(groove, 7)),
    nutPitch: ratio(tooth, 7),
    halfNut: true,
    dial,
    exactRatio: true,
  });

describe('b: how far along the screw the same groove comes again', () => {
  it('is the smallest whole number of nut pitches that ends in a groove', () => {
    fc.assert(
      fc.property(size, size, (tooth, groove) => {
        let pitches = 1;
        while (!inGroove(pitches * tooth, 0, groove)) pitches += 1;
        expect(rule(tooth, groove, null).b).toBe(BigInt(pitches));
      }),
    );
  });
});

describe('a: how many spindle revs later, at one fixed stop', () => {
  it('is the first whole rev after which the nut can close in the groove', () => {
    fc.assert(
      fc.property(size, size, fc.integer({ min: -200, max: 200 }), (tooth, groove, stop) => {
        let revs = 1;
        // First closed at `stop` with x = stop; the screw then carries `groove` units in each spindle rev.
        while (!canClose(stop, stop + revs * groove, tooth)) revs += 1;
        expect(inGroove(stop, stop + revs * groove, groove)).toBe(true);
        expect(rule(tooth, groove, null).a).toBe(BigInt(revs));
      }),
    );
  });

  it('3 mm screw, 1.25 mm thread: every 12 revs, 49152 counts of 4096 a rev (worked example H26, own calculation)', () => {
    const { a } = nutRule({
      lead: lead(ratio(5, 4)),
      nutPitch: ratio(3),
      halfNut: true,
      dial: null,
      exactRatio: true,
    });
    expect((a ?? 0n) * 4096n).toBe(49_152n);
  });
});

/** Teeth gone by between carriage and screw, over many turns of the dial; does each closing fall in the groove? */
const closings = (tooth: number, groove: number, from: number, every: number): boolean[] =>
  Array.from({ length: 60 }, (_, turn) => inGroove(0, (from + turn * every) * tooth, groove));

describe('closing at a line of the dial, in any of sixty turns', () => {
  it('a line is called good exactly when every such closing falls in the groove', () => {
    fc.assert(
      fc.property(size, size, teeth, fc.integer({ min: 1, max: 24 }), (tooth, groove, n, lines) => {
        const r = rule(tooth, groove, { teeth: n, lines });
        for (let line = 1; line <= lines; line += 1) {
          if ((line * n) % lines !== 0) continue;
          const safe = closings(tooth, groove, (line * n) / lines, n).every(Boolean);
          const said = r.kind === 'anywhere' || (r.kind === 'lines' && r.lines.includes(line));
          expect(said).toBe(safe);
        }
        // A line that stands between two teeth can't be closed on, so it is never offered where lines are.
        if (r.kind === 'lines') for (const line of r.lines) expect((line * n) % lines).toBe(0);
      }),
      { numRuns: 1000 },
    );
  });

  it('as many places in a turn of the dial as can be counted there', () => {
    fc.assert(
      fc.property(size, size, teeth, (tooth, groove, n) => {
        const r = rule(tooth, groove, { teeth: n, lines: n });
        const places = Array.from({ length: n }, (_, k) => k).filter((k) =>
          closings(tooth, groove, k, n).every(Boolean),
        );
        if (r.kind === 'lines')
          expect([r.perTurn, r.lines.length]).toEqual([BigInt(places.length), places.length]);
        else expect(places.length).toBe(r.kind === 'anywhere' ? n : 0);
      }),
      { numRuns: 300 },
    );
  });

  it('lines count on alike from whichever good line was used first', () => {
    fc.assert(
      fc.property(size, size, teeth, fc.integer({ min: 1, max: 24 }), (tooth, groove, n, lines) => {
        const r = rule(tooth, groove, { teeth: n, lines });
        if (r.kind !== 'lines') return;
        const step = lines / r.lines.length;
        expect(Number.isInteger(step)).toBe(true);
        expect(r.lines).toEqual(r.lines.map((_, i) => (i + 1) * step));
      }),
      { numRuns: 500 },
    );
  });
});

/** Own calculations (worked examples H13 to H19): regression tests. */
describe('metric screws and threads', () => {
  const on3mm = (n: number, d: number) => rule(21 * d, 7 * n, null);
  it.each([
    ['2', 2, 1, 3, 2],
    ['1', 1, 1, 3, 1],
    ['1.75', 7, 4, 12, 7],
    ['0.7', 7, 10, 30, 7],
    ['4.5', 9, 2, 2, 3],
    ['5.5', 11, 2, 6, 11],
    ['0.8', 4, 5, 15, 4],
    ['6', 6, 1, 1, 2],
  ] as const)('%s mm on 3 mm', (_name, n, d, a, b) => {
    expect(on3mm(n, d)).toMatchObject({ a: BigInt(a), b: BigInt(b) });
  });

  it('a screw with two starts lets the nut close at half its lead', () => {
    // Lead 6, two starts: a nut pitch of 3, so a 3 mm thread may be closed on anywhere; with one start it may not.
    expect(rule(3, 3, null).kind).toBe('anywhere');
    expect(rule(6, 4, null)).toMatchObject({ b: 2n });
  });

  it('a dial gear that misses is named, and what it would take', () => {
    expect(rule(3, 2, { teeth: 15, lines: 5 })).toMatchObject({
      kind: 'keep-closed',
      reason: 'gear-misses',
      b: 2n,
    });
    expect(rule(3, 2, { teeth: 14, lines: 7 })).toMatchObject({
      kind: 'lines',
      lines: [1, 2, 3, 4, 5, 6, 7],
    });
    expect(rule(3, 2, { teeth: 16, lines: 16 })).toMatchObject({
      perTurn: 8n,
      lines: [2, 4, 6, 8, 10, 12, 14, 16],
    });
  });
});

describe('what comes first when several things forbid it', () => {
  const bad = {
    lead: lead(ratio(1), true),
    nutPitch: ratio(3),
    halfNut: false,
    dial: null,
    exactRatio: false,
  };
  it('no half-nut, then π, then the ratio, then the dial', () => {
    expect(nutRule(bad)).toEqual({ kind: 'keep-closed', reason: 'no-half-nut', a: null, b: null });
    expect(nutRule({ ...bad, halfNut: true })).toMatchObject({ reason: 'irrational', a: null, b: null });
    const two = { ...bad, halfNut: true, lead: lead(ratio(2)) };
    expect(nutRule(two)).toMatchObject({ reason: 'inexact-ratio', a: 3n, b: 2n });
    expect(nutRule({ ...two, exactRatio: true })).toMatchObject({ reason: 'no-dial', a: 3n, b: 2n });
  });
  it('an inexact ratio forbids even what divides', () => {
    const whole = { lead: lead(ratio(1)), nutPitch: ratio(3), halfNut: true, dial: null };
    expect(nutRule({ ...whole, exactRatio: true }).kind).toBe('anywhere');
    expect(nutRule({ ...whole, exactRatio: false })).toMatchObject({
      kind: 'keep-closed',
      reason: 'inexact-ratio',
    });
  });
});
