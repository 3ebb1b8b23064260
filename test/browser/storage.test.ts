import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scan } from './support/axe';
import { DIST } from './support/builds';
import { Finger } from './support/finger';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeEach(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

/** Sets the leadscrew's pitch to one of its usual values, from any screen. */
const setPitch = async (who: Person, key: string): Promise<void> => {
  await who.place('Machine');
  await who.link(/^Leadscrew pitch/);
  await who.key(key);
};
const setTeeth = async (who: Person, key: string): Promise<void> => {
  await who.place('Machine');
  await who.link(/^Thread dial gear/);
  await who.key(key);
};

/** One row of the database as it lies on the disk, or every row of a store. */
const rows = (page: Page, store: string): Promise<unknown[]> =>
  page.evaluate(
    (name) =>
      new Promise<unknown[]>((resolve, reject) => {
        const asked = indexedDB.open('latheside');
        asked.onerror = () => reject(new Error(asked.error?.name));
        asked.onsuccess = () => {
          const db = asked.result;
          const all = db.transaction(name).objectStore(name).getAll();
          all.onsuccess = () => {
            db.close();
            resolve(all.result);
          };
        };
      }),
    store,
  );
const put = (page: Page, store: string, row: unknown): Promise<void> =>
  page.evaluate(
    ([name, value]) =>
      new Promise<void>((resolve, reject) => {
        const asked = indexedDB.open('latheside');
        asked.onerror = () => reject(new Error(asked.error?.name));
        asked.onsuccess = () => {
          const work = asked.result.transaction(name, 'readwrite');
          work.objectStore(name).put(value);
          work.oncomplete = () => {
            asked.result.close();
            resolve();
          };
        };
      }),
    [store, row] as const,
  );

describe('two tabs', () => {
  it('show each other’s changes', async () => {
    await takeExample(person);
    const page = await phone.newTab();
    await page.getByText('Heron').first().waitFor();
    const second = new Person({ page, finger: new Finger(page) });
    await phone.page.bringToFront();
    await setPitch(person, '4 mm');
    await page.bringToFront();
    await second.place('Machine');
    await second.reads('Leadscrew pitch 4 mm');
    expect(phone.watch.problems).toEqual([]);
  });

  it('of which one slept: different fields are both kept, the same field is said', async () => {
    await takeExample(person);
    // A tab that slept hears nothing of what others wrote.
    await phone.context.addInitScript('delete window.BroadcastChannel');
    const page = await phone.newTab();
    const asleep = new Person({ page, finger: new Finger(page) });
    await asleep.sees('Heron');
    await phone.page.bringToFront();
    await setPitch(person, '4 mm');
    await person.reads('Leadscrew pitch 4 mm');

    await page.bringToFront();
    await setTeeth(asleep, '20 teeth');
    await asleep.reads('Thread dial gear 20 teeth');
    await asleep.reads('Leadscrew pitch 4 mm');
    expect(await asleep.words()).not.toContain('Changed in two tabs');

    await phone.page.bringToFront();
    await setPitch(person, '6 mm');
    await person.reads('Leadscrew pitch 6 mm');
    await page.bringToFront();
    await setPitch(asleep, '2 mm');
    await asleep.reads(
      'Changed in two tabs at once. The newer value is kept. Look at these: Leadscrew pitch',
    );
    await asleep.reads('Leadscrew pitch 2 mm');
    expect(await scan(page)).toEqual([]);
    await phone.page.reload();
    await person.reads('Leadscrew pitch 2 mm');
    await person.reads('Thread dial gear 20 teeth');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a phone that is full', () => {
  it('says so, keeps what was typed, and saves it when there is room again', async () => {
    await takeExample(person);
    await chooseM10(person);
    // The browser asks for the room left only now and then: one just started does so at its first write.
    await phone.quit();
    await phone.start();
    const debug = await phone.debug();
    const origin = new URL(host.url).origin;
    await debug.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });

    await setPitch(person, '4 mm');
    await person.reads('Not saved: this phone’s storage is full.');
    await person.reads('Leadscrew pitch 4 mm');
    expect(await scan(phone.page)).toEqual([]);

    // An answer is not recorded unless it is on the disk, and the question stays.
    await person.place('Checks');
    await person.reads('Belts and pulleys tight?');
    await person.key('DONE');
    await person.reads('Not saved. Nothing was recorded; try again.');
    await person.reads('Belts and pulleys tight?');
    await person.link('All checks');
    await person.link(/^Blank measured/);
    await person.link('Enter the figure');
    await person.types('9.85');
    await person.reads('Not saved. Nothing was recorded; try again.');
    expect(await phone.page.locator('ls-pad .value').innerText()).toContain('9.85');

    await debug.send('Storage.overrideQuotaForOrigin', { origin });
    await person.key('Done');
    await phone.page.locator('ls-pad').waitFor({ state: 'detached' });
    await person.place('Machine');
    await person.key('Save again');
    await person.seesNot(/storage is full/);
    await phone.kill();
    await phone.start();
    await person.reads('Leadscrew pitch 4 mm');
    await person.place('Checks');
    await person.link('All checks');
    await phone.page.getByRole('link', { name: /^Blank measured\?\s+(Done|Close)/ }).waitFor();
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a browser that may store nothing', () => {
  it('works from memory and says so', async () => {
    await phone.close();
    phone = await Phone.open(host.url, { storesNothing: true });
    person = new Person(phone);
    await person.reads('This browser keeps nothing');
    expect(await scan(phone.page)).toEqual([]);
    await takeExample(person);
    await chooseM10(person);
    await person.reads('16.93 tpi');
    await setPitch(person, '4 mm');
    await person.reads('Leadscrew pitch 4 mm');
    await person.reads('is gone when the page is closed');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a database that a newer version wrote', () => {
  it('is left alone, and that is said', async () => {
    // The icon that a browser asks for beside any page.
    phone.watch.allow(/404 \(Not Found\)/);
    await phone.page.goto(`${host.url}manifest.webmanifest`);
    await phone.page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const gone = indexedDB.deleteDatabase('latheside');
          gone.onerror = () => reject(new Error('not deleted'));
          gone.onsuccess = () => {
            const asked = indexedDB.open('latheside', 99);
            asked.onupgradeneeded = () => {
              asked.result.createObjectStore('machines', { keyPath: 'id' }).put({ id: 'one', of: 'later' });
            };
            asked.onerror = () => reject(new Error('not made'));
            asked.onsuccess = () => {
              asked.result.close();
              resolve();
            };
          };
        }),
    );
    await phone.page.goto(host.url);
    await person.reads('What is stored here was written by a newer version of this app.');
    await person.reads('Nothing is touched.');
    await takeExample(person);
    await chooseM10(person);
    await person.reads('16.93 tpi');
    expect(await rows(phone.page, 'machines')).toEqual([{ id: 'one', of: 'later' }]);
    const versions = await phone.page.evaluate(async () =>
      (await indexedDB.databases()).map((d) => d.version),
    );
    expect(versions).toEqual([99]);
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('what was saved', () => {
  it('is there after the browser was killed the moment it was said', async () => {
    await takeExample(person);
    await setPitch(person, '4 mm');
    await phone.page.getByRole('link', { name: /^Leadscrew pitch\s+4 mm/ }).waitFor();
    await phone.kill();
    await phone.start();
    await person.reads('Leadscrew pitch 4 mm');
    expect(phone.watch.problems).toEqual([]);
  });

  it('comes back with its job when a machine that was put away is brought back, even after a kill', async () => {
    await takeExample(person);
    await chooseM10(person);
    await person.place('Machine');
    await person.key('Put Heron away');
    await person.reads('Your lathe, its drive, and every thread');
    await person.reads('Bring back Heron');
    await phone.kill();
    await phone.start();
    await person.reads('Your lathe, its drive, and every thread');
    await person.link(/^No machine yet/);
    await person.key(/^Bring back Heron/);
    await person.reads('Counts per spindle rev');
    await person.place('Threads');
    await person.reads('16.93 tpi');
    expect(phone.watch.problems).toEqual([]);
  });

  it('and can’t be read is said and kept; one field that can’t be read is not known', async () => {
    await takeExample(person);
    const [heron] = (await rows(phone.page, 'machines')) as { body: { profile: Record<string, unknown> } }[];
    const scrap = { id: 'scrap', torn: true };
    await put(phone.page, 'machines', scrap);
    const profile = { ...heron?.body.profile, screwPitch: 'torn' };
    await put(phone.page, 'machines', { ...heron, body: { ...heron?.body, profile } });
    await phone.page.reload();
    await person.place('Machine');
    await person.reads('Leadscrew pitch: These could not be read');
    await person.reads('Leadscrew pitch ? Not known');
    expect(await scan(phone.page)).toEqual([]);
    await person.link('Another machine');
    await person.reads('One machine on this phone can’t be read by this version. Nothing was thrown away');
    expect(await scan(phone.page)).toEqual([]);
    await setPitch(person, '3 mm');
    await person.seesNot(/could not be read/);
    expect(await rows(phone.page, 'machines')).toContainEqual(scrap);
    expect(phone.watch.problems).toEqual([]);
  });
});
