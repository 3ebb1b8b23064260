import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scanEverywhere } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const goTo = (hash: string): Promise<void> =>
  phone.page.evaluate((to) => {
    location.hash = to;
  }, hash);

/** A bare pitch on the machine in use. */
const choosePitch = async (text: string, unit: 'tpi' | 'mm'): Promise<void> => {
  await goTo('#/threads/type');
  await person.sees('Such as');
  for (let n = 0; n < 6; n += 1) await person.key('Correct');
  for (const sign of text) await person.key(sign === '.' ? 'Decimal mark' : sign);
  await person.key(/^Unit/);
  await person.key(unit);
  await person.key('Use as a pitch');
};

const setStarts = async (n: string): Promise<void> => {
  await goTo('#/enter/job/starts');
  await phone.page.locator('ls-pad').waitFor();
  await person.key('Correct');
  await person.types(n);
  // The pad goes back to where it was opened; only then is the way free.
  await phone.page.locator('ls-pad').waitFor({ state: 'detached' });
};

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person, /^Bittern/);
  await choosePitch('10', 'tpi');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Bittern: 8 tpi, dial gear of 16 teeth, 8 lines. 10 tpi: 1/8 ÷ 1/10 = 5/4, so every fourth tooth, that is every second
// line (makers’ dial plates for this lathe: 10 tpi on 4 lines); in step every 5 revs, 20 480 counts of 4096.
describe('the half-nut, by touch', () => {
  it('names the lines, and those that follow from the line first used; kept when the app is killed', async () => {
    await goTo('#/cut/nut');
    await person.reads('LINES 2 4 6 8');
    await person.reads('4 places');
    await person.reads('20480 counts');
    await person.key('3');
    await person.reads('LINES 1 3 5 7');
    expect(await scanEverywhere(phone.page, 'nut, lines')).toEqual([]);
    await phone.kill();
    await phone.start();
    await person.reads('LINES 1 3 5 7');
    await person.key('3');
    await person.reads('LINES 2 4 6 8');
  });

  it('keeps it closed for 1.5 mm, and says how to come back', async () => {
    await choosePitch('1.5', 'mm');
    await goTo('#/cut/nut');
    await person.reads('KEEP THE NUT CLOSED');
    // 1/8 in ÷ 1.5 mm = 127/60.
    await person.reads('after 60 pitches of the leadscrew');
    await person.reads('127 revs');
    await person.reads('Only then reverse.');
    expect(await scanEverywhere(phone.page, 'nut, closed')).toEqual([]);
  });

  it('several starts: from one to the next, and each way’s settings', async () => {
    await choosePitch('8', 'tpi');
    await setStarts('3');
    await goTo('#/cut/nut');
    await person.link('From start to start: 3 starts');
    await person.reads('START 1 of 3');
    // 4096 ÷ 3 = 1365 1/3, off by a third of a count of 9.525 mm ÷ 4096: 0.775 µm, less.
    await person.reads('1365');
    await person.reads('exactly 1365 1/3');
    await person.reads('−0.775');
    await person.key('Next start');
    await person.reads('START 2 of 3');
    expect(await scanEverywhere(phone.page, 'nut, starts by counts')).toEqual([]);
    // Lead 3/8 in on 8 tpi: a third of the lead is one pitch of the screw.
    await person.key('Half-nut');
    await person.reads('1 pitch');
    await person.key('Top slide');
    // 1/8 in in divisions of 0.001 in.
    await person.reads('125 divisions');
    await person.key('Next start');
    await person.key('Next start');
    await person.reads('Round 2');
    await person.reads('START 1 of 3');
    expect(await scanEverywhere(phone.page, 'nut, starts by top slide')).toEqual([]);
  });

  it('picking up: step by step, the offset in counts', async () => {
    await person.link('Back to Half-nut');
    await person.link('Picking up the thread');
    await person.key('Begin');
    await person.reads('Isolate the spindle before you turn it by hand.');
    expect(await scanEverywhere(phone.page, 'pick up, step 1')).toEqual([]);
    for (let n = 0; n < 4; n += 1) await person.key('Next');
    await person.reads('Step 5 of 8');
    await person.link('Enter the offset');
    await person.types('0.3175', 'mm');
    // 0.3175 of a lead of 9.525 mm is a thirtieth: 4096 ÷ 30 = 136.53.
    await person.reads('+137 counts');
    await person.key('Behind');
    await person.reads('−137 counts');
    expect(await scanEverywhere(phone.page, 'pick up, offset')).toEqual([]);
    for (let n = 0; n < 3; n += 1) await person.key('Next');
    await person.reads('Step 8 of 8');
    await person.link('To the half-nut rule');
    await person.reads('Half-nut and dial');
    expect(phone.watch.problems).toEqual([]);
  });
});
