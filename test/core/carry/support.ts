import fc from 'fast-check';
import type { RecordRow, VersionRow } from '../../../src/core/carry';

/** A version of a machine with some fields; the name of a version stands for nothing but itself. */
export const version = (
  rev: string,
  parents: readonly string[],
  fields: Readonly<Record<string, unknown>>,
  deleted = false,
): VersionRow => ({
  id: 'm',
  schema: 1,
  rev,
  parents,
  device: 'a',
  counter: 1,
  changedAt: 1,
  deleted,
  body: { profile: fields, example: false },
});

export const profileOf = (row: VersionRow): Readonly<Record<string, unknown>> =>
  (row.body as { profile: Readonly<Record<string, unknown>> }).profile;

const FIELDS = ['pitch', 'lines', 'motor', 'notes'] as const;
const value = fc.constantFrom<unknown>(null, 1, 2, 'x', { n: '8', d: '1', unit: 'tpi' });
/** Changes to some of a few fields, so that two people often meet on one of them. */
export const changes = fc
  .array(fc.tuple(fc.constantFrom(...FIELDS), value), { maxLength: 4 })
  .map((all): Readonly<Record<string, unknown>> => Object.fromEntries(all));
export const start = changes.map((some): Readonly<Record<string, unknown>> => ({
  pitch: 0,
  lines: 0,
  motor: 0,
  notes: 0,
  ...some,
}));

export const records = fc
  .uniqueArray(
    fc.record(
      {
        id: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g'),
        takenBack: fc.integer({ min: 1, max: 9 }),
      },
      { requiredKeys: ['id'] },
    ),
    { selector: (r) => r.id },
  )
  .map((all): readonly RecordRow[] =>
    all.map((r) => ({ schema: 1, kind: 'test', machine: 'm', at: 5, device: 'a', body: { of: r.id }, ...r })),
  );
