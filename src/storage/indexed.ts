import { openDB, wrap, type IDBPDatabase, type IDBPTransaction } from 'idb';
import { missed, takeEarly, type Early } from './early';
import { StorageError, type Backing, type StoreName, type Work } from './backing';
import { DB_NAME, DB_VERSION, MIGRATIONS } from './migrations';

export interface IndexedEvents {
  /** Another tab holds an older version open: the upgrade waits. */
  readonly onBlocked: () => void;
  /** This tab's connection was closed so that another could upgrade: reload to go on. */
  readonly onClosed: () => void;
}

const nameOf = (e: unknown): string => (e instanceof DOMException || e instanceof Error ? e.name : '');

const storageError = (e: unknown): StorageError => {
  if (e instanceof StorageError) return e;
  const name = nameOf(e);
  if (name === 'QuotaExceededError') return new StorageError('full', e);
  if (name === 'VersionError') return new StorageError('newer-database', e);
  if (name === 'InvalidStateError' || name === 'SecurityError') return new StorageError('unavailable', e);
  return new StorageError('failed', e);
};

/** Between two tries to open the database, ms. */
const ONCE_MORE = 100;

const workOf = (tx: IDBPTransaction<unknown, string[], 'readonly' | 'readwrite'>): Work => {
  const writer = tx as IDBPTransaction<unknown, string[], 'readwrite'>;
  return {
    get: (store, key) => tx.objectStore(store).get(key),
    all: (store) => tx.objectStore(store).getAll(),
    page: (store, after, count) =>
      tx.objectStore(store).getAll(after === null ? null : IDBKeyRange.lowerBound(after, true), count),
    ofMachine: (machine) => tx.objectStore('evidence').index('machine').getAll(machine),
    runsBy: (index, key) => tx.objectStore('runs').index(index).getAll(key),
    // Errors of single requests come back through tx.done; unhandled here they would be reported twice.
    put: (store, row) =>
      void writer
        .objectStore(store)
        .put(row)
        .catch(() => undefined),
    remove: (store, key) =>
      void writer
        .objectStore(store)
        .delete(key)
        .catch(() => undefined),
  };
};

/**
 * The database, opened once per page and opened anew when the browser dropped the connection.
 * @param fill puts into a database that had to be made what should be in it; everything else waits for that
 */
export const indexedBacking = async (
  events: IndexedEvents,
  fill: (made: Pick<Backing, 'run'>) => Promise<void>,
): Promise<Backing> => {
  let closed = false;
  let connection: Promise<IDBPDatabase> | null = null;
  /** Until something is written. */
  let early: Early | null = null;

  const attempt = async <T>(
    db: IDBPDatabase,
    mode: 'readonly' | 'readwrite',
    stores: readonly StoreName[],
    work: (w: Work) => Promise<T>,
  ): Promise<T> => {
    // Strict: an acknowledged save is on the disk before it is acknowledged.
    const tx = db.transaction([...stores], mode, { durability: 'strict' });
    try {
      const result = await work(workOf(tx));
      await tx.done;
      return result;
    } catch (e) {
      // A failed put aborts the transaction; its own error says why (a full disk, say), the later ones don't.
      const reason = await tx.done.then(
        () => e,
        (done: unknown) => tx.error ?? done ?? e,
      );
      throw reason;
    }
  };

  const onBlocking = (opened: Pick<IDBDatabase, 'close'>): void => {
    closed = true;
    opened.close();
    events.onClosed();
  };
  const onTerminated = (): void => {
    connection = null;
  };

  const open = async (): Promise<IDBPDatabase> => {
    early = await takeEarly(DB_VERSION);
    if (early) {
      const { db } = early;
      db.onversionchange = () => onBlocking(db);
      db.onclose = onTerminated;
      return wrap(db);
    }
    let made = false;
    const opened: IDBPDatabase = await openDB(DB_NAME, DB_VERSION, {
      upgrade: (d, from) => {
        made = from === 0;
        for (const migrate of MIGRATIONS.slice(from)) migrate(d);
      },
      blocked: () => events.onBlocked(),
      blocking: () => onBlocking(opened),
      terminated: onTerminated,
    });
    if (made) await fill({ run: (mode, stores, work) => attempt(opened, mode, stores, work) });
    return opened;
  };

  const connect = (): Promise<IDBPDatabase> => {
    if (closed) throw new StorageError('closed-for-update');
    connection ??= open().catch((e: unknown) => {
      connection = null;
      throw e;
    });
    return connection;
  };

  const run: Backing['run'] = async (mode, stores, work) => {
    const used = connect();
    if (mode === 'readwrite') early = null;
    const answer = early ? await early.answer(work) : missed;
    if (answer !== missed) return answer;
    try {
      return await attempt(await used, mode, stores, work);
    } catch (e) {
      if (nameOf(e) !== 'InvalidStateError' || closed) throw e;
      // The browser dropped the connection: once more on a new one.
      if (connection === used) connection = null;
      return attempt(await connect(), mode, stores, work);
    }
  };

  await connect()
    .catch(async (e: unknown) => {
      if (storageError(e).code !== 'failed') throw e;
      // A store that a kill left in disorder may fail once, and be had the next moment: made anew, to be filled again.
      await new Promise((resolve) => setTimeout(resolve, ONCE_MORE));
      return connect();
    })
    .catch((e: unknown) => {
      throw storageError(e);
    });
  return {
    durable: true,
    run: (...work) =>
      run(...work).catch((e: unknown) => {
        throw storageError(e);
      }),
    close: () => void connection?.then((db) => db.close()),
  };
};
