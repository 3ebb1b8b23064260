import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestFraction } from '../../../src/core/drive';
import {
  driftSteps,
  endOf,
  errorOver,
  growsWith,
  hold,
  nearestFloat,
  runningSum,
  shiftAfter,
  stallOf,
  type Chain,
  type Format,
  type Holding,
} from '../../../src/core/drive/formats';
import { lead, mul, ratio, toNumber, type Lead } from '../../../src/core/quantity';

/** Worked examples by their numbers: 1.5 mm on 8 tpi, 6400 steps, 4096 counts; own calculations unless said. */
const R = lead(ratio(375, 508));
const COUNTS = ratio(4096);
const CHAIN: Chain = { ratio: R, lead: lead(ratio(3, 2)), counts: COUNTS, step: ratio(127, 256_000) };
const held = (format: Format, r: Lead = R, counts = COUNTS): Holding => {
  const h = hold(format, r, counts);
  if (!h) throw new Error('nothing held');
  return h;
};

describe('a ratio as each format keeps it', () => {
  it('G15, G16: three decimals keep 738/1000, 256 ppm short: 6.5, 25.6 and 76.8 µm over 25.4, 100 and 300 mm', () => {
    const h = held({ kind: 'decimal', digits: 3 });
    expect([h.ratio, h.exact, h.grows]).toEqual([ratio(738, 1000), false, 'travel']);
    // 0.738 × 508 ÷ 375 − 1 = −0.096 ÷ 375.
    expect(h.ppm).toBeCloseTo(-256, 9);
    for (const [length, um] of [
      [25.4, -6.5024],
      [100, -25.6],
      [300, -76.8],
    ] as const) {
      expect(errorOver(h, CHAIN, length).um).toBeCloseTo(um, 9);
      expect(errorOver(h, CHAIN, length).ppm).toBeCloseTo(-256, 9);
    }
  });
  it('G17: 16 fractional bits, rounded, keep 48378 and +0.9765625 ppm', () => {
    const h = held({ kind: 'fixed-rounded', bits: 16 });
    expect(mul(h.ratio, 65_536)).toEqual(ratio(48_378));
    expect(h.ppm).toBeCloseTo(0.9765625, 6);
  });
  it('G18: cut off instead they keep 48377 and −19.7 ppm', () => {
    const h = held({ kind: 'fixed-truncated', bits: 16 });
    expect(mul(h.ratio, 65_536)).toEqual(ratio(48_377));
    // 48377 × 508 ÷ (65536 × 375) − 1.
    expect(h.ppm).toBeCloseTo(-19.6940104, 6);
  });
  it('G19: 32 fractional bits are 6e-5 ppm off', () => {
    expect(held({ kind: 'fixed-rounded', bits: 32 }).ppm).toBeCloseTo(5.9604644775390625e-5, 10);
  });
  it('G20: single precision is 0.0076 ppm off, double precision a ten-thousandth of a millionth', () => {
    const h = held({ kind: 'float32' });
    expect(toNumber(h.ratio)).toBe(Math.fround(375 / 508));
    expect(h.ppm).toBeCloseTo(0.00762939453125, 9);
    const wide = held({ kind: 'float64' });
    expect(toNumber(wide.ratio)).toBe(375 / 508);
    expect(Math.abs(wide.ppm)).toBeLessThanOrEqual(2 ** -53 * 1e6);
    expect([wide.exact, wide.grows]).toEqual([false, 'travel']);
  });
  it('two whole numbers are exact where they fit, for ever', () => {
    const h = held({ kind: 'integers', topMax: 999n, bottomMax: 999n });
    expect(h).toEqual({ ratio: ratio(375, 508), exact: true, ppm: 0, grows: 'nothing' });
    expect(errorOver(h, CHAIN, 300)).toEqual({ ppm: 0, um: 0 });
    expect(shiftAfter(h, CHAIN, 1e9)).toBe(0);
  });
  it('G12, G13: for π 22/7 is 402.4994 ppm off, 355/113 0.0849', () => {
    const pi = (most: bigint) =>
      held({ kind: 'integers', topMax: most, bottomMax: most }, lead(ratio(1), true));
    expect([pi(99n).ratio, pi(999n).ratio]).toEqual([ratio(22, 7), ratio(355, 113)]);
    expect(pi(99n).ppm).toBeCloseTo(402.499434770682, 6);
    expect(pi(999n).ppm).toBeCloseTo(0.08491367865837086, 9);
  });
  it('G27: of 100/127 a controller of two digits keeps 37/47, −212.77 ppm, or what is nearer', () => {
    // 63/80 is +125 ppm: nearer, and within two digits.
    const h = held({ kind: 'integers', topMax: 99n, bottomMax: 99n }, lead(ratio(100, 127)));
    expect(h.ratio).toEqual(ratio(63, 80));
    expect(h.ppm).toBeCloseTo(125, 9);
    expect(held({ kind: 'integers', topMax: 50n, bottomMax: 50n }, lead(ratio(100, 127))).ppm).toBeCloseTo(
      -212.7659574468085,
      9,
    );
  });
  it('a ratio too small for the format, or a rate, is nothing held', () => {
    expect(hold({ kind: 'decimal', digits: 2 }, lead(ratio(1, 300)), COUNTS)).toBeNull();
    expect(hold({ kind: 'fixed-truncated', bits: 4 }, lead(ratio(1, 17)), COUNTS)).toBeNull();
    expect(hold({ kind: 'rate' }, R, COUNTS)).toBeNull();
    expect(growsWith('rate')).toBe('time');
  });
  it('a decimal or a binary fraction that ends within its places is exact', () => {
    expect(held({ kind: 'decimal', digits: 3 }, lead(ratio(5, 8))).grows).toBe('nothing');
    expect(held({ kind: 'decimal', digits: 2 }, lead(ratio(5, 8))).exact).toBe(false);
    expect(held({ kind: 'fixed-truncated', bits: 3 }, lead(ratio(5, 8))).exact).toBe(true);
    expect(held({ kind: 'float64' }, lead(ratio(5, 8))).exact).toBe(true);
    // Counting in single precision ends, so not even these are exact for ever.
    expect(held({ kind: 'float32' }, lead(ratio(5, 8))).exact).toBe(false);
    // π never ends.
    expect(held({ kind: 'float64' }, lead(ratio(1), true)).exact).toBe(false);
  });
});

describe('no format strays farther than half, or the whole, of its last place', () => {
  const any = fc.tuple(fc.bigInt(1n, 10n ** 6n), fc.bigInt(1n, 10n ** 6n)).map(([n, d]) => ratio(n, d));
  it('in whole numbers: the neighbours one place up and down are no nearer', () => {
    fc.assert(
      fc.property(any, fc.integer({ min: 1, max: 40 }), (r, bits) => {
        const one = 1n << BigInt(bits);
        const round = hold({ kind: 'fixed-rounded', bits }, lead(r), COUNTS);
        const cut = hold({ kind: 'fixed-truncated', bits }, lead(r), COUNTS);
        // twice |kept × d − n × 2^f| ≤ d, told without a division.
        if (round) {
          const whole = mul(round.ratio, one).n;
          const off = whole * r.d - r.n * one;
          expect(2n * (off < 0n ? -off : off) <= r.d).toBe(true);
        }
        const low = cut ? mul(cut.ratio, one).n : 0n;
        expect(low * r.d <= r.n * one && (low + 1n) * r.d > r.n * one).toBe(true);
      }),
    );
  });
  it('the nearest float is the language’s own: Math.fround of what double precision holds, and division', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 24 }), fc.integer({ min: 1, max: 2 ** 24 }), (n, d) => {
        // Both are single-precision numbers, so the correctly rounded quotient of doubles rounds once more safely
        // (53 ≥ 2 × 24 + 2: Figueroa, When is double rounding innocuous?, 1995).
        expect(toNumber(nearestFloat(ratio(n, d), 24))).toBe(Math.fround(n / d));
        expect(toNumber(nearestFloat(ratio(n, d), 53))).toBe(n / d);
      }),
    );
  });
  it('agrees with the best fraction for whole numbers', () => {
    fc.assert(
      fc.property(any, fc.bigInt(1n, 999n), fc.bigInt(1n, 999n), (r, topMax, bottomMax) => {
        const best = bestFraction(r, topMax, bottomMax);
        const h = hold({ kind: 'integers', topMax, bottomMax }, lead(r), COUNTS);
        expect(h?.ratio).toEqual(best && ratio(best.top, best.bottom));
        expect(h?.exact).toBe(best?.exact);
      }),
    );
  });
});

const naive = (r: number, additions: number): number => {
  let sum = 0;
  for (let n = 0; n < additions; n += 1) sum = Math.fround(sum + r);
  return sum;
};

describe('the single-precision running sum', () => {
  it('G21: after 100 revs of 4096 counts it stands at 301976.28125, −1276.36 ppm, 386 steps lost', () => {
    const r = toNumber(held({ kind: 'float32-sum' }).ratio);
    expect(runningSum(r, 409_600)).toEqual({ sum: 301976.28125, stalledAt: null });
    const e = errorOver(held({ kind: 'float32-sum' }), CHAIN, 150);
    expect(e.ppm).toBeCloseTo(-1276.3614895, 3);
    // 386 steps of 0.49609375 µm.
    expect(e.um).toBeCloseTo(-385.9236 * 0.49609375, 2);
  });
  it('after 1000 revs it is 14272 ppm ahead', () => {
    expect(errorOver(held({ kind: 'float32-sum' }), CHAIN, 1500).ppm).toBeCloseTo(14_272, 0);
  });
  it('is bit for bit what one addition after another gives', () => {
    fc.assert(
      fc.property(
        fc.float({ min: Math.fround(1e-4), max: 40, noNaN: true }),
        fc.integer({ min: 0, max: 60_000 }),
        (r, additions) => {
          expect(runningSum(r, additions).sum).toBe(naive(r, additions));
        },
      ),
      { numRuns: 150 },
    );
  });
  it('also where r lies halfway between two numbers, and at every count round a power of two', () => {
    for (const r of [1.5, 0.75, 3, 1 + 2 ** -23, 2.5, 0.1]) {
      const large = Math.fround(r) * 2 ** -4;
      let sum = 0;
      for (let n = 1; n <= 5000; n += 1) {
        sum = Math.fround(sum + large);
        expect(runningSum(large, n).sum).toBe(sum);
      }
    }
    // 2^23 and more: the last place is 1, and 1.5 and 2.5 lie halfway.
    for (const r of [1.5, 2.5, 0.5])
      for (const n of [5_592_404, 5_592_408, 6_000_001, 9_000_000])
        expect([r, n, runningSum(r, n).sum]).toEqual([r, n, naive(r, n)]);
  });
  it('stands still where half the last place outgrows the ratio: at 2^24 steps for 375/508', () => {
    const r = Math.fround(375 / 508);
    const at = stallOf(r);
    expect(runningSum(r, at).sum).toBe(2 ** 24);
    expect(naive(r, at)).toBe(2 ** 24);
    expect(naive(r, at - 1)).toBeLessThan(2 ** 24);
    expect(runningSum(r, at * 5)).toEqual({ sum: 2 ** 24, stalledAt: at });
  });
});

describe('where counting ends', () => {
  it('G22: a single-precision counter ends at 2^24: 4096 revs, 13.65 minutes at 300 rpm', () => {
    const format: Format = { kind: 'float32' };
    const end = endOf(format, held(format), COUNTS);
    expect(end).toEqual({ counts: 16_777_216, revs: 4096 });
    expect((end?.revs ?? 0) / 300).toBeCloseTo(13.65, 2);
    // One more can't be added, by the language itself.
    expect(Math.fround(16_777_216 + 1)).toBe(16_777_216);
    expect(Math.fround(16_777_215 + 1)).toBe(16_777_216);
  });
  it('a running sum ends where it stands still; whole numbers never do', () => {
    const sum: Format = { kind: 'float32-sum' };
    const end = endOf(sum, held(sum), COUNTS);
    expect(end?.counts).toBe(stallOf(Math.fround(375 / 508)));
    expect(end?.revs).toBeCloseTo((end?.counts ?? 0) / 4096, 9);
    for (const kind of ['float64', 'rev-count'] as const)
      expect(endOf({ kind }, held({ kind }), COUNTS)).toBeNull();
  });
});

describe('what adds up', () => {
  it('G23: 1 ppm at 300 rpm for an hour drifts 54 steps, 27 µm', () => {
    // 375/508 × 4096 = 3023.62 steps a rev × 18 000 revs × 1e-6.
    const steps = driftSteps(1, 3023.6220472, 300, 3600);
    expect(steps).toBeCloseTo(54.4, 1);
    expect(steps * 0.49609375).toBeCloseTo(27, 0);
  });
  it('256 ppm at 1.5 mm and 60 revs a cycle move the groove 23 µm a pass, 0.32 mm by pass 15', () => {
    const h = held({ kind: 'decimal', digits: 3 });
    expect(shiftAfter(h, CHAIN, 60)).toBeCloseTo(-23.04, 6);
    expect(shiftAfter(h, CHAIN, 14 * 60)).toBeCloseTo(-322.56, 6);
  });
  it('a running sum moves it by what the sum has lost', () => {
    expect(shiftAfter(held({ kind: 'float32-sum' }), CHAIN, 100)).toBeCloseTo(-385.9236 * 0.49609375, 2);
  });
  it('a count corrected at each index is never farther off than half a step, and forgets it', () => {
    const h = held({ kind: 'rev-count' });
    // 3023.622 steps a rev rounded to 3024: 0.378 of a step of 0.496 µm.
    expect([h.exact, h.grows, mul(h.ratio, COUNTS)]).toEqual([false, 'rev', ratio(3024)]);
    const e = errorOver(h, CHAIN, 300);
    expect(e.ppm).toBeNull();
    expect(e.um).toBeCloseTo(0.37795 * 0.49609375, 5);
    expect(errorOver(h, CHAIN, 3).um).toBe(e.um);
    expect(shiftAfter(h, CHAIN, 10_000)).toBe(0);
  });
  it('a whole number of steps a rev is exact', () => {
    expect(held({ kind: 'rev-count' }, lead(ratio(1, 4096))).exact).toBe(true);
  });
});
