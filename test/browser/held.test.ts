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

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person, /^Bittern/);
  await chooseM10(person);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Bittern: 8 tpi, 4000 pulses through 2 to 1, 1024 lines × 4. M10 × 1.5: 60/127 × 8000/4096 = 1875/2032 (own reckoning).
describe('how the ratio is held', () => {
  it('is exact in two whole numbers', async () => {
    await person.link('How the ratio is held');
    await person.reads('Two whole numbers');
    await person.reads('Exact ratio 1875/2032');
    await person.reads('Over 300 mm 0.000 µm');
    await person.reads('Nothing adds up');
    expect(await faults('held, exact')).toEqual([]);
  });

  it('is 286 ppm off in three decimals: too much for a leadscrew', async () => {
    await person.link('Change how it is held');
    await person.key(/^A decimal number/);
    await person.link('Enter: Ratio: decimals');
    await person.key('3 digits');
    // 0.923 × 2032 ÷ 1875 − 1 = 0.536 ÷ 1875 = 285.87 ppm.
    await person.reads('Off by 285.9 ppm');
    await person.reads('Over 25.4 mm 7.3 µm');
    await person.reads('Over 100 mm 28.6 µm');
    await person.reads('Over 300 mm 85.8 µm');
    await person.reads('Too much: 85.8 µm');
    expect(await faults('held, decimals')).toEqual([]);
  });

  it('and good enough for a bolt whose nut stays closed', async () => {
    await person.key('Fastener');
    // Over 1.5 d = 15 mm 4.288 µm; Td2 132 µm (ISO 965-1): 0.5 × 132 ÷ 1.732 = 38.1; 4.288 × 1.732 = 7.4.
    await person.reads('Close: 4.3 µm');
    await person.reads('Allowed 38.1 µm');
    await person.reads('Effective diameter acts larger by 7.4 µm');
    // 285.87 ppm × 1.5 mm × 60 revs × 13 pickings-up.
    await person.reads('Groove moved by the last pass Too much: 334 µm');
    await person.reads('Keep the nut closed from first pass to last');
    await enter(person, 'Enter the length of the thread', '30', 'mm');
    await person.reads('This thread, 30 mm 8.6 µm');
  });

  it('stops counting in single precision', async () => {
    await person.link('Change how it is held');
    await person.key(/^Single precision, multiplied/);
    // 2^24 ÷ 4096 = 4096 revs.
    await person.reads('after 16777216 counts, that is 4096 revs');
    await person.link('Change how it is held');
    await person.key(/^A step rate, from rpm/);
    await person.reads('Your controller sends a step rate. No ratio is held');
  });
});
