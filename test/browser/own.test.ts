import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const heading = (name: string | RegExp): Promise<void> =>
  phone.page.getByRole('heading', { name }).first().waitFor();

const faults = (name: string): Promise<string[]> => pageFaults(phone.page, name);

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await person.link('Choose a thread');
  await person.link('Own threads');
  await heading('Own threads');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('a person’s own threads', () => {
  it('are entered figure by figure, cut like any other, and outlive a killed phone', async () => {
    expect(await faults('own threads, none')).toEqual([]);
    await person.key('New thread');
    await enter(person, 'Enter: Major diameter', '18', 'mm');
    await enter(person, 'Enter: Pitch', '1.5', 'mm');
    await person.link('Single start');
    await person.types('2');
    await person.key('Left-hand');
    await heading('18×Ph3P1.5-LH');
    // The way back is offered when the change is on the disk.
    await person.reads('Undo the change of 18×Ph3P1.5 Undo');
    await phone.kill();
    await phone.start();
    await heading('18×Ph3P1.5-LH');
    await person.key('Use it');
    await heading(/^18/);
    await person.reads('Own thread · 6g · left-hand');
    await person.reads('Lead, 2 starts 3 mm');
    // ISO 965-2 gives M18 × 1.5 6g a major diameter of 17.732 to 17.968: turned between 17.74 and 17.96.
    await person.reads('17.74 – 17.96');
  });

  it('have flanks of any angle, refused in words until they can be', async () => {
    await person.link('Another thread');
    await person.link('Own threads');
    await person.key('New thread');
    await enter(person, 'Enter: Major diameter', '30', 'mm');
    await enter(person, 'Enter: Pitch', '4', 'mm');
    await person.key('Another angle');
    await person.reads('The angle between the flanks is missing.');
    await enter(person, 'Enter: Angle between the flanks', '40');
    await enter(person, 'Enter: Width of the flat at the crest', '0.8', 'mm');
    // (4 − 0.8) / (2 tan 20°) = 4.396: the flanks meet there.
    await enter(person, 'Enter: Height of thread on one side', '4.5', 'mm');
    await person.reads('At this angle the flanks have met before that depth.');
    expect(await faults('own thread, refused')).toEqual([]);
    await person.key('Use its pitch and lead alone');
    await heading('4 mm');
    await person.link('Another thread');
    await person.link('Own threads');
    await person.link(/^30×4/);
    await enter(person, /^Height of thread on one side/, '2.5', 'mm');
    await person.seesNot('At this angle the flanks have met');
    await phone.page.getByRole('img', { name: /included angle 40°/ }).waitFor();
    expect(await faults('own thread, complete')).toEqual([]);
    await phone.page.getByLabel('Name, if it has one').fill('Vice screw');
    await person.key('Keep the name');
    await heading('Vice screw');
  });

  it('count at once in the job that cuts them, and the way back goes all the way', async () => {
    await person.reads('This is the thread that is to be cut');
    await enter(person, /^Pitch: 4 mm/, '5', 'mm');
    await person.place('Threads');
    await heading('Vice screw');
    await person.reads('Pitch 5 mm');
    await person.link('Change this thread of yours');
    await person.reads('Pitch: 5 mm');
    await person.key('Undo');
    await person.reads('Pitch: 4 mm');
    await person.place('Threads');
    await person.reads('Pitch 4 mm');
  });

  it('that aren’t there are said not to be', async () => {
    await phone.page.evaluate(() => (location.hash = '#/threads/own/elsewhere'));
    await person.reads('There is no such thread on this phone.');
    await person.link('Own threads');
    await person.link('Vice screw');
    await heading('Vice screw');
    await person.place('Threads');
  });

  it('are found by typing and among what a thread may be, with no network', async () => {
    await phone.controlled();
    phone.watch.allow(/ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED|Failed to load resource/);
    await host.close();
    await phone.page.reload();
    await heading('Vice screw');
    await person.key('Add to favourites');
    await person.link('Another thread');
    await phone.page.getByRole('button', { name: 'Vice screw' }).first().waitFor();
    await person.link('Type a size or pitch');
    for (const key of ['3', '0', 'Space', '4']) await person.key(key);
    await person.key('Vice screw');
    await heading('Vice screw');
    await person.link('Another thread');
    await person.link('What is this thread?');
    await person.key('30°');
    await enter(person, 'Enter: Outside diameter', '17.9', 'mm');
    await person.key('60°');
    await enter(person, 'Enter: Length over crests', '15.0', 'mm');
    await enter(person, 'Enter: Crests in it', '11');
    // 15.0 over ten pitches: 1.5. The one with two starts stands beside the catalogued M18 × 1.5.
    await person.sees('18×Ph3P1.5-LH');
    await person.sees('M18×1.5');
    await person.key('Clear all readings');
    await person.sees('Nothing measured yet.');
    await person.key('Undo');
    await person.sees('M18×1.5');
  });

  it('are put away and brought back', async () => {
    await person.place('Threads');
    await person.link('Another thread');
    await person.link('Own threads');
    await person.link(/^Vice screw/);
    await person.key('Put it away');
    await heading('Own threads');
    await person.seesNot(/^Vice screw$/);
    await person.key('Bring back Vice screw');
    await phone.page.getByRole('link', { name: 'Vice screw' }).waitFor();
    expect(phone.watch.problems).toEqual([]);
  });
});
