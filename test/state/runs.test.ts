import { describe, expect, it } from 'vitest';
import { blankJob } from '../../src/core/job';
import { EXAMPLES } from '../../src/core/machine/examples';
import { cutNumber, readRun, storeRun, type Run } from '../../src/core/run';
import { Runs } from '../../src/state/runs';
import { StorageError, type Backing, type StorageCode } from '../../src/storage/backing';
import { memoryBacking } from '../../src/storage/memory';
import { Versioned } from '../../src/storage/versioned';
import { planOf, runOf } from '../core/run/support';

/** A disk that can be told to fail. */
class Disk implements Backing {
  fails: StorageCode | null = null;
  readonly durable = true;
  readonly inner = memoryBacking();
  run: Backing['run'] = (mode, stores, work) =>
    this.fails ? Promise.reject(new StorageError(this.fails)) : this.inner.run(mode, stores, work);
  close(): void {
    this.inner.close();
  }
}

const NAMES = { machineName: 'Heron', workshop: 'Shed', threadName: 'M10×1.5' };
const PLAN = planOf([30, 45, 60], 1);

/** One page on a disk: what the app is to a run, and the lock as main gives it. */
class Page {
  machine = 'm';
  since: number | null = null;
  readonly said: string[] = [];
  readonly runs: Runs;
  constructor(readonly disk: Disk) {
    const store = new Versioned<Run>(disk, 'runs', { schema: 1, encode: storeRun, decode: readRun }, 3);
    this.runs = new Runs(
      { runs: store },
      {
        machine: () => this.machine,
        inputs: () => ({
          machine: EXAMPLES.heron(),
          job: blankJob(),
          context: {
            now: 0,
            day: '',
            hours: null,
            records: [],
            events: [],
            cuttingSince: this.since,
            cuttingDay: null,
          },
        }),
        cutting: () => this.since !== null,
        startCut: () => Promise.resolve(void ((this.since = 1), this.said.push('start'))),
        endCut: () => Promise.resolve(void ((this.since = null), this.said.push('end'))),
      },
      () => undefined,
    );
  }
  /** As when the app is opened: read from the disk, and the lock is had. */
  static async open(disk: Disk): Promise<Page> {
    const page = new Page(disk);
    await page.runs.open();
    page.lock();
    return page;
  }
  lock(): void {
    const id = this.runs.current?.id;
    if (id !== undefined) this.runs.holding(id, 'held');
  }
  async begin(): Promise<void> {
    const begun = await this.runs.begin(PLAN, NAMES);
    if (!begun.ok) throw new Error(begun.code);
    this.lock();
  }
  get n(): number | null {
    return this.runs.current && cutNumber(this.runs.current.run);
  }
}
const begun = async () => {
  const page = await Page.open(new Disk());
  await page.begin();
  return page;
};

describe('a run on this page', () => {
  it('begins its cut, is saved pass by pass, and goes back one', async () => {
    const page = await begun();
    expect([page.said, page.n, page.runs.asks]).toEqual([['start'], 1, false]);
    expect(await page.runs.take(1)).toBe(true);
    expect((await Page.open(page.disk)).n).toBe(2);
    expect(await page.runs.take(1)).toBe(false);
    expect(await page.runs.back()).toBe(true);
    expect([page.n, (await Page.open(page.disk)).n]).toEqual([1, 1]);
    expect(await page.runs.back()).toBe(false);
  });

  it('is the only one of its machine', async () => {
    const page = await begun();
    expect(await page.runs.begin(PLAN, NAMES)).toEqual({ ok: false, code: 'run-open' });
    page.machine = 'other';
    expect(page.runs.current).toBeNull();
    expect(page.runs.others.map((o) => o.run.machineName)).toEqual(['Heron']);
    expect(await page.runs.begin([], NAMES)).toEqual({ ok: false, code: 'no-passes' });
    expect((await page.runs.begin(PLAN, NAMES)).ok).toBe(true);
  });

  it('keeps a reading and goes on by the new plan', async () => {
    const page = await begun();
    await page.runs.take(1);
    const reading = {
      at: 3,
      way: 'gauge',
      reading: null,
      felt: 'tight',
      pitchDiameter: null,
      uncertainty: null,
      after: 1,
    } as const;
    expect(await page.runs.addReading(reading, planOf([44, 50]))).toBe(true);
    const again = (await Page.open(page.disk)).runs.current?.run;
    expect([again?.plans.length, again?.readings.length, again && cutNumber(again)]).toEqual([2, 1, 2]);
    expect(await page.runs.replan(planOf([50]))).toBe(true);
    expect(page.runs.current?.run.plans.length).toBe(3);
  });

  it('ends with its cut, stands in the history, and can be brought back, paused', async () => {
    const page = await begun();
    await page.runs.take(1);
    expect(await page.runs.end('scrapped', 'chipped the edge')).toBe(true);
    expect([page.runs.current, page.since]).toEqual([null, null]);
    const [over] = page.runs.ended;
    expect(over?.run).toMatchObject({ outcome: 'scrapped', notes: 'chipped the edge' });
    expect(await page.runs.updateNotes(over?.id ?? '', 'and the work')).toBe(true);
    await page.runs.putAway(over?.id ?? '');
    expect([page.runs.ended.length, page.runs.away.length]).toEqual([0, 1]);
    await page.runs.bringBack(over?.id ?? '');
    const later = await Page.open(page.disk);
    await later.runs.load();
    expect(later.runs.ended.map((e) => e.run.notes)).toEqual(['and the work']);
    expect(await later.runs.reopen(over?.id ?? '')).toBe(true);
    expect(later.runs.current?.run).toMatchObject({ ended: null, outcome: null, paused: true });
    expect([later.n, later.runs.ended]).toEqual([2, []]);
  });
});

describe('when the app is opened again with a run open', () => {
  it('it is asked whether the next pass was taken, and nothing is assumed', async () => {
    const { disk, runs } = await begun();
    await runs.take(1);
    const no = await Page.open(disk);
    expect([no.runs.asks, no.n]).toEqual([true, 2]);
    await no.runs.answer(false, 2);
    expect([no.runs.asks, no.n, no.since]).toEqual([false, 2, 1]);
    const yes = await Page.open(disk);
    expect(yes.runs.asks).toBe(true);
    await yes.runs.answer(true, 2);
    expect([yes.runs.asks, yes.n]).toEqual([false, 3]);
  });

  it('it is not asked of a run that was paused; going on is a new start', async () => {
    const page = await begun();
    await page.runs.pause();
    expect(page.since).toBeNull();
    const later = await Page.open(page.disk);
    expect(later.runs.asks).toBe(false);
    await later.runs.resume();
    expect([later.runs.asks, later.runs.current?.run.paused, later.since]).toEqual([false, false, 1]);
  });

  it('it is not asked after the last pass', async () => {
    const page = await begun();
    for (const n of [1, 2, 3, 4]) await page.runs.take(n);
    expect((await Page.open(page.disk)).runs.asks).toBe(false);
  });
});

describe('a full disk', () => {
  it('leaves the screen at the same pass, keeps what was pressed, and goes on when it is saved', async () => {
    const page = await begun();
    page.disk.fails = 'full';
    expect(await page.runs.take(1)).toBe(false);
    expect([page.n, page.runs.saving]).toEqual([1, { kind: 'failed', code: 'full' }]);
    // Nothing more is counted on top of what isn't there.
    expect(await page.runs.take(1)).toBe(false);
    page.disk.fails = null;
    await page.runs.flush();
    expect([page.n, page.runs.saving.kind, (await Page.open(page.disk)).n]).toEqual([2, 'saved', 2]);
  });

  it('begins nothing', async () => {
    const page = await Page.open(new Disk());
    page.disk.fails = 'full';
    expect(await page.runs.begin(PLAN, NAMES)).toEqual({ ok: false, code: 'full' });
    expect([page.runs.current, page.said]).toEqual([null, []]);
  });
});

describe('another tab', () => {
  it('sees the run read-only until it has the lock, and then is asked', async () => {
    const page = await begun();
    const other = new Page(page.disk);
    await other.runs.open();
    other.runs.holding(other.runs.current?.id ?? '', 'elsewhere');
    for (const step of [other.runs.take(1), other.runs.pause(), other.runs.end('scrapped', '')])
      expect(await step).toBe(false);
    await page.runs.take(1);
    await other.runs.open();
    expect(other.n).toBe(2);
    other.lock();
    expect(other.runs.asks).toBe(true);
    page.runs.holding(page.runs.current?.id ?? '', 'elsewhere');
    expect(await page.runs.take(2)).toBe(false);
  });

  it('sees that the run has ended', async () => {
    const page = await begun();
    const other = await Page.open(page.disk);
    await page.runs.end('gauged', '');
    await other.runs.open();
    expect([other.runs.current, other.runs.ended.length]).toEqual([null, 1]);
  });
});

describe('runs in the database', () => {
  it('that can’t be read are counted and kept, open ones said at once', async () => {
    const disk = new Disk();
    const torn = { id: 'torn', body: { machine: 'm', open: 'm' } };
    await disk.inner.run('readwrite', ['runs'], (w) => Promise.resolve(w.put('runs', torn as never)));
    const page = await Page.open(disk);
    expect(page.runs.openUnreadable.map((u) => u.id)).toEqual(['torn']);
    await page.runs.load();
    expect(page.runs.unreadable.map((u) => u.id)).toEqual(['torn']);
    expect(await disk.inner.run('readonly', ['runs'], (w) => w.all('runs'))).toEqual([torn]);
  });

  it('are read in parts, the last one ended first', async () => {
    const disk = new Disk();
    const store = new Versioned<Run>(disk, 'runs', { schema: 1, encode: storeRun, decode: readRun });
    for (let k = 0; k < 450; k += 1)
      await store.put(`r${k}`, null, runOf(planOf([30]), { ended: k, notes: `${k}`, outcome: 'within' }));
    const page = await Page.open(disk);
    await page.runs.load();
    expect(page.runs.ended.length).toBe(450);
    expect(page.runs.ended[0]?.run.notes).toBe('449');
  });
});
