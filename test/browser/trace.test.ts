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

const faults = (name: string): Promise<string[]> => pageFaults(phone.page, name);

/** Switches everything off but what is named. */
const only = async (...names: string[]): Promise<void> => {
  const keys = phone.page.locator('ls-trace .grid2').first().locator('button');
  for (const key of await keys.all()) {
    const name = (await key.innerText()).trim();
    const on = (await key.getAttribute('aria-pressed')) === 'true';
    if (on !== names.includes(name)) await person.key(name);
  }
};
const run = async (): Promise<void> => {
  await person.key('Run the model');
  await phone.page.locator('ls-trace-plot').waitFor();
};

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

// Heron: 3 mm screw, 600 full steps a screw rev, 10 microsteps; 4800 counts; M10 × 1.5 6g, pitch-diameter tolerance
// 132 µm (ISO 965-1).
describe('lead error in time', () => {
  it('asks for the speed first', async () => {
    await person.place('Speed');
    await person.link('Lead error along the thread');
    await person.reads('Not known yet: Speed set.');
    await enter(person, 'Set a speed', '160');
    await person.sees('A model with these figures; the lathe was not measured.');
    expect(await faults('lead error, nothing run')).toEqual([]);
  });

  it('runs in a worker, draws, and calls nothing fine that rests on assumed figures', async () => {
    await run();
    await person.reads('The class allows 132');
    await person.reads('assumed figures are true.');
    expect(await faults('lead error, run')).toEqual([]);
  });

  it('says which one spoils it', async () => {
    await only('Encoder wheel runs out', 'Leadscrew off');
    await person.sees('Figures have changed since this was run.');
    await person.key('Which one spoils it?');
    await person.reads('Each alone');
    const words = await person.words();
    // ± 5 µm of the screw against ± 1.5 × 30 ÷ (2π × 20) = 0.36 µm of the wheel.
    const ranks = words.slice(words.indexOf('Each alone'));
    expect(ranks.indexOf('Leadscrew off')).toBeLessThan(ranks.indexOf('Encoder wheel runs out'));
    expect(ranks).toContain('None on: steps and counts alone 0.0 µm');
  });

  it('with one’s own figures gives the closed form, and a standing', async () => {
    await only('Encoder wheel runs out');
    await phone.finger.tapOn(phone.page.locator('ls-trace summary', { hasText: 'The figures' }));
    await enter(person, /^Wheel on the spindle runs out/, '1', 'mm');
    await enter(person, /^Its pitch radius/, '20', 'mm');
    await run();
    // Drunkenness 2 × L·e ÷ (2πR) = 1.5 × 1 ÷ (π × 20) = 23.9 µm, less 0.2 % to 0.5 % by the sectors; × 1.732 = 41 µm.
    const swing = /Swing within one turn ([\d.]+) µm/.exec(await person.words());
    expect(Number(swing?.[1])).toBeGreaterThan(23.6);
    expect(Number(swing?.[1])).toBeLessThan(24.1);
    await person.reads('OK The nut feels the effective diameter changed by 41.');
  });

  it('stops when told, offline too', async () => {
    await enter(person, /^Length of thread/, '5000', 'mm');
    await person.key('Which one spoils it?');
    await person.key('Cancel');
    await person.sees('Run the model');
    await person.seesNot('Running');
    await host.close();
    await enter(person, /^Length of thread/, '20', 'mm');
    await run();
    await person.reads('OK The nut feels the effective diameter changed by 41.');
    expect(phone.watch.problems).toEqual([]);
  });
});
