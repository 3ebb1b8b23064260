import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scan, sideways } from './support/axe';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Finger } from './support/finger';
import { Phone } from './support/phone';
import { beginRun, takenNow, takeOnAndOn } from './support/run';
import { putSaved, readDatabase, readSaved } from './support/saved';
import { chooseM10, enter, takeExample } from './support/screens';
import { glimpse } from './support/shots';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeEach(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

/** Heron with M10 × 1.5 at 160 rpm. */
const setUp = async (): Promise<void> => {
  await takeExample(person);
  await chooseM10(person);
  await person.link('Use it');
  await enter(person, 'Enter stopping room', '4', 'mm');
  await person.key(/^160/);
  await person.reads('OK at 160 rpm');
};
/** TAKEN, once its rest is over. */
const take = async (n: number): Promise<void> => {
  await phone.page.locator('ls-cut-pass .resting').waitFor({ state: 'detached' });
  await person.key(/^TAKEN/);
  await expect.poll(() => takenNow(phone.page)).toContain(n);
};
/** What axe finds wrong at the size the phone has, with a picture where they are asked for. */
const lookedAt = async (name: string): Promise<string[]> => {
  await glimpse(phone.page, name);
  return [...(await scan(phone.page)), ...((await sideways(phone.page)) > 0 ? [`${name}: too wide`] : [])];
};
/** Whether setting, nut rule and speed stand above the keys, and TAKEN on the screen, with nothing scrolled. */
const readAtOnce = (): Promise<{ above: boolean; taken: boolean }> =>
  phone.page.locator('ls-cut-pass').evaluate(async (screen) => {
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const box = (selector: string) => screen.shadowRoot?.querySelector(selector)?.getBoundingClientRect();
    const [facts, foot, taken] = [box('.facts'), box('.foot'), box('.taken')];
    if (!facts || !foot || !taken) return { above: false, taken: false };
    return { above: facts.bottom <= foot.top, taken: taken.bottom <= innerHeight && taken.height >= 112 };
  });
const again = async (): Promise<void> => {
  await phone.kill();
  await phone.start();
};

// Settings by hand: 136 divisions of 0.02 mm are 2.72 mm on the diameter, one turn of 100 and 36.
describe('taking passes', () => {
  it('shows one pass at a time, and none is counted twice or lost', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106, 124, 136], springs: 1 });
    await person.reads('Cut 1 of 6');
    await person.reads('46 divisions 0.92 mm DIAMETER');
    await person.reads('1.36 mm to go, 6 cuts');
    await person.reads('160 rpm');
    expect(await pageFaults(phone.page, 'pass, the first')).toEqual([]);
    for (const [width, height] of [
      [360, 640],
      [320, 640],
    ] as const) {
      await phone.page.setViewportSize({ width, height });
      expect(await readAtOnce(), `${width} × ${height}`).toEqual({ above: true, taken: true });
      await glimpse(phone.page, `pass ${width} ${height}`);
    }
    await phone.page.setViewportSize({ width: 390, height: 844 });
    // A double tap is one touch.
    const { x, y } = await phone.finger.reach(phone.page.getByRole('button', { name: /^TAKEN/ }));
    await phone.page.touchscreen.tap(x, y);
    await phone.page.touchscreen.tap(x, y);
    await person.reads('Cut 2 of 6');
    await person.reads('Scratch pass: 2 checks left');
    expect(await takenNow(phone.page)).toEqual([1]);
    expect(await lookedAt('pass, after the scratch')).toEqual([]);
    // A thumb that stays where TAKEN was finds it there for the next cut too, and never the key that takes one back.
    for (const n of [2, 3, 4]) {
      await phone.page.locator('ls-cut-pass .resting').waitFor({ state: 'detached' });
      await phone.page.touchscreen.tap(x, y);
      await expect.poll(() => takenNow(phone.page)).toContain(n);
    }
    await person.reads('Cut 5 of 6');
    await person.reads('1 turn 36 divisions 2.72 mm DIAMETER');
    await person.reads('0.12 mm to go, 2 cuts');
    await person.key('Back one');
    await person.reads('Cut 4 of 6');
    await take(4);
    await take(5);
    await person.reads('Spring pass: the same setting again');
    await person.reads('0 mm to go, 1 cut');
    // Nor does a double tap on the last one lead on to measuring.
    await phone.page.locator('ls-cut-pass .resting').waitFor({ state: 'detached' });
    await phone.page.touchscreen.tap(x, y);
    await expect.poll(() => takenNow(phone.page)).toContain(6);
    await phone.page.touchscreen.tap(x, y);
    await person.reads('All 6 cuts are taken');
    expect(await lookedAt('pass, all taken')).toEqual([]);
    await person.link('End this run');
    await person.reads('How did it end?');
    expect(await lookedAt('run, how it ended')).toEqual([]);
    await person.key('Finished, not measured');
    await person.reads('Last run ended: M10×1.5. Finished, not measured.');
    await person.seesNot(/that a cut began/);
    await person.key('Bring it back');
    await person.reads('Paused');
    expect(phone.watch.problems).toEqual([]);
  });

  it('is deaf while it is wiped', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80] });
    await person.key('Wipe');
    await person.reads('Wipe the screen now');
    const { x, y } = { x: 195, y: 700 };
    for (let n = 0; n < 3; n += 1) await phone.page.touchscreen.tap(x, y);
    expect(await takenNow(phone.page)).toEqual([]);
    await phone.page.locator('dialog[open]').waitFor({ state: 'detached' });
    await take(1);
    expect(phone.watch.problems).toEqual([]);
  });

  it('with the top slide says that the cross-slide goes back to 0; with both, both', async () => {
    await setUp();
    await beginRun(phone.page, { top: [26, 62] });
    await person.reads('Top slide 26 divisions 0.52 mm along the slide Cross-slide back to 0');
    await take(1);
    await person.reads('1 turn 12 divisions 1.24 mm along the slide');
    expect(await lookedAt('pass, flank')).toEqual([]);
    await person.link('End this run');
    await person.key('Given up');
    await person.reads('No run is open');
    await beginRun(phone.page, { cross: [46, 80], top: [26, 12] });
    await person.reads('46 divisions 0.92 mm DIAMETER Top slide 26 divisions 0.52 mm');
    expect(await pageFaults(phone.page, 'pass, both slides')).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });
});

// Two settings of three starts are six cuts, each setting in every start before the next (common practice).
describe('a thread of three starts', () => {
  it('keeps its place among the starts, and is planned anew only at the end of a round', async () => {
    await setUp();
    await person.place('Cut');
    await person.link(/^Work and tool/);
    await enter(person, /^Starts/, '3');
    await beginRun(phone.page, { cross: [46, 80] });
    await person.reads('Cut 1 of 6');
    await person.reads('Start 1 of 3 Round 1');
    await take(1);
    await person.reads('Start 2 of 3 Round 1');
    await person.reads('46 divisions');
    expect(await pageFaults(phone.page, 'pass, the second start')).toEqual([]);
    await person.link('To start 2: how');
    await person.reads('START 2 of 3');
    // A third of the 4800 counts of Heron's encoder.
    await person.reads('Counts 1600 exact');
    await person.link(/^To the pass/);
    await phone.finger.tapOn(phone.page.getByRole('link', { name: 'Measure now' }).first());
    await enter(person, 'Enter: Wire in use', '0.866', 'mm');
    await enter(person, 'Enter: Reading over three wires', '10.9', 'mm');
    await person.reads('The starts stand at different depths: cut this setting in start 2 to 3 first.');
    await person.seesNot(/^Take 70 %: /);
    await person.key(/^Note it/);
    await person.reads('Start 2 of 3 Round 1');
    await again();
    await person.reads('Cut 2 of 6 · Start 2 of 3');
    await person.reads('Was cut 2 taken?');
    await person.key(/^YES/);
    await take(3);
    await person.reads('Cut 4 of 6');
    await person.reads('Start 1 of 3 Round 2');
    await person.reads('80 divisions');
    await person.key('Back one');
    await person.reads('Start 3 of 3 Round 1');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('killed in mid-pass', () => {
  it('asks whether the pass was taken, and assumes nothing', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106, 124, 136] });
    await take(1);
    await take(2);
    await person.reads('Cut 3 of 5');
    await again();
    await person.reads('Was cut 3 taken?');
    await person.reads('Its setting: Cross-slide 1 turn 6 divisions, 2.12 mm.');
    expect(await pageFaults(phone.page, 'pass, was it taken')).toEqual([]);
    await person.key(/^YES/);
    await person.reads('Cut 4 of 5');
    await again();
    await person.reads('Was cut 4 taken?');
    await person.key(/^NO/);
    await person.reads('Cut 4 of 5');
    await again();
    await person.link('NOT SURE');
    await person.reads('Isolate.');
    await person.reads('Open the nut');
    expect(await lookedAt('pass, not sure')).toEqual([]);
    expect(await takenNow(phone.page)).toEqual([1, 2, 3]);
    // Asked again at the next opening: nothing was said.
    await again();
    await person.reads('Not sure whether cut 4 was taken');
    await person.key('Cut 4 again');
    await person.reads('Cut 4 of 5');
    await person.key('Pause');
    await person.reads('Paused');
    expect(await lookedAt('pass, paused')).toEqual([]);
    await again();
    await person.reads('Paused');
    await person.seesNot(/Was cut/);
    await person.key('Go on');
    await person.reads('Cut 4 of 5');
    expect(phone.watch.problems).toEqual([]);
  });

  it('and in mid-write keeps every pass that was acknowledged, whole', async () => {
    await setUp();
    await beginRun(phone.page, { cross: Array.from({ length: 400 }, (_, i) => i + 1) });
    let last = 0;
    for (const wait of [150, 230, 310]) {
      phone.page.on('console', (message) => {
        const [, n] = /^acknowledged (\d+)/.exec(message.text()) ?? [];
        if (n) last = Number(n);
      });
      await takeOnAndOn(phone.page);
      await expect.poll(() => last, { interval: 10 }).toBeGreaterThan(last);
      await phone.page.waitForTimeout(wait);
      await again();
      await person.reads('Was cut');
      const taken = await takenNow(phone.page);
      expect(taken).toEqual(Array.from({ length: taken.length }, (_, i) => i + 1));
      expect(taken.length).toBeGreaterThanOrEqual(last);
      // One more may have reached the disk than was told of, never two beyond what was pressed.
      await person.reads(`Was cut ${taken.length + 1} taken?`);
      await person.key(/^NO/);
      await person.reads(`Cut ${taken.length + 1} of 400`);
      last = taken.length;
    }
    expect(phone.watch.problems).toEqual([]);
  });

  it('after a stop in mid-cut shows the steps, and says so until a pass is taken', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106] });
    await take(1);
    await person.key('Stopped in mid-cut');
    await person.reads('After a stop in mid-cut');
    expect(await lookedAt('run, stopped in mid-cut')).toEqual([]);
    await person.link('Back to the pass');
    await person.reads('that it stopped in mid-cut');
    await person.reads('Checks before the cut:');
    await take(2);
    await person.seesNot(/that it stopped in mid-cut/);
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a change in the middle of a run', () => {
  it('of speed and machine is said with what it does, and the figures stay as begun', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106] });
    await take(1);
    await person.place('Speed');
    await person.key(/^80/);
    await person.place('Machine');
    await person.link(/^Leadscrew pitch/);
    await person.key('4 mm');
    await person.reads('Leadscrew pitch 4 mm');
    await phone.page.evaluate(() => (location.hash = '#/cut/pass'));
    await person.reads('Changed since the run began: drive, speed');
    // Heron's stepper: 200 full steps a turn, 20 to 60 teeth, now on a 4 mm screw: 4 ÷ 600 mm a step, two of them 0.013 mm.
    await person.reads(
      'Speed now 80 rpm, begun at 160 rpm. A stepper stays within two full steps of its place, 0.013 mm',
    );
    await person.reads('The drive was changed (Leadscrew pitch)');
    await person.reads('160 rpm');
    await person.reads('Cut 2 of 3');
    await person.reads('TAKEN cut 2, although something changed');
    expect(await pageFaults(phone.page, 'pass, changed')).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });

  it('of the machine in the bar leaves the run with its own', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106] });
    await phone.page.evaluate(() => (location.hash = '#/machine/list'));
    await person.key(/^Bittern/);
    await person.reads('No thread chosen');
    await phone.page.evaluate(() => (location.hash = '#/cut/pass'));
    await person.reads('An open run belongs to Heron: M10×1.5, cut 1 of 3.');
    expect(await lookedAt('pass, another machine’s')).toEqual([]);
    await person.key('Use Heron');
    await person.reads('Cut 1 of 3');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a second tab', () => {
  it('reads only, follows, and can take over', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106] });
    await take(1);
    const page = await phone.newTab(`${host.url}#/cut/pass`);
    const second = new Person({ page, finger: new Finger(page) });
    await second.reads('Another tab takes the passes of this run. Here it can only be read.');
    await second.reads('Cut 2 of 3');
    expect(await page.getByRole('button', { name: /^TAKEN/ }).count()).toBe(0);
    expect(await scan(page)).toEqual([]);
    await phone.page.bringToFront();
    await take(2);
    await page.bringToFront();
    await second.reads('Cut 3 of 3');
    await second.key('Take passes here');
    await second.reads('Was cut 3 taken?');
    await second.key(/^NO/);
    await second.reads('TAKEN');
    await phone.page.bringToFront();
    await person.reads('Another tab takes the passes of this run.');
    // The tab that took over is closed: this one gets the run back, and asks.
    await page.close();
    await person.reads('Was cut 3 taken?');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a phone that is full', () => {
  it('says so, keeps what was pressed, and goes on when there is room', async () => {
    await setUp();
    await beginRun(phone.page, { cross: [46, 80, 106] });
    await person.reads('Cut 1 of 3');
    await phone.quit();
    await phone.start();
    await person.key(/^NO/);
    await person.reads('Cut 1 of 3');
    const debug = await phone.debug();
    const origin = new URL(host.url).origin;
    await debug.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
    await phone.page.locator('ls-cut-pass .resting').waitFor({ state: 'detached' });
    await person.key(/^TAKEN/);
    await person.reads('Not saved: this phone’s storage is full.');
    await person.reads('The key you pressed is kept, but isn’t saved.');
    await person.reads('Cut 1 of 3');
    expect(await scan(phone.page)).toEqual([]);
    await debug.send('Storage.overrideQuotaForOrigin', { origin });
    await person.key('Save again');
    await person.reads('Cut 2 of 3');
    await again();
    await person.reads('Was cut 2 taken?');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a database of version 1', () => {
  it('is brought up to date with all that is in it', async () => {
    const saved = readSaved(1);
    // The icon that a browser asks for beside any page.
    phone.watch.allow(/404 \(Not Found\)/);
    await phone.page.goto(`${host.url}manifest.webmanifest`);
    await putSaved(phone.page, saved);
    await phone.page.goto(`${host.url}#/speed`);
    await person.reads('OK at 160 rpm');
    await person.reads('Heron');
    const now = await readDatabase(phone.page);
    expect(now.version).toBe(3);
    for (const name of ['machines', 'jobs', 'evidence', 'history', 'settings', 'threads'])
      expect(now.stores[name]).toEqual(saved.stores[name]);
    expect(now.stores.runs).toEqual([]);
    await beginRun(phone.page, { cross: [46] });
    await person.reads('Cut 1 of 1');
    expect(phone.watch.problems).toEqual([]);
  });
});
