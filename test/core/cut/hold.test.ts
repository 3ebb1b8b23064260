import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BAR_CLEARANCE, barFor, HOLD_RULES, holdNotes } from '../../../src/core/cut/hold';

describe('how far work may stand out', () => {
  // "Overhang no more than three diameters, or supported": common practice, as the pre-start checks have it.
  it('is three diameters from a chuck alone', () => {
    const note = (out: number) => holdNotes({ holding: 'chuck', diameter: 10, out })[0];
    expect(note(30)).toMatchObject({ code: 'overhang', times: 3, most: 3, beyond: false });
    expect(note(30.1)).toMatchObject({ code: 'overhang', beyond: true });
  });
  it('is more between supports, and asks for a steady there', () => {
    expect(holdNotes({ holding: 'between-centres', diameter: 10, out: 119 })[0]).toMatchObject({
      code: 'span',
      beyond: false,
    });
    expect(holdNotes({ holding: 'chuck-and-centre', diameter: 10, out: 121 })[0]).toMatchObject({
      code: 'span',
      beyond: true,
    });
  });
  it('says what isn’t known, and never that it is fine', () => {
    expect(holdNotes({ holding: null, diameter: 10, out: 20 })).toEqual([{ code: 'holding-unknown' }]);
    expect(holdNotes({ holding: 'chuck', diameter: null, out: 20 })[0]).toEqual({ code: 'overhang-unknown' });
    expect(holdNotes({ holding: 'chuck', diameter: 10, out: null })[0]).toEqual({ code: 'overhang-unknown' });
  });
  it('asks something of each way of holding', () => {
    for (const holding of ['chuck', 'collet', 'chuck-and-centre', 'between-centres', 'faceplate'] as const)
      expect(holdNotes({ holding, diameter: 10, out: 20 }).map((n) => n.code)).toContain(holding);
  });
  it('stiffness agrees: at the rule the work bends by less than a dial shows', () => {
    // End-loaded cantilever, δ = F l³ ÷ (3 E I), I = π d⁴ ÷ 64 (any handbook); 200 N, steel, 210 000 N/mm².
    const bend = (d: number) =>
      (200 * (HOLD_RULES.alone * d) ** 3) / (3 * 210_000 * ((Math.PI * d ** 4) / 64));
    expect(bend(10)).toBeLessThan(0.02);
    expect((200 * (6 * 10) ** 3) / (3 * 210_000 * ((Math.PI * 10 ** 4) / 64))).toBeGreaterThan(0.1);
  });
});

const blind = { bore: 20, depth: 1, length: 25, gap: 8, runOut: 6, ending: 'groove' } as const;

describe('a bar for an internal thread', () => {
  it('reaches past thread, groove and mouth, and the hole is deeper than both', () => {
    // 25 + 6 + 2 in front of the mouth; 25 + 6 + 0.5 free at the bottom.
    expect(barFor(blind)).toMatchObject({ reach: 33, hole: 31.5, tooShallow: false });
    expect(barFor({ ...blind, gap: 6.4 })).toMatchObject({ tooShallow: true });
    expect(barFor({ ...blind, gap: null })).toMatchObject({ tooShallow: null });
    expect(barFor({ ...blind, ending: 'through' })).toMatchObject({
      reach: 27.5,
      hole: null,
      tooShallow: null,
    });
  });

  it('can be drawn back clear: brute force over where it stands in the bore', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 200, noNaN: true }),
        fc.double({ min: 0.2, max: 8, noNaN: true }),
        (bore, depth) => {
          const { widest, bar } = barFor({ ...blind, bore, depth });
          if (widest === null) return expect(bore).toBeLessThanOrEqual(2 * BAR_CLEARANCE);
          // At full depth the point stands depth outside the bore: what of the tool is inside must not reach the other wall.
          expect(bore / 2 + depth - widest).toBeGreaterThan(-bore / 2);
          // Drawn back, point and back both stand free of the wall by the clearance.
          const point = bore / 2 - BAR_CLEARANCE;
          expect(point - widest).toBeGreaterThanOrEqual(-bore / 2 + BAR_CLEARANCE - 1e-9);
          if (bar !== null) expect(bar + depth).toBeLessThan(widest);
        },
      ),
    );
  });

  it('is not known while a length isn’t', () => {
    expect(barFor({ ...blind, bore: null, length: null, depth: null })).toEqual({
      reach: null,
      hole: null,
      tooShallow: null,
      widest: null,
      bar: null,
      times: null,
    });
    expect(barFor({ ...blind, bore: 1.6, depth: 1 })).toMatchObject({ bar: null, times: null });
  });
});
