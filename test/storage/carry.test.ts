import { describe, expect, it } from 'vitest';
import { readDocument, takeTheirs, writeDocument, type VersionRow } from '../../src/core/carry';
import { blankWiring, withLayout, type WiringRecord } from '../../src/core/wiring/record';
import { readWiring, storeWiring } from '../../src/core/wiring/record/stored';
import type { Backing, StoreName } from '../../src/storage/backing';
import { Carry, type Incoming, type Plan } from '../../src/storage/carry';
import { Evidence } from '../../src/storage/evidence';
import { blankSettings, readSettings, type Settings } from '../../src/storage/settings';
import { memoryBacking } from '../../src/storage/memory';
import { Versioned } from '../../src/storage/versioned';

interface Body {
  readonly profile: Readonly<Record<string, unknown>>;
}
const codec = {
  schema: 1,
  encode: (b: Body) => ({ ...b }),
  decode: (b: unknown) => (typeof (b as Body | null)?.profile === 'object' ? (b as Body) : null),
};

/** A phone: its stores, and what takes files out and in. */
const phone = () => {
  const backing = memoryBacking();
  const machines = new Versioned<Body>(backing, 'machines', codec);
  const reads = (store: StoreName, row: unknown): boolean => store !== 'machines' || machines.reads(row);
  return { backing, machines, evidence: new Evidence(backing), carry: new Carry({ backing, reads }) };
};
type APhone = ReturnType<typeof phone>;

const set = async (p: APhone, profile: Body['profile'], deleted = false): Promise<void> => {
  const now = await p.machines.get('m');
  const put = await p.machines.put('m', now?.rev ?? null, { profile }, deleted);
  if (!put.ok) throw new Error('refused');
};
const profileIn = async (p: APhone): Promise<unknown> => (await p.machines.get('m'))?.value.profile;
const record = (id: string) => ({ id, schema: 1, kind: 'test', machine: 'm', at: 1, body: { id } });

const file = async (p: APhone, machine: string | null = 'm') => {
  const content = {
    kind: machine === null ? ('everything' as const) : ('machine' as const),
    made: '2026-11-27T14:32:00.000Z',
    app: '0',
    ...(await p.carry.collect(machine)),
  };
  const { text, left } = writeDocument(content);
  expect(left).toBe(0);
  const read = readDocument(text);
  if (!read.ok) throw new Error(read.code);
  return read.document;
};
const outcomes = ({ rows }: Plan): Record<string, string> =>
  Object.fromEntries(rows.map((r) => [r.theirs.id, r.outcome]));
const bring = async (
  from: APhone,
  to: APhone,
  choose: (r: Incoming) => Incoming = (r) => r,
): Promise<string> => {
  const plan = await to.carry.plan(await file(from));
  const id = await to.carry.apply(plan.rows.map(choose), []);
  if (id === null) throw new Error('changed');
  return id;
};
const dump = async (b: Backing, store: StoreName): Promise<unknown[]> =>
  (await b.run('readonly', [store], (w) => w.all(store))).sort((x, y) =>
    (x as { id: string }).id < (y as { id: string }).id ? -1 : 1,
  );

/** Two phones with the same machine and one record. */
const two = async () => {
  const [one, other] = [phone(), phone()];
  await set(one, { pitch: 3, lines: 1024 });
  await one.evidence.add([record('e1')]);
  const id = await bring(one, other);
  return { one, other, id };
};

describe('a file between two phones', () => {
  it('brings a machine and its records, and again changes nothing', async () => {
    const { one, other } = await two();
    expect(await profileIn(other)).toEqual({ pitch: 3, lines: 1024 });
    expect((await other.evidence.of('m')).map((r) => r.id)).toEqual(['e1']);
    expect(outcomes(await other.carry.plan(await file(one)))).toEqual({ m: 'same', e1: 'same' });
  });

  it('goes on from what it brought, and back the same way', async () => {
    const { one, other } = await two();
    await set(other, { pitch: 4, lines: 1024 });
    await set(other, { pitch: 6, lines: 1024 });
    expect(outcomes(await other.carry.plan(await file(one)))).toMatchObject({ m: 'ours' });
    expect(outcomes(await one.carry.plan(await file(other)))).toMatchObject({ m: 'forward' });
    await bring(other, one);
    expect(await profileIn(one)).toEqual({ pitch: 6, lines: 1024 });
  });

  it('puts both changes together; both phones end with the same', async () => {
    const { one, other } = await two();
    await set(one, { pitch: 4, lines: 1024 });
    await set(other, { pitch: 3, lines: 2048 });
    await other.evidence.add([record('e2')]);
    await one.evidence.takeBack('e1');
    await bring(other, one);
    expect(await profileIn(one)).toEqual({ pitch: 4, lines: 2048 });
    await bring(one, other);
    expect(await profileIn(other)).toEqual({ pitch: 4, lines: 2048 });
    for (const p of [one, other]) {
      expect((await p.evidence.of('m')).map((r) => r.id)).toEqual(['e2']);
      expect((await dump(p.backing, 'evidence')).length).toBe(2);
    }
    expect(outcomes(await one.carry.plan(await file(other)))).toMatchObject({ m: 'same' });
  });

  it('keeps ours where both changed one field, until theirs is chosen; the loser stays among the earlier ones', async () => {
    const { one, other } = await two();
    await set(one, { pitch: 4, lines: 1024 });
    await set(other, { pitch: 6, lines: 1024 });
    const plan = await one.carry.plan(await file(other));
    expect(plan.rows.find((r) => r.store === 'machines')?.conflicts).toEqual([
      { field: 'profile.pitch', ours: 4, theirs: 6 },
    ]);
    await bring(other, one, (r) =>
      r.conflicts.length ? { ...r, row: takeTheirs(r.row as VersionRow, r.conflicts) } : r,
    );
    expect(await profileIn(one)).toEqual({ pitch: 6, lines: 1024 });
    const kept = (await dump(one.backing, 'history')) as { body: Body }[];
    expect(kept.map((r) => r.body.profile.pitch)).toContain(4);
  });

  it('is not written when something changed since it was looked at', async () => {
    const { one, other } = await two();
    await set(other, { pitch: 6, lines: 1024 });
    const plan = await one.carry.plan(await file(other));
    await set(one, { pitch: 9, lines: 1024 });
    const before = await dump(one.backing, 'history');
    expect(await one.carry.apply(plan.rows, [])).toBeNull();
    expect(await profileIn(one)).toEqual({ pitch: 9, lines: 1024 });
    expect(await dump(one.backing, 'history')).toEqual(before);
  });

  it('leaves out what can’t be read here, by name, and writes the rest', async () => {
    const [one, other] = [phone(), phone()];
    await set(one, { name: 'Heron' });
    const document = await file(one);
    const [row] = document.records.machines as VersionRow[];
    const odd = { ...row, id: 'odd', schema: 9 } as VersionRow;
    const plan = await other.carry.plan({
      ...document,
      records: { machines: [odd, row as VersionRow], sundials: [row as VersionRow] },
    });
    expect(plan.leftOut).toEqual([
      { store: 'machines', name: 'Heron' },
      { store: 'sundials', name: 'Heron' },
    ]);
    expect(outcomes(plan)).toEqual({ m: 'new' });
  });

  it('begins no cut on another phone', async () => {
    const [one, other] = [phone(), phone()];
    await set(one, { pitch: 3 });
    const jobs = new Versioned<object>(one.backing, 'jobs', {
      schema: 1,
      encode: (j) => j,
      decode: (j) => j as object,
    });
    await jobs.put('m', null, { job: { rpm: null }, cuttingSince: 77 });
    await bring(one, other);
    expect(await dump(other.backing, 'jobs')).toMatchObject([{ body: { job: {}, cuttingSince: null } }]);
  });
});

describe('taking an import back', () => {
  it('puts away what was new, and forgets the records it brought', async () => {
    const { one, other, id } = await two();
    expect((await other.carry.takeBack(id)).lost).toBe(0);
    expect((await other.machines.get('m'))?.deleted).toBe(true);
    expect(await dump(other.backing, 'evidence')).toEqual([]);
    // Opened once more it has to be chosen, and comes back whole.
    const again = await other.carry.plan(await file(one));
    expect(again.rows.find((r) => r.store === 'machines')?.conflicts).toMatchObject([{ field: 'deleted' }]);
    await bring(one, other, (r) =>
      r.conflicts.length ? { ...r, row: takeTheirs(r.row as VersionRow, r.conflicts) } : r,
    );
    expect((await other.machines.get('m'))?.deleted).toBe(false);
    expect((await other.evidence.of('m')).length).toBe(1);
  });

  it('empties what there is only one of, settings and wiring, and leaves what was changed since', async () => {
    const [one, other] = [phone(), phone()];
    const settingsOf = (p: APhone) =>
      new Versioned<Settings>(p.backing, 'settings', { schema: 1, encode: (s) => s, decode: readSettings });
    const wiringOf = (p: APhone) =>
      new Versioned<WiringRecord>(p.backing, 'wiring', {
        schema: 1,
        encode: storeWiring,
        decode: readWiring,
      });
    await set(one, { pitch: 3 });
    await settingsOf(one).put('person', null, { ...blankSettings(), units: 'in', theme: 'dark' });
    let n = 0;
    const wired = withLayout(blankWiring(), 'stop', () => `w${(n += 1)}`).record;
    await wiringOf(one).put('m', null, wired);
    const plan = await other.carry.plan(await file(one, null));
    const id = await other.carry.apply(plan.rows, []);
    expect((await settingsOf(other).get('person'))?.value.theme).toBe('dark');
    const now = await settingsOf(other).get('person');
    await settingsOf(other).put('person', now?.rev ?? null, {
      ...(now?.value ?? blankSettings()),
      words: 'us',
    });
    await other.carry.takeBack(id ?? '');
    expect((await settingsOf(other).get('person'))?.value).toEqual({ ...blankSettings(), words: 'us' });
    expect((await wiringOf(other).get('m'))?.value).toEqual(blankWiring());
  });

  it('brings back what was there, and leaves what was changed since', async () => {
    const { one, other } = await two();
    await set(other, { pitch: 6, lines: 2048 });
    await other.evidence.takeBack('e1');
    const id = await bring(other, one);
    expect(await one.evidence.of('m')).toEqual([]);
    await set(one, { pitch: 6, lines: 2048, nut: 'closed' });
    await one.carry.takeBack(id);
    expect(await profileIn(one)).toEqual({ pitch: 3, lines: 1024, nut: 'closed' });
    expect((await one.evidence.of('m')).length).toBe(1);
  });
});

describe('everything', () => {
  it('comes back on an empty phone, and the same on the phone it is of', async () => {
    const { one } = await two();
    await set(one, { pitch: 4, lines: 1024 });
    const all = await file(one, null);
    const empty = phone();
    const plan = await empty.carry.plan(all);
    expect(plan.leftOut).toEqual([]);
    await empty.carry.apply(plan.rows, []);
    expect(await profileIn(empty)).toEqual({ pitch: 4, lines: 1024 });
    const back = await empty.carry.plan(await file(one, null));
    expect(new Set(Object.values(outcomes(back)))).toEqual(new Set(['same']));
  });

  it('counts what changed since the last back-up', async () => {
    const { one } = await two();
    const { changes } = await one.carry.backedUp();
    expect(await one.carry.backedUp()).toMatchObject({ at: null });
    expect(changes).toBeGreaterThan(0);
    await one.carry.noteBackUp(123);
    expect(await one.carry.backedUp()).toEqual({ at: 123, changes: 0 });
    await set(one, { pitch: 8 });
    expect(await one.carry.backedUp()).toEqual({ at: 123, changes: 1 });
  });
});
