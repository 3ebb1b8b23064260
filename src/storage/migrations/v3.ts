import type { IDBPDatabase } from 'idb';

/** Version 3: how each machine is wired, one record under the machine's id. */
export const v3 = (db: IDBPDatabase): void => {
  db.createObjectStore('wiring', { keyPath: 'id' });
};
