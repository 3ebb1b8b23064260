import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalText,
  fractionText,
  isExactDecimal,
  ratio,
  ratioText,
  roundTo,
  roundToStep,
  roundWhole,
  type Rounding,
} from '../../../src/core/quantity';
import { is, made, pair, type Pair } from './arbitrary';

const RULES: readonly Rounding[] = ['nearest', 'down', 'up', 'even'];
const rule = fc.constantFrom(...RULES);

/** Twice the distance from n/d to the whole number w, in units of 1/d. */
const off = ([n, d]: Pair, w: bigint): bigint => {
  const x = 2n * (n - w * d);
  return x < 0n ? -x : x;
};

/** Long division on paper: the sign, the whole part, then digit by digit; one more digit's worth decides. */
const onPaper = ([n, d]: Pair, places: number, how: Rounding): string => {
  const minus = n < 0n;
  let rest = minus ? -n : n;
  const taken: bigint[] = [rest / d];
  rest %= d;
  for (let i = 0; i < places; i++) {
    rest *= 10n;
    taken.push(rest / d);
    rest %= d;
  }
  const last = taken.at(-1) ?? 0n;
  const half = 2n * rest === d;
  const away =
    how === 'down'
      ? minus && rest > 0n
      : how === 'up'
        ? !minus && rest > 0n
        : 2n * rest > d || (half && (how === 'nearest' || last % 2n === 1n));
  if (away) taken[taken.length - 1] = last + 1n;
  for (let i = taken.length - 1; i > 0; i--)
    if (taken[i] === 10n) {
      taken[i] = 0n;
      taken[i - 1] = (taken[i - 1] ?? 0n) + 1n;
    }
  const [whole, ...part] = taken;
  const text = part.length > 0 ? `${whole}.${part.join('')}` : `${whole}`;
  return minus && /[1-9]/.test(text) ? `−${text}` : text;
};

describe('rounding to a whole number', () => {
  it('by each rule, told from the definition of the rule', () => {
    fc.assert(
      fc.property(pair, ([n, d]) => {
        const x: Pair = [n, d];
        const a = made(x);
        const down = roundWhole(a, 'down');
        const up = roundWhole(a, 'up');
        expect(down * d <= n && n - down * d < d).toBe(true);
        expect(up * d >= n && up * d - n < d).toBe(true);
        for (const how of ['nearest', 'even'] as const) {
          const w = roundWhole(a, how);
          expect(off(x, w) <= d).toBe(true);
          if (off(x, w) < d) continue;
          // A half: away from zero, or to the even neighbour.
          if (how === 'even') expect(w % 2n).toBe(0n);
          else expect(w * d > n === n > 0n).toBe(true);
        }
      }),
    );
  });

  it('halves of both signs, by hand', () => {
    const halves = (how: Rounding) => [-5, -3, -1, 1, 3, 5].map((n) => Number(roundWhole(ratio(n, 2), how)));
    expect(halves('nearest')).toEqual([-3, -2, -1, 1, 2, 3]);
    expect(halves('even')).toEqual([-2, -2, 0, 0, 2, 2]);
    expect(halves('down')).toEqual([-3, -2, -1, 0, 1, 2]);
    expect(halves('up')).toEqual([-2, -1, 0, 1, 2, 3]);
  });

  it('to places and to a dial’s graduation', () => {
    expect(roundTo(ratio(127, 60), 3)).toEqual(ratio(2117, 1000));
    expect(roundTo(ratio(127, 60), 3, 'down')).toEqual(ratio(2116, 1000));
    fc.assert(
      fc.property(pair, fc.bigInt(1n, 50n), fc.bigInt(1n, 50n), rule, ([n, d], sn, sd, how) => {
        const out = roundToStep(made([n, d]), ratio(sn, sd), how);
        const k = roundWhole(ratio(n * sd, d * sn), how);
        expect(is(out, k * sn, sd)).toBe(true);
      }),
    );
  });
});

describe('decimal text', () => {
  it('is the long division done on paper', () => {
    fc.assert(
      fc.property(pair, fc.integer({ min: 0, max: 9 }), rule, (x, places, how) => {
        const paper = onPaper(x, places, how);
        const a = made(x);
        expect(decimalText(a, { places, rule: how, keepZeros: true })).toBe(paper);
        const bare = paper.includes('.') ? paper.replace(/\.?0+$/, '') : paper;
        expect(decimalText(a, { places, rule: how })).toBe(bare);
        expect(decimalText(a, { places, rule: how, mark: ',' })).toBe(bare.replace('.', ','));
      }),
      { numRuns: 300 },
    );
  });

  it('by hand', () => {
    expect(decimalText(ratio(127, 40), { places: 3 })).toBe('3.175');
    expect(decimalText(ratio(100), { places: 2 })).toBe('100');
    expect(decimalText(ratio(1000), { places: 0 })).toBe('1000');
    expect(decimalText(ratio(1, 3), { places: 3, keepZeros: true })).toBe('0.333');
    expect(decimalText(ratio(-1, 1000), { places: 2 })).toBe('0');
    expect(decimalText(ratio(-3, 2), { places: 1 })).toBe('−1.5');
    expect(decimalText(ratio(3, 2), { places: 3, keepZeros: true })).toBe('1.500');
  });

  it('knows when it is the value itself: only twos and fives below', () => {
    fc.assert(
      fc.property(pair, fc.integer({ min: 0, max: 12 }), ([n, d], places) => {
        expect(isExactDecimal(made([n, d]), places)).toBe((n * 10n ** BigInt(places)) % d === 0n);
      }),
    );
  });
});

describe('fractions as the trade writes them', () => {
  it('mixed, plain, whole and negative', () => {
    const mixed: [bigint, bigint, string][] = [
      [23n, 2n, '11 1/2'],
      [3n, 8n, '3/8'],
      [7n, 1n, '7'],
      [0n, 5n, '0'],
      [-23n, 2n, '−11 1/2'],
      [-3n, 8n, '−3/8'],
    ];
    for (const [n, d, text] of mixed) expect(fractionText(ratio(n, d))).toBe(text);
    expect([ratioText(ratio(375, 508)), ratioText(ratio(3)), ratioText(ratio(-1, 2))]).toEqual([
      '375/508',
      '3',
      '−1/2',
    ]);
  });
});
