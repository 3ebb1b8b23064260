import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { chooseM10, enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const at = (hash: string): Promise<void> =>
  phone.page.evaluate((to) => {
    location.hash = to;
  }, hash);

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Heron: 1200 lines × 4 = 4800 counts a turn; a marked line resolves 4800 ÷ 600 = 8 of them.
describe('commissioning tests', () => {
  it('stand in order under the machine, none done', async () => {
    await person.place('Machine');
    await person.link('Test records');
    await person.reads('1 Mechanical look-over Not done');
    await person.reads('15 Coasting Not done');
    expect(await pageFaults(phone.page, 'test records, none')).toEqual([]);
  });

  it('counts over turns: caution first, figures as typed, and what was recorded', async () => {
    await person.link(/Counts over turns/);
    await person.reads('Isolate the spindle’s motor');
    await person.reads('Not all entered yet.');
    await enter(person, /^Turns/, '10');
    await person.reads('Expected 48000');
    await enter(person, /^Counts/, '48009');
    await person.reads('Fails. The counts differ by more than the mark resolves.');
    await person.reads('Look here first Lines taken for edges');
    expect(await pageFaults(phone.page, 'counts, failed')).toEqual([]);
    await enter(person, /^Counts/, '48008');
    await person.reads('Passes. The counts agree');
    await person.reads('less than 170 ppm, which is all these readings can tell');
    await person.key('Record it');
    await person.reads('Passed, you recorded');
    await person.reads('Recorded before');
    await person.reads('Counts 48008 · Mark: Line, 0.6° in all');
    await person.reads('Not all entered yet.');
    expect(await pageFaults(phone.page, 'counts, recorded')).toEqual([]);
  });

  it('lapse by themselves when what they rest on is changed, and hold again when it is changed back', async () => {
    await at('#/enter/machine/encoderLines');
    await person.types('1000');
    await phone.page.locator('ls-pad').waitFor({ state: 'detached' });
    await at('#/machine/prove');
    await person.reads('Lapsed: Encoder changed since');
    await person.key('Undo');
    await person.reads('Passed, you recorded');
  });

  it('drift says first that nothing is wedged, and asks as many readings as there are', async () => {
    await at('#/machine/prove/drift');
    await person.reads('Nothing is ever wedged into spindle or chuck to hold it.');
    await person.key('None');
    await person.seesNot('Count after low frequency');
    await person.key('Steady');
    await enter(person, /^Count after switching/, '3');
    // 3 × 1.5 ÷ 4800 = 0.00094 mm.
    await person.reads('On the carriage 0.0009 mm');
    await person.reads('Contactors’ coils without suppression');
    await person.key('Record it');
    await person.reads('Failed, you recorded');
    expect(await pageFaults(phone.page, 'drift, failed')).toEqual([]);
  });

  it('what failed stands as failed in the list, and fails the check that rests on it', async () => {
    await at('#/checks/item/drift');
    await person.reads('You recorded its commissioning test as failed');
    await at('#/machine/prove');
    await person.reads('5 Drift at rest Failed, you recorded');
  });

  it('backlash is set on the machine with its record, and undo takes back both', async () => {
    await at('#/machine/prove/backlash');
    await person.key('Dial indicator');
    await enter(person, /^Near the headstock/, '0.14', 'mm');
    await enter(person, /^Middle/, '0.11', 'mm');
    await enter(person, /^Near the tailstock/, '0.11', 'mm');
    await person.reads('More than was entered');
    await person.reads('Differs from place to place: screw or nut worn');
    expect(await pageFaults(phone.page, 'backlash')).toEqual([]);
    await person.key('Record it, and set backlash 0.14 mm on the machine');
    await person.reads('Measured, you recorded');
    await person.key('Undo');
    await person.reads('Not done');
    await person.key('Undo');
    await person.reads('Near the headstock 0.14 mm');
    await person.key('Undo');
    await person.place('Machine');
    await person.reads('0.12 mm');
  });

  it('travel says what would settle it', async () => {
    await at('#/machine/prove/travel');
    await person.key('Caliper');
    await enter(person, /^Turns/, '20');
    await enter(person, /^Measured/, '30', 'mm');
    await person.reads('These readings can’t tell');
    // 35.6 µm at 200 ppm.
    await person.reads('a travel of 178 mm or more');
    expect(await pageFaults(phone.page, 'travel, undecided')).toEqual([]);
  });

  it('the stopping time comes from ten dummy runs, which are the same under Cut, and is set with the record', async () => {
    await at('#/machine/prove/stopping-time');
    await enter(person, /^Spindle speed/, '160');
    // 1.5 × 160 ÷ 60 = 4 mm a second: 2.4 mm are 0.6 s.
    await enter(person, /^Run 1 /, '2.4', 'mm');
    await at('#/cut/stop/dummy');
    for (let run = 2; run <= 10; run++) await enter(person, new RegExp(`^Overrun ${run}(?!\\d)`), '2', 'mm');
    await at('#/machine/prove/stopping-time');
    await person.reads('More than was entered');
    await person.key('Record it, and set whole stopping time 0.6 s on the machine');
    await person.reads('Measured, you recorded');
    await person.reads('Recorded before');
    await at('#/machine');
    await person.reads('0.6 s');
  });

  it('the ramp answers for its lead and speed, until something happens to the machine', async () => {
    await at('#/machine/prove/ramp');
    for (const group of ['Fastest start', 'Fastest stop'])
      await phone.finger.tapOn(phone.page.getByRole('group', { name: group }).getByText('Followed'));
    await person.key('Not done');
    await person.key('Dial indicator');
    await person.reads('0.01 mm, as usual');
    await enter(person, /^Spindle speed/, '270');
    await enter(person, /^Spread/, '0.01', 'mm');
    await person.reads('Holds for this lead and speed, and below.');
    await person.key('Record it');
    await person.reads('Passed, you recorded');
    await person.place('Checks');
    await person.link('All checks');
    await person.key('Something changed');
    await person.key('Ran into something');
    await at('#/machine/prove');
    await person.reads('3 Counts over turns Lapsed: Ran into something since');
    await person.reads('11 Fastest start, stop, reverse Lapsed: Ran into something since');
    expect(await pageFaults(phone.page, 'test records, some')).toEqual([]);
  });

  it('each other test has its page', async () => {
    for (const id of [
      'look-over',
      'direction',
      'there-and-back',
      'screw-turns',
      'screw-travel',
      'repeat',
      'ramp',
    ]) {
      await at(`#/machine/prove/${id}`);
      await person.reads('What it decides');
    }
    expect(await pageFaults(phone.page, 'coast')).toEqual([]);
    await at('#/machine/prove/look-over');
    expect(await pageFaults(phone.page, 'look-over')).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });

  it('records outlive the browser', async () => {
    await at('#/machine/prove');
    await phone.page.reload();
    await person.reads('5 Drift at rest Failed, you recorded');
    await person.reads('14 Whole stopping time Lapsed');
    expect(phone.watch.problems).toEqual([]);
  });
});
