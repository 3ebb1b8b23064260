import { readProfile, storeProfile, type MachineProfile } from '../core/machine';
import { readJob, readOwn, storeJob, storeOwn, type Job } from '../core/job';
import type { Run } from '../core/run';
import { readRun, storeRun } from '../core/run/stored';
import type { OwnThread } from '../core/thread';
import { StorageError, type Backing, type StorageCode } from './backing';
import { indexedBacking, type IndexedEvents } from './indexed';
import { Evidence } from './evidence';
import { memoryBacking } from './memory';
import { Meta } from './meta';
import { readSettings, type Settings } from './settings';
import { Versioned } from './versioned';

export { StorageError, type EvidenceRow, type StorageCode } from './backing';
export type { Kept, Unreadable } from './envelope';
export type { NewEvidence, Evidence } from './evidence';
export type { Meta } from './meta';
export type { PutResult, Rows, Versioned } from './versioned';
export { blankSettings, MOST_WIRES, type Settings } from './settings';
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
  /** False: nothing outlives this tab, and `trouble` says why. */
  readonly durable: boolean;
  readonly trouble: StorageCode | null;
  readonly machines: Versioned<MachineBody>;
  readonly jobs: Versioned<JobBody>;
  readonly threads: Versioned<OwnThread>;
  readonly runs: Versioned<Run>;
  readonly settings: Versioned<Settings>;
  readonly evidence: Evidence;
  readonly meta: Meta;
}

const storageOn = (backing: Backing, trouble: StorageCode | null): Storage => ({
  durable: backing.durable,
  trouble,
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

/**
 * Opens the database; where there is none to be had (a private window, a broken store, a newer database) works
 * from memory and says why. Never deletes anything.
 */
export const openStorage = async (events: IndexedEvents): Promise<Storage> => {
  try {
    return storageOn(await indexedBacking(events), null);
  } catch (e) {
    // Browsers give a forbidden database and a broken one the same few names; either way nothing can be kept.
    const code = e instanceof StorageError && e.code !== 'failed' ? e.code : 'unavailable';
    return storageOn(memoryBacking(), code);
  }
};
