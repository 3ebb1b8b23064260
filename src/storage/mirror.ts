import type { Backing, Change, Row, Work } from './backing';
import { COPIED, counterOf, isCopied } from './copied';
import { DB_VERSION, MIRROR_NAME } from './migrations';
import { noteName, NOTES, piecesOf, readNote, upTo, type Note } from './notes';

/**
 * A copy of every row that a person made, outside the database: a broken backing store takes every call of IndexedDB with
 * it, and a torn log comes back as a silent empty database. It lies in the Cache Storage, which every engine has and
 * which fails by itself. Each change lies there as a note before it is acknowledged (a browser that was killed in mid-write
 * may make a new, empty database at the start after the next one); the notes go into the parts afterwards.
 */

/** Rows lie in so many parts of a store, so that a change writes little however much there is. */
const PARTS = 32;
/** Rows that are read at once to fill the copy. */
const PAGE = 200;

/** What is known of the copy as a whole. */
export interface Head {
  /** When it last followed the database, by the phone's clock. */
  readonly at: number;
  /** Version of the database whose rows it holds. */
  readonly version: number;
  /** Number of the last change it holds (versioned.ts, nextStamp). */
  readonly counter: number;
  /** It holds changes that were made while no database could be had. */
  readonly ahead: boolean;
}

type Part = Readonly<Record<string, unknown>>;

/** Which part a row lies in (FNV-1a of its name). */
const partOf = (id: string): number => {
  let hash = 0x811c9dc5;
  for (let i = 0; i < id.length; i += 1) hash = Math.imul(hash ^ id.charCodeAt(i), 0x01000193) >>> 0;
  return hash % PARTS;
};

const addressOf = (name: string): string => `${location.origin}/${MIRROR_NAME}/${name}`;

const read = async (cache: Cache, name: string): Promise<unknown> => {
  const found = await cache.match(addressOf(name));
  return found?.json();
};
const write = (cache: Cache, name: string, value: unknown): Promise<void> =>
  cache.put(
    addressOf(name),
    new Response(JSON.stringify(value), { headers: { 'Content-Type': 'application/json' } }),
  );

const isPart = (x: unknown): x is Part => typeof x === 'object' && x !== null && !Array.isArray(x);

/** The device's own numbers decide which of two rows came later; two tabs may bring theirs in either order. */
const isOlder = (row: Row | null, kept: unknown): boolean =>
  row !== null && counterOf(row) > 0 && counterOf(row) < counterOf(kept);

const put = (rows: Record<string, unknown>, { id, row }: Change): void => {
  if (isOlder(row, rows[id])) return;
  if (row) rows[id] = row;
  else delete rows[id];
};

const alone = <T>(work: () => Promise<T>): Promise<T> =>
  'locks' in navigator ? navigator.locks.request(MIRROR_NAME, work) : work();

const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20));

/** Those that the database doesn't hold, as changes that take them out: they would come back with a lost one. */
const missing = async (w: Work, rows: readonly Change[]): Promise<Change[]> => {
  const gone: Change[] = [];
  for (const one of rows)
    if ((await w.get(one.store, one.id)) === undefined) gone.push({ ...one, row: null });
  return gone;
};

export class Mirror {
  /** What no note holds yet, each piece of work by itself. */
  private queued: Omit<Note, 'name'>[] = [];
  private noting: Promise<void> | null = null;
  /** What no part holds yet. */
  private waiting: Note[] = [];
  private settling: Promise<void> | null = null;
  /** Nothing goes into the parts before the copy has caught up. */
  private begun = false;

  private constructor(
    private readonly cache: Cache,
    /** No database could be had: what is written goes here alone. */
    private readonly ahead: boolean,
  ) {}

  /** @throws whatever the browser throws where it keeps no caches */
  static async open(ahead: boolean): Promise<Mirror> {
    return new Mirror(await caches.open(MIRROR_NAME), ahead);
  }

  /** What is known of it, its notes included. */
  async head(): Promise<Head | null> {
    const head = await this.headOfParts();
    const notes = head ? await this.notes() : [];
    return head && { ...head, counter: upTo(head.counter, notes) };
  }

  private async headOfParts(): Promise<Head | null> {
    const x = (await read(this.cache, 'head')) as Partial<Head> | undefined;
    return x && typeof x.at === 'number' && typeof x.version === 'number' && typeof x.counter === 'number'
      ? { at: x.at, version: x.version, counter: x.counter, ahead: x.ahead === true }
      : null;
  }

  /** Notes that no part holds yet; what isn't one is passed over. */
  private async notes(): Promise<Note[]> {
    const before = addressOf('');
    const names = (await this.cache.keys())
      .map(({ url }) => url.slice(before.length))
      .filter((name) => name.startsWith(NOTES))
      .sort();
    return Promise.all(
      names.map(async (name) => readNote(name, await read(this.cache, name).catch(() => null))),
    );
  }

  /** Takes changes that are in the database now. Resolves when a note has them; its parts follow. */
  follow(changes: readonly Change[]): Promise<void> {
    this.queued.push(...piecesOf(changes.filter(isCopied)));
    this.noting ??= this.note().finally(() => {
      this.noting = null;
    });
    return this.noting;
  }

  /** One at a time, in their order: none counts before those that came before it. */
  private async note(): Promise<void> {
    for (let next = this.queued[0]; next; next = this.queued[0]) {
      const name = noteName();
      // No room, perhaps: it goes with the next change.
      await write(this.cache, name, next);
      this.queued.shift();
      this.waiting.push({ name, ...next });
      if (this.begun) void this.settle().catch(() => undefined);
    }
  }

  /**
   * Puts into the parts what a page that was closed left in notes: before anything newer goes there. True where there was
   * any: that page may have been killed while it wrote a part, which is then lost as a whole.
   */
  async absorb(): Promise<boolean> {
    const own = new Set(this.waiting.map(({ name }) => name));
    const left = (await this.notes()).filter(({ name }) => !own.has(name));
    await this.intoParts(left);
    return left.length > 0;
  }

  /** From now on notes go into the parts as they come. */
  async begin(): Promise<void> {
    this.begun = true;
    await this.settle();
  }

  private settle(): Promise<void> {
    this.settling ??= this.settleAll().finally(() => {
      this.settling = null;
    });
    return this.settling;
  }

  private async settleAll(): Promise<void> {
    while (this.waiting.length > 0) {
      const notes = this.waiting;
      this.waiting = [];
      await this.intoParts(notes).catch((e: unknown) => {
        // No room, perhaps: they go with the next change. Until then nothing says that the parts hold them.
        this.waiting.unshift(...notes);
        throw e;
      });
    }
  }

  private intoParts(notes: readonly Note[]): Promise<void> {
    return alone(async () => {
      const left: Note[] = [];
      for (const note of notes)
        // Another tab absorbs what this one has made, and newer changes may have gone into the parts since.
        if (await this.cache.match(addressOf(note.name))) left.push(note);
      if (left.length === 0) return;
      await this.copy(left.flatMap(({ changes }) => changes));
      const head = await this.headOfParts();
      // Without a head the copy isn't whole yet: `fill` writes the first one.
      if (head) await this.mark(upTo(head.counter, left), this.ahead || head.ahead);
      for (const { name } of left) await this.cache.delete(addressOf(name));
    });
  }

  private async copy(changes: readonly Change[]): Promise<void> {
    const parts = new Map<string, Change[]>();
    for (const change of changes) {
      const name = `${change.store}/${partOf(change.id)}`;
      const mine = parts.get(name);
      if (mine) mine.push(change);
      else parts.set(name, [change]);
    }
    for (const [name, mine] of parts) {
      const before = await read(this.cache, name).catch(() => undefined);
      const rows: Record<string, unknown> = { ...(isPart(before) ? before : {}) };
      for (const change of mine) put(rows, change);
      await write(this.cache, name, rows);
    }
  }

  private mark(counter: number, ahead: boolean): Promise<void> {
    const head: Head = { at: Date.now(), version: DB_VERSION, counter, ahead };
    return write(this.cache, 'head', head);
  }

  /** Copies everything the database holds, in pieces that let touches in between; counts when it is whole. */
  async fill(backing: Backing, counter: number): Promise<void> {
    const { rows: held } = await this.rows();
    for (const store of COPIED) {
      const all: Change[] = [];
      for (let after: string | null = null; ;) {
        const from = after;
        const rows = (await backing.run('readonly', [store], (w) => w.page(store, from, PAGE))) as Row[];
        all.push(...rows.map((row) => ({ store, id: row.id, row })).filter(isCopied));
        if (rows.length < PAGE) break;
        after = rows.at(-1)?.id ?? null;
        await breathe();
      }
      // All at once, so that each part is written once.
      await alone(() => this.copy(all));
      const here = new Set(all.map(({ id }) => id));
      const over = held.filter((one) => one.store === store && !here.has(one.id));
      const gone = await backing.run('readonly', [store], (w) => missing(w, over));
      await alone(() => this.copy(gone));
    }
    await alone(() => this.mark(counter, this.ahead));
  }

  /** Every row of the copy; `torn`: parts that can't be read any more. */
  async rows(): Promise<{ readonly rows: readonly (Change & { row: Row })[]; readonly torn: number }> {
    const notes = (await this.notes()).flatMap(({ changes }) => changes);
    const rows: (Change & { row: Row })[] = [];
    let torn = 0;
    for (const store of COPIED) {
      const all: Record<string, unknown> = {};
      for (let part = 0; part < PARTS; part += 1) {
        const found = await read(this.cache, `${store}/${part}`).catch(() => null);
        if (found === undefined) continue;
        if (!isPart(found)) torn += 1;
        else Object.assign(all, found);
      }
      for (const change of notes) if (change.store === store) put(all, change);
      for (const [id, row] of Object.entries(all)) rows.push({ store, id, row: row as Row });
    }
    return { rows, torn };
  }
}
