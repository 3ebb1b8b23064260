import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalText, fractionText, ratioText, read, type Ratio } from '../../../src/core/quantity';
import { anyRatio, is } from './arbitrary';

const value = (typed: string): Ratio => {
  const r = read(typed);
  if (!r.ok) throw new Error(`${typed}: ${r.error}`);
  return r.value;
};
const error = (typed: string): string => {
  const r = read(typed);
  return r.ok ? 'read' : r.error;
};

/** Valid input built from its grammar: digits, one mark, a sign; the digits say what it must come to. */
const digits = (max: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: max }).map((a) => a.join(''));
const sign = fc.constantFrom('', '-', '−', '- ');
const mark = fc.constantFrom<'.' | ','>('.', ',');
const space = fc.constantFrom('', ' ', '  ', '\t');
const join = fc.constantFrom(' ', '-', '   ');
const slash = fc.constantFrom('/', ' / ', ' /', '/ ');

describe('what a person types', () => {
  it('decimals come to their digits over a power of ten', () => {
    fc.assert(
      fc.property(space, sign, digits(9), mark, digits(9), space, (before, s, whole, m, part, after) => {
        const times = s === '' ? 1n : -1n;
        const typed = before + s + whole + m + part + after;
        expect(is(value(typed), times * BigInt(whole + part), 10n ** BigInt(part.length))).toBe(true);
        expect(is(value(before + s + whole + after), times * BigInt(whole), 1n)).toBe(true);
        expect(is(value(m + part), BigInt(part), 10n ** BigInt(part.length))).toBe(true);
        expect(is(value(whole + m), BigInt(whole), 1n)).toBe(true);
      }),
    );
  });

  it('fractions and mixed fractions come to what the algebra says', () => {
    const bottom = digits(5).filter((d) => BigInt(d) > 0n);
    fc.assert(
      fc.property(sign, digits(4), join, digits(4), slash, bottom, (s, whole, j, n, sl, d) => {
        const times = s === '' ? 1n : -1n;
        const mixed = value(s + whole + j + n + sl + d);
        expect(is(mixed, times * (BigInt(whole) * BigInt(d) + BigInt(n)), BigInt(d))).toBe(true);
        expect(is(value(s + n + sl + d), times * BigInt(n), BigInt(d))).toBe(true);
      }),
    );
  });

  it('reads the forms of the trade', () => {
    const cases: [string, bigint, bigint][] = [
      ['1.25', 5n, 4n],
      ['1,25', 5n, 4n],
      ['3/8', 3n, 8n],
      ['11 1/2', 23n, 2n],
      ['11-1/2', 23n, 2n],
      ['.5', 1n, 2n],
      ['0.1', 1n, 10n],
      ['-2', -2n, 1n],
      [' 4 ', 4n, 1n],
      ['11 ', 11n, 1n],
      ['6/4', 3n, 2n],
    ];
    for (const [typed, n, d] of cases) expect(is(value(typed), n, d), typed).toBe(true);
  });

  it('refuses with the reason', () => {
    const cases: [string, string][] = [
      ['', 'empty'],
      ['  ', 'empty'],
      ['.', 'unfinished'],
      ['-', 'unfinished'],
      ['3/', 'unfinished'],
      ['11 1', 'unfinished'],
      ['11 1/', 'unfinished'],
      ['11-', 'unfinished'],
      ['1/0', 'zero-below'],
      ['2 3/00', 'zero-below'],
      ['1.2.3', 'two-marks'],
      ['1,000.5', 'two-marks'],
      ['1:2', 'not-a-number'],
      ['1_000', 'not-a-number'],
      ['1e3', 'not-a-number'],
      ['0x10', 'not-a-number'],
      ['--5', 'not-a-number'],
      ['+5', 'not-a-number'],
      ['five', 'not-a-number'],
      ['Infinity', 'not-a-number'],
      ['NaN', 'not-a-number'],
      ['1.5/2', 'not-a-number'],
      ['٣', 'not-a-number'],
      ['1'.repeat(25), 'too-long'],
    ];
    for (const [typed, why] of cases) expect(error(typed), typed).toBe(why);
    expect(is(value('9'.repeat(24)), 10n ** 24n - 1n, 1n)).toBe(true);
  });

  it('never throws, whatever is pasted', () => {
    const nearly = fc.string({ unit: fc.constantFrom(...'0123456789.,/ --−eE:_'), maxLength: 30 });
    fc.assert(
      fc.property(fc.oneof(nearly, fc.string({ unit: 'grapheme', maxLength: 30 })), (typed) => {
        const r = read(typed);
        if (r.ok) expect(r.value.d > 0n).toBe(true);
        else expect(typeof r.error).toBe('string');
      }),
      { numRuns: 200 },
    );
  });
});

describe('what is written can be read again', () => {
  it('mixed and plain fractions exactly', () => {
    fc.assert(
      fc.property(anyRatio, (a) => {
        for (const text of [fractionText(a), ratioText(a)])
          if (text.length <= 24) expect(value(text)).toEqual(a);
      }),
    );
  });

  it('decimals exactly where they are exact', () => {
    fc.assert(
      fc.property(
        fc.bigInt(-(10n ** 9n), 10n ** 9n),
        fc.integer({ min: 0, max: 6 }),
        mark,
        (n, places, m) => {
          const style = { places, mark: m };
          const back = value(decimalText(value(`${n}/${10 ** places}`), style));
          expect(is(back, n, 10n ** BigInt(places))).toBe(true);
        },
      ),
    );
  });
});
