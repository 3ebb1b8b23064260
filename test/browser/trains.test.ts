import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { enter, takeExample } from './support/screens';
import { touchFaults, unroll } from './support/touch';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const faults = (name: string): Promise<string[]> => pageFaults(phone.page, name);

const choose = async (family: string, size: string): Promise<void> => {
  await person.link(family);
  await person.key(size);
  await phone.page.locator('ls-threads h1').waitFor();
};

/** Dunlin: screw of 8 tpi, 20 twice to 80, no 127. */
beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person, /^Dunlin/);
  await person.link('Choose a thread');
  await choose('ISO metric coarse', 'M10');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('a lathe with change gears', () => {
  it('says what is mounted, and that it cuts another lead', async () => {
    // 20/65 · 20/80 of 3.175 mm is 0.2442 mm; M10 wants 1.5.
    await person.reads('20 → 65 · 20 → 80');
    await person.reads('Cuts another lead: change the wheels');
    await unroll(phone.page);
    expect(await touchFaults(phone.page)).toEqual([]);
    await phone.page.setViewportSize({ width: 390, height: 844 });
  });

  it('gives the nearest train without a 127, drawn, and what its error comes to', async () => {
    await person.link('Change gears');
    // 1.5 mm on 8 tpi wants 60/127 = 0.472441; 63/50 · 30/80 = 0.4725 = 189/400: 8001/8000, 125 ppm, 0.0375 mm in 300.
    await person.reads('0.0375 mm in 300 mm too long (125.0 ppm)');
    await person.reads('1.5002 mm');
    await person.reads('KEEP THE NUT CLOSED');
    await phone.page.getByRole('img', { name: /^First shaft: \d+/ }).waitFor();
    expect(await faults('trains')).toEqual([]);
  });

  it('takes a train as mounted by one key, and back by another', async () => {
    await person.key('This train is mounted now');
    await phone.page.getByText('Mounted now').first().waitFor();
    await person.link('Back to the thread');
    await person.reads('125 ppm too long: keep the nut closed');
    await person.key('Undo');
    await person.reads('Cuts another lead: change the wheels');
  });

  it('is exact with a wheel of 127, put into the set by touch', async () => {
    await person.place('Machine');
    await person.link(/^Change wheels/);
    await person.link('Add a wheel');
    await person.types('127');
    await phone.page.getByRole('button', { name: 'Take out a wheel of 127' }).waitFor();
    expect(await faults('change wheels')).toEqual([]);
    await person.place('Threads');
    await person.link('Change gears');
    // 60/127 of an 8 tpi screw: 60/127 × 127/40 = 1.5 exactly.
    await phone.page.locator('ls-trains h2').waitFor();
    await person.reads('Exact');
    await expect.poll(() => phone.page.locator('ls-trains ls-standing').first().innerText()).toMatch(/Exact/);
    await person.place('Machine');
    await person.link(/^Change wheels/);
    await person.key('Take out a wheel of 127');
    await phone.page.getByRole('button', { name: 'Take out a wheel of 127' }).waitFor({ state: 'detached' });
    await person.key('Undo');
    await phone.page.getByRole('button', { name: 'Take out a wheel of 127' }).waitFor();
    await person.key('Take out a wheel of 127');
  });

  it('takes the train mounted wheel by wheel', async () => {
    await person.link('All of this machine');
    await person.link(/^Wheels mounted now/);
    for (let n = 0; n < 4; n += 1) await person.key('Take the last off');
    for (const wheel of ['40', '60']) await person.key(wheel);
    await person.key('Next, beside the last on its stud');
    for (const wheel of ['30', '50']) await person.key(wheel);
    await phone.page.getByRole('status').filter({ hasText: '40 → 60 · 30 → 50' }).waitFor();
    expect(await faults('wheels mounted')).toEqual([]);
    await person.key('Keep');
    // 40/60 · 30/50 = 2/5 of 3.175 mm: 1.27 mm, 20 tpi.
    await person.reads('1.27 mm');
    await person.place('Threads');
    await person.link('Another thread');
    await choose('Unified coarse, UNC', '1/4');
    await person.reads('Exact');
    // 20 tpi on 8 tpi: b = 2 of 16 teeth and 8 lines, lathe makers' plates: any line.
    await person.reads('ANY LINE');
  });

  it('tells feeds and the finish they leave', async () => {
    await person.place('Speed');
    await enter(person, /rpm/, '300', 'rpm');
    await person.link('Turning feeds and finish');
    await person.key('0.2 mm');
    // 0.2 mm/rev × 300 rpm; 0.2² ÷ (8 × 0.4) = 12.5 µm; a quarter of it.
    await person.reads('60 mm/min');
    await enter(person, 'Enter the nose radius', '0.4', 'mm');
    await person.reads('12.5 µm');
    await person.reads('3.13 µm');
    // √(32 × 0.4 × 0.0032) = 0.2023.
    await person.reads('0.202 mm/rev');
    // The train mounted: 1.27 mm × 300.
    await person.reads('381 mm/min');
    expect(await faults('feeds')).toEqual([]);
    await person.key('Use this feed as the job');
    await person.link('Trains for this feed');
    // 0.2 of 3.175 mm is 0.063; two pairs of this set go no finer than 20·20 ÷ (70·80) = 0.0714.
    await person.reads('No train within 10 % can be set up with these wheels.');
    await person.key('Up to three');
    await phone.page.getByRole('img', { name: /^First shaft: \d+/ }).waitFor();
    expect(await faults('trains of three pairs')).toEqual([]);
  });
});

describe('a lathe with an electronic drive', () => {
  it('has no train, and says so', async () => {
    await person.place('Machine');
    await person.link('Another machine');
    await person.key(/^Heron/);
    await person.sees('No thread chosen');
    await phone.page.goto(`${host.url}#/threads/trains`);
    await person.reads('This machine has an electronic drive: no wheels to change.');
    // The search ran in its worker under the page's own policy.
    expect(phone.watch.problems).toEqual([]);
    expect(phone.watch.requests.some((url) => /\/trains-[^/]*\.js$/.test(url))).toBe(true);
  });
});
