import { rmSync, writeFileSync, readdirSync, unlinkSync } from 'node:fs';
import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { build } from './support/builds';
import { changeToIt, lookForUpdate, readyOffline } from './support/newer';
import { Phone } from './support/phone';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;
const folders: string[] = [];

beforeEach(async () => {
  host = await serve('dist', { base: '/club/lathes/' });
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterEach(async () => {
  await phone.close();
  await host.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const example = async (): Promise<void> => {
  await person.link('Try an example first');
  await person.key(/^Heron/);
  await person.link('Choose a thread');
  await person.link('ISO metric coarse');
  await person.key('M10');
  await person.reads('16.93 tpi');
};
/** A newer build of the same source: the folder it stands in. */
let newer: string;
beforeAll(async () => {
  newer = await build({ version: '9.9.9' });
}, 300_000);
afterAll(() => rmSync(newer, { recursive: true, force: true }));

describe('with no network', () => {
  it('starts under any path, at any address inside it, with every place and its figures', async () => {
    await readyOffline(phone, person);
    await example();
    phone.watch.allow(/ERR_CONNECTION_REFUSED|Failed to load resource/);
    await host.close();
    await phone.page.goto(`${host.url}#/threads/family/unc`);
    await phone.page.reload();
    await person.key('1/4');
    await person.reads('1/4-20 UNC');
    await person.reads('20 tpi');
    for (const [place, text] of [
      ['Speed', 'The drive keeps up to'],
      ['Checks', 'Belts and pulleys tight?'],
      ['Machine', 'Counts per spindle rev'],
      ['Threads', '1/4-20 UNC'],
    ] as const) {
      await person.place(place);
      await person.reads(text);
    }
    // An address of a page that never existed leads to the app too.
    await phone.page.goto(`${host.url}some/old/bookmark`);
    await person.reads('1/4-20 UNC');
    expect(phone.watch.problems).toEqual([]);
  });

  it('starts before its worker does: page, fonts and scripts come straight from what is kept', async () => {
    await readyOffline(phone, person);
    await example();
    await host.close();
    await phone.page.goto('about:blank');
    await phone.stopWorkers();
    await phone.page.goto(host.url);
    await person.reads('16.93 tpi');
    const answeredBy = await phone.page.evaluate(() => {
      const entries = [
        ...performance.getEntriesByType('navigation'),
        ...performance.getEntriesByType('resource'),
      ] as (PerformanceResourceTiming & { workerFinalSourceType?: string })[];
      return Object.fromEntries(
        entries.map((e) => [
          new URL(e.name).pathname.replace(/-[\w-]{8}(?=\.js)/, ''),
          e.workerFinalSourceType ?? 'not told',
        ]),
      );
    });
    expect(answeredBy).toMatchObject({
      '/club/lathes/': 'cache',
      '/club/lathes/fonts/b612-bold.woff2': 'cache',
      '/club/lathes/fonts/b612-regular.woff2': 'cache',
      '/club/lathes/assets/index.js': 'cache',
      '/club/lathes/assets/rest.js': 'cache',
    });
    expect(phone.watch.problems).toEqual([]);
  });

  it('says that it starts offline only while every file is there, and fetches what was cleared away', async () => {
    await readyOffline(phone, person);
    const files = (): Promise<string[]> =>
      phone.page.evaluate(async () => {
        const names = (await caches.keys()).filter((name) => /-(precache|start)-/.test(name));
        const kept = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
        return kept.flatMap((requests) => requests.map(({ url }) => url)).sort();
      });
    const before = await files();
    expect(before.filter((url) => /\.js(\?|$)/.test(url)).length).toBeGreaterThan(1);
    const debug = await phone.debug();
    const origin = new URL(host.url).origin;
    await debug.send('Storage.clearDataForOrigin', { origin, storageTypes: 'cache_storage' });
    await phone.page.reload();
    await person.sees('Ready offline');
    expect(await files()).toEqual(before);
  });
});

describe('a newer version', () => {
  it('is offered, not forced; accepted it comes with everything kept', async () => {
    await readyOffline(phone, person);
    await example();
    host.folder = newer;
    await lookForUpdate(phone.page);
    await person.reads('A newer version is here');
    // Not accepted, the old one goes on working, also after a reload: the page still asks for the old one's script.
    const script = (): Promise<string | null> => phone.page.locator('script[src]').getAttribute('src');
    const old = await script();
    await phone.page.reload();
    await person.reads('16.93 tpi');
    expect(await script()).toBe(old);
    await changeToIt(phone, person);
    await person.place('Machine');
    await person.link('Settings, cautions and log');
    await person.reads('Latheside 9.9.9');
    expect(await script()).not.toBe(old);
    await person.place('Threads');
    await person.reads('16.93 tpi');
    expect(phone.watch.problems).toEqual([]);
  });

  it('can’t be accepted while a cut is recorded as running, in this tab or another', async () => {
    await readyOffline(phone, person);
    await example();
    await phone.page.evaluate(() => {
      // Another tab of the same app that is cutting holds this lock.
      void navigator.locks.request('cutting', { mode: 'shared' }, () => new Promise(() => undefined));
    });
    host.folder = newer;
    await lookForUpdate(phone.page);
    await person.reads('A newer version is here');
    await person.key('Change to it now');
    await person.reads('Not while cutting');
    expect(phone.watch.problems).toEqual([]);
  });

  it('reaches an idle second tab, which saves and loads it too', async () => {
    await readyOffline(phone, person);
    await example();
    const second = await phone.newTab();
    await second.getByText('16.93 tpi').waitFor();
    host.folder = newer;
    await lookForUpdate(phone.page);
    const reloaded = second.waitForEvent('load');
    await person.key('Change to it now');
    await reloaded;
    await second.getByText('16.93 tpi').waitFor();
    expect(phone.watch.problems).toEqual([]);
  });

  it('that arrived in part is refused, and the old one goes on', async () => {
    await readyOffline(phone, person);
    await example();
    const part = mkdtempSync(join(tmpdir(), 'latheside-part-'));
    folders.push(part);
    cpSync(newer, part, { recursive: true });
    const script = readdirSync(join(part, 'assets')).find((f) => f.startsWith('rest') && f.endsWith('.js'));
    unlinkSync(join(part, 'assets', script ?? ''));
    writeFileSync(join(part, 'stray.txt'), '');
    host.folder = part;
    phone.watch.allow(/404|bad-precaching|Failed to load resource/);
    await lookForUpdate(phone.page);
    await phone.page.reload();
    await person.reads('16.93 tpi');
    await person.place('Machine');
    await person.link('Settings, cautions and log');
    await person.reads('Latheside 0.1.0');
  });
});
