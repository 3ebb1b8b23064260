import { ba, brass, bsf, bsw, cycle, modelEngineer } from './families/british';
import { idOf, threadFrom, type Family, type Row } from './families/family';
import { isoCoarse, isoConstant, isoFine, mj } from './families/iso';
import { gPipe, npt, rPipe } from './families/pipe';
import { acme, buttress, round, square, stubAcme, trapezoidal } from './families/power';
import { camera, microscope, optical, sparkPlug, wormDp29, wormDp40, wormModule } from './families/special';
import { un, unc, unef, unf, unj, uns } from './families/unified';
import { readStarts, withStarts } from './starts';
import type { Thread } from './thread';

export type { Family, LimitSystem } from './families/family';

/** Every family, in the order in which equal matches of a search are shown. */
export const FAMILIES: readonly Family[] = [
  ...[isoCoarse, isoFine, unc, unf, unef, bsw, bsf, ba],
  ...[gPipe, rPipe, npt, trapezoidal, acme, stubAcme],
  ...[isoConstant, un, uns, unj, mj],
  ...[modelEngineer, brass, cycle, optical, camera, microscope, sparkPlug],
  ...[buttress, square, round, wormModule, wormDp29, wormDp40],
];

const byId = new Map(FAMILIES.map((f) => [f.id, f]));

/** Rows of one family by the ids of their threads, and of which of them a thread was made: each is made once. */
interface Table {
  readonly rows: ReadonlyMap<string, Row>;
  readonly made: Map<string, Thread>;
}
const tables = new Map<string, Table>();
const built = new Map<string, readonly Thread[]>();
let all: readonly Thread[] | null = null;

/** The family of that id, or undefined (a person's own threads have none here). */
export const familyById = (id: string): Family | undefined => byId.get(id);

const tableOf = (family: string): Table | null => {
  const known = tables.get(family);
  if (known) return known;
  const f = byId.get(family);
  if (!f) return null;
  const table = { rows: new Map(f.table(f).map((row) => [idOf(row), row])), made: new Map<string, Thread>() };
  tables.set(family, table);
  return table;
};

const threadIn = ({ rows, made }: Table, id: string): Thread | undefined => {
  const row = rows.get(id);
  const thread = made.get(id) ?? (row && threadFrom(row));
  if (thread) made.set(id, thread);
  return thread;
};

/** All threads of one family, in its table's order; empty for an unknown id. Built at first use. */
export const threadsOf = (family: string): readonly Thread[] => {
  const known = built.get(family);
  if (known) return known;
  const table = tableOf(family);
  if (!table) return [];
  const threads = Object.freeze([...table.rows.keys()].flatMap((id) => threadIn(table, id) ?? []));
  built.set(family, threads);
  return threads;
};

/** Every catalogued thread, family by family. Built at first use and kept. */
export const catalogue = (): readonly Thread[] => (all ??= FAMILIES.flatMap((f) => threadsOf(f.id)));

/** The catalogued thread of that id, its multi-start variants included ("tr:Tr40x7*2"), or undefined. */
export const threadById = (id: string): Thread | undefined => {
  const [base, starts] = readStarts(id);
  // Only this one is made, so that opening a saved job doesn't wait for the rest of its family.
  const table = tableOf(base.slice(0, Math.max(0, base.indexOf(':'))));
  const thread = table ? threadIn(table, base) : undefined;
  return thread && starts > 1 ? withStarts(thread, starts) : thread;
};
