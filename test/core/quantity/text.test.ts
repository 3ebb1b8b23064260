import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as q from '../../../src/core/quantity';

const value = (text: string): q.Ratio => {
  const r = q.read(text);
  if (!r.ok) throw new Error(`${text}: ${r.error}`);
  return r.value;
};

describe('reading what a person types', () => {
  it.each([
    ['1.25', 5, 4],
    ['1,25', 5, 4],
    ['.5', 1, 2],
    ['3/8', 3, 8],
    ['11 1/2', 23, 2],
    ['11-1/2', 23, 2],
    [' 4 ', 4, 1],
    ['-2.5', -5, 2],
    ['−2.5', -5, 2],
    ['0.1', 1, 10],
    ['6/4', 3, 2],
  ] as const)('%s', (text, n, d) => {
    expect(value(text)).toEqual(q.ratio(n, d));
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['.', 'unfinished'],
    ['3/', 'unfinished'],
    ['11 ', 'ok'],
    ['11 1', 'unfinished'],
    ['11 1/', 'unfinished'],
    ['1/0', 'zero-below'],
    ['1.2.3', 'two-marks'],
    ['1,234.5', 'two-marks'],
    ['abc', 'not-a-number'],
    ['1e3', 'not-a-number'],
    ['1_000', 'not-a-number'],
    ['1:2', 'not-a-number'],
    ['1.5/2', 'not-a-number'],
    ['9'.repeat(25), 'too-long'],
  ] as const)('%j: %s', (text, what) => {
    const r = q.read(text);
    expect(r.ok ? 'ok' : r.error).toBe(what);
  });

  it('never throws and never guesses', () => {
    fc.assert(fc.property(fc.string({ maxLength: 40 }), (text) => void q.read(text)));
  });

  /** Valid input built from its own grammar: digits are exact whatever way they are written. */
  const digits = fc.stringMatching(/^\d{1,8}$/);
  it('reads decimals to the digit, with comma or point', () => {
    fc.assert(
      fc.property(digits, digits, fc.constantFrom('.', ','), (whole, part, mark) => {
        expect(value(whole + mark + part)).toEqual(q.ratio(BigInt(whole + part), 10n ** BigInt(part.length)));
      }),
    );
  });
  it('reads what it writes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 999 }),
        fc.integer({ min: 1, max: 64 }),
        fc.integer({ min: 0, max: 63 }),
        (w, d, n) => {
          const x = q.add(w, q.ratio(n % d, d));
          expect(value(q.fractionText(x))).toEqual(x);
        },
      ),
    );
  });
});

/** A decimal by long division on text, digit by digit: an algorithm of its own to compare with. */
const longDivision = (n: bigint, d: bigint, places: number): string => {
  let rest = n % d;
  let text = (n / d).toString();
  if (places > 0) text += '.';
  for (let i = 0; i < places; i += 1) {
    rest *= 10n;
    text += (rest / d).toString();
    rest %= d;
  }
  return text;
};

describe('writing decimals', () => {
  it('cut off downwards agrees with long division', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 12n }),
        fc.bigInt({ min: 1n, max: 10n ** 9n }),
        fc.integer({ min: 0, max: 9 }),
        (n, d, places) => {
          expect(q.decimalText(q.ratio(n, d), { places, rule: 'down', keepZeros: true })).toBe(
            longDivision(n, d, places),
          );
        },
      ),
    );
  });
  it.each([
    [127, 40, 3, '3.175'],
    [2, 3, 2, '0.67'],
    [1, 8, 2, '0.13'],
    [-1, 8, 2, '−0.13'],
    [5, 1, 3, '5'],
    [1, 1000, 2, '0'],
  ] as const)('%s/%s to %s places', (n, d, places, text) => {
    expect(q.decimalText(q.ratio(n, d), { places })).toBe(text);
  });
  it('uses the mark it is told', () => {
    expect(q.decimalText(q.ratio(5, 2), { places: 2, keepZeros: true, mark: ',' })).toBe('2,50');
  });
  it('knows whether a decimal is the value itself', () => {
    expect(q.isExactDecimal(q.ratio(127, 40), 3)).toBe(true);
    expect(q.isExactDecimal(q.ratio(1, 3), 9)).toBe(false);
  });
});
