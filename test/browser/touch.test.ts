import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { everyScreen } from './support/screens';
import { staying } from './support/staying';
import { pointsIn, textFaults, textSize } from './support/text';
import { touchFaults, unroll } from './support/touch';
import { sideways } from './support/axe';
import { glimpse } from './support/shots';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url, { locale: 'de-DE' });
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('every screen and state', () => {
  it(
    'can be hit as the design asks, holds text of twice the size, writes the phone’s mark',
    {
      timeout: 480_000,
    },
    async () => {
      const { page } = phone;
      const person = new Person(phone);
      const [small, large, points]: [string[], string[], string[]] = [[], [], []];
      await everyScreen(person, async (name) => {
        const note = (list: string[], faults: string[]): void => {
          list.push(...faults.map((fault) => `${name}: ${fault}`));
        };
        for (const width of [320, 390]) {
          await unroll(page, width);
          note(
            small,
            (await touchFaults(page)).map((fault) => `${width}: ${fault}`),
          );
        }
        await page.setViewportSize({ width: 640, height: 360 });
        note(
          small,
          (await touchFaults(page, 64)).map((fault) => `on its side: ${fault}`),
        );
        note(points, pointsIn(await person.words()));
        await textSize(page, 200);
        await unroll(page);
        note(large, await staying(page, textFaults));
        if ((await sideways(page)) > 0) note(large, ['wider than the screen']);
        await glimpse(page, `large ${name}`);
        await textSize(page, 100);
        await page.setViewportSize({ width: 390, height: 844 });
      });
      expect(small).toEqual([]);
      expect(large).toEqual([]);
      expect(points).toEqual([]);
    },
  );
});
