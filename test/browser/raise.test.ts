import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scanEverywhere } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
  await person.link('Use it');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Heron at 1.5 mm on its 3 mm screw, 3:1: the motor's 900 rpm bind at 0.8 · 900 ÷ 1.5 = 480; the carriage comes next at
// 60 · 25 ÷ 1.5 = 1000.
describe('what would raise the ceiling', () => {
  it('is tried on the machine’s own figures', async () => {
    await person.link('What would raise it');
    await person.reads('480 rpm');
    await person.reads(
      'Motor speed is the lowest. Next comes carriage speed at 1000 rpm, 2.1 times as fast.',
    );
    // Geared 40:60 the motor turns half as fast, and a step is 3 mm ÷ 3000.
    await person.reads('Pulley on the motor: 40 teeth instead of 20 teeth 960 rpm');
    await person.reads('one step 1 µm');
    await person.seesNot(/Microsteps: /);
    expect(await scanEverywhere(phone.page, 'what would raise it')).toEqual([]);
    await person.link('Back to Speed');
    await person.reads('The drive keeps up to 480 rpm');
    expect(phone.watch.problems).toEqual([]);
  });
});
