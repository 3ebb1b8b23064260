import { describe, expect, it } from 'vitest';
import { ratio, read, roundTo, toNumber, type Ratio } from '../../src/core/quantity';
import {
  externalChamfer,
  internalCountersink,
  shoulderDistance,
  threadRunOut,
} from '../../src/core/thread/ends';
import { dinUndercut, internalUndercut, isoUndercut } from '../../src/core/thread/undercut';

const mm = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new Error(r.error);
  return r.value;
};

describe('external undercut', () => {
  // GB/T 3-1997 table 2, declared equivalent to ISO 4755: g1 min, g2 max, d − dg, r.
  it.each([
    ['0.5', 0.8, 1.5, 0.8, 0.2],
    ['0.8', 1.3, 2.4, 1.3, 0.4],
    ['1', 1.6, 3, 1.6, 0.6],
    ['1.25', 2, 3.75, 2, 0.6],
    ['1.5', 2.5, 4.5, 2.3, 0.8],
    ['1.75', 3, 5.25, 2.6, 1],
    ['2', 3.4, 6, 3, 1],
    ['2.5', 4.4, 7.5, 3.6, 1.2],
    ['3', 5.2, 9, 4.4, 1.6],
    ['4', 7, 12, 5.7, 2],
    ['5.5', 11, 17.5, 7.7, 3.2],
    ['6', 11, 18, 8.3, 3.2],
  ])('ISO 4755, P %s: g1 %s, g2 %s, dg = d − %s, r %s', (pitch, g1, g2, drop, r) => {
    const u = isoUndercut(ratio(100), mm(pitch));
    if (!u.ok) throw new Error(u.refusal);
    expect([u.undercut.floor, u.undercut.length, u.undercut.radius].map(toNumber)).toEqual([g1, g2, r]);
    expect(toNumber(u.undercut.diameter)).toBe(100 - drop);
    expect(u.undercut.standard).toBe('ISO 4755');
  });

  it('DIN 76-1 has its own lengths: form A near 3.5 P, B near 2.5 P, ISO near 3 P (DIN 76-1 and GB/T 3 heads)', () => {
    for (const p of ['1', '2', '3', '5']) {
      const pitch = mm(p);
      const of = (u: ReturnType<typeof dinUndercut> | ReturnType<typeof isoUndercut>): number =>
        u.ok ? toNumber(u.undercut.length) / toNumber(pitch) : Number.NaN;
      expect(of(dinUndercut(ratio(100), pitch, 'A'))).toBeCloseTo(3.5, 5);
      expect(of(dinUndercut(ratio(100), pitch, 'B'))).toBeCloseTo(2.5, 5);
      expect(of(isoUndercut(ratio(100), pitch))).toBeCloseTo(3, 5);
    }
  });

  it('says which rows are from memory, and the tolerance of the floor: h12 up to 3 mm, h13 above', () => {
    const fine = isoUndercut(ratio(3), mm('0.35'));
    expect(fine.ok && [fine.undercut.fromMemory, fine.undercut.tolerance]).toEqual([true, 'h12']);
    const coarse = isoUndercut(ratio(10), mm('1.5'));
    expect(coarse.ok && [coarse.undercut.fromMemory, coarse.undercut.tolerance]).toEqual([false, 'h13']);
  });

  it('refuses a pitch without a row rather than reading between rows', () => {
    for (const pitch of ['1.1', '1.27', '8']) {
      const u = isoUndercut(ratio(20), mm(pitch));
      expect(u.ok ? 'accepted' : u.refusal).toBe('pitch-not-in-table');
    }
    const none = dinUndercut(ratio(0), mm('1'), 'A');
    expect(none.ok ? 'accepted' : none.refusal).toBe('not-positive');
    const tooThin = isoUndercut(ratio(2), mm('1.5'));
    expect(tooThin.ok ? 'accepted' : tooThin.refusal).toBe('not-positive');
  });
});

describe('internal undercut and thread ends', () => {
  it.each([
    ['0.8', 'normal', 3.2, 10.3],
    ['1', 'normal', 4, 10.5],
    ['1.5', 'short', 3, 10.5],
  ] as const)('GB/T 3, P %s %s: length %s, diameter %s', (pitch, form, length, diameter) => {
    const u = internalUndercut(ratio(10), mm(pitch), form);
    expect(u.ok && [toNumber(u.undercut.length), toNumber(u.undercut.diameter)]).toEqual([length, diameter]);
  });

  // GB/T 3-1997 table 1, P 1.5: run-out 3.8 and 1.9; shoulder distance 4.5, 6, 3 (printed to a tenth).
  it('run-out and shoulder distance at P 1.5', () => {
    const p = mm('1.5');
    expect(toNumber(roundTo(threadRunOut(p, 'normal'), 1))).toBe(3.8);
    expect(toNumber(roundTo(threadRunOut(p, 'short'), 1))).toBe(1.9);
    expect((['normal', 'long', 'short'] as const).map((k) => toNumber(shoulderDistance(p, k)))).toEqual([
      4.5, 6, 3,
    ]);
  });

  it('chamfer geometry: 45° takes as much length as height, 120° takes height × tan 30°', () => {
    expect(externalChamfer(10, 8.16)?.length).toBeCloseTo(0.92, 12);
    expect(internalCountersink(10, 8.376)?.length).toBeCloseTo(0.812 * Math.tan(Math.PI / 6), 12);
    expect(externalChamfer(8, 10)).toBeNull();
    expect(internalCountersink(8, 8)).toBeNull();
  });
});
