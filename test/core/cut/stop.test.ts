import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coastTravel,
  followedTravel,
  highestIn,
  leadingSide,
  mayReplace,
  stopRoom,
  travelAt,
  wholeTime,
  type StopPlace,
} from '../../../src/core/cut/stop';
import { compare, lead, ONE, ratio, toNumber, type Ratio } from '../../../src/core/quantity';

const L = (mm: Ratio) => lead(mm);
const P15 = lead(ratio(3, 2));
const place: StopPlace = {
  ending: 'groove',
  outwards: false,
  groove: ratio(5, 2),
  gap: null,
  shoulder: ratio(0),
  depth: 0.92,
  half: 30,
  infeed: 29.5,
  pitch: P15,
};
const usable = (x: Partial<StopPlace>): number | null | string => {
  const a = stopRoom({ ...place, ...x });
  if (!a.ok) return 'missing' in a ? a.missing.join() : a.refusal;
  return a.room.usable && toNumber(a.room.usable);
};

describe('travel from the mark until the nut is clear', () => {
  // Lead × rpm ÷ 60 × time: S01 1.5 mm, 500 rpm, 0.25 s; S02 1.5 mm, 300 rpm, 0.35 + 0.15 + 0.02 s.
  it('is speed × time, exact', () => {
    expect(travelAt(P15, ratio(500), ratio(1, 4))).toEqual(ratio(25, 8));
    expect(travelAt(P15, ratio(300), ratio(52, 100))).toEqual(ratio(39, 10));
  });
  it('with the spindle cut alone goes on for the turns it coasts', () => {
    // Linear coast from 200 rpm in 3 s: half of 10 turns; 7.5 mm at a lead of 1.5 mm.
    expect(coastTravel(P15, ratio(5))).toEqual(ratio(15, 2));
    // 0.5 s at 200 rpm before it: 2.5 mm.
    expect(followedTravel(P15, ratio(200), ratio(1, 2), ratio(5))).toEqual(ratio(10));
  });
  it('takes a lead with π a hair too long', () => {
    const worm = lead(ONE, true);
    expect(toNumber(travelAt(worm, ratio(60), ONE))).toBeGreaterThanOrEqual(Math.PI);
  });
});

describe('highest speed for a room', () => {
  // S04: 2.5 mm, lead 1.5 mm, 0.5 s. S05: with a factor of 1.5, 133.3.
  it('is 60 w ÷ (L t), rounded down', () => {
    expect(highestIn(ratio(5, 2), P15, ratio(1, 2), ONE)).toBe(200n);
    expect(highestIn(ratio(5, 2), P15, ratio(1, 2), ratio(3, 2))).toBe(133n);
    expect(highestIn(null, P15, ratio(1, 2), ONE)).toBe(0n);
  });
  it('is within, and one rpm more is not', () => {
    const part = fc.integer({ min: 1, max: 4000 });
    fc.assert(
      fc.property(part, part, part, (w, l, t) => {
        const [room, time, pitch] = [ratio(w, 100), ratio(t, 1000), L(ratio(l, 300))];
        const n = highestIn(room, pitch, time, ratio(3, 2));
        expect(compare(travelAt(pitch, ratio(n), time, ratio(3, 2)), room)).toBeLessThanOrEqual(0);
        expect(compare(travelAt(pitch, ratio(n + 1n), time, ratio(3, 2)), room)).toBe(1);
      }),
    );
  });
});

describe('usable room', () => {
  it('is the groove less the tool’s leading half, the creep and 0.5 mm', () => {
    // Own table in the engineering notes: 2.5 mm groove of ISO 4755, 0.92 mm deep at 29.5°, leaves 0.95 mm.
    expect(usable({})).toBeCloseTo(0.948, 3);
    // 0.92 × tan 29.5° = 0.5205
    const a = stopRoom(place);
    expect(a.ok && a.room.creep).toBeCloseTo(0.5205109559, 9);
    // 4.5 − 0.9 − 0.52 − 0.5 = 2.58
    const depth = 0.9 / Math.tan(Math.PI / 6);
    const infeed = (Math.atan(0.52 / depth) * 180) / Math.PI;
    expect(usable({ groove: ratio(9, 2), depth, infeed })).toBe(2.58);
    expect(highestIn(ratio(948, 1000), P15, ratio(1, 2), ratio(3, 2))).toBe(50n);
  });
  it('has no creep straight in', () => {
    expect(usable({ infeed: 0 })).toBeCloseTo(2.5 - 0.92 * Math.tan(Math.PI / 6) - 0.5, 2);
  });
  it('counts the tool’s side up to the shoulder', () => {
    // A symmetrical 60° tool 0.92 mm deep under a shoulder of 5 mm: 5.92 × tan 30° = 3.4 mm.
    expect(leadingSide(5.92, 30)).toBeCloseTo(3.42, 2);
    expect(usable({ shoulder: ratio(5) })).toBeNull();
    expect(usable({ shoulder: ratio(5), groove: ratio(5), infeed: 0 })).toBeCloseTo(5 - 3.418 - 0.5, 2);
  });
  it('takes the flank that leads', () => {
    // Buttress-like: 3° leading, 30° trailing.
    expect(usable({ half: { leading: 3, trailing: 30 }, infeed: 0 })).toBeCloseTo(
      2.5 - 0.92 * Math.tan((3 * Math.PI) / 180) - 0.5,
      2,
    );
  });
  it('of a fading thread is 2.5 P at most, less the tool’s own half', () => {
    // 2.5 × 1.5 = 3.75 by GB/T 3 (ISO 3508).
    expect(usable({ ending: 'run-out', groove: null, gap: ratio(30), infeed: 0 })).toBeCloseTo(
      3.75 - 0.5312,
      2,
    );
    expect(usable({ ending: 'run-out', gap: ratio(3), infeed: 0 })).toBeCloseTo(3 - 0.5312 - 0.5, 2);
  });
  it('of an open end, or outwards, is the gap to what is in the way', () => {
    expect(usable({ ending: 'through', gap: ratio(20), infeed: 0, shoulder: null })).toBeCloseTo(18.9688, 2);
    expect(usable({ outwards: true, gap: ratio(20), infeed: 0, shoulder: null })).toBeCloseTo(18.9688, 2);
  });
  it('is not known while something isn’t', () => {
    expect(usable({ groove: null })).toBe('groove');
    expect(usable({ shoulder: null })).toBe('shoulder');
    expect(usable({ ending: 'run-out', shoulder: null })).toBe('gap,shoulder');
    expect(usable({ ending: 'through' })).toBe('gap');
    expect(usable({ outwards: true })).toBe('gap');
    expect(usable({ depth: NaN })).toBe('depth');
    expect(usable({ infeed: 85 })).toBe('angle');
  });
  it('never lets the tool touch: travel, creep and side stay inside with the margin', () => {
    const mm = fc.integer({ min: 1, max: 20000 }).map((n) => ratio(n, 1000));
    fc.assert(
      fc.property(mm, mm, fc.double({ min: 0.05, max: 6, noNaN: true }), (groove, shoulder, depth) => {
        const x = { ...place, groove, shoulder, depth };
        const a = stopRoom(x);
        if (!a.ok || !a.room.usable) return;
        // Brute: points along the leading flank from the tip to the shoulder's top, at the end of the travel.
        const tip = toNumber(a.room.usable) + depth * Math.tan((29.5 * Math.PI) / 180);
        for (let h = 0; h <= 1; h += 0.25) {
          const at = tip + h * (depth + toNumber(shoulder)) * Math.tan(Math.PI / 6);
          expect(at).toBeLessThanOrEqual(toNumber(groove) - 0.5 + 1e-6);
        }
      }),
    );
  });
});

describe('whole time by dummy runs', () => {
  it('comes from the longest overrun, rounded up to hundredths', () => {
    // 60 × 2.0 ÷ (1.5 × 160) = 0.5 s; 2.01 mm: 0.5025, up to 0.51.
    expect(wholeTime([ratio(1), ratio(2), ratio(3, 2)], P15, ratio(160))).toEqual(ratio(1, 2));
    expect(wholeTime([ratio(201, 100)], P15, ratio(160))).toEqual(ratio(51, 100));
    expect(wholeTime([], P15, ratio(160))).toBeNull();
    expect(wholeTime([ratio(2)], P15, ratio(0))).toBeNull();
  });
  it('gives back a time that covers every run it was taken from', () => {
    const um = fc.integer({ min: 1, max: 50000 });
    fc.assert(
      fc.property(fc.array(um, { minLength: 1, maxLength: 10 }), um, fc.boolean(), (runs, n, pi) => {
        const pitch = lead(ratio(5, 4), pi);
        const overruns = runs.map((r) => ratio(r, 1000));
        const t = wholeTime(overruns, pitch, ratio(n, 10));
        expect(t).not.toBeNull();
        for (const o of overruns)
          expect(compare(travelAt(pitch, ratio(n, 10), t ?? ONE), o)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('replaces a time by a shorter one only from ten runs', () => {
    expect(mayReplace(ratio(4, 10), 9, ratio(1, 2))).toBe(false);
    expect(mayReplace(ratio(4, 10), 10, ratio(1, 2))).toBe(true);
    expect(mayReplace(ratio(6, 10), 1, ratio(1, 2))).toBe(true);
    expect(mayReplace(ratio(6, 10), 9, null)).toBe(false);
  });
});
