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

  it('takes a key that a wet finger slid on, and none that it slid away from; each once', async () => {
    await phone.page.setViewportSize({ width: 390, height: 844 });
    await phone.page.goto(`${host.url}#/threads`);
    await phone.page.goto(`${host.url}#/threads/type`);
    const finger = await phone.debug();
    const slide = async (name: string, dx: number): Promise<void> => {
      const box = await phone.page.getByRole('button', { name, exact: true }).boundingBox();
      if (!box) throw new Error(`no key ${name}`);
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
        finger.send('Input.dispatchTouchEvent', { type, touchPoints });
      await send('touchStart', [{ x, y }]);
      for (const part of [0.5, 1]) await send('touchMove', [{ x: x + dx * part, y }]);
      await send('touchEnd', []);
    };
    const value = phone.page.locator('ls-pad').locator('.value');
    await slide('7', 0);
    await expect.poll(() => value.innerText()).toBe('7');
    await slide('8', 40);
    await expect.poll(() => value.innerText()).toBe('78');
    await slide('4', 130);
    await slide('9', 0);
    await expect.poll(() => value.innerText()).toBe('789');
    // With a mouse or from a keyboard there is no touch.
    await phone.page.getByRole('button', { name: '5', exact: true }).click();
    await expect.poll(() => value.innerText()).toBe('7895');
    expect(phone.watch.problems).toEqual([]);
  });
});
