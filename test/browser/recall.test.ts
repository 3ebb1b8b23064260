import { rmSync } from 'node:fs';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { build, DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { changeToIt, lookForUpdate } from './support/newer';
import { Phone } from './support/phone';
import { beginRun, takenNow } from './support/run';
import { readDatabase } from './support/saved';
import { chooseM10, enter, takeExample } from './support/screens';
import { stopsTested } from './support/stops';

/** Three formulas that the next version says it corrects. */
const RECALL = {
  table: [
    { id: 'belts', corrected: '9.9.9', formulas: 2, checks: ['belts'] },
    { id: 'counts', corrected: '9.9.9', formulas: 3, tests: ['counts', 'stop-stays-in'] },
    { id: 'depth', corrected: '9.9.9', formulas: 4, figures: ['depth'] },
  ],
  words: {
    belts: { what: 'The belt check asked too little.', todo: 'Feel the tension at the screw as well.' },
    counts: { what: 'A count was judged too kindly.', todo: 'Repeat the test if it was near its limit.' },
    depth: { what: 'The depth was 0.02 mm too small.', todo: 'Measure before the last cut.' },
  },
};

let next: string;
let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  next = await build({ version: '9.9.9', variables: { LATHESIDE_RECALL: JSON.stringify(RECALL) } });
}, 300_000);
afterAll(() => rmSync(next, { recursive: true, force: true }));
beforeEach(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

const at = (hash: string): Promise<void> =>
  phone.page.evaluate((to) => {
    location.hash = to;
  }, hash);
const update = async (): Promise<void> => {
  host.folder = next;
  await lookForUpdate(phone.page);
  await person.reads('A newer version is here: 9.9.9');
  await changeToIt(phone, person);
  await person.reads('Heron');
};
const stands = 'Looked over: it stands';

describe('a formula that a newer version corrects', () => {
  it('marks the checks and tests made before, until a person has looked them over', async () => {
    await takeExample(person);
    await chooseM10(person);
    await stopsTested(person);
    await person.place('Checks');
    await person.reads('Belts and pulleys tight?');
    await person.key('DONE');
    await person.reads('Overload protection tried?');
    await at('#/machine/prove/counts');
    await enter(person, /^Turns/, '10');
    await enter(person, /^Counts/, '48008');
    await person.key('Record it');
    await person.reads('Passed, you recorded');
    await phone.controlled();
    await update();

    // Before the cut: it is asked again, and says why.
    await at('#/checks/list');
    await person.reads(
      'Belts and pulleys tight? Not done A formula it rests on was corrected since: for review',
    );
    await person.link(/^Belts and pulleys tight/);
    await person.reads('The belt check asked too little. Feel the tension at the screw as well.');
    await person.reads('Made by version 0.1.0, corrected in 9.9.9. Nothing was reckoned anew.');
    expect(await pageFaults(phone.page, 'check, for review')).toEqual([]);
    await person.key(stands);
    await person.seesNot('The belt check asked too little.');
    await person.seesNot(stands);
    await person.key(/^Undo: Not looked over after all/);
    await person.reads('The belt check asked too little.');
    await person.key(stands);
    await person.seesNot(stands);
    await phone.kill();
    await phone.start();
    await person.reads('Heron');
    await at('#/checks/list');
    await person.reads('Belts and pulleys tight? Done');

    // The test records, in the list and each by itself.
    await at('#/machine/prove');
    await person.reads('Counts over turns Lapsed: A formula it rests on was corrected since: for review');
    await at('#/machine/prove/counts');
    await person.reads('For review A count was judged too kindly. Repeat the test if it was near its limit.');
    expect(await pageFaults(phone.page, 'test record, for review')).toEqual([]);
    await person.key(stands);
    await person.reads('Passed, you recorded');
    await at('#/machine/stops/stop-stays-in');
    await person.reads('For review A count was judged too kindly.');
    await person.reads('Made by an early version, corrected in 9.9.9.');
    expect(await pageFaults(phone.page, 'stop test, for review')).toEqual([]);
    await person.key(stands);
    await person.seesNot('A count was judged too kindly.');
    // Nothing of what was recorded has been touched, and the reviews stand beside it.
    const { stores } = await readDatabase(phone.page);
    const rows = stores.evidence as {
      kind: string;
      made?: unknown;
      body: { recall?: string; item?: string };
    }[];
    expect(rows.find((r) => r.body.item === 'belts')?.made).toEqual({ app: '0.1.0', formulas: 1 });
    const reviews = rows.filter((r) => r.kind === 'review');
    expect(reviews.map((r) => r.body.recall).sort()).toEqual(['belts', 'belts', 'counts', 'counts']);
    expect(reviews[0]?.made).toEqual({ app: '9.9.9', formulas: 4 });
    expect(phone.watch.problems).toEqual([]);
  });

  it('marks the run that is open and those that are over, and none that is begun after', async () => {
    await takeExample(person);
    await chooseM10(person);
    const run = async (end: boolean): Promise<void> => {
      await beginRun(phone.page, { cross: [40, 80, 120], springs: 0 });
      await person.reads('Cut 1 of 3');
      await person.key(/^TAKEN/);
      await expect.poll(() => takenNow(phone.page)).toContain(1);
      if (!end) return;
      await at('#/cut/pass/end');
      await person.key(/^Finished, not measured/);
      await person.reads('No run is open on this machine');
    };
    await run(true);
    await run(false);
    await person.key('Pause');
    await phone.controlled();
    await update();

    await at('#/cut/pass');
    await person.reads('For review The depth was 0.02 mm too small. Measure before the last cut.');
    expect(await pageFaults(phone.page, 'run paused, for review')).toEqual([]);
    await person.key('Go on');
    await person.reads('Cut 2 of 3');
    await person.reads('The depth was 0.02 mm too small.');
    expect(await pageFaults(phone.page, 'pass, for review')).toEqual([]);
    await person.key(stands);
    await person.seesNot('The depth was 0.02 mm too small.');
    await at('#/cut/pass/end');
    await person.key(/^Finished, not measured/);
    await person.reads('No run is open on this machine');
    await run(true);

    await at('#/cut/records');
    const lines = () => phone.page.locator('ls-cut-records a.left');
    await expect.poll(() => lines().count()).toBe(3);
    const marked = async (): Promise<boolean[]> =>
      (await lines().allInnerTexts()).map((text) => text.includes('For review'));
    // The newest first: begun after, looked over, made before.
    await expect.poll(marked).toEqual([false, false, true]);
    expect(await pageFaults(phone.page, 'records, for review')).toEqual([]);
    await phone.finger.tapOn(lines().nth(2));
    await person.reads('For review The depth was 0.02 mm too small.');
    await person.reads('Made by version 0.1.0, corrected in 9.9.9.');
    expect(await pageFaults(phone.page, 'record, for review')).toEqual([]);
    await person.key(stands);
    await person.seesNot('For review');
    await phone.kill();
    await phone.start();
    await person.reads('Heron');
    await at('#/cut/records');
    await expect.poll(() => lines().count()).toBe(3);
    expect(await marked()).toEqual([false, false, false]);
    expect(phone.watch.problems).toEqual([]);
  });
});
