import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scanEverywhere } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const at = (hash: string) => phone.page.evaluate((to) => (location.hash = to), hash);

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
  await at('#/machine/faults');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Heron: 1200 lines × 4 edges, 200 × 10 steps, a 3 mm screw. A quarter of the travel is 1200 for 4800 counts per turn.
describe('find a fault', () => {
  it('begins with the travel and asks for what tells most', async () => {
    await person.reads('Begin with Measured travel, 100 mm commanded');
    expect(await scanEverywhere(phone.page, 'faults, nothing read')).toEqual([]);
    await person.link('Measured travel, 100 mm commanded');
    await enter(person, /^Travel commanded: Enter/, '100', 'mm');
    await enter(person, /^Travel measured: Enter/, '25', 'mm');
    await person.reads('Measured ÷ expected 0.2500 ± 0.0005');
    expect(await scanEverywhere(phone.page, 'faults, travel')).toEqual([]);
    await person.link('Causes and next test');
    await person.reads('Next test: it tells most Counts over 10 spindle turns');
    await person.reads('Fits your readings; others may');
    await person.reads('Your readings can’t tell these apart:');
    await person.reads('Edges counted per line: 1 edge/line not 4 edges/line');
    expect(await scanEverywhere(phone.page, 'faults, travel read')).toEqual([]);
  });

  it('counts leave what no test tells apart; a change is shown, made, undone, and the travel asked for again', async () => {
    await person.link('Counts over 10 spindle turns');
    await enter(person, /^Spindle turns: Enter/, '10');
    await enter(person, /^Counts read: Enter/, '12000');
    await person.reads('The profile expects 48000 counts');
    await person.link('Causes and next test');
    await person.reads('No test tells these apart. Look at the parts');
    await person.seesNot(/^Microsteps: 40/);
    await phone.finger.tapOn(phone.page.locator('summary', { hasText: 'Edges counted per line: 1' }).first());
    await person.reads('In the profile now');
    expect(await scanEverywhere(phone.page, 'faults, a change')).toEqual([]);
    await person.key('Change the profile');
    await person.reads('Enter the settings sheet in the controller again, then repeat the test.');
    await person.reads('The profile fits your readings.');
    await person.reads('Carriage per leadscrew turn Commanded against measured There and back');
    await person.key('Undo');
    await person.reads('Edges counted per line: 1 edge/line not 4 edges/line');
    await person.reads('Commanded against measured: 0.2500 ± 0.0005');
    expect(phone.watch.problems).toEqual([]);
  });

  it('a profile changed by hand makes the travel count no more', async () => {
    await at('#/machine/field/screwPitch');
    await person.key('4 mm');
    await person.reads('The profile has changed since the travel was read');
    await person.key('Clear and read again');
    await person.seesNot('The profile has changed since');
    await person.key('Clear all readings');
    await person.reads('Begin with');
    await person.seesNot(/^Enter the settings sheet/);
    expect(phone.watch.problems).toEqual([]);
  });

  it('what a test record holds is taken over by one key, its note is kept over a killed browser', async () => {
    await at('#/machine/prove/travel');
    await person.key('Caliper');
    await enter(person, /^Turns/, '60');
    await enter(person, /^Measured/, '22.5', 'mm');
    await person.reads('Fails');
    const note = phone.page.getByLabel('A note, if you like');
    await note.fill('Cold shed, belt warm');
    await expect.poll(() => note.inputValue()).toBe('Cold shed, belt warm');
    // Nothing on the page says that a word was written down; half a second is long for that.
    await phone.page.waitForTimeout(500);
    await phone.kill();
    await phone.start();
    await phone.page.getByLabel('A note, if you like').waitFor();
    expect(await phone.page.getByLabel('A note, if you like').inputValue()).toBe('Cold shed, belt warm');
    await person.key('Record it');
    await person.reads('Cold shed, belt warm');
    expect(await phone.page.getByLabel('A note, if you like').count()).toBe(0);
    await at('#/machine/faults');
    await person.reads('Commanded against measured');
    await person.reads('Travel commanded: 90 22.5 mm');
    expect(await scanEverywhere(phone.page, 'faults, from records')).toEqual([]);
    await person.key('Take these readings');
    await person.reads('Fits your readings; others may');
    await person.seesNot('In your test records');
    expect(phone.watch.problems).toEqual([]);
  });
});
