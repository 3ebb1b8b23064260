import type { Backing, Change, Row } from './backing';
import { newId } from './id';
import { isEnvelope } from './envelope';
import { DB_VERSION } from './migrations';
import { COPIED_STORES, Mirror, type Head } from './mirror';
import { historyId } from './versioned';

export { Mirror } from './mirror';

/** What was brought back from the copy, for people. */
export interface Restored {
  /** When the copy last followed the database. */
  readonly at: number;
  readonly rows: number;
  /** Parts of the copy that could not be read. */
  readonly torn: number;
}

interface Copy extends Restored {
  readonly changes: readonly (Change & { row: Row })[];
}

const copyOf = async (): Promise<{ copy: Copy; head: Head } | null> => {
  const mirror = await Mirror.open(false);
  const head = await mirror.head();
  if (!head) return null;
  const { rows, torn } = await mirror.rows();
  return rows.length > 0 || torn > 0
    ? { head, copy: { at: head.at, rows: rows.length, torn, changes: rows } }
    : null;
};

/** Puts rows of the copy where they belong. */
const putAll = (backing: Backing, changes: Copy['changes'], device?: Row): Promise<void> =>
  backing.run('readwrite', COPIED_STORES, (w) => {
    for (const { store, row } of changes) w.put(store, row);
    if (device) w.put('meta', device);
    return Promise.resolve();
  });

/**
 * A database that was made anew although there is a copy had been lost: everything goes back into it. The phone takes a
 * new name as a device, so that its next numbers can't be those of changes that are lost.
 */
export const restoreLost = async (backing: Backing): Promise<Restored | null> => {
  const found = await copyOf();
  if (!found) return null;
  const { copy, head } = found;
  const device = newId().slice(0, 12);
  await putAll(backing, copy.changes, {
    id: 'device',
    value: { device, counter: head.counter },
  });
  return { at: copy.at, rows: copy.rows, torn: copy.torn };
};

/** No database can be had: the copy is worked from, in memory. */
export const seedFrom = async (backing: Backing): Promise<Restored | null> => {
  const found = await copyOf();
  if (!found) return null;
  await putAll(backing, found.copy.changes);
  return { at: found.copy.at, rows: found.copy.rows, torn: found.copy.torn };
};

const numberOf = (row: unknown): number => (row as { counter?: number } | null | undefined)?.counter ?? 0;
const deviceOf = (row: unknown) =>
  (row as { value?: { device?: string; counter?: number } } | undefined)?.value ?? {};

/** Whether a row of the copy is to stand in the place of what the database holds. */
const isLater = ({ store, id, row }: Copy['changes'][number], there: unknown): boolean => {
  if (there === undefined) return true;
  if (store === 'meta') return id !== 'device';
  if (store === 'evidence') return (row as { takenBack?: number }).takenBack !== undefined;
  return numberOf(row) > numberOf(there);
};

/** What only the copy holds goes into the database; a version that it takes the place of is kept as an earlier one. */
const foldIn = async (backing: Backing, mirror: Mirror, counter: number): Promise<boolean> => {
  const { rows } = await mirror.rows();
  return backing.run('readwrite', [...COPIED_STORES, 'history'], async (w) => {
    let changed = false;
    for (const one of rows) {
      const there = await w.get(one.store, one.id);
      if (!isLater(one, there)) continue;
      if (isEnvelope(there)) w.put('history', { ...there, id: historyId(one.store, there.id, there.rev) });
      w.put(one.store, one.row);
      changed = true;
    }
    const { device = newId().slice(0, 12) } = deviceOf(await w.get('meta', 'device'));
    w.put('meta', { id: 'device', value: { device, counter } });
    return changed;
  });
};

/**
 * Brings copy and database to the same state, whichever is behind: the copy where the page was closed before it followed,
 * the database where it could not be had for a while or lost what it had acknowledged. True when the database changed.
 */
export const catchUp = async (backing: Backing, mirror: Mirror): Promise<boolean> => {
  const head = await mirror.head();
  const { counter = 0 } = deviceOf(await backing.run('readonly', ['meta'], (w) => w.get('meta', 'device')));
  const behind = backing.durable && head !== null && (head.ahead || head.counter > counter);
  const now = Math.max(counter, head?.counter ?? 0);
  const changed = behind && (await foldIn(backing, mirror, now));
  if (behind || head?.counter !== counter || head.version !== DB_VERSION) await mirror.fill(backing, now);
  return changed;
};
