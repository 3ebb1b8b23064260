import { openDB, type IDBPDatabase, type IDBPTransaction } from 'idb';
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
 * The database, opened once per page and opened anew when the browser dropped the connection. `made`: there was none.
 */
export const indexedBacking = async (
  events: IndexedEvents,
): Promise<{ readonly backing: Backing; readonly made: boolean }> => {
  let closed = false;
  let made = false;
  let db: IDBPDatabase | null = null;

  const open = async (): Promise<IDBPDatabase> => {
    const opened = await openDB(DB_NAME, DB_VERSION, {
      upgrade: (d, from) => {
        made = from === 0;
        for (const migrate of MIGRATIONS.slice(from)) migrate(d);
      },
      blocked: () => events.onBlocked(),
      blocking: () => {
        closed = true;
        opened.close();
        events.onClosed();
      },
      terminated: () => {
        db = null;
      },
    }).catch((e: unknown) => {
      throw storageError(e);
    });
    return opened;
  };

  const attempt = async <T>(
    mode: 'readonly' | 'readwrite',
    stores: readonly StoreName[],
    work: (w: Work) => Promise<T>,
  ): Promise<T> => {
    if (closed) throw new StorageError('closed-for-update');
    db ??= await open();
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

  const isDropped = (e: unknown): boolean => nameOf(e) === 'InvalidStateError' && !closed;

  db = await open();
  const backing: Backing = {
    durable: true,
    run: async (mode, stores, work) => {
      try {
        return await attempt(mode, stores, work);
      } catch (e) {
        if (!isDropped(e)) throw storageError(e);
        db = null;
        return attempt(mode, stores, work).catch((again: unknown) => {
          throw storageError(again);
        });
      }
    },
    close: () => db?.close(),
  };
  return { backing, made };
};
