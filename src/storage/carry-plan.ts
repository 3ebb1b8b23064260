import {
  mergeContents,
  mergeMachine,
  mergeRecord,
  type CarriedRow,
  type CarryDocument,
  type FieldConflict,
  type RecordRow,
  type VersionRow,
} from '../core/carry';
import { STORES, type Backing, type StoreName, type Work } from './backing';
import { isEnvelope } from './envelope';
import { COPIED } from './copied';
import { chainId } from './versioned';
import { earlierOf, isCarried } from './carry-collect';

/** What becomes of a row: `ours`: what is here is the newer; `forward`: brought up to date; `back`: taken back there. */
export type Outcome = 'new' | 'same' | 'ours' | 'forward' | 'merged' | 'back';

/** One row of a file beside what is here. */
export interface Incoming {
  readonly store: StoreName;
  readonly theirs: CarriedRow;
  readonly outcome: Outcome;
  /** The version that is here, and that this was reckoned from. */
  readonly seen: string | null;
  readonly ours: VersionRow | null;
  /** What is to be written. */
  readonly row: CarriedRow;
  /** What a person has to choose first. */
  readonly conflicts: readonly FieldConflict[];
  /** Versions before theirs. */
  readonly earlier: readonly VersionRow[];
}

/** A row that this version of the app can't read, or has no place for: left out. */
export interface LeftOut {
  readonly store: string;
  readonly name: string;
}

export interface Plan {
  readonly rows: readonly Incoming[];
  readonly leftOut: readonly LeftOut[];
}

/** Whether the codec of a store can read a row; stores without one take any. */
export type Reads = (store: StoreName, row: unknown) => boolean;

/** Rows looked up at once. */
const BATCH = 200;

export const nameOf = (row: CarriedRow): string => {
  const { body } = row as { body?: { profile?: { name?: unknown }; name?: unknown; threadName?: unknown } };
  const name = body?.profile?.name ?? body?.name ?? body?.threadName;
  return typeof name === 'string' && name !== '' ? name.slice(0, 100) : row.id;
};

const isKnown = (store: string): store is StoreName => (STORES as readonly string[]).includes(store);

/** Whether a cut runs is for the phone at the lathe to say: a file begins and ends none. */
const withCutOf = (ours: VersionRow | null, theirs: VersionRow): VersionRow => {
  const since = (ours?.body as { cuttingSince?: unknown } | null | undefined)?.cuttingSince ?? null;
  return { ...theirs, body: { ...(theirs.body as object), cuttingSince: since } };
};

const versioned = async (
  w: Work,
  store: StoreName,
  row: VersionRow,
  earlier: readonly VersionRow[],
  reads: Reads,
): Promise<Incoming> => {
  const there = await w.get(store, row.id);
  const ours = isEnvelope(there) ? there : null;
  const theirs = store === 'jobs' ? withCutOf(ours, row) : row;
  const base = { store, theirs, ours, seen: ours?.rev ?? null, earlier, row: theirs, conflicts: [] };
  if (!ours) return { ...base, outcome: 'new' };
  const mine = ours.rev === theirs.rev ? [] : await earlierOf(w, chainId(store, theirs.id));
  const merge = mergeMachine(ours, mine, theirs, earlier);
  if (merge.kind === 'forward') return { ...base, outcome: 'forward' };
  if (merge.kind === 'merged') {
    // Parts that don't go together (a wire of a cable that was taken out) are chosen as they stand on one side.
    const { conflicts } = reads(store, merge.row) ? merge : mergeContents(null, ours, theirs);
    const kept = conflicts === merge.conflicts ? merge.row : { ...ours, parents: merge.row.parents };
    return { ...base, outcome: 'merged', row: kept, conflicts };
  }
  // Whoever opens a file of what was put away since wants it, or doesn't: that is for a person to say.
  if (ours.deleted && !theirs.deleted)
    return {
      ...base,
      outcome: 'merged',
      row: { ...ours, parents: [ours.rev, theirs.rev] },
      conflicts: [{ field: 'deleted', ours: true, theirs: false }],
    };
  return { ...base, outcome: merge.kind };
};

const lookUp = async (
  w: Work,
  store: StoreName,
  theirs: CarriedRow,
  earlier: readonly VersionRow[],
  reads: Reads,
): Promise<Incoming> => {
  if (store !== 'evidence' && store !== 'meta')
    return versioned(w, store, theirs as VersionRow, earlier, reads);
  const there = (await w.get(store, theirs.id)) as RecordRow | undefined;
  const base = { store, theirs, ours: null, seen: null, earlier: [], conflicts: [] };
  if (!there) return { ...base, row: theirs, outcome: 'new' };
  if (store === 'meta') return { ...base, row: theirs, outcome: 'ours' };
  const row = mergeRecord(there, theirs as RecordRow);
  return { ...base, row, outcome: row.takenBack === there.takenBack ? 'same' : 'back' };
};

const group = (document: CarryDocument): Map<string, VersionRow[]> => {
  const all = new Map<string, VersionRow[]>();
  for (const row of document.earlier) {
    const id = row.id.slice(0, row.id.lastIndexOf('/'));
    const rows = all.get(id);
    if (rows) rows.push(row);
    else all.set(id, [row]);
  }
  return all;
};

/** What a file would change, without changing anything. Reads in pieces, each at one moment. */
export const planOf = async (backing: Backing, document: CarryDocument, reads: Reads): Promise<Plan> => {
  const earlier = group(document);
  const rows: Incoming[] = [];
  const leftOut: LeftOut[] = [];
  for (const [store, all] of Object.entries(document.records)) {
    for (let at = 0; at < all.length; at += BATCH) {
      const batch = all.slice(at, at + BATCH);
      const fit = batch.filter((row) => isKnown(store) && isCarried(store, row.id) && reads(store, row));
      for (const row of batch) if (!fit.includes(row)) leftOut.push({ store, name: nameOf(row) });
      if (!isKnown(store) || fit.length === 0) continue;
      const found = await backing.run('readonly', [...COPIED, 'history'], (w) =>
        Promise.all(fit.map((row) => lookUp(w, store, row, earlier.get(`${store}/${row.id}`) ?? [], reads))),
      );
      rows.push(...found);
    }
  }
  return { rows, leftOut };
};
