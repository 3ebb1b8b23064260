import { beforeEach, describe, expect, it } from 'vitest';
import { NO_WORK, type Job, type ThreadChoice } from '../../src/core/job';
import { EXAMPLES } from '../../src/core/machine/examples';
import { ratio, stated } from '../../src/core/quantity';
import { App } from '../../src/state';
import { openStorage } from '../../src/storage';

const mm = (n: number) => stated(ratio(n, 10), 'mm');
const of = (id: string): ThreadChoice => ({ kind: 'catalogue', id });
const M10 = of('iso-coarse:M10');
const M8 = of('iso-coarse:M8');

/** All that was entered for a piece of work to be cut M10. */
const WORK: Partial<Job> = {
  length: mm(250),
  blank: mm(99),
  ending: 'through',
  groove: mm(35),
  gap: mm(100),
  room: mm(30),
  topSlide: stated(ratio(59, 2), 'deg'),
  passCount: stated(ratio(12), 'count'),
  chipArea: stated(ratio(1, 20), 'mm2'),
  outwards: true,
};
const KEPT: Partial<Job> = {
  material: 'brass',
  holding: 'collet',
  toolMaterial: 'hss',
  noseKind: 'radius',
  noseSize: mm(1),
  infeed: 'radial',
  rpm: ratio(160),
};

let app: App;
beforeEach(async () => {
  app = new App(await openStorage({ onBlocked: () => undefined, onClosed: () => undefined }));
  await app.useMachine(await app.machines.add(EXAMPLES.heron(), true));
  await app.chooseThread(M10, 1);
  await app.jobs.change({ ...WORK, ...KEPT, hand: 'left', side: 'internal', classId: '6H', use: 'fastener' });
});

describe('choosing another thread', () => {
  it('leaves nothing of the work before, and keeps tool, material, holding and speed', async () => {
    await app.chooseThread(M8, 1);
    expect(app.job).toMatchObject({ ...NO_WORK, ...KEPT, thread: M8 });
    // The list is of all that WORK says: a field forgotten there would show here as one left over.
    for (const field of Object.keys(WORK) as (keyof Job)[])
      expect([field, app.job[field]]).toEqual([field, field === 'outwards' ? false : null]);
  });

  it('takes the same thread again as no change of work', async () => {
    await app.chooseThread(of('iso-coarse:M10'), 1);
    expect(app.job).toMatchObject(WORK);
  });

  it('with other starts is another thread', async () => {
    await app.chooseThread(M10, 2);
    expect(app.job).toMatchObject(NO_WORK);
  });

  it('undone brings the whole job back, also what was changed since', async () => {
    const before = app.job;
    await app.chooseThread(M8, 1);
    await app.jobs.change({ room: mm(5), material: 'bronze', rpm: ratio(80) });
    await app.takeBack();
    expect(app.job).toEqual(before);
  });

  it('undone brings it back to the machine it was on', async () => {
    const heron = app.machine?.id;
    const before = app.job;
    await app.chooseThread(M8, 1);
    await app.useMachine(await app.machines.add(EXAMPLES.bittern(), true));
    expect(app.job.thread).toBeNull();
    // First the change of machine, then that of its thread.
    await app.takeBack();
    expect(app.machine?.id).toBe(heron);
    expect(app.job).not.toEqual(before);
    await app.takeBack();
    expect(app.job).toEqual(before);
  });

  it('undone step by step', async () => {
    const before = app.job;
    await app.chooseThread(M8, 1);
    await app.jobs.change({ length: mm(120) });
    const between = app.job;
    await app.chooseThread(of('ba:4'), 1);
    expect(app.job.length).toBeNull();
    await app.takeBack();
    expect(app.job).toEqual(between);
    await app.takeBack();
    expect(app.job).toEqual(before);
  });
});

describe('an outside thread that becomes an inside one', () => {
  it('has no bore measured yet; the same side once more changes nothing', async () => {
    await app.jobs.change({ side: 'internal' });
    expect(app.job.blank).toEqual(mm(99));
    await app.jobs.change({ side: 'external' });
    expect(app.job).toMatchObject({ blank: null, length: mm(250) });
    await app.jobs.change({ side: 'internal', blank: mm(85) });
    expect(app.job.blank).toEqual(mm(85));
  });
});
