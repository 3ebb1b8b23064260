import type { PrecacheController } from 'workbox-precaching';
import { startName } from './caches';

/** As browsers that know static routes have it; not yet in TypeScript's own types. */
interface Route {
  readonly condition: { readonly urlPattern: URLPatternInit; readonly requestMode?: RequestMode };
  readonly source: { readonly cacheName: string };
}
type Install = ExtendableEvent & { readonly addRoutes?: (routes: Route[]) => Promise<void> };

/** The files without which nothing is painted, and which keep their name from version to version. */
const FONTS = ['fonts/b612-bold.woff2', 'fonts/b612-regular.woff2'];

/** Signs that mean something in a pattern, taken as they are. */
const plain = (path: string): string => path.replace(/[\\*:{}()+?]/g, '\\$&');

/**
 * What a start needs first is answered by the browser itself, where it knows static routes: the worker need not be
 * started for it, and the page doesn't wait its turn in the worker. The page and its fonts lie a second time in a cache
 * of this version alone, under their plain addresses; scripts, whose names tell their content, where they are anyway.
 * Where that cache isn't, the network is asked, as where there is no worker.
 */
export class AtOnce {
  readonly cacheName: string;
  /** Plain address, and the one under which the precache has it. */
  private readonly files: ReadonlyMap<string, string>;

  constructor(
    private readonly root: string,
    private readonly precache: PrecacheController,
  ) {
    const kept = (name: string): string =>
      precache.getCacheKeyForURL(new URL(name, root).href) ?? new URL(name, root).href;
    this.files = new Map([
      [root, kept('index.html')],
      ...FONTS.map((name) => [new URL(name, root).href, kept(name)] as const),
    ]);
    // Another page or other fonts, another cache: one that waits doesn't touch what the one in charge answers with.
    const revisions = [...this.files.values()].map(
      (key) => new URL(key).searchParams.get('__WB_REVISION__') ?? '',
    );
    this.cacheName = startName(root, revisions.map((r) => r.slice(0, 8)).join(''));
  }

  get expected(): number {
    return this.files.size;
  }

  /** How many of its files are there. */
  async present(): Promise<number> {
    const cache = await caches.open(this.cacheName);
    const there = await Promise.all([...this.files.keys()].map((address) => cache.match(address)));
    return there.filter((found) => found !== undefined).length;
  }

  /** Copies from the precache what is missing. */
  async fill(): Promise<void> {
    const cache = await caches.open(this.cacheName);
    for (const [address, key] of this.files) {
      if (await cache.match(address)) continue;
      const found = await caches.match(key, { cacheName: this.precache.strategy.cacheName });
      if (!found) continue;
      // A page is asked for with other headers than a file: what a host varies by them doesn't matter here.
      const headers = new Headers(found.headers);
      headers.delete('Vary');
      await cache.put(address, new Response(found.body, { status: found.status, headers }));
    }
  }

  /** Fills the cache while the worker is installed, and says what is answered from where. */
  async install(event: Install): Promise<void> {
    await this.fill();
    if ((await this.present()) < this.expected) throw new Error('The files of a start are not all there.');
    const { protocol, hostname, port, pathname } = new URL(this.root);
    const at = (path: string): URLPatternInit => ({ protocol, hostname, port, pathname: path, search: '' });
    await event.addRoutes?.([
      {
        condition: { urlPattern: at(plain(pathname)), requestMode: 'navigate' },
        source: { cacheName: this.cacheName },
      },
      ...FONTS.map((name) => ({
        condition: { urlPattern: at(plain(pathname + name)) },
        source: { cacheName: this.cacheName },
      })),
      {
        condition: { urlPattern: at(`${plain(pathname)}assets/*`) },
        source: { cacheName: this.precache.strategy.cacheName },
      },
    ]);
  }
}
