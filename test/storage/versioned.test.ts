import { describe, expect, it } from 'vitest';
import { memoryBacking } from '../../src/storage/memory';
import type { Envelope } from '../../src/storage/envelope';
import { Versioned } from '../../src/storage/versioned';

interface Body {
  readonly n: number;
}
const codec = {
  schema: 2,
  encode: (v: Body) => ({ ...v }),
  decode: (body: unknown) => (typeof (body as Body | null)?.n === 'number' ? (body as Body) : null),
};
const opened = () => {
  const backing = memoryBacking();
  return { backing, store: new Versioned<Body>(backing, 'machines', codec) };
};
type Opened = ReturnType<typeof opened>;
const rows = ({ backing }: Opened, name: 'machines' | 'history') =>
  backing.run('readonly', [name], (w) => w.all(name));
const written = async (o: Opened, rev: string | null, n: number) => {
  const result = await o.store.put('x', rev, { n });
  if (!result.ok) throw new Error('refused');
  return result.kept.rev;
};

describe('a record that changes', () => {
  it('is what was written last, and names the version before as its parent', async () => {
    const o = opened();
    const first = await written(o, null, 1);
    const second = await written(o, first, 2);
    expect(await o.store.get('x')).toMatchObject({ rev: second, deleted: false, value: { n: 2 } });
    const [row] = (await rows(o, 'machines')) as Envelope[];
    expect(row).toMatchObject({ id: 'x', schema: 2, parents: [first], counter: 2 });
    expect((await o.store.earlier('x', first))?.value).toEqual({ n: 1 });
  });

  it('is not overwritten by one who had not seen the last version', async () => {
    const o = opened();
    const first = await written(o, null, 1);
    await written(o, first, 2);
    for (const seen of [first, null, 'unheard-of']) {
      const late = await o.store.put('x', seen, { n: 99 });
      expect(late).toMatchObject({ ok: false, current: { value: { n: 2 } } });
    }
    expect((await o.store.get('x'))?.value).toEqual({ n: 2 });
    expect((await rows(o, 'history')).length).toBe(1);
  });

  it('of two writes that saw the same version, one is refused', async () => {
    const o = opened();
    const first = await written(o, null, 1);
    const results = await Promise.all([2, 3].map((n) => o.store.put('x', first, { n })));
    expect(results.map((r) => r.ok)).toEqual([true, false]);
  });

  it('keeps thirty earlier versions and no more', async () => {
    const o = opened();
    const revs: string[] = [];
    for (let n = 0; n < 35; n += 1) revs.push(await written(o, revs.at(-1) ?? null, n));
    expect((await rows(o, 'history')).length).toBe(30);
    expect(await o.store.earlier('x', revs[3] ?? '')).toBeNull();
    expect((await o.store.earlier('x', revs[4] ?? ''))?.value).toEqual({ n: 4 });
    expect(new Set(revs).size).toBe(35);
  });

  it('put away is still there', async () => {
    const o = opened();
    const first = await written(o, null, 1);
    await o.store.put('x', first, { n: 1 }, true);
    expect(await o.store.get('x')).toMatchObject({ deleted: true, value: { n: 1 } });
  });
});

describe('a record that can’t be read', () => {
  const planted = async (row: object) => {
    const o = opened();
    await o.backing.run('readwrite', ['machines'], (w) => {
      w.put('machines', { id: 'x', ...row } as Envelope);
      return Promise.resolve();
    });
    return o;
  };
  const whole = { schema: 2, rev: 'r', parents: [], device: 'd', counter: 1, changedAt: 0, deleted: false };

  it('is listed with what is in it', async () => {
    for (const row of [{ junk: 1 }, { ...whole, body: 'junk' }, { ...whole, schema: 3, body: { n: 1 } }]) {
      const o = await planted(row);
      const { kept, unreadable } = await o.store.all();
      expect([kept, unreadable]).toEqual([[], [{ id: 'x', raw: { id: 'x', ...row } }]]);
    }
  });

  it('of a newer version is never overwritten', async () => {
    const o = await planted({ ...whole, schema: 3, body: { n: 1 } });
    expect(await o.store.put('x', null, { n: 5 })).toEqual({ ok: false, current: null });
  });

  it('and is no record at all is moved aside, not overwritten', async () => {
    const o = await planted({ junk: 'somebody’s machine' });
    await written(o, null, 5);
    expect((await o.store.get('x'))?.value).toEqual({ n: 5 });
    expect(await rows(o, 'history')).toMatchObject([{ value: { id: 'x', junk: 'somebody’s machine' } }]);
  });
});

describe('rows in memory', () => {
  it('are all written or none', async () => {
    const { backing } = opened();
    const half = backing.run('readwrite', ['meta'], (w) => {
      w.put('meta', { id: 'a', value: 1 });
      return Promise.reject(new Error('stopped half-way'));
    });
    await expect(half).rejects.toThrow('half-way');
    expect(await backing.run('readonly', ['meta'], (w) => w.all('meta'))).toEqual([]);
  });

  it('are copies: what is changed afterwards isn’t changed in there', async () => {
    const { backing } = opened();
    const value = { n: 1 };
    await backing.run('readwrite', ['meta'], (w) => Promise.resolve(w.put('meta', { id: 'a', value })));
    value.n = 2;
    expect(await backing.run('readonly', ['meta'], (w) => w.get('meta', 'a'))).toEqual({
      id: 'a',
      value: { n: 1 },
    });
  });
});
