import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { readDocument } from '../../src/core/carry';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let folder: string;
const phones: Phone[] = [];

const newPhone = async (): Promise<{ phone: Phone; page: Page; person: Person }> => {
  const phone = await Phone.open(host.url);
  phones.push(phone);
  await phone.controlled();
  return { phone, page: phone.page, person: new Person(phone) };
};

beforeEach(async () => {
  host = await serve(DIST);
  folder = mkdtempSync(join(tmpdir(), 'latheside-ways-'));
});
afterEach(async () => {
  for (const phone of phones.splice(0)) await phone.close();
  await host.close();
  rmSync(folder, { recursive: true, force: true });
});

const heading = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('heading', { name }).first().waitFor();

const toFiles = async ({ person, page }: { person: Person; page: Page }): Promise<void> => {
  await person.place('Machine');
  await person.link('Share, back up, open a file');
  await heading(page, 'Share, back up, open a file');
};

/** A file the app made, by its key; where it is and what is in it. */
const made = async (page: Page, person: Person, key: string): Promise<{ path: string; text: string }> => {
  const saved = page.waitForEvent('download');
  await person.key(key);
  const path = join(folder, `${phones.length} ${key}.json`);
  await (await saved).saveAs(path);
  await person.sees('Saved among this phone’s downloads.');
  return { path, text: readFileSync(path, 'utf8') };
};

describe('a file reaches the app', () => {
  it('dropped on the page, and handed over by the system', async () => {
    const from = await newPhone();
    await takeExample(from.person);
    await toFiles(from);
    const { text } = await made(from.page, from.person, 'Share Heron');

    const dropped = await newPhone();
    await dropped.person.link('Open a file');
    await heading(dropped.page, 'Share, back up, open a file');
    const transfer = await dropped.page.evaluateHandle((content) => {
      const data = new DataTransfer();
      data.items.add(new File([content], 'heron.json', { type: 'application/json' }));
      return data;
    }, text);
    await dropped.page.locator('ls-carry').dispatchEvent('drop', { dataTransfer: transfer });
    await heading(dropped.page, 'A machine from elsewhere');
    await dropped.person.reads('Heron');

    // The system opens the app at the address that the manifest names for files, and hands the file over.
    const manifest = JSON.parse(readFileSync(join(DIST, 'manifest.webmanifest'), 'utf8')) as {
      file_handlers: { action: string; accept: Record<string, string[]> }[];
    };
    const [handler] = manifest.file_handlers;
    expect(handler?.accept).toEqual({ 'application/json': ['.json'] });
    const handed = await newPhone();
    await handed.page.addInitScript((content) => {
      const files = [{ getFile: () => Promise.resolve(new File([content], 'heron.json')) }];
      Object.defineProperty(window, 'launchQueue', {
        value: { setConsumer: (take: (params: object) => void) => take({ files }) },
      });
    }, text);
    await handed.page.goto('about:blank');
    await handed.page.goto(new URL(handler?.action ?? '', host.url).href);
    await heading(handed.page, 'A machine from elsewhere');
    await handed.person.key('Bring it in');
    await heading(handed.page, 'Brought in');
  });

  it('leaves it by the system’s share sheet; as plain text where that takes no other', async () => {
    const { page, person, phone } = await newPhone();
    await takeExample(person);
    await page.addInitScript(() => {
      const sheet = { shared: [] as { name: string; text: string }[], plain: false, away: false };
      Object.assign(window, { sheet });
      Object.assign(navigator, {
        canShare: ({ files = [] }: { files?: File[] }) =>
          !sheet.plain || files.every((f) => f.type === 'text/plain'),
        share: async ({ files = [] }: { files?: File[] }) => {
          if (sheet.away) throw new DOMException('put away', 'AbortError');
          for (const f of files) sheet.shared.push({ name: f.name, text: await f.text() });
        },
      });
    });
    await page.reload();
    const sheet = (part: object): Promise<void> =>
      page.evaluate((p) => {
        Object.assign((window as unknown as { sheet: object }).sheet, p);
      }, part);
    const shared = (): Promise<{ name: string; text: string }[]> =>
      page.evaluate(() => (window as unknown as { sheet: { shared: never[] } }).sheet.shared);
    await toFiles({ person, page });
    await person.key('Share Heron');
    await person.sees('Handed on. Look whether it arrived before you rely on it.');
    await sheet({ plain: true });
    await person.key('Share Heron');
    await expect.poll(async () => (await shared()).length).toBe(2);
    const [first, second] = await shared();
    expect(first?.name).toMatch(/^Heron .*\.latheside\.json$/);
    expect(second?.name).toMatch(/^Heron .*\.latheside\.json\.txt$/);
    for (const each of [first, second]) expect(readDocument(each?.text ?? '').ok).toBe(true);

    // Put away by the person: nothing is shared, nothing downloaded, and it counts as no back-up.
    await sheet({ away: true });
    await person.key('Back up everything');
    await person.sees('Not shared.');
    await person.reads('Never backed up.');
    expect((await shared()).length).toBe(2);
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a back-up', () => {
  it('is asked for once much has changed since the last one', async () => {
    const { page, person } = await newPhone();
    await takeExample(person);
    await person.place('Machine');
    await person.seesNot('Never backed up.');
    await page.evaluate(
      () =>
        new Promise<void>((done, failed) => {
          const opening = indexedDB.open('latheside');
          opening.onsuccess = () => {
            const t = opening.result.transaction('meta', 'readwrite');
            const store = t.objectStore('meta');
            const get = store.get('device');
            get.onsuccess = () => {
              const row = get.result as { id: string; value: { counter: number } };
              store.put({ ...row, value: { ...row.value, counter: 260 } });
            };
            t.oncomplete = () => {
              opening.result.close();
              done();
            };
            t.onerror = () => failed(t.error ?? new Error('not written'));
          };
        }),
    );
    await page.reload();
    await person.reads('Never backed up. 260 changes so far.');
    expect(await pageFaults(page, 'carry, back-up due')).toEqual([]);
    await toFiles({ person, page });
    await made(page, person, 'Back up everything');
    await person.reads('No change since.');
    await person.place('Machine');
    await person.seesNot('changes so far');
  });
});

describe('an own thread that two phones changed', () => {
  it('is chosen, and a tab that is open beside shows what was brought in', async () => {
    const one = await newPhone();
    await takeExample(one.person);
    await one.person.link('Choose a thread');
    await one.person.link('Own threads');
    await one.person.key('New thread');
    await enter(one.person, 'Enter: Major diameter', '18', 'mm');
    await enter(one.person, 'Enter: Pitch', '1.5', 'mm');
    await heading(one.page, '18×1.5');
    const thread = new URL(one.page.url()).hash;
    await toFiles(one);
    const first = await made(one.page, one.person, 'Back up everything');

    const two = await newPhone();
    await two.person.link('Open a file');
    const open = (at: Page, path: string): Promise<void> =>
      at.locator('ls-carry input[type=file]').setInputFiles(path);
    await open(two.page, first.path);
    await heading(two.page, 'A back-up');
    await two.person.key('Bring it in');
    await heading(two.page, 'Brought in');

    const pitch = async (on: typeof one, is: string): Promise<void> => {
      await on.page.evaluate((to) => {
        location.hash = to;
      }, thread);
      await enter(on.person, /^Pitch/, is, 'mm');
      await heading(on.page, `18×${is}`);
    };
    await pitch(two, '2');
    await toFiles(two);
    const theirs = await made(two.page, two.person, 'Back up everything');
    await pitch(one, '1.25');

    // A second tab of the first phone shows the thread meanwhile.
    const beside = await one.phone.context.newPage();
    await beside.goto(`${host.url}${thread}`);
    await heading(beside, '18×1.25');
    await one.page.bringToFront();
    await toFiles(one);
    await open(one.page, theirs.path);
    await heading(one.page, 'A back-up');
    await one.person.reads('to choose');
    expect(await pageFaults(one.page, 'carry, a thread to choose')).toEqual([]);
    await one.page
      .getByRole('button', { name: /^Take theirs/ })
      .last()
      .scrollIntoViewIfNeeded();
    for (const key of await one.page.getByRole('button', { name: /^Take theirs/ }).all()) await key.tap();
    await one.person.key('Bring it in');
    await heading(one.page, 'Brought in');
    await heading(beside, '18×2');
    await one.person.key(/^Undo/);
    await heading(beside, '18×1.25');
    await beside.close();
  });
});
