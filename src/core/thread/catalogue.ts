import { ba, brass, bsf, bsw, cycle, modelEngineer } from './families/british';
import type { Family } from './families/family';
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
const built = new Map<string, readonly Thread[]>();
let all: readonly Thread[] | null = null;

/** The family of that id, or undefined (a person's own threads have none here). */
export const familyById = (id: string): Family | undefined => byId.get(id);

/** All threads of one family, in its table's order; empty for an unknown id. Built at first use. */
export const threadsOf = (family: string): readonly Thread[] => {
  const known = built.get(family);
  if (known) return known;
  const f = byId.get(family);
  if (!f) return [];
  const threads = Object.freeze(f.build(f));
  built.set(family, threads);
  return threads;
};

/** Every catalogued thread, family by family. Built at first use and kept. */
export const catalogue = (): readonly Thread[] => (all ??= FAMILIES.flatMap((f) => threadsOf(f.id)));

const ids = new Map<string, ReadonlyMap<string, Thread>>();
const idsOf = (family: string): ReadonlyMap<string, Thread> => {
  const known = ids.get(family);
  if (known) return known;
  const made = new Map(threadsOf(family).map((t) => [t.id, t]));
  if (made.size) ids.set(family, made);
  return made;
};

/** The catalogued thread of that id, its multi-start variants included ("tr:Tr40x7*2"), or undefined. */
export const threadById = (id: string): Thread | undefined => {
  const [base, starts] = readStarts(id);
  // Only the family named in the id is built, so that opening a saved job doesn't wait for the rest.
  const thread = idsOf(base.slice(0, Math.max(0, base.indexOf(':')))).get(base);
  return thread && starts > 1 ? withStarts(thread, starts) : thread;
};
