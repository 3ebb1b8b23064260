import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import type { Finger } from './support/finger';
import { Phone } from './support/phone';
import { answerChecks, enter } from './support/screens';
import { glimpse } from './support/shots';

/** Ten minutes, with five seconds to read and press. */
const MOST_TAPS = 120;

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;
let finger: Finger;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  finger = phone.finger;
  person = new Person({ page: phone.page, finger });
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

const see = (name: string): Promise<void> => glimpse(phone.page, `first run ${name}`);

/** Records each stop test that is due, one after another. */
const recordStops = async (): Promise<void> => {
  const { page } = phone;
  await person.link('One after another');
  const asSaid = page.getByRole('button', { name: 'SEEN AS SAID' });
  for (let n = 0; n < 20; n += 1) {
    await asSaid.waitFor();
    if (await page.getByRole('link', { name: /^How far it went/ }).count())
      await enter(person, /^How far it went/, '1', 'mm');
    const title = await page.locator('ls-stops h1').innerText();
    await finger.tapOn(asSaid);
    await expect.poll(() => page.locator('ls-stops h1').innerText()).not.toBe(title);
    await page.locator('ls-stops .resting').waitFor({ state: 'detached' });
    if (await page.getByRole('heading', { name: 'No test due' }).count()) return;
  }
};

describe('the first run', () => {
  it('leads from nothing to all checks recorded, and can be gone in ten minutes', async () => {
    const { page } = phone;
    await person.link(/^First run/);
    await person.heads('First run');
    await see('list, nothing yet');
    expect(await pageFaults(page, 'first run, nothing yet')).toEqual([]);
    await person.key('Begin');
    await person.reads('First run, 1 of 7. Press an example, such as Heron.');
    await person.key(/^Heron/);
    await person.heads('No thread chosen');
    await person.reads('First run, 2 of 7.');
    await see('2');
    await person.link('To the threads');
    await person.link('ISO metric coarse');
    await person.key('M10');
    await person.heads(/^M10/);
    await person.reads('First run, 3 of 7. Go down to Tool and work.');
    await see('3');
    await person.key('Round');
    await enter(person, 'Enter the tool nose', '0.2');
    await person.reads('First run, 4 of 7.');
    await person.link('To the room');
    await see('4');
    await enter(person, 'Enter stopping room', '4', 'mm');
    await person.reads('First run, 5 of 7.');
    await person.key(/^160/);
    await person.reads('First run, 6 of 7.');
    await see('6');
    await person.link('To the stop tests');
    await person.heads('Stop tests');
    await see('6 list');
    await recordStops();
    await person.reads('First run, 7 of 7.');
    await see('7');
    await person.link('To the checks');
    await see('7 checks');
    // Whose machine it isn't stands beside each question.
    await person.sees(/left · practice$/);
    const asked = await answerChecks(person, /^All checks recorded/);
    await person.reads('Practice: an invented machine. It says nothing of your lathe.');
    await person.reads('First run: all done. Now enter your own lathe');
    await see('done');
    const { taps, screenfuls } = finger;
    console.info(`first run: ${taps} taps, ${screenfuls} swipes, ${asked.length} checks answered`);
    expect(taps).toBeLessThanOrEqual(MOST_TAPS);
    expect(await pageFaults(page, 'first run, all recorded')).toEqual([]);
  });

  it('is put away, and stays away', async () => {
    await person.link(/^First run: all done/);
    await person.reads('Heron is an invented machine. What is recorded on it says nothing of your lathe');
    await see('list, done');
    expect(await pageFaults(phone.page, 'first run, done')).toEqual([]);
    await person.key('Put away');
    await person.heads(/^M10/);
    await phone.page.waitForTimeout(200);
    await phone.page.reload();
    await person.heads(/^M10/);
    await person.place('Checks');
    await person.heads(/^All checks recorded/);
    await person.seesNot(/^First run/);
    expect(phone.watch.problems).toEqual([]);
  });
});
