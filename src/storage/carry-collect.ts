import { isRowOf, type Content, type CarriedRow, type VersionRow } from '../core/carry';
import type { Backing, StoreName, Work } from './backing';
import { isEnvelope, type Envelope } from './envelope';
import { COPIED, isCopied } from './copied';
import { chainId } from './versioned';

/** Rows read at once, so that a touch never waits long. */
const PAGE = 500;
/** Earlier versions of each record in a file of everything; one of a machine takes all that are kept. */
const EARLIER_OF_ALL = 5;
const CHAIN = 'chain/';

/** A phone's own name and when it was backed up are of no use to another. */
const STAYS = ['device', 'value/backed-up'];

/** Whether a row has a place in a file. */
export const isCarried = (store: StoreName, id: string): boolean =>
  isCopied({ store, id }) && !(store === 'meta' && STAYS.includes(id));

/** Before the name under which a row that is none goes along, as the text of it. */
const RAW = 'value/unreadable/';

/** `raw`: how many rows that aren't what they should be are among the small values, as they stand. */
export type Collected = Pick<Content, 'records' | 'earlier'> & { readonly raw: number };

/** A row that no reader would take, so that it isn't left behind; one that can't be written either is left to be counted. */
const asText = (store: StoreName, row: CarriedRow): CarriedRow => {
  try {
    return { id: `${RAW}${store}/${row.id}`.slice(0, 250), value: JSON.stringify(row) };
  } catch {
    return row;
  }
};

/** Under which name an earlier version is kept, by the name of the list it stands in. */
export const earlierId = (chain: string, rev: string): string => `${chain.slice(CHAIN.length)}/${rev}`;

const idOf = (row: unknown): string => (row as { id: string }).id;

/** Versions of a record before the one it has, oldest first. */
export const earlierOf = async (
  w: Pick<Work, 'get'>,
  chain: string,
  most = Infinity,
): Promise<VersionRow[]> => {
  const row = (await w.get('meta', chain)) as { value?: unknown } | undefined;
  const revs = Array.isArray(row?.value) ? (row.value as string[]) : [];
  const found: VersionRow[] = [];
  for (const rev of revs.slice(-Math.min(most, revs.length))) {
    const version = await w.get('history', earlierId(chain, rev));
    if (isEnvelope(version)) found.push(version);
  }
  return found;
};

const everything = async (w: Work): Promise<Collected> => {
  const records: Record<string, CarriedRow[]> = {};
  const chains: string[] = [];
  const raw: CarriedRow[] = [];
  for (const store of COPIED) {
    const rows: CarriedRow[] = [];
    for (let after: string | null = null; ;) {
      const page = (await w.page(store, after, PAGE)) as CarriedRow[];
      for (const row of page)
        if (!isCarried(store, row.id)) {
          if (`${row.id}`.startsWith(CHAIN)) chains.push(row.id);
        } else if (isRowOf(store, row)) rows.push(row);
        else raw.push(asText(store, row));
      if (page.length < PAGE) break;
      after = idOf(page.at(-1));
    }
    records[store] = rows;
  }
  const earlier: VersionRow[] = [];
  for (const chain of chains) earlier.push(...(await earlierOf(w, chain, EARLIER_OF_ALL)));
  records.meta = [...(records.meta ?? []), ...raw];
  return { records, earlier, raw: raw.length };
};

/** The thread of one's own that a job is to cut. */
const ownThreadOf = (job: unknown): string | null => {
  const { thread } =
    ((job as Envelope | undefined)?.body as { job?: { thread?: unknown } } | null)?.job ?? {};
  const { kind, id } = (thread ?? {}) as { kind?: unknown; id?: unknown };
  return kind === 'own' && typeof id === 'string' ? id : null;
};

/** What is kept under a machine's own name in any store, what was recorded about it, and the thread it is to cut. */
const ofMachine = async (w: Work, machine: string): Promise<Collected> => {
  const records: Record<string, CarriedRow[]> = {};
  const earlier: VersionRow[] = [];
  const add = async (store: StoreName, id: string): Promise<void> => {
    const row = await w.get(store, id);
    if (!isEnvelope(row)) return;
    (records[store] ??= []).push(row);
    earlier.push(...(await earlierOf(w, chainId(store, id))));
  };
  for (const store of COPIED) {
    if (store === 'evidence') records[store] = (await w.ofMachine(machine)) as CarriedRow[];
    else if (store !== 'meta') await add(store, machine);
    const own = store === 'jobs' && ownThreadOf(records.jobs?.[0]);
    if (own) await add('threads', own);
  }
  return { records, earlier, raw: 0 };
};

/** The rows for a file, of one machine or (null) of everything, as they stand at one moment. */
export const collect = (backing: Backing, machine: string | null): Promise<Collected> =>
  backing.run('readonly', [...COPIED, 'history'], (w) =>
    machine === null ? everything(w) : ofMachine(w, machine),
  );
