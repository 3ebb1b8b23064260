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

// Heron: 0.5 s, factor 1.5, a screw-on chuck, coasts 8 turns; its top slide's scale counts from the cross-slide.
describe('stopping in time', () => {
  it('asks for what is missing, each with a way to it', async () => {
    await person.place('Cut');
    await person.link(/^Stopping room/);
    await person.reads('Highest for this room Not known');
    await person.reads('To be entered or chosen Tool nose What the thread ends in: choose it below');
    expect(await pageFaults(phone.page, 'stop, nothing entered')).toEqual([]);
  });

  it('works the room out in a groove of a standard, and what would fit', async () => {
    await person.link('Tool nose');
    await person.key('Sharp');
    await person.link('Back to the cut');
    await person.link(/^Stopping room/);
    await person.key('A groove');
    // ISO 4755 by GB/T 3-1997: 2.5 mm at P 1.5.
    await person.key(/^ISO 4755: 2.5 mm/);
    await enter(person, /^Shoulder above the crests/, '0', 'mm');
    await person.key('Modified flank');
    await enter(person, /^Top slide set to/, '29.5');
    await enter(person, /^No speed set/, '160');
    // Sharp tool, from nominal diameter to basic pitch diameter: 0.757772 × 1.5 = 1.1367 mm deep; less 1.1367 (tan 30° + tan 29.5°) and 0.5.
    await person.reads('Usable room 0.7 mm');
    // 60 × 0.700 ÷ (1.5 × 0.5 × 1.5) = 37.4
    await person.reads('Highest for this room 37 rpm');
    // 1.5 × 160 ÷ 60 × 0.5 = 2, × 1.5 = 3.
    await person.reads('Too much at 160 rpm Travels 3 mm of the room before the nut is clear: 2 mm × 1.5.');
    await person.reads('Slower: 37 rpm or less');
    // 3 + 0.6563 + 0.6431 + 0.5 = 4.7994
    await person.reads('A groove of 4.8 mm or more, for 160 rpm');
    await person.reads('the widest, DIN 76 A, has 3.2 mm');
    await person.reads('reversed it can unscrew and come off. Not on this machine.');
    await person.reads('Take the crank out before power comes back.');
    // 8 turns × 1.5 mm
    await person.reads('Spindle cut alone: it coasts 12 mm');
    expect(await pageFaults(phone.page, 'stop, too short')).toEqual([]);
  });

  it('becomes the job’s room, and lapses with what it was worked out from', async () => {
    await enter(person, /^Width of its floor/, '6', 'mm');
    // 6 − 0.6563 − 0.6431 − 0.5 = 4.2006
    await person.key('Take 4.2 mm as the job’s room');
    await person.reads('The job’s stopping room: 4.2 mm, worked out here.');
    await person.reads('OK at 160 rpm');
    await person.place('Speed');
    await person.reads('4.2 mm');
    await person.place('Cut');
    await person.link(/^Stopping room/);
    await person.key('Straight in');
    await person.reads('4.2 mm, was worked out for other figures. Work it out again.');
    await person.place('Speed');
    await person.reads('Not a threading speed: stopping room not known.');
    await person.link(/was worked out for other figures/);
    await person.key('Modified flank');
    await person.reads('The job’s stopping room: 4.2 mm, worked out here.');
  });

  it('takes the whole time from ten runs in air', async () => {
    await person.link('Ten dummy runs in air');
    await person.key('Begin: lead 1.5 mm, 160 rpm');
    for (let n = 1; n <= 10; n += 1) {
      await enter(person, new RegExp(`^Overrun ${n}\\b`), n === 4 ? '1.61' : '1.2', 'mm');
      if (n === 4) {
        // 60 × 1.61 ÷ (1.5 × 160) = 0.4025
        await person.reads('Whole time by them 0.41 s');
        await person.reads('6 of ten still missing. Fewer than ten runs never replace it by a shorter time.');
        await person.seesNot(/^Set 0/);
        expect(await pageFaults(phone.page, 'dummy runs')).toEqual([]);
      }
    }
    await person.key('Set 0.41 s as the whole time');
    await person.reads('That is what is entered for this machine.');
    await person.link('Back to the stop');
    await person.reads('Whole stopping time 0.41 s');
    expect(phone.watch.problems).toEqual([]);
  });
});
