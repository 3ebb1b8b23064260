import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scanEverywhere } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { touchFaults, unroll } from './support/touch';
import { everyCutScreen, everyScreen } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('every screen and state at three widths, bright and dark', () => {
  it('has nothing that axe finds wrong and nothing wider than the screen', { timeout: 400_000 }, async () => {
    const found: string[] = [];
    await everyScreen(person, async (name) => {
      found.push(...(await scanEverywhere(phone.page, name)));
    });
    expect(found).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });

  it('the same once all is recorded and while a cut runs', { timeout: 200_000 }, async () => {
    const found: string[] = [];
    await everyCutScreen(person, async (name) => {
      found.push(...(await scanEverywhere(phone.page, name)));
      await unroll(phone.page);
      found.push(...(await touchFaults(phone.page)).map((fault) => `${name}: ${fault}`));
      await phone.page.setViewportSize({ width: 390, height: 844 });
    });
    expect(found).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });
});
