import { BRITISH_FAMILIES } from './families/british';
import type { Family } from './families/family';
import { ISO_FAMILIES } from './families/iso';
import { UNIFIED_FAMILIES } from './families/unified';
import type { Thread } from './thread';

export type { Family, LimitSystem } from './families/family';

/** Every family, in the order in which equal matches of a search are shown. */
export const FAMILIES: readonly Family[] = [...ISO_FAMILIES, ...UNIFIED_FAMILIES, ...BRITISH_FAMILIES];

const byId = new Map(FAMILIES.map((f) => [f.id, f]));
const built = new Map<string, readonly Thread[]>();
let all: readonly Thread[] | null = null;
let ids: ReadonlyMap<string, Thread> | null = null;

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

/** The catalogued thread of that id, or undefined. */
export const threadById = (id: string): Thread | undefined => {
  ids ??= new Map(catalogue().map((t) => [t.id, t]));
  return ids.get(id);
};
