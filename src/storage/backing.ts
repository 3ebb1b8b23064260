import type { RecordRow, ValueRow } from '../core/carry';
import type { Envelope } from './envelope';

/** Names of the stores in the database. Once released they never change. */
export const STORES = [
  'machines',
  'jobs',
  'threads',
  'settings',
  'evidence',
  'history',
  'meta',
  'runs',
  'wiring',
] as const;
export type StoreName = (typeof STORES)[number];

/** Indexes of the store of runs, each by the field of the body that has its name. Only open runs have `open`. */
export type RunIndex = 'machine' | 'open';

/** One record of the add-only store: what a person saw or did, never altered, only marked as taken back. */
export type EvidenceRow = RecordRow;

export type MetaRow = ValueRow;

export type Row = Envelope | EvidenceRow | MetaRow;

/** One row as a piece of work left it; null: removed. */
export interface Change {
  readonly store: StoreName;
  readonly id: string;
  readonly row: Row | null;
}

/** What a piece of work may do inside its transaction. */
export interface Work {
  get(store: StoreName, key: string): Promise<unknown>;
  all(store: StoreName): Promise<unknown[]>;
  /** Up to `count` rows in order of key, from the first one after `after`. */
  page(store: StoreName, after: string | null, count: number): Promise<unknown[]>;
  /** Rows of `evidence` for one machine. */
  ofMachine(machine: string): Promise<unknown[]>;
  /** Rows of `runs` that an index holds; all of them for null. */
  runsBy(index: RunIndex, key: string | null): Promise<unknown[]>;
  put(store: StoreName, row: Row): void;
  remove(store: StoreName, key: string): void;
}

/**
 * Where rows are kept: IndexedDB, or memory where there is none. `run` is all or nothing, and resolves only
 * when what was written is durable.
 */
export interface Backing {
  readonly durable: boolean;
  run<T>(
    mode: 'readonly' | 'readwrite',
    stores: readonly StoreName[],
    work: (w: Work) => Promise<T>,
  ): Promise<T>;
  close(): void;
}

/** What went wrong with storage, for the words in text/storage. */
export type StorageCode =
  'full' | 'newer-database' | 'closed-for-update' | 'unavailable' | 'broken' | 'failed';

export class StorageError extends Error {
  override name = 'StorageError';
  constructor(
    readonly code: StorageCode,
    cause?: unknown,
  ) {
    super(code, { cause });
  }
}
