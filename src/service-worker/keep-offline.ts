import { PrecacheController } from 'workbox-precaching';
import type { PrecacheEntry } from 'workbox-precaching';
import { deleteOwnCaches, precacheName } from './caches';

/** Answer to the message `VERIFY`: how many precached entries there should be, and how many are in the cache. */
interface Verified {
  version: string;
  expected: number;
  present: number;
}

/**
 * Keeps the app working with no network: every file in the list is fetched at installation (one failure and the
 * installation fails, leaving the old version in charge) and answered from the cache afterwards.
 * A new version waits until a page sends `SKIP_WAITING`; it never takes over by itself.
 */
export function keepOffline(scope: ServiceWorkerGlobalScope, entries: (PrecacheEntry | string)[]): void {
  const root = scope.registration.scope;
  const cacheName = precacheName(root);
  const precache = new PrecacheController({ cacheName });
  precache.precache(entries);
  const index = new URL('index.html', root).href;

  scope.addEventListener('activate', (event) => {
    event.waitUntil(deleteOwnCaches(scope.caches, root, [cacheName]).then(() => scope.clients.claim()));
  });

  scope.addEventListener('message', (event) => {
    const message = event.data as { type?: unknown } | null;
    if (message?.type === 'SKIP_WAITING') event.waitUntil(scope.skipWaiting());
    if (message?.type === 'VERIFY') {
      event.waitUntil(verify().then((answer) => event.ports[0]?.postMessage(answer)));
    }
  });

  scope.addEventListener('fetch', (event) => {
    const { request } = event;
    if (request.method !== 'GET') return;
    const address = addressFor(request);
    if (address === null) return;
    if (address === 'root') {
      event.respondWith(Response.redirect(root));
      return;
    }
    const cacheKey = precache.getCacheKeyForURL(address);
    if (cacheKey === undefined) return;
    const integrity = precache.getIntegrityForCacheKey(cacheKey);
    event.respondWith(
      precache.strategy.handle({
        // A navigation request can't be fetched again as it is, so the page is asked for by its address.
        request: request.mode === 'navigate' ? new Request(address) : request,
        event,
        params: { cacheKey, ...(integrity === undefined ? {} : { integrity }) },
      }),
    );
  });

  /**
   * The precached address that answers a request: itself for a file, index.html for the app's own door with any
   * query, `'root'` for a path the app doesn't have (its relative addresses would not resolve there), null for
   * what isn't ours.
   */
  function addressFor(request: Request): string | null {
    const url = new URL(request.url);
    url.search = '';
    url.hash = '';
    if (precache.getCacheKeyForURL(url.href) !== undefined) return url.href;
    if (request.mode !== 'navigate' || !url.href.startsWith(root)) return null;
    if (url.href === root) return index;
    const isFile = /\.[^/]+$/.test(url.pathname);
    return isFile ? null : 'root';
  }

  async function verify(): Promise<Verified> {
    const keys = new Set([...precache.getURLsToCacheKeys().values()]);
    const cache = await scope.caches.open(cacheName);
    const cached = await cache.keys();
    const present = cached.filter((request) => keys.has(request.url)).length;
    return { version: __VERSION__, expected: keys.size, present };
  }
}
