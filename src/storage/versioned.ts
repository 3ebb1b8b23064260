import type { Backing, RunIndex, StoreName, Work } from './backing';
import { newId } from './id';
import { isEnvelope, type Codec, type Envelope, type Kept, type Unreadable } from './envelope';

/** Earlier versions kept of each record, for undo across restarts and for merging. */
export const KEPT_VERSIONS = 30;

export type PutResult<T> =
  | { readonly ok: true; readonly kept: Kept<T> }
  /** Somebody else wrote it since `seenRev`: nothing was written. */
  | { readonly ok: false; readonly current: Kept<T> | null };

/** The records of a store, and what in it can't be read. */
export interface Rows<T> {
  readonly kept: readonly Kept<T>[];
  readonly unreadable: readonly Unreadable[];
}

interface Stamp {
  readonly device: string;
  readonly counter: number;
}

/** This device's own name and its next number, taken inside the transaction so that no two writes share one. */
export const nextStamp = async (w: Work): Promise<Stamp> => {
  const row = (await w.get('meta', 'device')) as
    { value?: { device?: string; counter?: number } } | undefined;
  const device = row?.value?.device ?? newId().slice(0, 12);
  const counter = (row?.value?.counter ?? 0) + 1;
  w.put('meta', { id: 'device', value: { device, counter } });
  return { device, counter };
};

const idOf = (row: unknown): string => {
  const id = (row as { id?: unknown } | null)?.id;
  return typeof id === 'string' ? id : '';
};

/** The name of a version that this device makes. */
export const revOf = ({ device, counter }: Stamp): string => `${counter.toString(36)}-${device}`;

/** Under which name the list of a record's earlier versions is kept, oldest first. */
export const chainId = (store: StoreName, id: string): string => `chain/${store}/${id}`;
/** Under which name an earlier version is kept. */
export const historyId = (store: StoreName, id: string, rev: string): string => `${store}/${id}/${rev}`;

/** Records of one kind that change: each write names the version it saw, keeps the one before, and links to it. */
export class Versioned<T> {
  constructor(
    private readonly backing: Backing,
    private readonly store: StoreName,
    private readonly codec: Codec<T>,
    private readonly keptVersions = KEPT_VERSIONS,
  ) {}

  private read(row: unknown): Kept<T> | null {
    if (!isEnvelope(row) || row.schema > this.codec.schema) return null;
    const value = this.codec.decode(row.body);
    return value === null
      ? null
      : { id: row.id, rev: row.rev, changedAt: row.changedAt, deleted: row.deleted, value };
  }

  /** Whether a row, from wherever it came, can be read. */
  reads(row: unknown): boolean {
    return this.read(row) !== null;
  }

  private sort(rows: readonly unknown[]): Rows<T> {
    const kept: Kept<T>[] = [];
    const unreadable: Unreadable[] = [];
    for (const row of rows) {
      const one = this.read(row);
      if (one) kept.push(one);
      else unreadable.push({ id: idOf(row), raw: row });
    }
    return { kept, unreadable };
  }

  async all(): Promise<Rows<T>> {
    return this.sort(await this.backing.run('readonly', [this.store], (w) => w.all(this.store)));
  }

  /** Everything in parts, so that reading thousands never holds up a touch for long. */
  async *pages(count: number): AsyncGenerator<Rows<T>> {
    for (let after: string | null = null; ;) {
      const from = after;
      const rows = await this.backing.run('readonly', [this.store], (w) => w.page(this.store, from, count));
      if (rows.length > 0) yield this.sort(rows);
      if (rows.length < count) return;
      after = idOf(rows.at(-1));
    }
  }

  /** Those of the store of runs that an index holds. */
  async by(index: RunIndex, key: string | null): Promise<Rows<T>> {
    return this.sort(await this.backing.run('readonly', [this.store], (w) => w.runsBy(index, key)));
  }

  /** One, or what can't be read in its place. */
  async one(id: string): Promise<Rows<T>> {
    const row = await this.backing.run('readonly', [this.store], (w) => w.get(this.store, id));
    return this.sort(row === undefined ? [] : [row]);
  }

  async get(id: string): Promise<Kept<T> | null> {
    return this.read(await this.backing.run('readonly', [this.store], (w) => w.get(this.store, id)));
  }

  /**
   * Writes a new version if the one on disk is still `seenRev` (null: none is there yet). Resolves when durable.
   * @throws StorageError
   */
  put(id: string, seenRev: string | null, value: T, deleted = false): Promise<PutResult<T>> {
    return this.backing.run(
      'readwrite',
      [this.store, 'history', 'meta'],
      async (w): Promise<PutResult<T>> => {
        const row = await w.get(this.store, id);
        const before = isEnvelope(row) ? row : null;
        if (row !== undefined && !before && seenRev === null) this.setAside(w, id, row);
        if ((before?.rev ?? null) !== seenRev) return { ok: false, current: this.read(row) };
        const { device, counter } = await nextStamp(w);
        const envelope: Envelope = {
          id,
          schema: this.codec.schema,
          rev: revOf({ device, counter }),
          parents: before ? [before.rev] : [],
          device,
          counter,
          changedAt: Date.now(),
          deleted,
          body: this.codec.encode(value),
        };
        if (before) await this.remember(w, before);
        w.put(this.store, envelope);
        return { ok: true, kept: { id, rev: envelope.rev, changedAt: envelope.changedAt, deleted, value } };
      },
    );
  }

  /** What stood under this name and can't be read is moved out of the way, never overwritten. */
  private setAside(w: Work, id: string, row: unknown): void {
    w.put('history', { id: historyId(this.store, id, `unreadable-${newId()}`), value: row });
  }

  private async remember(w: Work, before: Envelope): Promise<void> {
    w.put('history', { ...before, id: historyId(this.store, before.id, before.rev) });
    const key = chainId(this.store, before.id);
    const row = (await w.get('meta', key)) as { value?: unknown } | undefined;
    const chain = Array.isArray(row?.value) ? (row.value as string[]) : [];
    const longer = [...chain, before.rev];
    for (const rev of longer.slice(0, -this.keptVersions))
      w.remove('history', historyId(this.store, before.id, rev));
    w.put('meta', { id: key, value: longer.slice(-this.keptVersions) });
  }

  /** An earlier version, or null when it is no longer kept. */
  async earlier(id: string, rev: string): Promise<Kept<T> | null> {
    const key = historyId(this.store, id, rev);
    return this.read(await this.backing.run('readonly', ['history'], (w) => w.get('history', key)));
  }
}
