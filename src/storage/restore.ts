import type { Backing, Change, Row } from './backing';
import { newId } from './id';
import { isEnvelope } from './envelope';
import { DB_VERSION } from './migrations';
import { COPIED, counterOf } from './copied';
import { Mirror, type Head } from './mirror';
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

type CopiedRow = Change & { readonly row: Row };

/** Puts what the copy holds where it belongs; `more`: what is to be put besides, by the copy's head. */
const putCopy = async (
  backing: Pick<Backing, 'run'>,
  more: (head: Head) => readonly Row[],
): Promise<Restored | null> => {
  const mirror = await Mirror.open(false);
  const head = await mirror.head();
  if (!head) return null;
  const { rows, torn } = await mirror.rows();
  if (rows.length === 0 && torn === 0) return null;
  await backing.run('readwrite', COPIED, (w) => {
    for (const { store, row } of rows) w.put(store, row);
    for (const row of more(head)) w.put('meta', row);
    return Promise.resolve();
  });
  return { at: head.at, rows: rows.length, torn };
};

/**
 * A database that was made anew although there is a copy had been lost: everything goes back into it. The phone takes a
 * new name as a device, so that its next numbers can't be those of changes that are lost.
 */
export const restoreLost = (backing: Pick<Backing, 'run'>): Promise<Restored | null> =>
  putCopy(backing, ({ counter }) => [{ id: 'device', value: { device: newId().slice(0, 12), counter } }]);

/** No database can be had: the copy is worked from, in memory. */
export const seedFrom = (backing: Backing): Promise<Restored | null> => putCopy(backing, () => []);

const deviceOf = (row: unknown) =>
  (row as { value?: { device?: string; counter?: number } } | undefined)?.value ?? {};

/** Whether a row of the copy is to stand in the place of what the database holds. */
const isLater = ({ store, id, row }: CopiedRow, there: unknown): boolean => {
  if (there === undefined) return true;
  if (store === 'meta') return id !== 'device';
  if (store === 'evidence') return (row as { takenBack?: number }).takenBack !== undefined;
  return counterOf(row) > counterOf(there);
};

/** What only the copy holds goes into the database; a version that it takes the place of is kept as an earlier one. */
const foldIn = async (backing: Backing, mirror: Mirror, counter: number): Promise<boolean> => {
  const { rows } = await mirror.rows();
  return backing.run('readwrite', [...COPIED, 'history'], async (w) => {
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
  const left = await mirror.absorb();
  const head = await mirror.head();
  const { counter = 0 } = deviceOf(await backing.run('readonly', ['meta'], (w) => w.get('meta', 'device')));
  const behind = backing.durable && head !== null && (head.ahead || head.counter > counter);
  const now = Math.max(counter, head?.counter ?? 0);
  const changed = behind && (await foldIn(backing, mirror, now));
  if (left || behind || head?.counter !== counter || head.version !== DB_VERSION)
    await mirror.fill(backing, now);
  return changed;
};
