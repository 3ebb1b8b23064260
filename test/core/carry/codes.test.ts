import fc from 'fast-check';
import encodeQR from 'qr';
import decodeQR from 'qr/decode.js';
import { crc32 as nodeCrc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import {
  BLOCK,
  drawingOf,
  MOST,
  MOST_BLOCKS,
  NOTHING_COLLECTED,
  QUIET,
  shownFor,
  split,
  take,
  type Collected,
  type Taken,
} from '../../../src/core/carry/codes';
import { crcOfBytes } from '../../../src/core/carry/crc';
import { fromDigits, MOST_BYTES, MOST_DIGITS, toDigits } from '../../../src/core/carry/codes/digits';
import { blockOf, restore } from '../../../src/core/carry/codes/erasure';
import { inverse, times } from '../../../src/core/carry/codes/field';
import { readFrame, writeFrame } from '../../../src/core/carry/codes/frame';

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);
/** Bytes that look like deflated ones, the same each time. */
const noise = (length: number, seed = 1): Uint8Array => {
  let s = seed;
  return Uint8Array.from({ length }, () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s >>> 24;
  });
};
const texts = (bytes: Uint8Array): readonly string[] => {
  const made = split(bytes);
  if (!made.ok) throw new Error(made.code);
  return made.texts;
};
/** Takes codes one after another; what each brought. */
const takeAll = (all: readonly string[], from: Collected = NOTHING_COLLECTED) => {
  let collected = from;
  const brought: Taken[] = [];
  for (const text of all) {
    const one = take(collected, text);
    ({ collected } = one);
    brought.push(one.taken);
  }
  return { collected, brought, last: brought.at(-1) };
};

describe('CRC-32', () => {
  // The check value that the catalogues of checksums give for this polynomial, and Node's own zlib.
  it('has its published check value', () => expect(crcOfBytes(ascii('123456789'))).toBe(0xcbf43926));
  it('agrees with another implementation', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), (bytes) => crcOfBytes(bytes) === nodeCrc32(bytes)),
    );
  });
});

describe('the field', () => {
  /** By the definition: polynomials multiplied without carrying, and divided by 11D. */
  const slow = (a: number, b: number): number => {
    let product = 0;
    for (let i = 0; i < 8; i += 1) if (b & (1 << i)) product ^= a << i;
    for (let i = 15; i >= 8; i -= 1) if (product & (1 << i)) product ^= 0x11d << (i - 8);
    return product;
  };
  it('multiplies as the definition does, all 65536 pairs', () => {
    for (let a = 0; a < 256; a += 1)
      for (let b = 0; b < 256; b += 1) if (times(a, b) !== slow(a, b)) expect([a, b]).toBe('as defined');
  });
  it('has one inverse for each but 0', () => {
    for (let a = 1; a < 256; a += 1) expect(slow(a, inverse(a))).toBe(1);
    expect(() => inverse(0)).toThrow(RangeError);
  });
});

describe('digits', () => {
  it('carry 411 bytes in 990 digits and never more: 256⁴¹¹ < 10⁹⁹⁰', () => {
    expect(256n ** 411n < 10n ** 990n).toBe(true);
    expect(toDigits(new Uint8Array(MOST_BYTES).fill(255))).toHaveLength(990);
  });
  // ISO/IEC 18004 table 7, version 15-M: 991 digits, 600 alphanumeric signs, 412 bytes; as another's encoder has it.
  it('are as many as version 15 with correction M takes', () => {
    const side = (digits: number): number =>
      encodeQR('1'.repeat(digits), 'raw', { ecc: 'medium', border: 0 }).length;
    expect([side(MOST_DIGITS), side(MOST_DIGITS + 1)]).toEqual([17 + 4 * 15, 17 + 4 * 16]);
  });
  it('come back, and nothing else is taken', () => {
    const some = fc.uint8Array({ minLength: 1, maxLength: MOST_BYTES }).filter((b) => b[0] !== 0);
    fc.assert(
      fc.property(some, (bytes) => {
        expect(fromDigits(toDigits(bytes))).toEqual(bytes);
      }),
    );
    for (const text of ['', '0', '007', '-5', '1.5', '1e3', '0x10', ' 12', '12\n', '１２', '9'.repeat(992)])
      expect(fromDigits(text)).toBeNull();
    expect(() => toDigits(Uint8Array.of(0, 1))).toThrow(RangeError);
  });
});

describe('erasure', () => {
  /** Every choice of `k` of `n` numbers. */
  const choices = (n: number, k: number): number[][] =>
    k === 0
      ? [[]]
      : Array.from({ length: n }, (_, i) => i).flatMap((i) => choices(i, k - 1).map((c) => [...c, i]));
  const pick = (data: Uint8Array[], rows: readonly number[]) =>
    new Map(rows.map((row) => [row, blockOf(data, row)]));

  it.each([1, 2, 3, 4, 5])('%i blocks: every choice of as many of twice as many restores', (k) => {
    const data = Array.from({ length: k }, (_, i) => noise(7, i + 1));
    for (const rows of choices(2 * k, k)) expect(restore(pick(data, rows), k)).toEqual(data);
    for (const rows of choices(2 * k, k - 1)) expect(restore(pick(data, rows), k)).toBeNull();
  });

  it('32 blocks from any rows of the 256 there are', () => {
    const data = Array.from({ length: 32 }, (_, i) => noise(5, i + 1));
    const rows = fc.uniqueArray(fc.integer({ min: 0, max: 255 }), { minLength: 32, maxLength: 40 });
    fc.assert(
      fc.property(rows, (some) => {
        expect(restore(pick(data, some), 32)).toEqual(data);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a frame', () => {
  const frame = { transfer: 0x01020304, length: 700, count: 2, row: 3, block: noise(350) };

  it('has its bytes where the table puts them', () => {
    const bytes = fromDigits(writeFrame(frame)) ?? new Uint8Array();
    expect([...bytes.subarray(0, 11)]).toEqual([0x4c, 0x43, 1, 1, 2, 3, 4, 0x02, 0xbc, 2, 3]);
    expect(bytes.subarray(11, -4)).toEqual(frame.block);
    const sum = new DataView(bytes.buffer).getUint32(bytes.length - 4);
    expect(sum).toBe(nodeCrc32(bytes.subarray(0, -4)));
  });

  it('comes back, and says why it doesn’t', () => {
    const text = writeFrame(frame);
    expect(readFrame(text)).toEqual(frame);
    const bent = (at: number, to: number): string => {
      const bytes = fromDigits(text) ?? new Uint8Array();
      bytes[at] = to;
      new DataView(bytes.buffer).setUint32(bytes.length - 4, nodeCrc32(bytes.subarray(0, -4)));
      return toDigits(bytes);
    };
    expect(readFrame(bent(0, 0x4d))).toBe('foreign');
    expect(readFrame('https://example.org/')).toBe('foreign');
    expect(readFrame('12345')).toBe('foreign');
    expect(readFrame(bent(2, 2))).toBe('newer');
    expect(readFrame(bent(9, 0))).toBe('damaged');
    expect(readFrame(bent(9, MOST_BLOCKS + 1))).toBe('damaged');
    expect(readFrame(bent(8, 0))).toBe('damaged');
    expect(readFrame(text.slice(0, -1))).toBe('foreign');
  });

  it('with any one digit changed is refused', () => {
    const text = writeFrame(frame);
    for (let at = 0; at < text.length; at += 1) {
      const other = text.slice(0, at) + ((Number(text[at]) + 1) % 10) + text.slice(at + 1);
      expect(['foreign', 'damaged']).toContain(readFrame(other));
    }
  });
});

describe('split and taken', () => {
  it('refuses nothing and too much', () => {
    expect(split(new Uint8Array())).toEqual({ ok: false, code: 'nothing' });
    expect(split(noise(MOST + 1))).toEqual({ ok: false, code: 'too-large' });
    expect(split(noise(MOST))).toMatchObject({ ok: true, count: 32 });
    expect(MOST).toBe(32 * 396);
    expect(BLOCK).toBe(396);
  });

  it('every code fits version 15 with correction M', () => {
    for (const text of texts(noise(MOST))) expect(text.length).toBeLessThanOrEqual(MOST_DIGITS);
  });

  it('any as many codes as there are blocks restore the bytes, in any order, with others mixed in', () => {
    const scene = fc
      .record({ length: fc.integer({ min: 1, max: MOST }), seed: fc.nat() })
      .chain(({ length, seed }) => {
        const bytes = noise(length, seed);
        const all = texts(bytes);
        const count = Math.ceil(length / BLOCK);
        return fc.record({
          bytes: fc.constant(bytes),
          count: fc.constant(count),
          chosen: fc.shuffledSubarray([...all], { minLength: count, maxLength: count }),
          other: fc.constant(texts(noise(900, seed + 1))),
        });
      });
    fc.assert(
      fc.property(scene, ({ bytes, count, chosen, other }) => {
        const [first = '', ...rest] = chosen;
        // The first one twice, one of another transfer and a torn one after it.
        const before = takeAll([first, ...(count > 1 ? [first] : []), other[0] ?? '', `${first}7`, 'hello']);
        const { last } = count > 1 ? takeAll(rest, before.collected) : { last: before.brought[0] };
        expect(last).toEqual({ kind: 'whole', need: count, bytes });
      }),
      { numRuns: 60 },
    );
  });

  it('counts different codes only', () => {
    const all = texts(noise(3 * BLOCK));
    expect(all).toHaveLength(5);
    const { brought } = takeAll([all[4] ?? '', all[4] ?? '', all[0] ?? '']);
    expect(brought).toEqual([
      { kind: 'more', have: 1, need: 3, fresh: true },
      { kind: 'more', have: 1, need: 3, fresh: false },
      { kind: 'more', have: 2, need: 3, fresh: true },
    ]);
  });

  it('a third of one round may be missed', () => {
    for (let count = 1; count <= MOST_BLOCKS; count += 1)
      expect(shownFor(count) - count).toBeGreaterThanOrEqual(Math.floor(shownFor(count) / 3));
    expect(shownFor(1)).toBe(2);
    expect(shownFor(32)).toBe(48);
  });

  it('frames that say they belong together and don’t are found out and forgotten', () => {
    const block = noise(100);
    const two = [0, 1].map((row) => writeFrame({ transfer: 7, length: 200, count: 2, row, block }));
    const { brought, collected } = takeAll(two);
    expect(brought[1]).toEqual({ kind: 'refused', code: 'contradiction' });
    expect(collected.size).toBe(0);
  });

  it('follows four transfers at most', () => {
    const firsts = Array.from({ length: 9 }, (_, i) => texts(noise(900, i + 1))[0] ?? '');
    expect(takeAll(firsts).collected.size).toBe(4);
  });
});

describe('a drawing', () => {
  /** The modules that the path's strokes cover, read off the path by its own rules. */
  const modulesOf = ({ size, path }: { size: number; path: string }): boolean[][] => {
    const rows = Array.from({ length: size }, () => Array<boolean>(size).fill(false));
    let [x, y] = [0, 0];
    for (const [, command, a = '0', b = '0'] of path.matchAll(/([Mmh])(\d+)(?: (\d+)(?:\.5)?)?/g)) {
      if (command === 'M') [x, y] = [Number(a), Number(b)];
      else {
        for (let i = 0; i < Number(a); i += 1) (rows[y] ?? [])[x + i] = command === 'h';
        x += Number(a);
      }
    }
    return rows;
  };

  it('has every module in its place, with the quiet zone, and another’s decoder reads it', () => {
    const text = texts(noise(800))[1] ?? '';
    const rows = encodeQR(text, 'raw', { ecc: 'medium', border: 0 });
    const drawing = drawingOf(rows);
    const drawn = modulesOf(drawing);
    expect(drawing.size).toBe(rows.length + 8);
    expect(drawn.slice(QUIET, -QUIET).map((row) => row.slice(QUIET, -QUIET))).toEqual(rows);
    expect(drawn.flat().filter(Boolean)).toHaveLength(rows.flat().filter(Boolean).length);
    const scale = 4;
    const side = drawing.size * scale;
    const data = new Uint8Array(side * side * 3);
    for (let i = 0; i < side * side; i += 1) {
      const dark = drawn[Math.floor(i / side / scale)]?.[Math.floor((i % side) / scale)] ?? false;
      data.fill(dark ? 0 : 255, 3 * i, 3 * i + 3);
    }
    expect(decodeQR({ width: side, height: side, data })).toBe(text);
  });
});
