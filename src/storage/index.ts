import { readProfile, storeProfile, type MachineProfile } from '../core/machine';
import { readJob, readOwn, storeJob, storeOwn, type Job } from '../core/job';
import type { Run } from '../core/run';
import { readRun, storeRun } from '../core/run/stored';
import type { OwnThread } from '../core/thread';
import { StorageError, type Backing, type Change, type StorageCode, type StoreName } from './backing';
import type { Reads } from './carry-plan';
import { followed } from './followed';
import { indexedBacking, type IndexedEvents } from './indexed';
import type { Codec } from './envelope';
import { Evidence } from './evidence';
import { memoryBacking } from './memory';
import { MIRROR_NAME } from './migrations';
import { Meta } from './meta';
import type { Mirror, Restored } from './restore';
import { readSettings, type Settings } from './settings';
import { Versioned } from './versioned';

export { StorageError, type EvidenceRow, type StorageCode } from './backing';
export type { Kept, Unreadable } from './envelope';
export type { NewEvidence, Evidence } from './evidence';
export type { Meta } from './meta';
export type { Restored } from './restore';
export type { PutResult, Rows, Versioned } from './versioned';
export { blankSettings, MOST_USED, MOST_WIRES, type Settings } from './settings';
export { newId } from './id';

/** A machine as kept: its profile, and the fields that could not be read and now count as not known. */
export interface MachineBody {
  readonly profile: MachineProfile;
  readonly example: boolean;
  readonly unreadable: readonly string[];
}

export interface JobBody {
  readonly job: Job;
  readonly cuttingSince: number | null;
}

/** Earlier versions kept of a run: each of its steps is one, and what was taken is told by the run itself. */
const KEPT_STEPS = 3;

export interface Storage {
  /** False: nothing outlives this tab, and `trouble` says why; or it outlives it in the copy alone. */
  readonly durable: boolean;
  /** What was brought back from the copy, because the database was lost or can't be had. */
  readonly restored: Restored | null;
  /** Opens the copy: until then, and no longer than COPY_AT_MOST, what is saved waits to be acknowledged. */
  readonly openMirror: () => Promise<void>;
  /** Lets the copy catch up, once it is open. Resolves true when that changed the database. */
  readonly startMirror: () => Promise<boolean>;
  readonly trouble: StorageCode | null;
  readonly machines: Versioned<MachineBody>;
  readonly jobs: Versioned<JobBody>;
  readonly threads: Versioned<OwnThread>;
  readonly runs: Versioned<Run>;
  readonly settings: Versioned<Settings>;
  readonly evidence: Evidence;
  /** Records of a store whose codec comes after the first paint. */
  readonly later: <T>(store: 'wiring', codec: Codec<T>) => Versioned<T>;
  readonly meta: Meta;
  /** What files need (carry.ts), which is loaded after the first paint. */
  readonly rows: { readonly backing: Backing; readonly reads: Reads };
}

const storesOn = (backing: Backing) => ({
  machines: new Versioned<MachineBody>(backing, 'machines', {
    schema: 1,
    encode: (m) => ({ profile: storeProfile(m.profile), example: m.example }),
    decode: (body) => {
      const raw = body as { profile?: unknown; example?: unknown } | null;
      const read = readProfile(raw?.profile);
      return read && { profile: read.profile, unreadable: read.unreadable, example: raw?.example === true };
    },
  }),
  jobs: new Versioned<JobBody>(backing, 'jobs', {
    schema: 1,
    encode: (j) => ({ job: storeJob(j.job), cuttingSince: j.cuttingSince }),
    decode: (body) => {
      if (typeof body !== 'object' || body === null) return null;
      const { job, cuttingSince: since } = body as { job?: unknown; cuttingSince?: unknown };
      return { job: readJob(job), cuttingSince: typeof since === 'number' ? since : null };
    },
  }),
  threads: new Versioned<OwnThread>(backing, 'threads', { schema: 1, encode: storeOwn, decode: readOwn }),
  runs: new Versioned<Run>(backing, 'runs', { schema: 1, encode: storeRun, decode: readRun }, KEPT_STEPS),
  settings: new Versioned<Settings>(backing, 'settings', {
    schema: 1,
    encode: (s) => s,
    decode: readSettings,
  }),
  evidence: new Evidence(backing),
  meta: new Meta(backing),
});

const storageOn = (
  backing: Backing,
  more: Pick<Storage, 'trouble' | 'restored' | 'openMirror' | 'startMirror'>,
): Storage => {
  const stores = storesOn(backing);
  // By its codec; a store without one takes any.
  const reads: Reads = (store, row) => {
    const of: unknown = (stores as Partial<Record<StoreName, unknown>>)[store];
    return !(of instanceof Versioned) || of.reads(row);
  };
  return {
    durable: backing.durable,
    ...more,
    ...stores,
    later: (store, codec) => new Versioned(backing, store, codec),
    rows: { backing, reads },
  };
};

/** Whether there may be a copy; asked only where no database was found. */
const hasMirror = async (): Promise<boolean> => {
  try {
    return await caches.has(MIRROR_NAME);
  } catch {
    return false;
  }
};

/** Nobody waits longer for the copy, ms: the database has the change, and the copy may be out of order. */
const COPY_AT_MOST = 1500;

/** Storage on a backing whose changes are acknowledged when the copy has them too, once that is loaded. */
const withMirror = (backing: Backing, trouble: StorageCode | null, restored: Restored | null): Storage => {
  let opened: (mirror: Mirror | null) => void;
  const copy = new Promise<Mirror | null>((resolve) => {
    opened = resolve;
  });
  const openMirror = async (): Promise<void> => {
    let mirror: Mirror | null = null;
    try {
      // What a newer version copied isn't this one's to write in.
      if (trouble === 'newer-database') return;
      mirror = await (await import('./restore')).Mirror.open(!backing.durable);
    } finally {
      opened(mirror);
    }
  };
  const startMirror = async (): Promise<boolean> => {
    const mirror = await copy;
    if (!mirror) return false;
    const { catchUp } = await import('./restore');
    const changed = await catchUp(backing, mirror);
    await mirror.begin();
    return changed;
  };
  const follow = (changes: readonly Change[]): Promise<void> =>
    Promise.race([
      copy.then((mirror) => mirror?.follow(changes)).catch(() => undefined),
      new Promise<void>((resolve) => setTimeout(resolve, COPY_AT_MOST)),
    ]);
  return storageOn(followed(backing, follow), { trouble, restored, openMirror, startMirror });
};

export interface StorageEvents extends IndexedEvents {
  /** A database had been lost, at a start or while the page was open, and got everything back. */
  readonly onRestored?: (restored: Restored) => void;
}

/**
 * Opens the database. One that had to be made although there is a copy was lost, and gets everything back from that. Where
 * none is to be had (a private window, a broken store, a newer database) works from memory, with what the copy holds,
 * and says why. Never deletes anything.
 */
export const openStorage = async (events: StorageEvents): Promise<Storage> => {
  try {
    let restored: Restored | null = null;
    const backing = await indexedBacking(events, async (made) => {
      if (!(await hasMirror())) return;
      // If that fails it is tried again when the copy catches up.
      restored = await import('./restore').then(({ restoreLost }) => restoreLost(made)).catch(() => null);
      if (restored) events.onRestored?.(restored);
    });
    return withMirror(backing, null, restored);
  } catch (e) {
    // Browsers give a forbidden database and a broken one the same few names; either way nothing can be kept.
    const code = e instanceof StorageError && e.code !== 'failed' ? e.code : 'unavailable';
    const backing = memoryBacking();
    // What a newer version wrote, this one may not be able to read.
    const copied = code !== 'newer-database' && (await hasMirror());
    const seeded = copied && import('./restore').then(({ seedFrom }) => seedFrom(backing)).catch(() => null);
    const restored = (await seeded) || null;
    return withMirror(backing, restored ? 'broken' : code, restored);
  }
};
