import { describe, expect, it } from 'vitest';
import { forCodes, readDocument, writeDocument, type Content } from '../../../src/core/carry';

const version = (id: string, rev: string, parents: string[], body: unknown = {}) => ({
  id,
  schema: 1,
  rev,
  parents,
  device: 'a',
  counter: 1,
  changedAt: 1,
  deleted: false,
  body,
});
const record = (id: string, kind: string, at: number, body: unknown, takenBack?: number) => ({
  id,
  schema: 1,
  kind,
  machine: 'm',
  at,
  device: 'a',
  body,
  ...(takenBack === undefined ? {} : { takenBack }),
});

const content: Content = {
  kind: 'machine',
  made: '2026-11-27T14:32:00.000Z',
  app: '0',
  records: {
    machines: [version('m', 'r30', ['r29'])],
    wiring: [version('m', 'w2', ['w1'])],
    evidence: [
      record('old', 'test', 1, { test: 'ramp' }),
      record('new', 'test', 3, { test: 'ramp' }),
      record('between', 'test', 2, { test: 'ramp' }),
      record('slip', 'test', 9, { test: 'ramp' }, 10),
      record('other', 'test', 1, { test: 'ratio' }),
      record('check', 'check', 4, { item: 'chuck-key' }),
      record('hours', 'hours', 4, { hours: 3 }),
    ],
  },
  earlier: [
    ...Array.from({ length: 30 }, (_, i) => version(`machines/m/r${i}`, `r${i}`, i ? [`r${i - 1}`] : [])),
    version('wiring/m/w1', 'w1', []),
  ],
};

const ids = (rows: readonly { id: string }[] | undefined): string[] => (rows ?? []).map((r) => r.id);

describe('a machine made smaller for codes', () => {
  const made = forCodes(content);

  it('has its profile and the newest record of each test that stands, whatever else is left behind', () => {
    expect(made.map((m) => m.kind)).toEqual(['most', 'some', 'least']);
    for (const each of made) {
      expect(ids(each.content.records.machines)).toEqual(['m']);
      expect(ids(each.content.records.evidence)).toEqual(['new', 'other']);
    }
  });

  it('leaves behind its wiring, then its earlier versions; of those the nearest go along', () => {
    const [most, some, least] = made.map((m) => m.content);
    expect(ids(most?.records.wiring)).toEqual(['m']);
    expect(ids(most?.earlier).slice(-2)).toEqual(['machines/m/r29', 'wiring/m/w1']);
    expect(some?.records.wiring).toBeUndefined();
    expect(ids(some?.earlier)).toEqual(Array.from({ length: 20 }, (_, i) => `machines/m/r${i + 10}`));
    expect(least?.earlier).toEqual([]);
  });

  it('is a file that can be read', () => {
    for (const each of made) {
      const { text, left } = writeDocument(each.content);
      expect(left).toBe(0);
      expect(readDocument(text).ok).toBe(true);
    }
  });
});
