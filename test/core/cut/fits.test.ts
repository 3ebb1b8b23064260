import { describe, expect, it } from 'vitest';
import { fitsFor, namedGrooves, type Fit, type FitQuestion } from '../../../src/core/cut/fits';
import { highestIn, stopRoom } from '../../../src/core/cut/stop';
import { compare, lead, ratio } from '../../../src/core/quantity';
import { threadById } from '../../../src/core/thread';

const lead15 = lead(ratio(3, 2));
const ask: FitQuestion = {
  place: {
    ending: 'groove',
    outwards: false,
    groove: ratio(5, 2),
    gap: null,
    shoulder: ratio(0),
    depth: 0.92,
    half: 30,
    infeed: 29.5,
    pitch: lead15,
  },
  lead: lead15,
  rpm: ratio(100),
  time: ratio(1, 2),
  factor: ratio(3, 2),
  speeds: [ratio(35), ratio(80), ratio(160)],
  chuck: 'screw-on',
  grooves: [
    { id: 'iso-4755', floor: ratio(5, 2) },
    { id: 'din-76-a', floor: ratio(16, 5) },
  ],
};
const kinds = (x: Partial<FitQuestion>) => fitsFor({ ...ask, ...x }).map((f) => f.kind);
const one = <K extends Fit['kind']>(kind: K, x: Partial<FitQuestion> = {}) =>
  fitsFor({ ...ask, ...x }).find((f): f is Extract<Fit, { kind: K }> => f.kind === kind);

describe('what would fit', () => {
  it('is nothing where it stops in time as it is', () => {
    expect(fitsFor({ ...ask, rpm: ratio(50) })).toEqual([]);
    expect(kinds({ rpm: ratio(51) })).toContain('slower');
  });
  it('is the highest speed for the room, and the fastest the spindle has', () => {
    // 0.948 mm: 60 × 0.948 ÷ (1.5 × 0.75) = 50.6
    expect(one('slower')).toEqual({ kind: 'slower', rpm: 50n, own: ratio(35), ownKnown: true });
    expect(one('slower', { speeds: [ratio(80)] })?.own).toBeNull();
    expect(one('slower', { speeds: null })?.ownKnown).toBe(false);
  });
  it('is a groove in which that speed stops in time, and a tenth less is too narrow', () => {
    const floor = one('groove')?.floor ?? ratio(0);
    const at = (groove: typeof floor): bigint => {
      const a = stopRoom({ ...ask.place, groove });
      return a.ok ? highestIn(a.room.usable, lead15, ask.time, ask.factor) : 0n;
    };
    expect(at(floor)).toBeGreaterThanOrEqual(100n);
    expect(at(ratio(floor.n * 10n - floor.d, floor.d * 10n))).toBeLessThan(100n);
  });
  it('names the standards’ grooves that are wide enough, else their widest', () => {
    // 1.875 + 0.531 + 0.521 + 0.5 = 3.43, up to 3.5
    expect(one('groove')).toEqual({
      kind: 'groove',
      floor: ratio(35, 10),
      named: [],
      widest: { id: 'din-76-a', floor: ratio(16, 5) },
    });
    // At 60 rpm 1.125 + 1.551 = 2.68, up to 2.7: DIN 76 A has 3.2.
    expect(one('groove', { rpm: ratio(60) })?.named.map((g) => g.id)).toEqual(['din-76-a']);
  });
  it('is straight in, by as much as the creep', () => {
    // 2.5 − 0.5312 − 0.5 = 1.4688: 60 × 1.468 ÷ 1.125 = 78.3
    expect(one('straight-in')).toEqual({ kind: 'straight-in', room: ratio(1468, 1000), rpm: 78n });
    expect(kinds({ place: { ...ask.place, infeed: 0 } })).not.toContain('straight-in');
  });
  it('hands on how the chuck is held, and has by hand last', () => {
    expect(one('outwards')?.chuck).toBe('screw-on');
    expect(one('outwards', { chuck: null })?.chuck).toBeNull();
    expect(kinds({}).at(-1)).toBe('by-hand');
    expect(kinds({ place: { ...ask.place, outwards: true, gap: ratio(1) } })).not.toContain('outwards');
  });
  it('of nothing left names no speed', () => {
    expect(kinds({ place: { ...ask.place, groove: ratio(1) } })).not.toContain('slower');
  });
  it('of an open end is a longer gap', () => {
    const place = { ...ask.place, ending: 'through', gap: ratio(2) } as const;
    const gap = one('gap', { place })?.gap;
    expect(gap && compare(gap, ratio(35, 10))).toBe(0);
  });
});

describe('grooves by name', () => {
  const ids = (id: string, side: 'external' | 'internal' = 'external') => {
    const thread = threadById(id);
    return thread && namedGrooves(thread, side).map((g) => g.id);
  };
  it('are for ISO metric threads alone, the standards apart', () => {
    expect(ids('iso-coarse:M10')).toEqual(['iso-4755', 'din-76-a', 'din-76-b']);
    expect(ids('iso-coarse:M10', 'internal')).toEqual(['gbt-3', 'gbt-3-short']);
    expect(ids('unc:1/2-13')).toEqual([]);
  });
});
