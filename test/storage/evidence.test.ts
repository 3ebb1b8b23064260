import { describe, expect, it } from 'vitest';
import { Evidence } from '../../src/storage/evidence';
import { memoryBacking } from '../../src/storage/memory';

const row = (id: string, machine = 'm', at = 1) => ({
  id,
  schema: 1,
  kind: 'check',
  machine,
  at,
  body: { id },
});

describe('what people recorded', () => {
  it('is given back for its own machine alone', async () => {
    const evidence = new Evidence(memoryBacking());
    await evidence.add([row('a'), row('b', 'other'), row('c')]);
    expect((await evidence.of('m')).map((r) => r.id)).toEqual(['a', 'c']);
    expect((await evidence.of('other')).map((r) => r.body)).toEqual([{ id: 'b' }]);
  });

  it('taken back is only marked, and can be put back', async () => {
    const backing = memoryBacking();
    const evidence = new Evidence(backing);
    await evidence.add([row('a')]);
    expect(await evidence.takeBack('a')).toBe(true);
    expect(await evidence.of('m')).toEqual([]);
    expect(await backing.run('readonly', ['evidence'], (w) => w.all('evidence'))).toMatchObject([
      { id: 'a' },
    ]);
    expect(await evidence.takeBack('a', true)).toBe(true);
    expect((await evidence.of('m')).map((r) => r.id)).toEqual(['a']);
    expect(await evidence.takeBack('nothing')).toBe(false);
  });

  it('that can’t be read is passed over', async () => {
    const backing = memoryBacking();
    await backing.run('readwrite', ['evidence'], (w) => {
      w.put('evidence', { id: 'bad', machine: 'm' } as never);
      return Promise.resolve();
    });
    const evidence = new Evidence(backing);
    await evidence.add([row('good')]);
    expect((await evidence.of('m')).map((r) => r.id)).toEqual(['good']);
  });
});
