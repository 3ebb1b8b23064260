import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blankWiring,
  LAYOUT_IDS,
  withLayout,
  withoutCable,
  withoutConnector,
  withThing,
  type LayoutId,
  type Wire,
  type WiringRecord,
} from '../../src/core/wiring/record';
import type { App } from '../../src/state';
import { changeWiring, mergeWiring, Wiring } from '../../src/state/wiring';
import type { UndoEntry } from '../../src/state/undo';
import type { Storage } from '../../src/storage';
import { memoryBacking } from '../../src/storage/memory';
import { Versioned } from '../../src/storage/versioned';

const ids = (prefix: string): (() => string) => {
  let n = 0;
  return () => `${prefix}${(n += 1)}`;
};
const start = withLayout(blankWiring(), 'encoder-differential', ids('s')).record;
const wire = (r: WiringRecord, id: string): Wire => {
  const found = r.wires[id];
  if (!found) throw new Error(`no wire ${id}`);
  return found;
};
const names = Object.keys(start.wires);
const [first = '', second = ''] = names;

describe('merging two changes of one record', () => {
  it('keeps what each added', () => {
    const ours = withLayout(start, 'stop', ids('a')).record;
    const theirs = withLayout(start, 'display', ids('b')).record;
    const { value, both } = mergeWiring(start, ours, theirs);
    expect(both).toEqual([]);
    expect(Object.keys(value.cables)).toHaveLength(3);
    expect(Object.keys(value.wires)).toHaveLength(8 + 4 + 4);
    expect(value).toEqual(mergeWiring(start, theirs, ours).value);
  });
  it('takes two fields of one wire from who changed them, and says where both changed one', () => {
    const ours = withThing(start, 'wires', first, { ...wire(start, first), colour: 'BK' });
    const pair = withThing(start, 'wires', first, { ...wire(start, first), pair: 9 });
    expect(mergeWiring(start, ours, pair)).toMatchObject({
      both: [],
      value: { wires: { [first]: { colour: 'BK', pair: 9 } } },
    });
    const red = withThing(start, 'wires', first, { ...wire(start, first), colour: 'OG' });
    const m = mergeWiring(start, ours, red);
    expect(m.both).toEqual([wire(start, first).signal]);
    expect(wire(m.value, first).colour).toBe('BK');
  });
  it('a change outlives a removal, with the cable that it lies in', () => {
    const [cable = ''] = Object.keys(start.cables);
    const removed = withoutCable(start, cable);
    const changed = withThing(start, 'wires', first, { ...wire(start, first), colour: 'BK' });
    for (const [ours, theirs] of [[removed, changed] as const, [changed, removed] as const]) {
      const m = mergeWiring(start, ours, theirs);
      expect(Object.keys(m.value.wires)).toEqual([first]);
      expect(m.value.cables[cable]).toBeDefined();
      expect(m.both).toEqual([wire(start, first).signal]);
    }
    expect(Object.keys(mergeWiring(start, removed, start).value.wires)).toEqual([]);
  });

  type Step = (r: WiringRecord, make: () => string) => WiringRecord;
  const pick = (things: object, n: number): string => {
    const all = Object.keys(things);
    return all[n % Math.max(1, all.length)] ?? '';
  };
  const step: fc.Arbitrary<Step> = fc.oneof(
    fc.constantFrom(...LAYOUT_IDS).map(
      (kind: LayoutId): Step =>
        (r, make) =>
          withLayout(r, kind, make).record,
    ),
    fc.nat().map(
      (n): Step =>
        (r) =>
          withThing(r, 'wires', pick(r.wires, n), null),
    ),
    fc.nat().map(
      (n): Step =>
        (r) =>
          withoutCable(r, pick(r.cables, n)),
    ),
    fc.nat().map(
      (n): Step =>
        (r) =>
          withoutConnector(r, pick(r.connectors, n)),
    ),
    fc.tuple(fc.nat(), fc.constantFrom('BK', 'WH/GN')).map(([n, colour]): Step => (r) => {
      const id = pick(r.wires, n);
      const now = r.wires[id];
      return now ? withThing(r, 'wires', id, { ...now, colour }) : r;
    }),
  );
  const steps = fc.array(step, { maxLength: 4 });

  it('never loses what either side added or changed, and leaves no wire without its cable', () => {
    fc.assert(
      fc.property(steps, steps, (a, b) => {
        const run = (all: Step[], make: () => string) => all.reduce((r, s) => s(r, make), start);
        const [ours, theirs] = [run(a, ids('a')), run(b, ids('b'))];
        const { value } = mergeWiring(start, ours, theirs);
        for (const side of [ours, theirs])
          for (const part of ['connectors', 'cables', 'wires'] as const)
            for (const [id, thing] of Object.entries(side[part]))
              if (JSON.stringify(thing) !== JSON.stringify(start[part][id]))
                expect(value[part][id], id).toBeDefined();
        for (const w of Object.values(value.wires)) expect(value.cables[w.cable]).toBeDefined();
        // Who changed nothing takes over what the other has.
        expect(mergeWiring(start, start, theirs).value).toEqual(theirs);
        expect(mergeWiring(start, ours, start).value).toEqual(ours);
      }),
    );
  });
});

const opened = () => {
  const backing = memoryBacking();
  const storage: Pick<Storage, 'later'> = { later: (store, codec) => new Versioned(backing, store, codec) };
  const tab = async (): Promise<Wiring> => {
    const wiring = new Wiring(storage, () => undefined);
    await wiring.open('lathe');
    return wiring;
  };
  return { backing, tab };
};

describe('the record in the database', () => {
  it('of two tabs that don’t hear of each other loses nothing', async () => {
    const { tab } = opened();
    const [one, two] = [await tab(), await tab()];
    await one.set(withLayout(one.value, 'stop', ids('a')).record);
    await two.set(withLayout(two.value, 'display', ids('b')).record);
    await one.set(withThing(one.value, 'wires', 'a4', { ...wire(one.value, 'a4'), colour: 'BK' }));
    const now = (await tab()).value;
    expect(Object.keys(now.cables)).toHaveLength(2);
    expect(wire(now, 'a4').colour).toBe('BK');
  });

  it('that can’t be read is left alone, and said', async () => {
    const { backing, tab } = opened();
    const torn = { id: 'lathe', body: 'torn' };
    await backing.run('readwrite', ['wiring'], (w) => {
      w.put('wiring', torn as never);
      return Promise.resolve();
    });
    const wiring = await tab();
    expect(wiring.unreadable).toBe(true);
    expect(wiring.current).toBeNull();
    await wiring.set(start);
    expect(await backing.run('readonly', ['wiring'], (w) => w.all('wiring'))).toEqual([torn]);
  });

  it('comes back by undo thing by thing, beside what was changed since', async () => {
    const { tab } = opened();
    const wiring = await tab();
    const entries: UndoEntry[] = [];
    const app = {
      wiring,
      machine: { id: 'lathe' },
      undo: { push: (e: UndoEntry) => entries.push(structuredClone(e)) },
    } as unknown as App;
    await changeWiring(app, start);
    const [cable = ''] = Object.keys(start.cables);
    await changeWiring(app, withoutCable(wiring.value, cable), 'W1');
    expect(wiring.value.wires).toEqual({});
    expect(entries.at(-1)).toMatchObject({ code: 'wiring', machine: 'lathe', name: 'W1' });
    await wiring.set(withLayout(wiring.value, 'stop', ids('n')).record);
    const undo = async () => {
      const entry = entries.pop();
      await wiring.restore(entry?.code === 'wiring' ? entry.before : null);
    };
    await undo();
    expect(wiring.value.wires).toMatchObject(start.wires);
    expect(Object.keys(wiring.value.cables)).toHaveLength(2);
    await undo();
    expect(Object.keys(wiring.value.wires)).toHaveLength(4);
    expect(wiring.value.wires[second]).toBeUndefined();
    await wiring.restore({ 'wires/x': { torn: true } });
    expect(Object.keys(wiring.value.wires)).toHaveLength(4);
  });
});
