import type { Content } from './document';
import type { CarriedRow, RecordRow } from './rows';

/** Earlier versions of a record that go along: without any, what both phones changed can't be told from what one did. */
const EARLIER = 20;

/** Of each test the record made last; what was taken back doesn't count. */
const newestTests = (rows: readonly CarriedRow[]): RecordRow[] => {
  const newest = new Map<unknown, RecordRow>();
  for (const row of rows as readonly RecordRow[]) {
    if (row.kind !== 'test' || row.takenBack !== undefined) continue;
    const { test } = (row.body ?? {}) as { test?: unknown };
    const before = newest.get(test);
    if (!before || before.at <= row.at) newest.set(test, row);
  }
  return [...newest.values()];
};

/** What goes by codes: `most` with all that belongs to the machine, `some` with its own profile, `least` without earlier versions. */
export type CodesKind = 'most' | 'some' | 'least';

/**
 * A machine's file made smaller for codes, the fullest first: always its profile and the newest record of each test.
 * Checks, hours and events stay behind.
 */
export const forCodes = (content: Content): readonly { kind: CodesKind; content: Content }[] => {
  const { machines = [], evidence = [], ...others } = content.records;
  const own = { machines, evidence: newestTests(evidence) };
  const rest = { ...own, ...others };
  const earlier = Object.keys(rest).flatMap((store) =>
    content.earlier.filter((row) => row.id.startsWith(`${store}/`)).slice(-EARLIER),
  );
  const ofMachine = earlier.filter((row) => row.id.startsWith('machines/'));
  return [
    { kind: 'most', content: { ...content, records: rest, earlier } },
    { kind: 'some', content: { ...content, records: own, earlier: ofMachine } },
    { kind: 'least', content: { ...content, records: own, earlier: [] } },
  ];
};
