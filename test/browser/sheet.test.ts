import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults, printedPages } from './support/faults';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person, /^Bittern/);
  await chooseM10(person);
  for (const size of ['M12', 'M16', 'M20']) {
    await person.link('Another thread');
    await person.link('ISO metric coarse');
    await person.key(size);
    await phone.page
      .getByRole('heading', { name: new RegExp(`^${size}`) })
      .first()
      .waitFor();
  }
  await person.place('Machine');
  await person.link('Settings sheet');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

/** Threads left out of the sheet as the phone's disk has them: a key shows its change before it is written. */
const leftOut = (): Promise<unknown> =>
  phone.page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('latheside');
        opening.onerror = reject;
        opening.onsuccess = () => {
          const reading = opening.result.transaction('settings').objectStore('settings').get('person');
          reading.onerror = reject;
          reading.onsuccess = () => {
            opening.result.close();
            resolve((reading.result as { body?: { sheetOff?: unknown } } | undefined)?.body?.sheetOff);
          };
        };
      }),
  );

// Bittern: 8 tpi, 4000 pulses through 2 to 1, 1024 lines × 4, servo encoder 10 000 (own reckoning beside each).
describe('the settings sheet', () => {
  it('says what to enter, and how to check it', async () => {
    await person.reads('Edges counted per line 4');
    // 10 × 4096.
    await person.reads('Turn the spindle ten revs by hand to a mark: the counter moves by 40960.');
    // 2.5 mm: 2.5 × 40 ÷ 127 × 8000 ÷ 4096 = 3125/2032. 1.5 mm: 60/127 × 125/64 = 1875/2032.
    await person.reads('M20×2.5 top 3125, bottom 2032 exact');
    await person.reads('M10×1.5 top 1875, bottom 2032 exact');
    // 10 000 ÷ 4000; 4000 × 2500 ÷ 60; 25.4/8 mm ÷ 8000.
    await person.reads('Electronic gear, top and bottom 5 / 2');
    await person.reads('At the motor’s highest speed 166.7 kHz of 250 kHz borne.');
    await person.reads('One step on the carriage 0.397 µm');
    expect(await pageFaults(phone.page, 'settings sheet')).toEqual([]);
  });

  it('leaves out a thread that is switched off, and remembers it', async () => {
    await person.key('M12×1.75');
    expect(await person.words()).not.toMatch(/M12×1.75 top/);
    await expect.poll(leftOut).toEqual(['iso-coarse:M12']);
    await phone.kill();
    await phone.start();
    await person.reads('M16×2 top');
    expect(await person.words()).not.toMatch(/M12×1.75 top/);
    await person.key('M12×1.75');
    await person.reads('M12×1.75 top');
  });

  it('prints on one page of A4, and of Letter', async () => {
    expect(await printedPages(phone.page, 'A4')).toBe(1);
    expect(await printedPages(phone.page, 'Letter')).toBe(1);
    await phone.page.emulateMedia({ media: 'print' });
    await person.seesNot('Print, one page');
    await person.reads('M10×1.5 top 1875, bottom 2032 exact');
    await phone.page.emulateMedia({ media: null });
  });
});
