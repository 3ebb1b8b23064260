import { mergeContents, type CarriedRow, type RecordRow, type VersionRow } from '../core/carry';
import type { Backing, Row, StoreName, Work } from './backing';
import { blankWiring } from '../core/wiring/record';
import { storeWiring } from '../core/wiring/record/stored';
import { isEnvelope } from './envelope';
import { newId } from './id';
import { COPIED } from './copied';
import { chainId, historyId, KEPT_VERSIONS, nextStamp, revOf } from './versioned';
import { earlierId } from './carry-collect';
import type { Incoming } from './carry-plan';

/** What one import wrote, for the way back: store, id, version before, version after. */
type Written = readonly [store: StoreName, id: string, before: string | null, after: string];

const ALL: readonly StoreName[] = [...COPIED, 'history'];
const RECORD = 'value/import/';
/** Rows written in one go. */
const PIECE = 100;
const WRITTEN = ['new', 'forward', 'merged', 'back'];
/** Which version a record was taken back from another phone: it has none. */
const BACK = 'back';

/** This phone's numbers for a row of changes, one after another. */
const stamps = async (w: Work) => {
  const { device, counter: first } = await nextStamp(w);
  let counter = first - 1;
  return {
    next: () => ({ device, counter: (counter += 1) }),
    keep: () => w.put('meta', { id: 'device', value: { device, counter: Math.max(first, counter) } }),
  };
};

/** Keeps versions as earlier ones; the oldest fall off the end. */
const remember = async (
  w: Work,
  store: StoreName,
  id: string,
  older: readonly VersionRow[],
  newer: readonly VersionRow[],
): Promise<void> => {
  const chain = chainId(store, id);
  const row = (await w.get('meta', chain)) as { value?: unknown } | undefined;
  const known = Array.isArray(row?.value) ? (row.value as string[]) : [];
  const fresh = (rows: readonly VersionRow[]): VersionRow[] => rows.filter((r) => !known.includes(r.rev));
  const [before, after] = [fresh(older), fresh(newer)];
  const revs = [...new Set([...before.map((r) => r.rev), ...known, ...after.map((r) => r.rev)])];
  const kept = revs.slice(-KEPT_VERSIONS);
  for (const r of [...before, ...after])
    if (kept.includes(r.rev)) w.put('history', { ...r, id: historyId(store, id, r.rev) });
  for (const rev of known) if (!kept.includes(rev)) w.remove('history', earlierId(chain, rev));
  if (kept.length > 0) w.put('meta', { id: chain, value: kept });
};

/** What stands in the way of a row and can't be read is moved aside, never overwritten. */
const setAside = (w: Work, store: StoreName, id: string, there: unknown): void => {
  if (there !== undefined && !isEnvelope(there))
    w.put('history', { id: historyId(store, id, `unreadable-${newId()}`), value: there });
};

type Stamps = Awaited<ReturnType<typeof stamps>>;

const writeVersion = async (w: Work, one: Incoming, stamp: Stamps): Promise<string> => {
  const { store, ours, outcome, earlier } = one;
  const row = one.row as VersionRow;
  const { device, counter } = stamp.next();
  setAside(w, store, row.id, ours ? undefined : await w.get(store, row.id));
  const merged = outcome === 'merged';
  await remember(w, store, row.id, earlier, [
    ...(merged ? [one.theirs as VersionRow] : []),
    ...(ours ? [ours] : []),
  ]);
  const rev = merged ? revOf({ device, counter }) : row.rev;
  // Numbered as a change of this phone: by that the copy beside the database tells which row came later.
  w.put(store, { ...row, rev, device, counter, ...(merged ? { changedAt: Date.now() } : {}) });
  return rev;
};

/**
 * Writes what was planned, all of it or nothing.
 * @param keep ways back that are still offered: what the others would have needed is let go
 * @returns null, with nothing written, when something here has changed since it was planned
 * @throws StorageError
 */
export const apply = (
  backing: Backing,
  rows: readonly Incoming[],
  keep: readonly string[],
): Promise<string | null> =>
  backing.run('readwrite', ALL, async (w) => {
    const todo = rows.filter((r) => WRITTEN.includes(r.outcome));
    for (const { store, row, seen, outcome } of todo) {
      const there = await w.get(store, row.id);
      const isAsSeen =
        store === 'evidence' || store === 'meta'
          ? (there === undefined) === (outcome === 'new')
          : (isEnvelope(there) ? there.rev : null) === seen;
      if (!isAsSeen) return null;
    }
    const stamp = await stamps(w);
    const written: Written[] = [];
    for (const [n, one] of todo.entries()) {
      const { store, row, seen, outcome } = one;
      // A question lets touches in between, and keeps the transaction open.
      if (n % PIECE === 0) await w.get(store, row.id);
      if (store === 'evidence' || store === 'meta') {
        w.put(store, row);
        written.push([store, row.id, outcome === 'new' ? null : BACK, '']);
      } else written.push([store, row.id, seen, await writeVersion(w, one, stamp)]);
    }
    stamp.keep();
    for (const old of (await w.page('meta', RECORD, 100)) as Row[])
      if (old.id.startsWith(RECORD) && !keep.includes(old.id.slice(RECORD.length))) w.remove('meta', old.id);
    const id = newId();
    w.put('meta', { id: `${RECORD}${id}`, value: written });
    return id;
  });

/** What a record is before anything was entered, where one that is put away would be read on: each machine or person has one. */
const BLANK: Partial<Record<StoreName, unknown>> = {
  settings: {},
  jobs: { job: {}, cuttingSince: null },
  wiring: storeWiring(blankWiring()),
};

const restored = async (
  w: Work,
  [store, id, before, after]: Written,
  there: VersionRow,
): Promise<VersionRow | null> => {
  const body = BLANK[store];
  if (before === null && body === undefined) return { ...there, deleted: true };
  const imported = there.rev === after ? there : await w.get('history', historyId(store, id, after));
  if (!isEnvelope(imported)) return null;
  const then = before === null ? { ...imported, body } : await w.get('history', historyId(store, id, before));
  if (!isEnvelope(then)) return null;
  // What was changed since stays as it is.
  return mergeContents(imported, there, then).row;
};

const takeBackOne = async (w: Work, one: Written, stamp: Stamps): Promise<boolean> => {
  const [store, id, before] = one;
  const there = (await w.get(store, id)) as CarriedRow | undefined;
  if (!there) return true;
  if (store === 'evidence' && before === BACK) {
    const { takenBack: _, ...rest } = there as RecordRow;
    w.put(store, rest);
    return true;
  }
  if (store === 'evidence' || store === 'meta') {
    w.remove(store, id);
    return true;
  }
  if (!isEnvelope(there)) return false;
  const row = await restored(w, one, there);
  if (!row) return false;
  const { device, counter } = stamp.next();
  await remember(w, store, id, [], [there]);
  const rev = revOf({ device, counter });
  w.put(store, { ...row, rev, parents: [there.rev], device, counter, changedAt: Date.now() });
  return true;
};

/**
 * Takes an import back: records as they were, what was changed in them since left as it is; those that were new are put
 * away. @returns ids of what was written, and how many could not be taken back since what they were is no longer kept
 */
export const takeBack = (
  backing: Backing,
  id: string,
): Promise<{ readonly written: readonly Written[]; readonly lost: number }> =>
  backing.run('readwrite', ALL, async (w) => {
    const record = (await w.get('meta', `${RECORD}${id}`)) as { value?: unknown } | undefined;
    const written = Array.isArray(record?.value) ? (record.value as Written[]) : [];
    const stamp = await stamps(w);
    let lost = 0;
    for (const one of written) if (!(await takeBackOne(w, one, stamp))) lost += 1;
    stamp.keep();
    w.remove('meta', `${RECORD}${id}`);
    return { written, lost };
  });
