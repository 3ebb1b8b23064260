import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person, /^Bittern/);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('the look-up', () => {
  it('shows two threads found beside one another, upright and with the phone on its side', async () => {
    await phone.page.goto(`${host.url}#/threads/type`);
    for (const key of ['1', '0']) await person.key(key);
    for (const size of [
      { width: 390, height: 844 },
      { width: 844, height: 390 },
    ]) {
      await phone.page.setViewportSize(size);
      for (const name of ['M10×1.5', 'M10×1.25']) {
        const box = await phone.page.getByRole('button', { name, exact: true }).boundingBox();
        expect(box && box.x + box.width, name).toBeLessThanOrEqual(size.width);
      }
    }
  });
});
