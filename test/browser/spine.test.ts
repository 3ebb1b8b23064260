import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { Phone } from './support/phone';
import { enterProfileA } from './support/profile-a';
import { stopsTested } from './support/stops';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeEach(async () => {
  host = await serve('dist');
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

/** Adds the spindle's own speeds on the Machine screen. */
const addSpeeds = async (...speeds: string[]): Promise<void> => {
  await person.place('Machine');
  await person.link(/^Its fixed speeds/);
  for (const rpm of speeds) {
    await person.link('Add a speed');
    await person.types(rpm);
    await phone.page.locator('ls-field h1').waitFor();
  }
  await person.link('All of this machine');
};

/**
 * The main job, moved by touch from the first screen. Figures are literal: 375/508 and 127 revs are exact fractions
 * worked by hand; 677, 133 rpm from 0.8 × 800 ÷ (1.5 ÷ 3.175 × 2) and 60 × 2.5 ÷ (1.5 × 0.5 × 1.5); blank and drill
 * from ISO 965-2 (M10 6g: 9.968/9.732) and ISO 2306 (8.5); lines from 8 tpi dial plates.
 */
describe('from a first visit to recorded checks', () => {
  it('enter a lathe, look up a thread, set the speed, check, and find it all again with no network', async () => {
    await person.link('Enter my lathe');
    await phone.page.getByLabel('What is it called?').fill('Sturdy');
    await phone.page.getByLabel('Where does it stand?').fill('Back room');
    await person.key('Add this machine');
    await enterProfileA(person);
    await addSpeeds('60', '130', '240', '480', '900');

    // Look up by family.
    await person.place('Threads');
    await person.link('Choose a thread');
    await person.link('ISO metric coarse');
    await person.key('M10');
    await person.reads('16.93 tpi');
    await person.reads('375/508');
    await person.reads('KEEP THE NUT CLOSED');
    await person.reads('9.74 – 9.96 mm');
    await person.reads('8.5 mm');
    await person.key('Round');
    await person.link('Enter the tool nose');
    await person.types('0.15', 'mm');
    await person.reads('0.99 mm');

    // What the drive can do is not a threading speed.
    await person.link('Use it');
    await person.reads('The drive keeps up to 677 rpm');
    await person.reads('Not a threading speed: stopping room not known.');
    await person.key(/^480/);
    await person.reads('Not known at 480 rpm');
    await person.link('Enter stopping room');
    await person.types('2.5', 'mm');
    await person.reads('Highest for this job 133 rpm');
    await person.reads('Stopping room binds');
    await person.reads('Too much at 480 rpm');
    await person.key(/^130/);
    await person.reads('OK at 130 rpm');
    await person.key('Faster by 10 rpm');
    await person.reads('Too much at 140 rpm');
    await person.key('Slower by 10 rpm');
    await person.reads('OK at 130 rpm');

    // Typing narrows the list at each key.
    await person.place('Threads');
    await person.link('Another thread');
    await person.link('Type a size or pitch');
    for (const sign of ['1', '/', '4']) await person.key(sign === '/' ? 'Over' : sign);
    await person.key('1/4-20 UNC');
    await person.reads('1/4-20 UNC');
    // 8 tpi, dial of 16 teeth: 20 tpi may use every second line of the gear, all eight of this dial.
    await person.reads('ANY LINE');
    await person.reads('20 tpi');
    await person.place('Speed');
    // The room was the work's before.
    await person.reads('Not a threading speed: stopping room not known.');
    await person.link('Enter stopping room');
    await person.types('2.5', 'mm');
    // 60 × 2.5 ÷ (1.27 × 0.5 × 1.5) = 157.48
    await person.reads('Highest for this job 157 rpm');

    // The server goes, the browser is killed, the phone is opened again.
    await phone.controlled();
    await person.place('Machine');
    await person.link('Settings, cautions and log');
    await person.sees('Ready offline');
    await person.place('Speed');
    await person.reads('Highest for this job 157 rpm');
    phone.watch.allow(/ERR_CONNECTION_REFUSED|Failed to load resource/);
    await host.close();
    await phone.kill();
    await phone.start();
    await person.reads('Sturdy');
    await person.reads('Highest for this job 157 rpm');
    await person.place('Machine');
    await person.reads('4096');
    await person.reads('6400');
    await person.place('Threads');
    await person.reads('1/4-20 UNC');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('the checks', () => {
  /** Answers everything that is asked, with figures where they are asked for, until nothing is left or a question stops it. */
  const FIGURES: readonly (readonly [RegExp, string])[] = [
    [/end float/i, '0.02'],
    [/backlash/i, '0.1'],
    [/stopping time/i, '0.5'],
    [/ramp/i, '400'],
    [/blank/i, '9.85'],
    [/run-in/i, '10'],
    [/gap/i, '20'],
    [/passes/i, '12'],
  ];
  const question = (): Promise<string> => phone.page.locator('ls-checks h1').innerText();

  const answerAll = async (until: RegExp): Promise<string[]> => {
    const asked: string[] = [];
    for (let n = 0; n < 80; n += 1) {
      const now = (await question()).replace(/\s+/g, ' ');
      if (until.test(now)) return asked;
      asked.push(now);
      const withFigure = FIGURES.find(([pattern]) => pattern.test(now));
      if (withFigure) {
        await person.link('Enter the figure');
        await person.types(withFigure[1]);
      } else
        await person.key(/^DONE/).catch((e: unknown) => {
          throw new Error(`no DONE at: ${asked.join(' | ')}`, { cause: e });
        });
      await expect.poll(async () => (await question()).replace(/\s+/g, ' ')).not.toBe(now);
    }
    throw new Error(`never came to ${until.source}: ${asked.join(' | ')}`);
  };

  it('are asked one at a time, say what they are, and go back when something changes', async () => {
    await person.link('Try an example first');
    await person.key(/^Heron/);
    await person.link('Choose a thread');
    await person.link('ISO metric coarse');
    await person.key('M10');
    await person.link('Use it');
    await person.link('Enter stopping room');
    await person.types('4', 'mm');
    await person.key(/^160/);
    await person.reads('OK at 160 rpm');
    await stopsTested(person);
    await person.place('Checks');

    // A first "not OK" stays, whatever else is answered.
    await person.reads('Belts and pulleys tight?');
    await person.key('NOT OK');
    await person.reads('You recorded this as not OK');
    await person.key('DONE');
    await person.reads('Overload protection tried?');
    const asked = await answerAll(/All checks recorded/);
    expect(asked.slice(-6)).toEqual([
      'Chuck key out?',
      'Work tight?',
      'Guard shut?',
      'Sleeves, hair, gloves?',
      'Handwheel and nut as planned?',
      'Speed as planned?',
    ]);
    expect(await person.words()).toMatch(/All checks recorded \d\d:\d\d/);
    expect(await person.words()).not.toMatch(/\bsafe\b/i);

    // Another speed sends back what rests on it, and nothing else.
    await person.place('Speed');
    await person.key(/^80/);
    await person.place('Checks');
    await person.reads('Speed changed since');
    const again = await answerAll(/All checks recorded/);
    expect(again).toContain('Speed as planned?');
    expect(again).not.toContain('Chuck key out?');

    // A power cut sends the stop tests and the start back.
    await person.link('All checks');
    await person.key('Something changed');
    await person.key('Power was off');
    await person.link(/next one/);
    await person.reads('Is this the machine?');
    await person.reads('Power was off since');
    expect(phone.watch.problems).toEqual([]);
  });

  it('are found again after the browser was killed, the last answer too', async () => {
    await person.link('Try an example first');
    await person.key(/^Heron/);
    await person.link('Choose a thread');
    await person.link('ISO metric coarse');
    await person.key('M8');
    await person.place('Checks');
    await person.reads('Belts and pulleys tight?');
    await person.key('DONE');
    await person.reads('Overload protection tried?');
    await phone.kill();
    await phone.start();
    await person.reads('Overload protection tried?');
    // Undo outlives the page.
    await person.key(/^Undo/);
    await person.reads('Belts and pulleys tight?');
    expect(phone.watch.problems).toEqual([]);
  });
});
