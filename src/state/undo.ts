import type { FieldName } from '../core/machine';
import type { Meta } from '../storage';
import { Emitter } from './emitter';

/** One change that can be taken back, as plain data: it outlives the page. `before` is as records are stored. */
export type UndoEntry =
  | { readonly code: 'field'; readonly machine: string; readonly field: FieldName; readonly before: unknown }
  /** Several fields changed as one, and the readings that this cleared. */
  | {
      readonly code: 'fields';
      readonly machine: string;
      readonly before: Readonly<Partial<Record<FieldName, unknown>>>;
      readonly readings: unknown;
    }
  /** Another machine was put in use; `machine` and `name`: the one before. */
  | { readonly code: 'machine'; readonly machine: string; readonly name: string }
  /** A workshop was named anew; `name`: as it was, `before`: what each of its machines said. */
  | { readonly code: 'workshop'; readonly name: string; readonly before: Readonly<Record<string, string>> }
  | {
      readonly code: 'machine-put-away';
      readonly machine: string;
      readonly name: string;
      readonly inUse: boolean;
    }
  /** A thread of one's own as it was; `deleted`: it had been put away before; `away`: the change put it away. */
  | {
      readonly code: 'own-thread';
      readonly id: string;
      readonly name: string;
      readonly before: unknown;
      readonly deleted: boolean;
      readonly away: boolean;
    }
  /** A run that was ended, or put away among the records. */
  | { readonly code: 'run'; readonly run: string; readonly name: string; readonly away: boolean }
  | { readonly code: 'readings'; readonly before: unknown }
  /** What a file brought; the storage knows by that name what was before. */
  | { readonly code: 'import'; readonly id: string }
  /** Things of a wiring record as they were; `name`: what was taken out, empty where nothing was. */
  | { readonly code: 'wiring'; readonly machine: string; readonly name: string; readonly before: unknown }
  | { readonly code: 'wire'; readonly wire: unknown }
  | { readonly code: 'thread'; readonly machine: string; readonly before: unknown }
  | {
      readonly code: 'check' | 'event' | 'hours' | 'test' | 'review';
      readonly detail: string;
      readonly evidence: string;
    };

const KEPT = 30;
const NAME = 'undo';
const CODES: Readonly<Record<UndoEntry['code'], true>> = {
  field: true,
  fields: true,
  machine: true,
  workshop: true,
  'machine-put-away': true,
  'own-thread': true,
  run: true,
  readings: true,
  import: true,
  wiring: true,
  wire: true,
  thread: true,
  check: true,
  event: true,
  hours: true,
  test: true,
  review: true,
};

const isEntry = (x: unknown): x is UndoEntry =>
  typeof x === 'object' && x !== null && Object.hasOwn(CODES, String((x as { code?: unknown }).code));

/** The last changes, newest last, kept across restarts. Each screen offers the newest in words. */
export class UndoList extends Emitter {
  private entries: readonly UndoEntry[] = [];

  constructor(private readonly meta: Meta) {
    super();
  }

  /** Imports that can still be taken back. */
  get imports(): readonly string[] {
    return this.entries.flatMap((e) => (e.code === 'import' ? e.id : []));
  }

  get newest(): UndoEntry | null {
    return this.entries.at(-1) ?? null;
  }

  async load(): Promise<void> {
    const kept = await this.meta.get(NAME);
    // What was changed before the list came from the disk is newer than all of it.
    this.entries = [...(Array.isArray(kept) ? kept.filter(isEntry) : []), ...this.entries].slice(-KEPT);
  }

  push(entry: UndoEntry): void {
    this.keep([...this.entries, entry].slice(-KEPT));
  }

  /** Takes the newest off the list; whoever asks carries it out. */
  pop(): UndoEntry | null {
    const entry = this.newest;
    if (entry) this.keep(this.entries.slice(0, -1));
    return entry;
  }

  private keep(entries: readonly UndoEntry[]): void {
    this.entries = entries;
    this.tell();
    // Losing the list loses no data, only the way back: a full disk is told where the data itself is written.
    this.meta.set(NAME, entries).catch(() => undefined);
  }
}
