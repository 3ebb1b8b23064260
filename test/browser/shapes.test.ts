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

const LIMITS = 'Limits, undercuts, drills';
const BACK = 'Back to the thread';

/** Another thread by its family and the key of its size. */
const choose = async (family: string, size: string | RegExp, name: RegExp): Promise<void> => {
  await person.link('Another thread');
  await person.link(family);
  await person.key(size);
  await phone.page.getByRole('heading', { name }).first().waitFor();
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

describe('the tool’s point on the Threads screen', () => {
  it('a full-form insert is chosen by one touch: depth and an oversize blank', async () => {
    await person.key('Full form');
    // (10.05 − 9.026) / 2 + H/3, P 1.5 (ISO 68-1).
    await person.reads('Depth 0.95 mm');
    await person.reads('Full form · radial');
    // 9.968 (ISO 965-2, 6g) and 0.03 to 0.07 over.
    await person.reads('Turn blank to 10.00 – 10.03 mm');
    await person.reads('The insert cuts the crest');
    expect(await faults('shapes, full form')).toEqual([]);
    await person.key(/^Depth/);
    await person.sees(/Reckoned from a blank left 0.05 mm/);
    await person.key('Close');
  });

  it('a nose too large for the root is called out, and what would do is named', async () => {
    await person.key('Round');
    await enter(person, 'Enter the tool nose', '0.4', 'mm');
    // H/4 = 0.325 is the largest radius whose tip passes the nut’s crest (ISO 68-1, P 1.5).
    await person.reads('Too much: 0.74 mm');
    await person.reads('Round 0.4 mm · root not reached, at most 0.32 mm');
    expect(await faults('shapes, nose too large')).toEqual([]);
    await person.link(LIMITS);
    await person.reads('Largest round nose R 0.325 mm');
    await person.reads('Largest flat nose 0.375 mm');
    // h3 of ISO 68-1: 0.613434 P.
    await person.reads('Crest to root 0.920 mm');
    await phone.page.getByRole('img', { name: /the tool’s point dashed in a groove/ }).waitFor();
    expect(await faults('shapes, limits of M10')).toEqual([]);
    await person.link(BACK);
  });
});

describe('threads without limits, flanks or diameter', () => {
  it('a worm is drawn, and has its depth, from its crest alone', async () => {
    await choose('Worm by module', 'Module 2', /^Module 2/);
    await person.key('Full form');
    await person.reads('Turn blank to Not known No diameter of its own');
    // 2.2 modules (DIN 3975).
    await person.reads('Depth 4.40 mm');
    await phone.page
      .getByRole('img', {
        name: /^Module 2 in section to scale: .*included angle 40°, tool nose full form in a groove$/,
      })
      .waitFor();
    expect(await faults('shapes, worm')).toEqual([]);
    await person.link(LIMITS);
    await person.reads('Worms are held to limits as gears are');
    // π × 2.
    await person.reads('Pitch 6.283 mm');
    expect(await faults('shapes, profile of a worm')).toEqual([]);
    await person.link(BACK);
  });

  it('a square thread is half its pitch deep, from a basic size', async () => {
    await choose('Square', '1/2', /^1\/2-6.5 Square/);
    // 25.4 / 6.5 / 2 = 1.954.
    await person.reads('Depth 1.95 mm');
    await person.reads('Turn blank to 0.500 in');
    await person.reads('Basic size, no limits');
    await person.link(LIMITS);
    await person.reads('No standard gives limits for square threads.');
    await person.reads('Width 0.0769 in');
    expect(await faults('shapes, square')).toEqual([]);
    await person.link(BACK);
  });

  it('a taper thread says how many turns the gauge plane may lie off', async () => {
    await choose('Pipe, taper, R', 'R 1/2', /^R 1\/2/);
    await person.link(LIMITS);
    // ISO 7-1, Table 1.
    await person.reads('Gauge plane outside ± 1.8 mm ± 1 turn');
    await person.reads('Gauge plane inside ± 2.3 mm ± 1.25 turns');
    expect(await faults('shapes, taper')).toEqual([]);
    await person.link(BACK);
  });

  it('two starts of Acme have no limits, and it is said why', async () => {
    await choose('Acme', '5/16', /^5\/16-14 Acme/);
    await enter(person, 'Single start', '2');
    await person.link(LIMITS);
    await person.sees('The limits known here are for a single start; none are made up for several.');
    await person.sees('2 starts');
    expect(phone.watch.problems).toEqual([]);
  });
});
