import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** A database as an earlier version of the app left it. */
export interface SavedDatabase {
  readonly version: number;
  readonly stores: Readonly<Record<string, unknown[]>>;
}

export const readSaved = (version: number): SavedDatabase =>
  JSON.parse(readFileSync(`test/browser/saved/version-${version}.json`, 'utf8')) as SavedDatabase;

/** Puts a saved database in the place of the app's own, on a page of the same origin that doesn't run the app. */
export const putSaved = (page: Page, saved: SavedDatabase): Promise<void> =>
  page.evaluate(
    ({ version, stores }) =>
      new Promise<void>((resolve, reject) => {
        const gone = indexedDB.deleteDatabase('latheside');
        gone.onerror = () => reject(new Error('not deleted'));
        gone.onsuccess = () => {
          const asked = indexedDB.open('latheside', version);
          asked.onupgradeneeded = () => {
            for (const [name, rows] of Object.entries(stores)) {
              const store = asked.result.createObjectStore(name, { keyPath: 'id' });
              if (name === 'evidence') store.createIndex('machine', 'machine');
              if (name === 'runs')
                for (const index of ['machine', 'open']) store.createIndex(index, `body.${index}`);
              for (const row of rows) store.put(row);
            }
          };
          asked.onerror = () => reject(new Error('not made'));
          asked.onsuccess = () => {
            asked.result.close();
            resolve();
          };
        };
      }),
    saved,
  );

/** The app's database as it lies on the disk. */
export const readDatabase = (page: Page): Promise<SavedDatabase> =>
  page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((resolve) => {
      const asked = indexedDB.open('latheside');
      asked.onsuccess = () => resolve(asked.result);
    });
    const of = (name: string) =>
      new Promise<unknown[]>((resolve) => {
        const all = db.transaction(name).objectStore(name).getAll();
        all.onsuccess = () => resolve(all.result);
      });
    const names = [...db.objectStoreNames];
    const stores = Object.fromEntries(await Promise.all(names.map(async (n) => [n, await of(n)] as const)));
    db.close();
    return { version: db.version, stores };
  });
