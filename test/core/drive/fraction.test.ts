import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestFraction } from '../../../src/core/drive';
import { ratio } from '../../../src/core/quantity';

const size = (x: bigint): bigint => (x < 0n ? -x : x);

/** Whether p/q is strictly nearer to n/d than r/s, in whole numbers. */
const nearer = (n: bigint, d: bigint, [p, q]: [bigint, bigint], [r, s]: [bigint, bigint]): boolean =>
  size(n * q - p * d) * s < size(n * s - r * d) * q;

describe('the best fraction that fits, exactly, against trying every one', () => {
  it('no fraction within the bounds is nearer by however little', () => {
    const wide = fc.bigInt(1n, 10n ** 15n);
    const bound = fc.bigInt(1n, 24n);
    fc.assert(
      fc.property(
        fc.oneof(wide, fc.bigInt(1n, 60n)),
        fc.oneof(wide, fc.bigInt(1n, 60n)),
        bound,
        bound,
        (n, d, top, bottom) => {
          const held = bestFraction(ratio(n, d), top, bottom);
          if (!held) throw new Error('1/1 always fits');
          const found: [bigint, bigint] = [held.top, held.bottom];
          expect(held.top >= 1n && held.top <= top && held.bottom >= 1n && held.bottom <= bottom).toBe(true);
          expect(held.exact).toBe(held.top * d === held.bottom * n);
          for (let q = 1n; q <= bottom; q += 1n)
            for (let p = 1n; p <= top; p += 1n) expect(nearer(n, d, [p, q], found)).toBe(false);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('holds what fits as it is, up to the bounds themselves', () => {
    fc.assert(
      fc.property(fc.bigInt(1n, 10n ** 12n), fc.bigInt(1n, 10n ** 12n), (n, d) => {
        const x = ratio(n, d);
        expect(bestFraction(x, x.n, x.d)).toEqual({ top: x.n, bottom: x.d, exact: true });
        if (x.n > 1n) expect(bestFraction(x, x.n - 1n, x.d)?.exact).toBe(false);
        if (x.d > 1n) expect(bestFraction(x, x.n, x.d - 1n)?.exact).toBe(false);
      }),
    );
  });

  it('far outside the bounds holds the nearest corner, and nothing where nothing fits', () => {
    expect(bestFraction(ratio(1, 1000), 65_535n, 10n)).toEqual({ top: 1n, bottom: 10n, exact: false });
    expect(bestFraction(ratio(1000), 10n, 65_535n)).toEqual({ top: 10n, bottom: 1n, exact: false });
    for (const [top, bottom] of [
      [0n, 10n],
      [10n, 0n],
      [-1n, 10n],
    ] as const)
      for (const x of [ratio(1, 2), ratio(2), ratio(7, 3)]) expect(bestFraction(x, top, bottom)).toBeNull();
  });
});
