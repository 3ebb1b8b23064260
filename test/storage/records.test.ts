import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankJob } from '../../src/core/job';
import { EXAMPLES } from '../../src/core/machine/examples';
import { openStorage } from '../../src/storage';
import { blankSettings, readSettings } from '../../src/storage/settings';

/** Node has no IndexedDB: the app works from memory, and says so. */
const opened = () => openStorage({ onBlocked: () => undefined, onClosed: () => undefined });

describe('without a database', () => {
  it('works from memory and says that nothing is kept', async () => {
    const storage = await opened();
    expect(storage.durable).toBe(false);
    expect(storage.trouble).not.toBeNull();
  });

  it('gives back a machine, a job and settings as they were', async () => {
    const s = await opened();
    const machine = { profile: EXAMPLES.bittern(), example: true, unreadable: [] };
    const job = { job: { ...blankJob(), starts: 3 }, cuttingSince: 7 };
    await s.machines.put('m', null, machine);
    await s.jobs.put('m', null, job);
    await s.settings.put('one', null, { ...blankSettings(), units: 'in' });
    expect((await s.machines.get('m'))?.value).toEqual(machine);
    expect((await s.jobs.get('m'))?.value).toEqual(job);
    expect((await s.settings.get('one'))?.value).toEqual({ ...blankSettings(), units: 'in' });
    await s.meta.set('place', { on: 'threads' });
    expect(await s.meta.get('place')).toEqual({ on: 'threads' });
    expect(await s.meta.get('nothing')).toBeUndefined();
  });
});

describe('settings read from the disk', () => {
  it('come back as they went', () => {
    const settings = {
      ...blankSettings(),
      theme: 'dark',
      words: 'us',
      favourites: ['ba:0BA'],
      sheetOff: ['ba:0BA'],
    } as const;
    expect(readSettings(JSON.parse(JSON.stringify(settings)))).toEqual(settings);
  });
  it('never throw on rubbish, and hold only what settings hold', () => {
    fc.assert(
      fc.property(fc.anything(), (x) => {
        const read = readSettings(x);
        if (typeof x !== 'object' || x === null) expect(read).toBeNull();
        else expect(Object.keys(read ?? {})).toEqual(Object.keys(blankSettings()));
      }),
    );
    expect(readSettings({ units: 'furlong', favourites: [1, 'x', 'y'.repeat(99)], recent: 'z' })).toEqual({
      ...blankSettings(),
      favourites: ['x'],
    });
  });
});
