import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
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

describe('the pages under a thread', () => {
  it('show the limits of M10 6g and its undercuts', async () => {
    await person.link('Limits, undercuts, drills');
    // ISO 965-2, M10 6g; ISO 4755 by GB/T 3-1997 and DIN 76-1 form A for P 1.5.
    for (const figure of [
      '9.732 – 9.968 mm',
      '8.862 – 8.994 mm',
      'Floor, at least 2.5 mm',
      'Floor, at least 3.2 mm',
    ])
      await person.reads(figure);
    // Tapping drill, ISO 2306.
    await person.reads('8.5 mm');
    await person.key('6H');
    // ISO 965-2, M10 6H.
    await person.reads('9.026 – 9.206 mm');
    await person.reads('8.376 – 8.676 mm');
    await person.key('6g');
    await person.link('Back to the thread');
  });

  it('say what a reading over wires means', async () => {
    await person.link('Measure: wires, gauges');
    // Best wire 0.57735 P; window of ISO 965-2's 8.862 and 8.994 over it: E + 3W − 0.866025 P, and 1.7 µm for the lead.
    await person.reads('Best wire 0.866 mm');
    await enter(person, 'Enter: Wire in use', '0.866', 'mm');
    await person.reads('Least 10.163 mm');
    await person.reads('Most 10.295 mm');
    await enter(person, 'Enter: Reading over three wires', '10.52', 'mm');
    // 10.520 − 3 × 0.866 + 0.866025 × 1.5 − 0.0017 = 9.2193; half the way to 8.928 is 0.146.
    await person.reads('9.219 mm');
    await person.reads('Above the limits: more to take off.');
    await person.reads('0.146 mm');
    await enter(person, /^Reading over three wires/, '10.23', 'mm');
    await person.reads('within limits by your wires; lead and form not checked.');
    await enter(person, /^Reading over three wires/, '10.14', 'mm');
    await person.reads('Below the limits. No infeed corrects that.');
    await enter(person, /^Reading over three wires/, '10.165', 'mm');
    await person.reads('Can’t tell');
    await person.link('Back to the thread');
  });

  it('name what a thread may be, all that can’t be told apart, and take it', async () => {
    await person.link('Another thread');
    await person.link('What is this thread?');
    await enter(person, 'Enter: Outside diameter', '12.6', 'mm');
    await enter(person, 'Enter: Length over crests', '21.2', 'mm');
    await enter(person, 'Enter: Crests in it', '11');
    // 21.2 mm over ten pitches is 12 tpi; half an inch with 12 tpi is Whitworth (BS 84) and a special of ASME B1.1.
    await person.reads('1/2-12 BSW');
    await person.reads('1/2-12 UNS');
    await person.reads('Fits your readings; others may.');
    await person.key('55°');
    await person.key(/^1\/2-12 BSW/);
    await person.reads('12 tpi');
    expect(phone.watch.problems).toEqual([]);
  });
});
