import { PrecacheController } from 'workbox-precaching';
import type { PrecacheEntry } from 'workbox-precaching';
import { AtOnce } from './at-once';
import { deleteOwnCaches, precacheName, shelfName } from './caches';

/** Answer to `VERIFY` and `REPAIR`: how many files there should be in the cache, and how many there are. */
interface Stored {
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
  precache.addToCacheList(entries);
  const atOnce = new AtOnce(root, precache);
  const index = new URL('index.html', root).href;
  const shelf = new URL('shelf/', root).href;

  scope.addEventListener('install', (event) => {
    event.waitUntil(precache.install(event).then(() => atOnce.install(event)));
  });

  scope.addEventListener('activate', (event) => {
    event.waitUntil(precache.activate(event));
    const kept = [cacheName, atOnce.cacheName, shelfName(root)];
    event.waitUntil(deleteOwnCaches(scope.caches, root, kept).then(() => scope.clients.claim()));
  });

  scope.addEventListener('message', (event) => {
    const message = event.data as { type?: unknown } | null;
    if (message?.type === 'SKIP_WAITING') event.waitUntil(scope.skipWaiting());
    if (message?.type === 'NEWS')
      event.waitUntil(news().then((answer) => event.ports[0]?.postMessage(answer)));
    if (message?.type === 'VERIFY' || message?.type === 'REPAIR') {
      const repaired = message.type === 'REPAIR' ? repair(event) : Promise.resolve();
      event.waitUntil(repaired.then(count).then((answer) => event.ports[0]?.postMessage(answer)));
    }
  });

  scope.addEventListener('fetch', (event) => {
    const { request } = event;
    if (request.method !== 'GET') return;
    // The page keeps the shelf itself; that there is no network is nothing to complain of in its log.
    if (request.url.startsWith(shelf)) {
      event.respondWith(fetch(request).catch(() => new Response(null, { status: 204 })));
      return;
    }
    const address = addressFor(request);
    if (address === null) return;
    if (address === 'root') {
      event.respondWith(Response.redirect(root));
      return;
    }
    const cacheKey = precache.getCacheKeyForURL(address);
    if (cacheKey === undefined) return;
    const integrity = precache.getIntegrityForCacheKey(cacheKey);
    const isPage = request.mode === 'navigate';
    const answer: Promise<Response> = precache.strategy.handle({
      // A navigation request can't be fetched again as it is, so the page is asked for by its address.
      request: isPage ? new Request(address) : request,
      event,
      params: { cacheKey, ...(integrity === undefined ? {} : { integrity }) },
    });
    // Cleared away here and replaced on the host: the newer page opens, as if there were no worker, and brings its own.
    event.respondWith(isPage ? answer.catch(() => scope.fetch(address)) : answer);
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
    // A page of its own beside the app, never kept.
    if (url.href.startsWith(`${root}embed/`)) return null;
    const isFile = /\.[^/]+$/.test(url.pathname);
    return isFile ? null : 'root';
  }

  /** Which version this worker would bring, and what changed in it and before: it has the list since its installation. */
  async function news(): Promise<unknown> {
    const list = await precache.matchPrecache('changes.json');
    return { version: __VERSION__, changes: list ? ((await list.json()) as unknown) : [] };
  }

  async function cachedKeys(): Promise<Set<string>> {
    const cache = await scope.caches.open(cacheName);
    return new Set((await cache.keys()).map((request) => request.url));
  }

  async function count(): Promise<Stored> {
    const cached = await cachedKeys();
    const keys = [...new Set(precache.getURLsToCacheKeys().values())];
    return {
      version: __VERSION__,
      expected: keys.length + atOnce.expected,
      present: keys.filter((key) => cached.has(key)).length + (await atOnce.present()),
    };
  }

  /**
   * Fetches what is missing from the cache. Only bytes with the right hash are taken, so a host that already has
   * another version can't mix its files into this one; what can't be had stays missing.
   */
  async function repair(event: ExtendableEvent): Promise<void> {
    const cached = await cachedKeys();
    for (const [url, cacheKey] of precache.getURLsToCacheKeys()) {
      const integrity = precache.getIntegrityForCacheKey(cacheKey);
      if (cached.has(cacheKey) || integrity === undefined) continue;
      const request = new Request(url, { integrity, cache: 'reload', credentials: 'same-origin' });
      await Promise.allSettled(
        precache.strategy.handleAll({ request, event, params: { cacheKey, integrity } }),
      );
    }
    await atOnce.fill();
  }
}
