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

const at = (hash: string): Promise<void> => phone.page.evaluate((h) => void (location.hash = h), hash);

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

// Heron: cross-slide 0.04 mm on the diameter a division, 100 a turn; top slide 0.02 mm.
describe('the plan of passes', () => {
  it('says what is missing, each with a key', async () => {
    await at('#/cut/plan');
    await person.reads('Missing for a plan');
    await person.link('Enter: Tool nose');
    await at('#/threads');
    await person.key('Round');
    await enter(person, 'Enter the tool nose', '0.1');
    await at('#/cut/plan');
    // 0.757772 · 1.5 − 0.1 = 1.0367 mm by 0.02 mm a division: 51 divisions, 1.020 mm.
    await person.reads('Depth 1.037 mm From the nominal diameter');
    await person.reads('1.020 mm');
    await person.reads('DIAMETER');
    expect(await scanEverywhere(phone.page, 'plan of passes, straight in')).toEqual([]);
  });

  it('from the blank as measured to the middle of 6g', async () => {
    await enter(person, 'Enter the blank as measured', '9.85', 'mm');
    // (9.85 − 8.9277) ÷ 2 + 0.433013 · 1.5 − 0.1 = 1.0107 mm.
    await person.reads('1.011 mm');
  });

  it('along the flank: the top slide alone, at 29.5° on its scale', async () => {
    await person.link(/^Straight in/);
    await person.key('Modified flank');
    await person.reads('Top slide set to 29.5°');
    await person.link('Back to the plan');
    await person.reads('29.5°');
    await person.reads('Its handle swung towards the tailstock');
    await person.reads('Cross-slide back to 0 for each pass');
    // 1.0107 ÷ cos 29.5° = 1.1613 mm: 58 divisions of 0.02 mm.
    await person.reads('58 divisions 1.16 mm');
    expect(await scanEverywhere(phone.page, 'plan of passes, modified flank')).toEqual([]);
  });

  it('by turns along both flanks; shared out otherwise; back to what is usual', async () => {
    await person.link(/^Modified flank/);
    await person.key('Alternate flanks');
    await person.key('Equal steps');
    await person.key('Chip area');
    await enter(person, /^Chip area, at most/, '0.05', 'mm²');
    expect(await scanEverywhere(phone.page, 'how the passes are planned')).toEqual([]);
    await person.link('Back to the plan');
    await person.reads('Along the work’s axis');
    await person.key('One less');
    await person.sees(/^After pass \d+ of \d+: /);
    expect(await scanEverywhere(phone.page, 'plan of passes, alternate flanks')).toEqual([]);
    await person.link(/^Alternate flanks/);
    await person.key('All as is usual');
    await person.link('Back to the plan');
    await person.reads('Cross-slide dial reads DIAMETER');
    expect(phone.watch.problems).toEqual([]);
  });
});
