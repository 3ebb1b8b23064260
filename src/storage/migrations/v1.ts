import type { IDBPDatabase } from 'idb';

/** Version 1: machines, the job on each machine, a person's own threads and settings, evidence, history and housekeeping. */
export const v1 = (db: IDBPDatabase): void => {
  db.createObjectStore('machines', { keyPath: 'id' });
  db.createObjectStore('jobs', { keyPath: 'id' });
  db.createObjectStore('threads', { keyPath: 'id' });
  db.createObjectStore('settings', { keyPath: 'id' });
  db.createObjectStore('evidence', { keyPath: 'id' }).createIndex('machine', 'machine');
  db.createObjectStore('history', { keyPath: 'id' });
  db.createObjectStore('meta', { keyPath: 'id' });
};
