import { describe, expect, it } from 'vitest';
import { blankProfile } from '../../src/core/machine';
import { Machines } from '../../src/state/machines';
import type { MachineBody, Storage } from '../../src/storage';
import { memoryBacking } from '../../src/storage/memory';
import { Versioned } from '../../src/storage/versioned';

const codec = { schema: 1, encode: (m: MachineBody) => m, decode: (body: unknown) => body as MachineBody };
const body = (name: string): MachineBody => ({
  profile: blankProfile(name, 'Shed'),
  example: false,
  unreadable: [],
});

const phone = async (many: number) => {
  const machines = new Versioned<MachineBody>(memoryBacking(), 'machines', codec);
  for (let n = 0; n < many; n += 1) await machines.put(`m${n}`, null, body(`Lathe ${n}`));
  return {
    machines,
    open: () => new Machines({ machines } as Pick<Storage, 'machines'> as Storage, () => undefined),
  };
};
const names = (machines: Machines) => machines.list.map((m) => m.value.profile.name);

describe('many machines', () => {
  it('the one in use comes first and alone, all others after it', async () => {
    const { machines, open } = await phone(45);
    const here = open();
    await here.read('m7');
    expect(names(here)).toEqual(['Lathe 7']);
    const seven = here.find('m7');
    await here.load();
    expect(here.list.length).toBe(45);
    expect(here.find('m7')).toBe(seven);
    const kept = await machines.get('m9');
    await machines.put('m9', kept?.rev ?? '', body('Lathe of another tab'));
    await here.load();
    expect(here.find('m9')?.value.profile.name).toBe('Lathe of another tab');
    expect(here.list.length).toBe(45);
  });

  it('one that was put away, or isn’t there, is no first', async () => {
    const { machines, open } = await phone(2);
    const kept = await machines.get('m0');
    await machines.put('m0', kept?.rev ?? '', body('Lathe 0'), true);
    const here = open();
    for (const id of ['m0', 'gone']) await here.read(id);
    expect(names(here)).toEqual([]);
    await here.load();
    expect(names(here)).toEqual(['Lathe 1']);
    expect(here.away.length).toBe(1);
  });
});
