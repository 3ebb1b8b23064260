import { MOST, readShelf, type ShelfFile } from '../core/carry';
import type { Backing } from './backing';
import { chainId } from './versioned';

const LIST = 'index.json';

/** What is kept of the shelf for when there is no network. */
export interface KeptShelf {
  /** When the list was last had from the host, by the phone's clock. */
  readonly at: number;
  readonly files: readonly ShelfFile[];
  /** Files that the list names and the host didn't give. */
  readonly missing: number;
}

/** Whether the host gave the list: `none`, it can't be reached or has none; `strange`, what it has is no list of a shelf. */
export type ShelfAnswer = 'had' | 'none' | 'strange';

const isKept = (x: unknown): x is KeptShelf =>
  typeof x === 'object' &&
  x !== null &&
  'files' in x &&
  readShelf({ ...x, format: 'latheside-shelf', version: 1 }) !== null;

/** The folder `shelf` beside the app, read-only, and what is kept of it in a cache that the worker leaves alone. */
export class Shelf {
  private readonly root = new URL('./', document.baseURI).href;
  private readonly folder = new URL('shelf/', this.root).href;

  constructor(private readonly backing: Backing) {}

  private get name(): string {
    return `latheside-shelf-${this.root}`;
  }

  private address(name: string): string {
    return this.folder + encodeURIComponent(name);
  }

  /** null where nothing is kept, or what is kept can't be read. */
  async kept(): Promise<KeptShelf | null> {
    try {
      const found: unknown = await (await this.match(LIST))?.json();
      return isKept(found) ? found : null;
    } catch {
      return null;
    }
  }

  /** A kept file. */
  async file(name: string): Promise<Blob | null> {
    return (await (await this.match(name))?.blob()) ?? null;
  }

  /** Where nothing lies on the shelf there is no cache, and looking makes none. */
  private match(name: string): Promise<Response | undefined> {
    return caches.match(this.address(name), { cacheName: this.name });
  }

  /**
   * Fetches the list, then what changed since, and puts the list away last: what it names is there. What can't be had now
   * stays as it was kept. Never throws.
   */
  async refresh(now: number): Promise<ShelfAnswer> {
    try {
      const answer = await this.fetch(LIST);
      if (!answer) return 'none';
      const files = readShelf(await answer.json().catch(() => null));
      if (!files) return 'strange';
      const kept = await this.kept();
      if (files.length === 0 && !kept) return 'had';
      const cache = await caches.open(this.name);
      const before = kept?.files ?? [];
      const had: ShelfFile[] = [];
      for (const file of files) {
        const old = before.find((f) => f.file === file.file);
        if (old && file.rev !== '' && old.rev === file.rev) had.push(file);
        else if (await this.fetchInto(cache, file.file)) had.push(file);
        else if (old) had.push(old);
      }
      for (const { file } of before)
        if (!had.some((f) => f.file === file)) await cache.delete(this.address(file));
      const list: KeptShelf = { at: now, files: had, missing: files.length - had.length };
      await cache.put(this.address(LIST), new Response(JSON.stringify(list)));
      return 'had';
    } catch {
      return 'none';
    }
  }

  /** Past every cache on the way, and nowhere but here. */
  private async fetch(name: string): Promise<Response | null> {
    const answer = await fetch(this.address(name), { cache: 'no-cache', redirect: 'error' }).catch(
      () => null,
    );
    // Nothing is what our worker answers where the host can't be reached.
    return answer?.status === 200 ? answer : null;
  }

  private async fetchInto(cache: Cache, name: string): Promise<boolean> {
    const body = await (await this.fetch(name))?.blob().catch(() => null);
    if (!body || body.size > MOST.size * 4) return false;
    await cache.put(this.address(name), new Response(body));
    return true;
  }

  /** The versions here of the machines asked for; none for one that isn't here. */
  async here(machines: readonly string[]): Promise<Map<string, { rev: string; before: readonly string[] }>> {
    return this.backing.run('readonly', ['machines', 'meta'], async (w) => {
      const found = new Map<string, { rev: string; before: readonly string[] }>();
      for (const id of machines) {
        const row = (await w.get('machines', id)) as { rev?: unknown } | undefined;
        const chain = (await w.get('meta', chainId('machines', id))) as { value?: unknown } | undefined;
        if (typeof row?.rev !== 'string') continue;
        found.set(id, { rev: row.rev, before: Array.isArray(chain?.value) ? (chain.value as string[]) : [] });
      }
      return found;
    });
  }
}
