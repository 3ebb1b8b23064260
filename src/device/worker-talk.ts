import { messageSW } from 'workbox-window';

/** How many files the worker should have in its cache, and how many it has. */
export interface Stored {
  version: string;
  expected: number;
  present: number;
}

/** A worker may have to be started first, on a slow phone. */
const PATIENCE_MS = 15_000;

/** What a version brought, in a person's words. */
export interface Change {
  readonly version: string;
  readonly lines: readonly string[];
}

/** A version that isn't this one, and what changed from this one to it, newest first. */
export interface News {
  readonly version: string;
  readonly changes: readonly Change[];
}

const ask = (worker: ServiceWorker, type: string): Promise<unknown> =>
  Promise.race([
    messageSW(worker, { type }) as Promise<unknown>,
    new Promise<null>((resolve) => setTimeout(resolve, PATIENCE_MS, null)),
  ]);

/** Asks a worker which version it belongs to and what that brings; null where it can't say. */
export async function askNews(worker: ServiceWorker): Promise<News | null> {
  const news = (await ask(worker, 'NEWS')) as News | null;
  if (!Array.isArray(news?.changes)) return null;
  const known = news.changes.findIndex((c: Change) => c.version === __VERSION__);
  return { ...news, changes: known < 0 ? news.changes : news.changes.slice(0, known) };
}

/**
 * Asks a worker to count the files it keeps and, with `repair`, to fetch the missing ones first.
 * Null where it doesn't answer in time.
 */
export function askStored(worker: ServiceWorker, repair: boolean): Promise<Stored | null> {
  return ask(worker, repair ? 'REPAIR' : 'VERIFY') as Promise<Stored | null>;
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
