import type { Page } from 'playwright-core';
import { canonical } from '../../src/core/carry/canonical';
import { isCopied } from '../../src/storage/copied';
import type { StoreName } from '../../src/storage/backing';
import type { SavedDatabase } from '../browser/support/saved';

/** The copy beside the database as it lies on the disk. */
export interface SavedCopy {
  readonly head: { readonly counter: number; readonly ahead: boolean } | null;
  /** By "store/id", as its parts hold them. */
  readonly rows: Readonly<Record<string, unknown>>;
  /** Changes that no part holds yet are noted in so many places. */
  readonly notes: number;
}

interface Row {
  readonly id: string;
  readonly rev?: string;
  readonly parents?: readonly string[];
  readonly device?: string;
  readonly counter?: number;
  readonly value?: unknown;
  readonly body?: { readonly taken?: readonly { readonly n: number }[] };
}

const rowsOf = (db: SavedDatabase, store: string): Row[] => (db.stores[store] ?? []) as Row[];

export const readCopy = (page: Page): Promise<SavedCopy> =>
  page.evaluate(async () => {
    const cache = await caches.open('latheside-mirror');
    const rows: Record<string, unknown> = {};
    let head: SavedCopy['head'] = null;
    let notes = 0;
    for (const request of await cache.keys()) {
      const path = new URL(request.url).pathname.replace('/latheside-mirror/', '');
      const value: unknown = await (await cache.match(request))?.json();
      if (path === 'head') head = value as SavedCopy['head'];
      else if (path.startsWith('notes/')) notes += 1;
      else
        for (const [id, row] of Object.entries(value as object))
          rows[`${path.split('/')[0] ?? ''}/${id}`] = row;
    }
    return { head, rows, notes };
  });

/** This phone's name as a device and the number of its last change. */
export const deviceOf = (db: SavedDatabase): { device: string; counter: number } => {
  const row = rowsOf(db, 'meta').find(({ id }) => id === 'device');
  return (row?.value ?? { device: '', counter: 0 }) as { device: string; counter: number };
};

/** Where the copy knows something that the database doesn't, as both lay on the disk after the kill. */
export const aheadOf = (db: SavedDatabase, { head, rows }: SavedCopy): string[] => {
  const { counter } = deviceOf(db);
  const found: string[] = [];
  if (head && (head.ahead || head.counter > counter))
    found.push(`the copy stands at ${head.counter}, the database at ${counter}`);
  for (const [name, row] of Object.entries(rows)) {
    const [store = '', ...rest] = name.split('/');
    const there = rowsOf(db, store).find(({ id }) => id === rest.join('/'));
    if (((row as Row).counter ?? 0) > (there?.counter ?? 0)) found.push(`${name} is newer in the copy`);
  }
  return found;
};

/** Where copy and database differ once it has caught up. */
export const differences = (db: SavedDatabase, copy: SavedCopy): string[] => {
  const found: string[] = [];
  const here = new Set<string>();
  for (const store of Object.keys(db.stores) as StoreName[])
    for (const row of rowsOf(db, store)) {
      if (!isCopied({ store, id: row.id })) continue;
      const name = `${store}/${row.id}`;
      here.add(name);
      if (!(name in copy.rows)) found.push(`${name} isn't in the copy`);
      else if (canonical(plain(copy.rows[name])) !== canonical(plain(row)))
        found.push(`${name} is another in the copy`);
    }
  for (const name of Object.keys(copy.rows)) if (!here.has(name)) found.push(`${name} is in the copy alone`);
  return found;
};

const plain = (x: unknown): unknown => JSON.parse(JSON.stringify(x));

/** What in the database is half done or doesn't go together; one that was filled from the copy has no earlier versions. */
export const halves = (db: SavedDatabase, refilled: boolean): string[] => {
  const found: string[] = [];
  const { device, counter } = deviceOf(db);
  const meta = rowsOf(db, 'meta');
  const history = new Set(rowsOf(db, 'history').map(({ id }) => id));
  const revs = new Set<string>();
  for (const store of ['machines', 'jobs', 'threads', 'settings', 'runs', 'wiring'])
    for (const row of rowsOf(db, store)) {
      const name = `${store}/${row.id}`;
      if (row.device === device && (row.counter ?? 0) > counter)
        found.push(`${name} has number ${row.counter}, the phone counts ${counter}`);
      if (row.device === device && revs.has(row.rev ?? '')) found.push(`${name}: ${row.rev} twice`);
      revs.add(row.rev ?? '');
      if (refilled) continue;
      const chain = (meta.find(({ id }) => id === `chain/${name}`)?.value ?? []) as string[];
      for (const rev of chain)
        if (!history.has(`${name}/${rev}`)) found.push(`${name}: its earlier version ${rev} is gone`);
      const parent = row.parents?.[0];
      if (row.device === device && parent !== undefined && !history.has(`${name}/${parent}`))
        found.push(`${name}: the version before it is gone`);
    }
  for (const { id, body } of rowsOf(db, 'runs'))
    if (body?.taken?.some(({ n }, at) => n !== at + 1))
      found.push(`run ${id}: passes ${JSON.stringify(body.taken)}`);
  const undo = meta.find(({ id }) => id === 'value/undo')?.value ?? [];
  if (!Array.isArray(undo) || undo.length > 30) found.push('the list of what can be undone is no list');
  return found;
};
