import { describe, expect, it } from 'vitest';
import { Live } from '../../src/state/live';
import { mergeFields } from '../../src/state/merge';
import { memoryBacking } from '../../src/storage/memory';
import { StorageError, type Backing, type StorageCode } from '../../src/storage/backing';
import { Versioned } from '../../src/storage/versioned';

interface Pair {
  readonly a: number;
  readonly b: number;
}

/** A disk that can be told to fail. */
class Disk implements Backing {
  fails: StorageCode | null = null;
  readonly durable = true;
  private readonly inner = memoryBacking();

  run: Backing['run'] = (mode, stores, work) =>
    this.fails ? Promise.reject(new StorageError(this.fails)) : this.inner.run(mode, stores, work);

  close(): void {
    this.inner.close();
  }
}

const codec = { schema: 1, encode: (v: Pair) => v, decode: (body: unknown) => body as Pair };
const START: Pair = { a: 1, b: 1 };

const tabs = async () => {
  const d = new Disk();
  const store = new Versioned<Pair>(d, 'machines', codec);
  const first = await store.put('one', null, START);
  if (!first.ok) throw new Error('not written');
  const tab = () => new Live(store, 'one', START, first.kept.rev, mergeFields<Pair>);
  return { d, store, mine: tab(), other: tab() };
};
const onDisk = async (store: Versioned<Pair>) => (await store.get('one'))?.value;

describe('a record in memory and on the disk', () => {
  it('is on the disk when set resolves', async () => {
    const { store, mine } = await tabs();
    await mine.set({ a: 2, b: 1 });
    expect([mine.state.kind, await onDisk(store)]).toEqual(['saved', { a: 2, b: 1 }]);
  });

  it('shows a change at once, and writes what changed during a write with the next', async () => {
    const { store, mine } = await tabs();
    const one = mine.set({ a: 2, b: 1 });
    const two = mine.set({ a: 3, b: 1 });
    expect([mine.value.a, mine.state.kind]).toEqual([3, 'saving']);
    await Promise.all([one, two]);
    expect([mine.state.kind, await onDisk(store)]).toEqual(['saved', { a: 3, b: 1 }]);
  });

  it('writes a change made by whoever is told that the write is over', async () => {
    const { store, mine } = await tabs();
    let again = true;
    mine.subscribe(() => {
      if (!again || mine.state.kind !== 'saved') return;
      again = false;
      void mine.set({ a: 9, b: 9 });
    });
    await mine.set({ a: 2, b: 1 });
    expect([mine.state.kind, await onDisk(store)]).toEqual(['saved', { a: 9, b: 9 }]);
  });

  it('keeps what was typed when the disk is full, and writes it when asked again', async () => {
    const { d, store, mine } = await tabs();
    d.fails = 'full';
    await mine.set({ a: 5, b: 1 });
    expect([mine.value.a, mine.state]).toEqual([5, { kind: 'failed', code: 'full' }]);
    d.fails = null;
    expect((await onDisk(store))?.a).toBe(1);
    await mine.flush();
    expect([mine.state.kind, await onDisk(store)]).toEqual(['saved', { a: 5, b: 1 }]);
  });
});

describe('two tabs', () => {
  it('merge what each changed', async () => {
    const { store, mine, other } = await tabs();
    await other.set({ a: 1, b: 7 });
    await mine.set({ a: 2, b: 1 });
    expect([mine.value, mine.state.kind, await onDisk(store)]).toEqual([
      { a: 2, b: 7 },
      'saved',
      { a: 2, b: 7 },
    ]);
    await other.reload();
    expect(other.value).toEqual({ a: 2, b: 7 });
  });

  it('say what both changed, and keep saying it while more is typed', async () => {
    const { store, mine, other } = await tabs();
    await other.set({ a: 7, b: 1 });
    const told: string[] = [];
    mine.subscribe(() => void told.push(mine.state.kind));
    const first = mine.set({ a: 2, b: 1 });
    // More is typed the moment the other tab's version has been merged, while the merged one is being written.
    const put = store.put.bind(store);
    store.put = (...args) => {
      void mine.set({ ...mine.value, b: 4 });
      store.put = put;
      return put(...args);
    };
    await first;
    expect([mine.value, mine.state]).toEqual([
      { a: 2, b: 4 },
      { kind: 'conflict', fields: ['a'] },
    ]);
    expect(told.at(-1)).toBe('conflict');
    expect(await onDisk(store)).toEqual({ a: 2, b: 4 });
    mine.conflictSeen();
    expect(mine.state.kind).toBe('saved');
  });

  it('take nothing over while something here is unwritten', async () => {
    const { d, mine, other } = await tabs();
    await other.set({ a: 1, b: 7 });
    d.fails = 'full';
    await mine.set({ a: 2, b: 1 });
    d.fails = null;
    await mine.reload();
    expect(mine.value).toEqual({ a: 2, b: 1 });
  });

  it('put away in one tab stays so when the other changes a figure, and keeps that figure', async () => {
    const { store, mine, other } = await tabs();
    await other.set(other.value, true);
    await mine.set({ a: 2, b: 1 });
    expect(mine.deleted).toBe(true);
    expect(await store.get('one')).toMatchObject({ deleted: true, value: { a: 2, b: 1 } });
    // Brought back on purpose it comes back.
    await mine.set(mine.value, false);
    expect((await store.get('one'))?.deleted).toBe(false);
  });

  it('put away here while the other tab changed a figure is put away, with that figure', async () => {
    const { store, mine, other } = await tabs();
    await other.set({ a: 5, b: 1 });
    await mine.set(mine.value, true);
    expect(await store.get('one')).toMatchObject({ deleted: true, value: { a: 5, b: 1 } });
  });
});
