import type { Work } from './backing';

interface Read {
  readonly db: IDBDatabase;
  readonly answers: Map<string, unknown>;
}

declare global {
  /** What early-read.js read while this script was on its way; null: nothing to be had. */
  var lathesideEarly: Promise<Read | null> | undefined;
  /** Resolves once early-read.js has asked its last question: what comes next waits for the answers anyway. */
  var lathesideAsked: Promise<unknown> | undefined;
}

/** The database as it was opened and read before the app was there. */
export interface Early {
  readonly db: IDBDatabase;
  /** Answers a piece of reading if all that it asks was read, each answer once; `missed` otherwise. */
  readonly answer: <T>(work: (w: Work) => Promise<T>) => Promise<T | typeof missed>;
}

/** So long the app waits for what is read early, ms; then it asks by itself. */
const NO_LONGER = 500;
const pause = (ms: number): Promise<null> => new Promise((resolve) => setTimeout(() => resolve(null), ms));

export const missed = Symbol('missed');

class Missed extends Error {}

const no = (): never => {
  throw new Missed();
};

/** Takes what was read early, once per page. Null: there is nothing, or the database has another version. */
export const takeEarly = async (version: number): Promise<Early | null> => {
  const reading = globalThis.lathesideEarly;
  globalThis.lathesideEarly = undefined;
  if (!reading) return null;
  const read = await Promise.race([reading, pause(NO_LONGER)]);
  if (read?.db.version !== version) {
    // Also when it comes too late.
    void reading.then((late) => late?.db.close());
    return null;
  }
  const { db, answers } = read;
  const given = (name: string): Promise<unknown> => {
    if (!answers.has(name)) no();
    const answer = answers.get(name);
    answers.delete(name);
    return Promise.resolve(answer);
  };
  const rows = (name: string): Promise<unknown[]> => given(name) as Promise<unknown[]>;
  const work: Work = {
    get: (store, key) => given(`${store}/${key}`),
    ofMachine: (machine) => rows(`evidence?machine=${machine}`),
    runsBy: (index, key) => (key === null ? rows(`runs?${index}`) : no()),
    all: no,
    page: no,
    put: no,
    remove: no,
  };
  return {
    db,
    answer: async (asked) => {
      try {
        return await asked(work);
      } catch (e) {
        if (e instanceof Missed) return missed;
        throw e;
      }
    },
  };
};
