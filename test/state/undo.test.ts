import { expect, it } from 'vitest';
import type { Meta } from '../../src/storage';
import { UndoList, type UndoEntry } from '../../src/state/undo';

const kept = new Map<string, unknown>();
const meta = {
  get: (key: string) => Promise.resolve(kept.get(key)),
  set: (key: string, value: unknown) => {
    kept.set(key, structuredClone(value));
    return Promise.resolve();
  },
};

const ONE_OF_EACH: readonly UndoEntry[] = [
  { code: 'field', machine: 'm', field: 'coast', before: null },
  { code: 'machine', machine: 'm', name: 'Heron' },
  { code: 'workshop', name: 'Shed', before: { m: 'Shed' } },
  { code: 'machine-put-away', machine: 'm', name: 'Heron', inUse: true },
  { code: 'own-thread', id: 'o', name: 'M9', before: null, deleted: false, away: true },
  { code: 'run', run: 'r', name: 'M10', away: false },
  { code: 'readings', before: {} },
  { code: 'import', id: 'i' },
  { code: 'wiring', machine: 'm', name: 'W1', before: {} },
  { code: 'wire', wire: null },
  { code: 'thread', machine: 'm', before: {} },
  { code: 'check', detail: 'd', evidence: 'e' },
  { code: 'event', detail: 'd', evidence: 'e' },
  { code: 'hours', detail: 'd', evidence: 'e' },
  { code: 'test', detail: 'd', evidence: 'e' },
];

// Failed before: what undoes the clearing of readings was left out when the app was opened again.
it('every way back outlives the page', async () => {
  const list = new UndoList(meta as Meta);
  for (const entry of ONE_OF_EACH) list.push(entry);
  const again = new UndoList(meta as Meta);
  await again.load();
  for (const entry of [...ONE_OF_EACH].reverse()) expect(again.pop()).toEqual(entry);
  expect(again.newest).toBeNull();
});

it('what is no way back is left out', async () => {
  kept.set('undo', [{ code: 'toString' }, { code: 'nothing' }, null, 7, ONE_OF_EACH[0]]);
  const list = new UndoList(meta as Meta);
  await list.load();
  expect(list.pop()).toEqual(ONE_OF_EACH[0]);
  expect(list.newest).toBeNull();
});
