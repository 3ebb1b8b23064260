import type { Envelope } from './envelope';
import { STORES, type Backing, type EvidenceRow, type Row, type StoreName, type Work } from './backing';

type Tables = Map<StoreName, Map<string, unknown>>;

const copy = (tables: Tables): Tables => new Map([...tables].map(([name, rows]) => [name, new Map(rows)]));

/**
 * Rows in memory, for a private window or a broken store: the app works, says that nothing is kept, and offers
 * the export. Works on a copy and swaps it in, so that it is all or nothing like a transaction.
 */
export const memoryBacking = (): Backing => {
  let tables: Tables = new Map(STORES.map((s) => [s, new Map<string, unknown>()]));
  let queue: Promise<unknown> = Promise.resolve();
  const rows = (t: Tables, store: StoreName): Map<string, unknown> =>
    t.get(store) ?? new Map<string, unknown>();

  const run = async <T>(work: (w: Work) => Promise<T>): Promise<T> => {
    const mine = copy(tables);
    const result = await work({
      get: (store, key) => Promise.resolve(rows(mine, store).get(key)),
      all: (store) => Promise.resolve([...rows(mine, store).values()]),
      page: (store, after, count) =>
        Promise.resolve(
          [...rows(mine, store)]
            .filter(([id]) => after === null || id > after)
            .sort(([a], [b]) => (a < b ? -1 : 1))
            .slice(0, count)
            .map(([, row]) => row),
        ),
      ofMachine: (machine) =>
        Promise.resolve(
          [...rows(mine, 'evidence').values()].filter((r) => (r as EvidenceRow).machine === machine),
        ),
      runsBy: (index, key) =>
        Promise.resolve(
          [...rows(mine, 'runs').values()].filter((r) => {
            const at = ((r as Envelope).body as Partial<Record<string, unknown>> | null)?.[index];
            return key === null ? at !== undefined : at === key;
          }),
        ),
      put: (store, row: Row) => void rows(mine, store).set(row.id, structuredClone(row)),
      remove: (store, key) => void rows(mine, store).delete(key),
    });
    tables = mine;
    return result;
  };
  return {
    durable: false,
    run: (_mode, _stores, work) => {
      const next = queue.then(() => run(work));
      queue = next.catch(() => undefined);
      return next;
    },
    close: () => undefined,
  };
};
