import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeShelf } from '../../../.ci/shelf.js';
import { readShelf, shelfStanding } from '../../../src/core/carry';
import { GOOD } from './good';

const schema = JSON.parse(readFileSync('public/schemas/latheside-shelf-1.schema.json', 'utf8')) as object;
const isValid = new Ajv2020({ strict: true }).compile(schema);
const list = (files: unknown, more: object = {}): unknown => ({
  format: 'latheside-shelf',
  version: 1,
  files,
  ...more,
});
const heron = { file: 'heron.json', name: 'Heron', workshop: 'Club', machine: 'm1', rev: '4-a' };

describe('the list of a shelf', () => {
  it('is read; what it leaves out is empty', () => {
    expect(readShelf(list([heron, { file: 'Größe 2.json', name: 'Tern' }]))).toEqual([
      heron,
      { file: 'Größe 2.json', name: 'Tern', workshop: '', machine: '', rev: '' },
    ]);
  });

  it.each([
    ['no list', null],
    ['another form', { ...(list([]) as object), version: 2 }],
    ['a way out of the folder', list([{ ...heron, file: '../heron.json' }])],
    ['another host', list([{ ...heron, file: 'https://example.org/heron.json' }])],
    ['no name', list([{ ...heron, name: '' }])],
    ['a name that is no text', list([{ ...heron, name: { toString: 'x' } }])],
    ['more than a shelf holds', list(Array.from({ length: 501 }, () => heron))],
  ])('is refused: %s', (_, x) => {
    expect(readShelf(x)).toBeNull();
    expect(isValid(x)).toBe(false);
  });

  it('takes just what the published form takes', () => {
    const text = fc.oneof(
      fc.constantFrom('heron.json', 'a/b.json', '.json', 'x.JSON', 'Größe 2.json', '', 'm1', 'x'.repeat(101)),
      fc.string({ maxLength: 6 }),
    );
    const file = fc.record(
      {
        file: fc.oneof(text, fc.integer()),
        name: text,
        workshop: fc.oneof(text, fc.constant(null)),
        machine: text,
        rev: text,
      },
      { requiredKeys: [] },
    );
    const known = fc.record({ file: fc.constantFrom('a.json', 'b.json'), name: fc.constantFrom('A', 'B') });
    const any = fc
      .oneof(fc.array(fc.oneof(file, known), { maxLength: 3 }), fc.jsonValue())
      .map((x) => list(x));
    fc.assert(
      fc.property(fc.oneof(any, fc.jsonValue()), (x) => {
        expect(readShelf(x) !== null).toBe(isValid(x));
      }),
      { numRuns: 2000 },
    );
  });

  it('says how a machine stands to the one here by its version', () => {
    expect(shelfStanding(heron, null)).toBe('new');
    expect(shelfStanding(heron, { rev: '4-a', before: [] })).toBe('same');
    expect(shelfStanding(heron, { rev: '6-a', before: ['3-a', '4-a'] })).toBe('older');
    expect(shelfStanding(heron, { rev: '6-a', before: ['3-a'] })).toBe('other');
    expect(shelfStanding({ ...heron, rev: '' }, { rev: '6-a', before: [] })).toBe('unknown');
    expect(shelfStanding({ ...heron, machine: '' }, null)).toBe('unknown');
  });
});

describe('the command that makes it', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'latheside-shelf-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('lists machines, leaves out all else, and its list is read', () => {
    const whole = JSON.parse(GOOD) as { records: { machines: { id: string; rev: string }[] } };
    const machine = { ...whole, kind: 'machine' };
    Object.assign(machine.records.machines[0] ?? {}, {
      body: { profile: { name: 'Heron', workshop: 'Club' } },
    });
    writeFileSync(join(folder, 'b.json'), JSON.stringify(machine));
    writeFileSync(join(folder, 'all.json'), JSON.stringify({ ...machine, kind: 'everything' }));
    writeFileSync(join(folder, 'torn.json'), '{');
    writeFileSync(join(folder, 'notes.txt'), 'x');
    expect(makeShelf(folder)).toEqual({ files: ['b.json'], left: ['all.json', 'torn.json'] });
    const made: unknown = JSON.parse(readFileSync(join(folder, 'index.json'), 'utf8'));
    expect(isValid(made)).toBe(true);
    const { id, rev } = whole.records.machines[0] ?? {};
    expect(readShelf(made)).toEqual([{ file: 'b.json', name: 'Heron', workshop: 'Club', machine: id, rev }]);
    // Made anew, the list itself is none of the files.
    expect(makeShelf(folder).files).toEqual(['b.json']);
  });
});
