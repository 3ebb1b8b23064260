import { describe, expect, it } from 'vitest';
import { MOST, readDocument, writeDocument, type Content, type RefusalCode } from '../../../src/core/carry';
import { canonical } from '../../../src/core/carry/canonical';
import { crc32 } from '../../../src/core/carry/crc';
import { storeProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { version } from './support';

describe('a file of very much', () => {
  const content = (records: Content['records'], earlier: Content['earlier'] = []): Content => ({
    ...{ kind: 'everything', made: '2026-11-27T14:32:00.000Z', app: '1', records, earlier },
  });
  const row = (n: number, body: unknown) => ({ ...version(`r${n}`, [], {}), id: `m${n}`, body });
  const rows = (count: number, body: unknown) => Array.from({ length: count }, (_, n) => row(n, body));
  const pages = 'x'.repeat(MOST.text);

  it('is written so that it can be read again: without blanks, then without the versions before', () => {
    const long = content({ machines: rows(100, Array(40_000).fill(1)) });
    const much = content({ machines: rows(10, pages) }, rows(330, pages));
    const [narrow, bare] = [writeDocument(long), writeDocument(much)].map(({ text }) => readDocument(text));
    expect(narrow?.ok && narrow.document.records.machines?.length).toBe(100);
    expect(bare?.ok && [bare.document.records.machines?.length, bare.document.earlier.length]).toEqual([
      10, 0,
    ]);
  });

  it('isn’t made where no reader would take it', () => {
    expect(() => writeDocument(content({ machines: rows(330, pages) }))).toThrow(RangeError);
  });
});

describe('the checksum', () => {
  it('is CRC-32 of IEEE 802.3', () => {
    // The check value of the catalogue of parametrised CRC algorithms, for "123456789".
    expect(crc32('123456789')).toBe('cbf43926');
    expect(crc32('')).toBe('00000000');
    // RFC 3629 gives these octets for "A≢Α." and "不"+U+233B4 (its examples); CRC-32 of them by zlib's crc32 (RFC 1952).
    expect(crc32('A\u2262\u0391.')).toBe(ofBytes([0x41, 0xe2, 0x89, 0xa2, 0xce, 0x91, 0x2e]));
    expect(crc32('\u{233B4}')).toBe(ofBytes([0xf0, 0xa3, 0x8e, 0xb4]));
  });

  it('is of one text, however keys are ordered (the example of RFC 8785, 3.2.3)', () => {
    const example = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(
      Object.values(JSON.parse(canonical(example)) as object).map((x: string) => x.split(':')[0]),
    ).toEqual([
      'One',
      'Carriage Return',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji',
      'Hebrew Letter Dalet With Dagesh',
    ]);
    expect(canonical({ b: [1, { d: null, c: 'x' }], a: 1e21 })).toBe(
      '{"a":1e+21,"b":[1,{"c":"x","d":null}]}',
    );
  });
});

/** CRC-32 bit by bit over bytes, as the standard's division is written. */
function ofBytes(bytes: readonly number[]): string {
  let crc = 0xffffffffn;
  for (const byte of bytes)
    for (let bit = 0; bit < 8; bit += 1) {
      const one = ((crc ^ (BigInt(byte) >> BigInt(bit))) & 1n) === 1n;
      crc = (crc >> 1n) ^ (one ? 0xedb88320n : 0n);
    }
  return (crc ^ 0xffffffffn).toString(16).padStart(8, '0');
}

const machine = { ...version('2-a', ['1-a'], storeProfile(EXAMPLES.heron())), id: 'm1' };
const record = { id: 'e1', schema: 1, kind: 'test', machine: 'm1', at: 5, device: 'a', body: { n: 1 } };
const content: Content = {
  kind: 'machine',
  made: '2026-11-27T14:32:00.000Z',
  app: '0.1.0',
  records: { machines: [machine], evidence: [record] },
  earlier: [{ ...machine, id: 'machines/m1/1-a', rev: '1-a', parents: [] }],
};
const { text } = writeDocument(content);

const refused = (t: string): RefusalCode | null => {
  const read = readDocument(t);
  return read.ok ? null : read.code;
};

describe('a file', () => {
  it('comes back as it was, whatever its lines and the order of its keys', () => {
    const read = readDocument(text);
    expect(read.ok && read.document).toMatchObject(content);
    expect(refused(JSON.stringify(JSON.parse(text)))).toBeNull();
    const turned = Object.fromEntries(Object.entries(JSON.parse(text) as object).reverse());
    expect(refused(JSON.stringify(turned, null, 4))).toBeNull();
    expect(refused(`\ufeff${text}`)).toBeNull();
  });

  it('leaves out what no reader would take, and counts it', () => {
    const odd = { ...machine, body: { notes: 'x'.repeat(MOST.text + 1) } };
    const made = writeDocument({ ...content, records: { machines: [machine, odd] } });
    expect(made.left).toBe(1);
    expect(refused(made.text)).toBeNull();
  });

  const edit = (from: string, to: string): string => {
    if (!text.includes(from)) throw new Error(from);
    return text.replace(from, to);
  };
  it.each<[RefusalCode, string]>([
    ['empty', ' \n'],
    ['truncated', text.slice(0, -40)],
    ['not-json', 'Leadscrew 8 tpi'],
    ['not-json', edit('"made"', 'made')],
    ['format', '[]'],
    ['format', '"latheside"'],
    ['format', edit('"latheside"', '"another"')],
    ['newer', edit('"version": 1', '"version": 2')],
    ['shape', edit('"version": 1', '"version": "1"')],
    ['shape', edit('"kind": "machine"', '"kind": "half"')],
    ['shape', edit('"kind"', '"more": 1, "kind"')],
    ['shape', edit('2026-11-27T', '27.11.2026 ')],
    ['rows', edit('"rev": "2-a"', '"rev": 2')],
    ['rows', edit('"kind": "test"', '"kind": null')],
    ['checksum', edit('Heron', 'Stork')],
    ['checksum', edit('"changedAt": 1', '"changedAt": 2')],
    ['keys', edit('"body": {', '"body": { "__proto__": {"polluted": 1},')],
    ['keys', edit('"body": {', '"body": { "constructor": 1,')],
    ['numbers', edit('"at": 5', '"at": 1e999')],
    ['numbers', edit('"at": 5', '"at": 9007199254740993')],
    ['fractions', edit('"d": "1"', '"d": "0"')],
    ['fractions', edit('"d": "1"', `"d": "1${'0'.repeat(40)}"`)],
    ['fractions', edit('"d": "1"', '"d": 1')],
    ['deep', edit('"body": {', `"body": { "x": ${'['.repeat(40)}${']'.repeat(40)},`)],
    ['long', edit('"body": {', `"body": { "x": "${'x'.repeat(MOST.text + 1)}",`)],
    ['large', ' '.repeat(MOST.size + 1)],
    ['encoding', [...text].join('\0')],
  ])('is refused as %s', (code, wrong) => {
    expect(refused(wrong)).toBe(code);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  it('nested a million deep is refused, not followed', () => {
    const deep = `{"format":"latheside","version":1,"x":${'['.repeat(1e6)}${']'.repeat(1e6)}}`;
    expect(refused(deep)).toBe('deep');
  });

  it('with more records than are taken is refused', () => {
    const many = Array.from({ length: MOST.rows + 1 }, (_, i) => ({ ...record, id: `e${i}` }));
    expect(refused(writeDocument({ ...content, records: { evidence: many } }).text)).toBe('many');
  });
});
