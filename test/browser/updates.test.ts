import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { HEADERS } from '../../.ci/policy.js';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scan } from './support/axe';
import { build, DIST } from './support/builds';
import { changeToIt, lookForUpdate, readyOffline } from './support/newer';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

const NEWS = [
  { version: '9.9.9', lines: ['The wall chart has a scale.'] },
  { version: '5.0.0', lines: ['The pad is quicker.'] },
];

let newer: string;
let wayOut: string;
let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  const variables = { LATHESIDE_CHANGES: JSON.stringify(NEWS) };
  newer = await build({ version: '9.9.9', variables });
  wayOut = await build({ unregister: true });
}, 300_000);
afterAll(() => {
  for (const folder of [newer, wayOut]) rmSync(folder, { recursive: true, force: true });
});
const open = async (headers: Record<string, string> = {}, base = '/club/lathes/'): Promise<void> => {
  host = await serve(DIST, { base, headers });
  phone = await Phone.open(host.url);
  person = new Person(phone);
};
afterEach(async () => {
  await phone.close();
  await host.close();
});

const inUse = async (): Promise<void> => {
  await readyOffline(phone, person);
  await takeExample(person);
  await chooseM10(person);
};
const toSettings = async (who: Person = person): Promise<void> => {
  await who.place('Machine');
  await who.link('Settings, cautions and log');
};
/** The names of all caches of the origin, and the files of an address in them. */
const caches_ = (): Promise<string[]> => phone.page.evaluate(() => caches.keys());

describe('a newer version', () => {
  it('can be had on the very first visit; what it brings is said before, and in the settings afterwards', async () => {
    await open();
    await inUse();
    await toSettings();
    await person.reads('What changed 0.1.0 The first version');
    host.folder = newer;
    await lookForUpdate(phone.page);
    await person.reads('A newer version is here: 9.9.9');
    await person.place('Threads');
    await person.link('What changes');
    // Each version since this one, and not what this one has already.
    await person.reads(
      'What changes 9.9.9 The wall chart has a scale. 5.0.0 The pad is quicker. Units offered',
    );
    expect(await scan(phone.page)).toEqual([]);
    await changeToIt(phone, person);
    await person.reads('Latheside 9.9.9');
    await person.reads('What changed 9.9.9 The wall chart has a scale. 5.0.0 The pad is quicker. 0.1.0');
    expect(await scan(phone.page)).toEqual([]);
    await person.place('Threads');
    await person.reads('16.93 tpi');
    expect(phone.watch.problems).toEqual([]);
  });

  it('that waits since before is offered at the next start, with what it brings', async () => {
    await open();
    await inUse();
    host.folder = newer;
    await lookForUpdate(phone.page);
    await person.reads('A newer version is here: 9.9.9');
    // No network any more: all of it is on the phone already.
    phone.watch.allow(/ERR_CONNECTION_REFUSED|Failed to load resource/);
    await host.close();
    await phone.page.reload();
    await person.reads('A newer version is here: 9.9.9');
    await changeToIt(phone, person);
    await toSettings();
    await person.reads('Latheside 9.9.9');
    expect(phone.watch.problems).toEqual([]);
  });

  it('arrives although the host lets browsers keep every file for a day', async () => {
    await open({ 'Cache-Control': 'public, max-age=86400' });
    await inUse();
    // Whatever address the page is asked for, the browser holds the old one of it.
    await phone.page.reload();
    await person.reads('16.93 tpi');
    host.folder = newer;
    await lookForUpdate(phone.page);
    await person.reads('A newer version is here: 9.9.9');
    await changeToIt(phone, person);
    await toSettings();
    await person.reads('Latheside 9.9.9');
    await person.sees('Ready offline');
    expect(phone.watch.problems).toEqual([]);
  });

  it('that took over elsewhere leaves a tab that cuts as it was: all its code is in memory', async () => {
    await open();
    await inUse();
    await person.place('Checks');
    await phone.page.evaluate(() =>
      (document.querySelector('ls-app') as unknown as { app: { startCut(): Promise<void> } }).app.startCut(),
    );
    await person.reads('that a cut began');
    host.folder = newer;
    await lookForUpdate(phone.page);
    await person.reads('A newer version is here: 9.9.9');
    // Another program, or a browser without locks, lets it take over all the same.
    phone.watch.allow(/404 \(Not Found\)/);
    const other = await phone.newTab(`${host.url}icons/icon.svg`);
    await other.evaluate(async (scope) => {
      const r = await navigator.serviceWorker.getRegistration(scope);
      r?.waiting?.postMessage({ type: 'SKIP_WAITING' });
    }, host.url);
    await phone.page.bringToFront();
    await person.reads(
      'Load this page again when you can. Another tab has changed to a newer version: 9.9.9',
    );
    // The old version's files are neither on the host nor on the phone any more.
    const old = () =>
      phone.page.evaluate(async () => {
        const script = document.querySelector<HTMLScriptElement>('script[src]')?.src ?? '';
        return { kept: Boolean(await caches.match(script)), status: (await fetch(script)).status };
      });
    await expect.poll(old).toEqual({ kept: false, status: 404 });
    for (const [place, text] of [
      ['Speed', 'The drive keeps up to'],
      ['Cut', 'M10'],
      ['Machine', 'Counts per spindle rev'],
      ['Threads', '16.93 tpi'],
    ] as const) {
      await person.place(place);
      await person.reads(text);
    }
    await toSettings();
    await person.reads('Latheside 0.1.0');
    await person.place('Speed');
    await person.link('Wall chart');
    await person.reads('M10');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('the way out of a bad version', () => {
  it('takes worker and files away, and nothing that a person or another app of the origin saved', async () => {
    await open();
    await phone.page.evaluate(async () => {
      await (await caches.open('of-another-app')).put('/theirs', new Response('theirs'));
      await (await caches.open('latheside-precache-https://elsewhere/')).put('/x', new Response('x'));
      indexedDB.open('of-another-app', 1).onupgradeneeded = () => undefined;
    });
    await inUse();
    host.folder = wayOut;
    const reloaded = phone.page.waitForEvent('load');
    await lookForUpdate(phone.page);
    await reloaded;
    await person.reads('This version no longer works offline. Your records are untouched.');
    expect(await scan(phone.page)).toEqual([]);
    await person.reads('16.93 tpi');
    const left = await phone.page.evaluate(async () => ({
      workers: (await navigator.serviceWorker.getRegistrations()).length,
      databases: (await indexedDB.databases()).map((d) => d.name).sort(),
    }));
    expect(left).toEqual({ workers: 0, databases: ['latheside', 'of-another-app'] });
    expect((await caches_()).sort()).toEqual([
      'latheside-mirror',
      'latheside-precache-https://elsewhere/',
      'of-another-app',
    ]);
    // And a good version puts itself back in charge.
    host.folder = newer;
    await phone.page.reload();
    await toSettings();
    await person.reads('Latheside 9.9.9');
    await person.sees('Ready offline');
    expect(phone.watch.problems).toEqual([]);
  });

  it('waits for a tab that cuts', async () => {
    await open();
    await inUse();
    await phone.page.evaluate(() =>
      (document.querySelector('ls-app') as unknown as { app: { startCut(): Promise<void> } }).app.startCut(),
    );
    host.folder = wayOut;
    await lookForUpdate(phone.page);
    await person.reads('Load this page again when you can.');
    await person.place('Speed');
    await person.reads('The drive keeps up to');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('files that were cleared away', () => {
  it('while the host has a newer version already: that one is brought, and none is mixed', async () => {
    await open();
    await inUse();
    host.folder = newer;
    const debug = await phone.debug();
    const origin = new URL(host.url).origin;
    await debug.send('Storage.clearDataForOrigin', { origin, storageTypes: 'cache_storage' });
    // What can't be had of the old version any more is asked for in vain.
    phone.watch.allow(/404|integrity|Failed to (load|find)/i);
    await phone.page.reload();
    await person.sees(/A newer version is here|Latheside 9.9.9/);
    if ((await person.words()).includes('A newer version is here')) await changeToIt(phone, person);
    await toSettings();
    await person.reads('Latheside 9.9.9');
    await person.sees('Ready offline');
  });
});

describe('the policy', () => {
  it('is the same in the page and in the headers, and is kept to', async () => {
    await open();
    const page = readFileSync(join(DIST, 'index.html'), 'utf8');
    const meta =
      /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1]?.replaceAll('&#39;', "'") ??
      '';
    const parts = (policy: string): string[] => policy.split(/;\s*/).sort();
    expect(parts(meta).length).toBeGreaterThan(10);
    const file = readFileSync(join(DIST, '_headers'), 'utf8');
    const header = /^\/\*\n(?: {2}.*\n)*? {2}Content-Security-Policy: (.+)$/m.exec(file)?.[1] ?? '';
    // Framing can't be governed from within a page.
    expect(parts(header)).toEqual([...parts(meta), "frame-ancestors 'none'"].sort());
    const readme = readFileSync('README.md', 'utf8');
    const shown = [...readme.matchAll(/Content-Security-Policy "([^"]+)"/g)].map(([, policy]) => policy);
    expect(shown).toEqual([header, header]);
    expect(HEADERS['Content-Security-Policy']).toBe(header);
    phone.watch.allow(/TrustedScript|Content Security Policy|violat|TrustedHTML/i);
    const refused = await phone.page.evaluate(() => {
      const attempt = (work: () => unknown): string => {
        try {
          work();
          return 'let through';
        } catch (e) {
          return (e as Error).name;
        }
      };
      return {
        markup: attempt(() => (document.createElement('p').innerHTML = '<b>x</b>')),
        script: attempt(() => (document.createElement('script').src = 'x.js')),
        worker: attempt(() => new Worker('worker.js')),
        policy: attempt(() =>
          (
            globalThis as unknown as { trustedTypes: { createPolicy(n: string, r: object): void } }
          ).trustedTypes //
            .createPolicy('another', {}),
        ),
      };
    });
    expect(refused).toEqual({
      markup: 'TypeError',
      script: 'TypeError',
      worker: 'TypeError',
      policy: 'TypeError',
    });
  });
});

describe('what the browser promised', () => {
  it.each([
    ['granted', 'The browser keeps what is saved until you clear it.'],
    ['denied', 'The browser did not promise to keep what is saved. Put the app on the home screen'],
  ] as const)('%s is said', async (state, words) => {
    await open();
    const debug = await phone.debug();
    await debug.send('Browser.setPermission', {
      origin: new URL(host.url).origin,
      permission: { name: 'persistent-storage' },
      setting: state,
    });
    await phone.context.addInitScript(() => {
      const ask = navigator.storage.persist.bind(navigator.storage);
      Object.assign(globalThis, { asked: 0 });
      navigator.storage.persist = () => {
        (globalThis as unknown as { asked: number }).asked += 1;
        return ask();
      };
    });
    const asked = (): Promise<number> =>
      phone.page.evaluate(() => (globalThis as unknown as { asked: number }).asked);
    await phone.page.reload();
    await person.sees('Ready offline');
    expect(await asked()).toBe(0);
    // As soon as there is something to keep the app asks by itself, once and for all.
    await takeExample(person);
    await expect.poll(asked).toBe(1);
    await phone.page.reload();
    await person.reads('Heron');
    await toSettings();
    expect(await asked()).toBe(0);
    await person.place('Threads');
    await toSettings();
    await person.reads(words);
    await person.reads('clears what a site has kept when that was not opened for seven days');
    expect(await phone.page.getByRole('button', { name: 'Ask the browser to keep it' }).count()).toBe(
      state === 'granted' ? 0 : 1,
    );
    expect(await scan(phone.page)).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('the screen', () => {
  it('is kept on again when the page comes back to the front', async () => {
    await open();
    await phone.context.addInitScript(() => {
      const log: string[] = [];
      Object.assign(globalThis, { log });
      let shown: DocumentVisibilityState = 'visible';
      Object.defineProperty(document, 'visibilityState', { get: () => shown });
      Object.assign(globalThis, {
        // What a browser does with a page that goes to the back: it takes the lock, and tells.
        turn: async (to: DocumentVisibilityState) => {
          shown = to;
          if (to === 'hidden') await Promise.all(held.map((lock) => lock.release()));
          document.dispatchEvent(new Event('visibilitychange'));
        },
      });
      const held: WakeLockSentinel[] = [];
      const ask = navigator.wakeLock.request.bind(navigator.wakeLock);
      navigator.wakeLock.request = async (type) => {
        const lock = await ask(type);
        held.push(lock);
        log.push('asked');
        lock.addEventListener('release', () => log.push('released'));
        return lock;
      };
    });
    const debug = await phone.debug();
    await debug.send('Browser.setPermission', {
      origin: new URL(host.url).origin,
      permission: { name: 'screen-wake-lock' },
      setting: 'granted',
    });
    await inUse();
    await phone.page.reload();
    const log = (): Promise<string[]> =>
      phone.page.evaluate(() => (globalThis as unknown as { log: string[] }).log);
    const turn = (to: 'hidden' | 'visible'): Promise<void> =>
      phone.page.evaluate(
        (state) => (globalThis as unknown as { turn(s: string): Promise<void> }).turn(state),
        to,
      );
    await person.place('Speed');
    await expect.poll(log).toEqual(['asked']);
    await turn('hidden');
    await expect.poll(log).toEqual(['asked', 'released']);
    await turn('visible');
    await expect.poll(log).toEqual(['asked', 'released', 'asked']);
    await person.place('Machine');
    await expect.poll(log).toEqual(['asked', 'released', 'asked', 'released']);
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a frame that may keep nothing', () => {
  it('works from memory and says so', async () => {
    // A host that lets itself be framed; the page's own policy stays.
    host = await serve(DIST, {
      headers: {
        'Content-Security-Policy': '',
        'Access-Control-Allow-Origin': '*',
        'Cross-Origin-Resource-Policy': 'cross-origin',
      },
    });
    phone = await Phone.open(`${host.url}icons/icon.svg`);
    phone.watch.allow(/404|sandbox|ServiceWorker|Access to|autofocus/i);
    await phone.page.route('**/framing', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: `<iframe sandbox="allow-scripts" src="${host.url}" style="border:0;width:380px;height:800px"></iframe>`,
      }),
    );
    await phone.page.goto(`${host.url}framing`);
    const frame = phone.page.frameLocator('iframe');
    await frame.getByText('This browser keeps nothing').waitFor();
    await frame.getByRole('link', { name: 'Try an example first' }).click();
    await frame.getByRole('button', { name: /^Heron/ }).click();
    await frame.getByText('No thread chosen').waitFor();
    expect(phone.watch.problems).toEqual([]);
  });
});
