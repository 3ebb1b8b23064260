import { messageSW } from 'workbox-window';

/** How many files the worker should have in its cache, and how many it has. */
export interface Stored {
  version: string;
  expected: number;
  present: number;
}

/** A worker may have to be started first, on a slow phone. */
const PATIENCE_MS = 15_000;

/**
 * Asks a worker to count the files it keeps and, with `repair`, to fetch the missing ones first.
 * Null where it doesn't answer in time.
 */
export async function askStored(worker: ServiceWorker, repair: boolean): Promise<Stored | null> {
  const silence = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE_MS, null));
  const answer = messageSW(worker, { type: repair ? 'REPAIR' : 'VERIFY' }) as Promise<Stored>;
  return Promise.race([answer, silence]);
}

/** Lets a waiting worker take over and resolves when it has: true, or false if it was discarded or never did. */
export function activate(worker: ServiceWorker): Promise<boolean> {
  return new Promise((resolve) => {
    const look = (): void => {
      if (worker.state === 'activated') resolve(true);
      if (worker.state === 'redundant') resolve(false);
    };
    worker.addEventListener('statechange', look);
    setTimeout(resolve, PATIENCE_MS, false);
    worker.postMessage({ type: 'SKIP_WAITING' });
    look();
  });
}
