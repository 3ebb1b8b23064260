import type { IDBPDatabase } from 'idb';

/** Version 2: runs, open ones and ended ones. Only an open run's body has `open`, so that index holds those alone. */
export const v2 = (db: IDBPDatabase): void => {
  const runs = db.createObjectStore('runs', { keyPath: 'id' });
  runs.createIndex('machine', 'body.machine');
  runs.createIndex('open', 'body.open');
};
