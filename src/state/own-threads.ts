import type { ThreadChoice } from '../core/job';
import { ownKey, threadById, threadOfOwn, type OwnThread, type Thread } from '../core/thread';
import type { SearchIndex } from '../core/thread/search';
import { newId, type Kept, type Storage, type Unreadable } from '../storage';
import { Emitter } from './emitter';
import { Live, type SaveState } from './live';
import { mergeFields } from './merge';

/** Threads in one index: making one takes a few milliseconds, so that no touch waits for it. */
const BATCH = 500;

interface Batch {
  readonly keys: Set<string>;
  /** null until what makes indexes has been loaded. */
  index: SearchIndex | null;
}

export interface OwnEntry {
  readonly key: string;
  readonly own: OwnThread;
  readonly deleted: boolean;
}

const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** A person's own threads: thousands may be kept, so they are read in parts after the first paint. */
export class OwnThreads extends Emitter {
  private readonly kept = new Map<string, Kept<OwnThread>>();
  /** Only what was changed on this page is held open. */
  private readonly open = new Map<string, Live<OwnThread>>();
  private readonly threads = new Map<string, Thread>();
  private readonly batches: Batch[] = [];
  private indexThreads: ((threads: readonly Thread[]) => SearchIndex) | null = null;
  /** Rises with every change, for what is reckoned from all of them. */
  version = 0;
  /** All were read once. */
  loaded = false;
  unreadable: readonly Unreadable[] = [];

  constructor(
    private readonly storage: Pick<Storage, 'threads'>,
    private readonly saved: (key: string) => void,
  ) {
    super();
  }

  async load(): Promise<void> {
    // Apart from what the first paint needs.
    this.indexThreads = (await import('../core/thread/search')).indexThreads;
    this.unreadable = [];
    for await (const { kept, unreadable } of this.storage.threads.pages(BATCH)) {
      const fresh = kept.filter((k) => !this.kept.has(k.id));
      const changed = kept.filter((k) => this.isStale(k));
      for (const k of [...fresh, ...changed]) this.hold(k);
      this.addBatch(fresh.map((k) => k.id));
      for (const k of changed) this.reindex(k.id);
      this.unreadable = [...this.unreadable, ...unreadable];
      this.changed();
      await breathe();
    }
    this.loaded = true;
    this.tell();
  }

  /** Known in another version. What is open here takes over what another wrote by itself. */
  private isStale({ id, rev }: Kept<OwnThread>): boolean {
    const known = this.kept.get(id);
    return known !== undefined && known.rev !== rev && !this.open.has(id);
  }

  private hold(k: Kept<OwnThread>): void {
    this.kept.set(k.id, k);
    const thread = k.deleted ? null : threadOfOwn(k.id, k.value);
    if (thread) this.threads.set(k.id, thread);
    else this.threads.delete(k.id);
  }

  private indexOf(keys: ReadonlySet<string>): SearchIndex | null {
    return this.indexThreads && this.indexThreads([...keys].flatMap((key) => this.threads.get(key) ?? []));
  }

  private addBatch(keys: readonly string[]): void {
    const set = new Set(keys);
    this.batches.push({ keys: set, index: this.indexOf(set) });
  }

  /** Makes the index anew that a changed thread stands in. */
  private reindex(key: string): void {
    const batch = this.batches.find((b) => b.keys.has(key)) ?? this.batches.find((b) => b.keys.size < BATCH);
    if (!batch) return this.addBatch([key]);
    batch.keys.add(key);
    batch.index = this.indexOf(batch.keys);
  }

  private changed(): void {
    this.version += 1;
    this.tell();
  }

  /** For the look-up. */
  get indexes(): readonly SearchIndex[] {
    return this.batches.flatMap((b) => b.index ?? []);
  }

  /** Those that are complete and not put away. */
  get complete(): readonly Thread[] {
    return [...this.threads.values()];
  }

  private entryOf({ id, value, deleted }: Kept<OwnThread>): OwnEntry {
    return { key: id, own: value, deleted };
  }

  /** All of them, those put away included, newest change first. */
  get list(): readonly OwnEntry[] {
    return [...this.kept.values()].sort((a, b) => b.changedAt - a.changedAt).map((k) => this.entryOf(k));
  }

  find(key: string): OwnEntry | null {
    const kept = this.kept.get(key);
    return kept ? this.entryOf(kept) : null;
  }

  /** A thread by its id, one's own or catalogued; null where it isn't (or not yet) known. */
  threadById(id: string): Thread | null {
    const key = ownKey(id);
    return (key === null ? threadById(id) : this.threads.get(key)) ?? null;
  }

  /** How a job names a thread: its own figures go along, so that a later change of it can't alter the job unseen. */
  choiceOf(thread: Thread): ThreadChoice {
    const key = ownKey(thread.id);
    const kept = key === null ? undefined : this.kept.get(key);
    return key !== null && kept
      ? { kind: 'own', id: key, own: kept.value }
      : { kind: 'catalogue', id: thread.id };
  }

  private liveOf(key: string, own: OwnThread): Live<OwnThread> {
    const known = this.open.get(key);
    if (known) return known;
    const kept = this.kept.get(key);
    const live = new Live(
      this.storage.threads,
      key,
      own,
      kept?.rev ?? null,
      mergeFields,
      kept?.deleted ?? false,
      () => this.saved(key),
    );
    live.subscribe(() => {
      this.hold({ id: key, rev: '', changedAt: Date.now(), deleted: live.deleted, value: live.value });
      this.reindex(key);
      this.changed();
    });
    this.open.set(key, live);
    return live;
  }

  async add(own: OwnThread): Promise<string> {
    const key = newId();
    await this.liveOf(key, own).set(own);
    return key;
  }

  async set(key: string, own: OwnThread, deleted = false): Promise<void> {
    const before = this.kept.get(key);
    if (before) await this.liveOf(key, before.value).set(own, deleted);
  }

  /** Another tab wrote this one. */
  async reload(key: string): Promise<void> {
    const live = this.open.get(key);
    if (live) return live.reload();
    const kept = await this.storage.threads.get(key);
    if (!kept) return;
    this.hold(kept);
    this.reindex(key);
    this.changed();
  }

  /** A file or another tab wrote many. */
  async reloadAll(): Promise<void> {
    await this.load();
    for (const live of this.open.values()) await live.reload();
  }

  get states(): readonly SaveState[] {
    return [...this.open.values()].map((live) => live.state);
  }

  conflictSeen(): void {
    for (const live of this.open.values()) live.conflictSeen();
  }

  async flush(): Promise<void> {
    await Promise.all([...this.open.values()].map((live) => live.flush()));
  }
}
