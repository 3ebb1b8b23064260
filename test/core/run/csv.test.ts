import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { csvCell, csvText } from '../../../src/core/run/csv';

/** A reader of its own, sign by sign, by the grammar of RFC 4180, section 2. */
const parse = (text: string): string[][] => {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      for (at += 1; ; at += 1) {
        if (text[at] !== '"') cell += text[at];
        else if (text[at + 1] === '"') {
          cell += '"';
          at += 1;
        } else break;
      }
      at += 1;
    } else while (at < text.length && text[at] !== ',' && text[at] !== '\r') cell += text[at++];
    row.push(cell);
    if (text[at] === ',') at += 1;
    else {
      if (text.slice(at, at + 2) !== '\r\n') throw new Error(`no line end at ${at}`);
      at += 2;
      rows.push(row);
      row = [];
    }
  }
  return rows;
};

const cell = fc.oneof(
  fc.string(),
  fc.constantFrom(
    '',
    '=1+1',
    '+1',
    '-1',
    '@sum',
    'a,b',
    'say "so"',
    'two\r\nlines',
    "'quoted",
    '\t=x',
    ',',
    '"',
  ),
);
const row = fc.array(cell, { minLength: 3, maxLength: 3 });

describe('a table as CSV', () => {
  it('is read back as it was by a reader of RFC 4180, formulas with their apostrophe', () => {
    fc.assert(
      fc.property(row, fc.array(row, { maxLength: 5 }), (header, rows) => {
        const safe = (x: string): string => (/^[=+\-@\t\r]/.test(x) ? `'${x}` : x);
        expect(parse(csvText(header, rows))).toEqual([header, ...rows].map((r) => r.map(safe)));
      }),
    );
  });

  it('never begins a cell as a formula', () => {
    for (const sign of ['=', '+', '-', '@', '\t', '\r'])
      expect(parse(`${csvCell(`${sign}1`)}\r\n`)).toEqual([[`'${sign}1`]]);
    expect(csvCell('=1')).toBe(`"'=1"`);
  });

  // The examples of RFC 4180, section 2.
  it('writes as the standard’s examples do', () => {
    expect(csvText(['aaa', 'b\r\nbb', 'ccc'], [['zzz', 'b"bb', 'xxx']])).toBe(
      'aaa,"b\r\nbb",ccc\r\nzzz,"b""bb",xxx\r\n',
    );
  });
});
