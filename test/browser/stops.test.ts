import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { sideways } from './support/axe';
import { chooseM10, enter, takeExample } from './support/screens';
import { textFaults, textSize } from './support/text';
import { unroll } from './support/touch';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const at = (hash: string): Promise<void> =>
  phone.page.evaluate((to) => {
    location.hash = to;
  }, hash);

/** Answers a test as seen; the keys rest a moment after each. */
const seen = async (id: string): Promise<void> => {
  await at(`#/machine/stops/${id}`);
  await phone.page.locator('ls-stops .answers:not(.resting)').waitFor();
  await person.key('SEEN AS SAID');
  await person.reads('The app did not see it.');
};

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await phone.controlled();
  await takeExample(person);
  await chooseM10(person);
  await person.place('Machine');
  await person.link('Settings, cautions and log');
  await person.sees('Ready offline');
  phone.watch.allow(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  await host.close();
});
afterAll(async () => {
  await phone?.close();
});

// All of it with no network.
describe('stop tests', () => {
  it('are listed in order, none recorded, with what doesn’t apply and why', async () => {
    await person.place('Machine');
    await person.link('Stop tests');
    await person.reads('19 tests due');
    await person.reads('1 Pressed at rest Not done');
    await person.reads('16 Reversed while running Doesn’t apply: the chuck is screwed on');
    await person.reads('20 Within reach Not done');
    expect(await pageFaults(phone.page, 'stop tests, none')).toEqual([]);
    await at('#/checks/item/stop-tests');
    await person.reads('Not known Tests of the stop aren’t recorded');
  });

  it('the arrangement is described by choices, and judged from what is entered', async () => {
    await at('#/machine/stops');
    await person.link(/^How the stop is arranged/);
    await person.reads('Nothing against it in what you entered.');
    await person.reads('Stops by taking the power away at once: category 0. IEC 60204-1, 9.2');
    await person.link(/^Starting again/);
    await person.key(/^The release alone/);
    await person.reads(
      'Why it is no emergency stop Starts on the release. It may only permit a start. ISO 13850:2015, 4.3',
    );
    await person.link(/^The stop button cuts/);
    await person.key(/^The drive’s enable only/);
    await person.reads('Enable input left open ? Not known');
    await person.reads('The stop and the spindle ? Not known');
    expect(await pageFaults(phone.page, 'arrangement, inadequate')).toEqual([]);
    await person.link(/^Enable input left open/);
    await person.key(/^It is enabled/);
    await person.reads('The enable is active when open');
    await person.key('Undo');
    await person.key('Undo');
    await person.key('Undo');
    await person.reads('Nothing against it in what you entered.');
    expect(await pageFaults(phone.page, 'arrangement')).toEqual([]);
  });

  it('a test shows its cautions first, and is recorded as what a person saw', async () => {
    await at('#/machine/stops/stop-press-at-rest');
    await person.reads('Isolate the spindle’s motor, so that it can’t start');
    expect(await pageFaults(phone.page, 'pressed at rest')).toEqual([]);
    await seen('stop-press-at-rest');
    await person.reads('You recorded that nothing followed and the motor had no power');
    await person.reads('Recorded before');
    await person.link('Next: Pressed while moving');
    await person.reads('This one with the half-nut closed');
    expect(await pageFaults(phone.page, 'pressed while moving')).toEqual([]);
  });

  it('the distance is asked for, and held against the room of the job', async () => {
    await person.key('SEEN AS SAID');
    await person.reads('Enter how far it went first.');
    await enter(person, /^How far it went/, '5', 'mm');
    await person.key('SEEN AS SAID');
    await person.reads('the stopping room of the job isn’t known');
    expect(await pageFaults(phone.page, 'pressed while moving, refused')).toEqual([]);
    await enter(person, 'Enter: Stopping room', '4', 'mm');
    await person.reads('Stopping room of this job: 4 mm');
    await person.key('SEEN AS SAID');
    await person.reads('You recorded that carriage and spindle stopped');
    await person.reads('How far it went: 5 mm, further than there was room for');
    await at('#/checks/item/stop-tests');
    await person.reads('Too much You recorded that a test of the stop was not as it must be.');
    await at('#/machine/stops/stop-press-moving');
    await enter(person, /^How far it went/, '3', 'mm');
    await person.key('SEEN AS SAID');
    await person.reads('How far it went: 3 mm');
    await at('#/checks/item/stop-tests');
    await person.reads('Not known Tests of the stop aren’t recorded');
  });

  it('one that failed can be taken back by undo, and makes the check too much until it is done anew', async () => {
    await at('#/machine/stops/stop-release');
    await person.key('NOT AS SAID');
    await person.reads('You recorded that it was not as it must be');
    await person.key('Undo');
    await person.reads('Released Not done');
    await phone.page.locator('ls-stops .answers:not(.resting)').waitFor();
    await person.key('NOT AS SAID');
    await person.reads('You recorded that it was not as it must be');
    await at('#/checks/item/stop-tests');
    await person.reads('Too much You recorded that a test of the stop was not as it must be.');
    expect(await pageFaults(phone.page, 'check of the stop, failed')).toEqual([]);
    await at('#/checks/item/stop-release');
    await person.reads('under Stop tests that it was not as it must be');
    await seen('stop-release');
    await person.reads('You recorded that the release started nothing');
    await at('#/checks/item/stop-tests');
    await person.reads('Not known');
  });

  it('all of them recorded, the check holds, and says only what was recorded', async () => {
    for (const id of ['stays-in', 'separate-start', 'start-held', 'power-returns', 'brown-out'])
      await seen(`stop-${id}`);
    for (const id of ['wire-open', 'channel-bridged', 'encoder-lost', 'controller-frozen', 'drive-off'])
      await seen(`stop-${id}`);
    for (const id of ['feedback-open', 'lock-off', 'reach', 'drive-alarm', 'carriage-limit'])
      await seen(`stop-${id}`);
    await at('#/machine/stops/stop-wire-short');
    await phone.page.locator('ls-stops .answers:not(.resting)').waitFor();
    await person.key('Nothing of the kind here');
    await person.reads('You recorded that there is nothing of the kind here');
    await at('#/machine/stops');
    await person.reads('No test due');
    expect(await pageFaults(phone.page, 'stop tests, recorded')).toEqual([]);
    await at('#/checks/item/stop-tests');
    await person.reads('Close You recorded each test that applies, but');
    await at('#/checks/item/stop-latches');
    await person.reads('You recorded that you saw it, under Stop tests.');
  });

  it('outlive a phone that dies', async () => {
    await phone.kill();
    await phone.start();
    await person.sees('Does the stop stay in?');
    await at('#/machine/stops');
    await person.reads('No test due');
    await person.reads('20 Within reach You recorded that either hand reaches it');
  });

  it('lapse by themselves when the arrangement changes, or the wiring', async () => {
    await at('#/machine/stops/how');
    await person.link(/^The spindle comes to rest/);
    await person.key(/^It is braked/);
    await person.reads('The spindle is braked to rest.');
    await at('#/machine/stops');
    await person.reads('19 tests due');
    await person.reads('20 Within reach Lapsed: Stop changed since');
    await person.key('Undo');
    await person.reads('No test due');
    await at('#/checks/list');
    await person.key('Something changed');
    await person.key('Wiring was changed');
    await at('#/machine/stops');
    await person.reads('20 Within reach Lapsed: Wiring was changed since');
    expect(await pageFaults(phone.page, 'stop tests, lapsed')).toEqual([]);
  });

  it('hold text of twice the size', async () => {
    const { page } = phone;
    for (const hash of ['', '/how', '/stop-press-moving', '/stop-wire-short']) {
      await at(`#/machine/stops${hash}`);
      await person.reads(hash.startsWith('/stop-') ? 'SEEN AS SAID' : 'Clause numbers partly from memory');
      await textSize(page, 200);
      await unroll(page);
      expect([hash, await textFaults(page), await sideways(page)]).toEqual([hash, [], 0]);
      await textSize(page, 100);
      await page.setViewportSize({ width: 390, height: 844 });
    }
    expect(phone.watch.problems).toEqual([]);
  });
});
