import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { MISTAKE_IDS, MISTAKES, mistakesAt } from '../../src/core/cut/mistakes';
import { routeOf } from '../../src/screens/shell/routes';
import { mistakeLinksAt, mistakeText } from '../../src/text/mistakes';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { beginRun } from './support/run';
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
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

const go = async (address: string): Promise<void> => {
  await phone.page.evaluate((hash) => (location.hash = hash), `#/${address}`);
  await phone.page
    .locator(routeOf(`#/${address}`, 'threads').tag)
    .first()
    .waitFor();
};

/** Every address from which a mistake is reached; the pass has to be begun first. */
const ADDRESSES = [...new Set(MISTAKE_IDS.flatMap((id): readonly string[] => MISTAKES[id].from))];
const WHILE_CUTTING = 'cut/pass';

/** What is missing of the links at an address, each seen by its name. */
const lacking = async (address: string): Promise<string[]> => {
  await go(address);
  const found: string[] = [];
  for (const { label } of mistakeLinksAt(address)) {
    const link = phone.page.getByRole('link', { name: label, exact: true });
    await link.waitFor({ timeout: 5000 }).catch(() => found.push(`${address}: ${label}`));
  }
  return found;
};

describe('the common mistakes', () => {
  it('are linked from every place where they are made', async () => {
    expect(ADDRESSES.length).toBeGreaterThan(20);
    const found: string[] = [];
    for (const address of ADDRESSES.filter((a) => a !== WHILE_CUTTING))
      found.push(...(await lacking(address)));
    expect(found).toEqual([]);
  });

  it('lead there and back: from the wires to what spoils them, and to where they are chosen', async () => {
    await go('threads/measure');
    const [wires] = mistakesAt('threads/measure');
    if (!wires) throw new Error('no mistake in measuring');
    await person.link('Common mistake: wires of another size');
    await person.heads(mistakeText(wires).title);
    await person.reads(mistakeText(wires).avoid);
    expect(await pageFaults(phone.page, 'a mistake')).toEqual([]);
    await person.key('Back to where you were');
    await person.heads(/^Measure M10/);
    await go('machine/field/encoderLines');
    await person.link('Common mistake: lines taken for edges');
    await person.link('Edges counted per line');
    await person.heads('How many edges per line does the controller count?');
  });

  it('stand in a list under Cut', async () => {
    await person.place('Cut');
    await person.link('Common mistakes');
    await person.heads('Common mistakes');
    for (const [i, id] of MISTAKE_IDS.entries()) await person.reads(`${i + 1}. ${mistakeText(id).title}`);
    expect(await pageFaults(phone.page, 'common mistakes')).toEqual([]);
    await person.link(/^4\. /);
    await person.heads('Nut closed on a wrong mark');
  });

  it('are at hand while cutting', async () => {
    await beginRun(phone.page, { cross: [20, 40] });
    await person.sees(/cut 1 of 2/i);
    expect(await lacking(WHILE_CUTTING)).toEqual([]);
    await person.link('Common mistake: nut opened just once');
    await person.heads('Nut opened just once');
    await person.key('Back to where you were');
    await person.sees(/cut 1 of 2/i);
    expect(phone.watch.problems).toEqual([]);
  });
});
