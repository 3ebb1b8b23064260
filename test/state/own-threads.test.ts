import { describe, expect, it } from 'vitest';
import { readOwn, storeOwn } from '../../src/core/job';
import { ratio, stated } from '../../src/core/quantity';
import { blankOwn, type OwnThread } from '../../src/core/thread';
import { search } from '../../src/core/thread/search';
import { OwnThreads } from '../../src/state/own-threads';
import { memoryBacking } from '../../src/storage/memory';
import { Versioned } from '../../src/storage/versioned';

const backing = memoryBacking();
const threads = new Versioned<OwnThread>(backing, 'threads', {
  schema: 1,
  encode: storeOwn,
  decode: readOwn,
});
const opened = async (): Promise<OwnThreads> => {
  const own = new OwnThreads({ threads }, () => undefined);
  await own.load();
  return own;
};
const thread = (hundredths: number): OwnThread => ({
  ...blankOwn(),
  major: stated(ratio(hundredths, 100), 'mm'),
  pitch: stated(ratio(5, 4), 'mm'),
});

describe('own threads in the database', () => {
  it('are all read, more than fit one part; what can’t be read is kept apart', async () => {
    const MANY = 1203;
    for (let at = 0; at < MANY; at += 1) await threads.put(`t${at}`, null, thread(9000 + at));
    await threads.put('away', null, thread(5), true);
    await threads.put('unfinished', null, { ...blankOwn(), name: 'Unfinished' });
    await backing.run('readwrite', ['threads'], (w) => {
      w.put('threads', { id: 'torn', value: 'no thread' });
      return Promise.resolve();
    });
    const own = await opened();
    expect(own.complete.length).toBe(MANY);
    expect(own.list.length).toBe(MANY + 2);
    expect(own.unreadable.map((u) => u.id)).toEqual(['torn']);
    const found = search('90.07', { limit: 3, own: own.indexes });
    expect(found.map((t) => [t.designation, t.family])).toContainEqual(['90.07×1.25', 'own']);
  });

  it('are found by what they became, and no more by what they were', async () => {
    const own = await opened();
    const names = (typed: string): string[] =>
      search(typed, { limit: 5, own: own.indexes }).map((t) => t.designation);
    await own.set('t7', thread(7777));
    expect(names('77.77')).toContain('77.77×1.25');
    expect(names('90.07')).not.toContain('90.07×1.25');
    await own.set('t7', thread(7777), true);
    expect(names('77.77')).not.toContain('77.77×1.25');
    const again = await opened();
    expect(again.find('t7')?.deleted).toBe(true);
  });

  it('go into the job with their figures; a catalogued thread by its name', async () => {
    const own = await opened();
    const mine = own.threadById('own:t8');
    const m10 = own.threadById('iso-coarse:M10');
    if (!mine || !m10) throw new Error();
    expect(own.choiceOf(mine)).toEqual({ kind: 'own', id: 't8', own: thread(9008) });
    expect(own.choiceOf(m10)).toEqual({ kind: 'catalogue', id: 'iso-coarse:M10' });
  });

  it('changed in two tabs at once are merged by field', async () => {
    const [here, there] = [await opened(), await opened()];
    const before = here.find('t9')?.own;
    if (!before) throw new Error();
    await here.set('t9', { ...before, name: 'Here' });
    await there.set('t9', { ...before, starts: 3 });
    await here.reload('t9');
    expect(here.find('t9')?.own).toMatchObject({ name: 'Here', starts: 3 });
    expect(there.find('t9')?.own).toMatchObject({ name: 'Here', starts: 3 });
  });
});
