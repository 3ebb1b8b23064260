import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { HEADERS } from '../../.ci/policy.js';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Finger } from './support/finger';
import { readDatabase } from './support/saved';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeEach(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await phone.controlled();
  await takeExample(person);
  await chooseM10(person);
  await person.place('Speed');
  await person.key(/^160/);
  await person.reads('at 160 rpm');
  await phone.written();
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

/** From the next start on: how often the database is opened, and what is read until the first picture. */
const watchReading = (): Promise<unknown> =>
  phone.page.addInitScript(() => {
    const seen = { opened: 0, read: [] as string[] };
    Object.assign(globalThis, { seen });
    const open = Reflect.get(IDBFactory.prototype, 'open');
    IDBFactory.prototype.open = function (...given) {
      seen.opened += 1;
      return open.apply(this, given);
    };
    const transaction = Reflect.get(IDBDatabase.prototype, 'transaction');
    IDBDatabase.prototype.transaction = function (stores, ...given) {
      if (performance.getEntriesByName('latheside:usable').length === 0)
        seen.read.push(String(stores as string[]));
      return transaction.call(this, stores, ...given);
    };
  });
const seen = (): Promise<{ opened: number; read: string[] }> =>
  phone.page.evaluate(() => (globalThis as unknown as { seen: { opened: number; read: string[] } }).seen);

/** From the next start on what the script in the page found is handed over when the journey says so. */
const holdBack = (): Promise<unknown> =>
  phone.page.addInitScript(() => {
    let give = (): void => undefined;
    const held = new Promise<void>((resolve) => (give = resolve));
    let early: Promise<unknown> | undefined;
    Object.defineProperty(globalThis, 'lathesideEarly', {
      get: () => early,
      set: (found: Promise<unknown> | undefined) => {
        early = found && Promise.all([found, held]).then(([read]) => read);
      },
    });
    Object.assign(globalThis, { give });
  });
const give = (): Promise<void> =>
  phone.page.evaluate(() => (globalThis as unknown as { give: () => void }).give());

describe('what the script in the page reads', () => {
  it('is all that a start needs: one connection, one reading', async () => {
    await person.place('Threads');
    await person.reads('16.93 tpi');
    await watchReading();
    await phone.page.reload();
    await person.reads('16.93 tpi');
    await person.reads('at 160 rpm');
    expect(await seen()).toEqual({
      opened: 1,
      read: ['settings,meta,machines,jobs,evidence,runs'],
    });
    expect(phone.watch.problems).toEqual([]);
  });

  it('is not waited for when it doesn’t come', async () => {
    await holdBack();
    await phone.page.reload();
    await person.reads('at 160 rpm');
    await person.key(/^270/);
    await person.reads('at 270 rpm');
    // It comes after all: nothing is taken from it any more.
    await give();
    await person.place('Threads');
    await person.reads('at 270 rpm');
    expect(phone.watch.problems).toEqual([]);
  });

  it('is waited for with the looks of the first picture made meanwhile, and nothing of it shown', async () => {
    await holdBack();
    await phone.page.addInitScript(() => {
      const made: string[] = [];
      const wait = setTimeout;
      // However long this takes, the app doesn't give up waiting.
      const patient = (then: () => void, ms?: number) => (ms === 500 ? 0 : wait(then, ms));
      Object.assign(globalThis, { made, setTimeout: patient });
      const replace = Reflect.get(CSSStyleSheet.prototype, 'replaceSync');
      CSSStyleSheet.prototype.replaceSync = function (text) {
        made.push(text);
        replace.call(this, text);
      };
    });
    await phone.page.reload();
    const made = (): Promise<string> =>
      phone.page.evaluate(() => (globalThis as unknown as { made: string[] }).made.join(' '));
    // Those of the places and of the marks: neither is on the page before there is an app.
    await expect.poll(made).toContain('.mark');
    expect(await made()).toContain("a[aria-current='page']");
    expect(await phone.page.locator('ls-bar, ls-standing').count()).toBe(0);
    await give();
    await person.reads('at 160 rpm');
    expect(phone.watch.problems).toEqual([]);
  });

  it('is not taken from a database of a newer version, though it could be read', async () => {
    // The icon that a browser asks for beside any page.
    phone.watch.allow(/404 \(Not Found\)/);
    await phone.page.goto(`${host.url}manifest.webmanifest`);
    const saved = await readDatabase(phone.page);
    await phone.page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const raised = indexedDB.open('latheside', 99);
          raised.onerror = raised.onblocked = () => reject(new Error('not raised'));
          raised.onsuccess = () => {
            raised.result.close();
            resolve();
          };
        }),
    );
    await phone.page.goto(host.url);
    await person.reads('What is stored here was written by a newer version of this app.');
    expect(await person.words()).not.toContain('at 160 rpm');
    expect(await readDatabase(phone.page)).toEqual({ ...saved, version: 99 });
    expect(phone.watch.problems).toEqual([]);
  });

  it('is missing where a host still sends an older policy: the app reads by itself, and looks as ever', async () => {
    const policy = HEADERS['Content-Security-Policy'].replaceAll(/ 'sha256-[^']*'/g, '');
    expect(policy).toContain("script-src 'self'; style-src 'self';");
    const look = (page: Page): Promise<unknown> =>
      page.evaluate(async () => {
        await document.fonts.ready;
        const { backgroundColor, fontFamily } = getComputedStyle(document.documentElement);
        return {
          backgroundColor,
          fontFamily,
          b612: document.fonts.check('700 1em B612'),
        };
      });
    const older = await serve(DIST, { headers: { 'Content-Security-Policy': policy } });
    const other = await Phone.open(older.url);
    try {
      const owner = new Person(other);
      await other.controlled();
      await takeExample(owner);
      await chooseM10(owner);
      await other.page.reload();
      await owner.reads('16.93 tpi');
      expect(await look(other.page)).toEqual(await look(phone.page));
      expect(await other.page.locator('link[rel="manifest"]').count()).toBe(1);
      // Script and style sheet in the page are forbidden at each start, and nothing else is wrong.
      const { problems } = other.watch;
      for (const told of ['Executing inline script violates', 'Applying inline style violates'])
        expect(problems.filter((p) => p.includes(told)).length).toBeGreaterThan(0);
      expect(
        problems.filter((p) => !/(Executing inline script|Applying inline style) violates/.test(p)),
      ).toEqual([]);
    } finally {
      await other.close();
      await older.close();
    }
  });

  it('gives way to what another tab wrote meanwhile', async () => {
    const page = await phone.newTab();
    const other = new Person({ page, finger: new Finger(page) });
    await other.place('Speed');
    await other.reads('at 160 rpm');
    await phone.page.bringToFront();
    // Read, and not yet listened to the other tab: the moment in which its word is lost. A slow phone makes it long.
    await phone.page.addInitScript(() => {
      class Deaf extends EventTarget {
        postMessage(): void {
          // Nobody hears it.
        }
      }
      const wait = setTimeout;
      Object.assign(globalThis, {
        BroadcastChannel: Deaf,
        setTimeout: (then: () => void, ms?: number) => (ms === 500 ? 0 : wait(then, ms)),
      });
    });
    await holdBack();
    await phone.page.reload({ waitUntil: 'commit' });
    await other.key(/^270/);
    await other.reads('at 270 rpm');
    await give();
    await person.reads('at 270 rpm');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('the style sheet in the page', () => {
  it('says what its source says', async () => {
    const rules = await phone.page.evaluate(
      (source) => {
        const written = new CSSStyleSheet();
        written.replaceSync(source);
        // The values of custom properties keep their spaces and line ends.
        const plain = (text: string): string =>
          text
            .replace(/\s+/g, ' ')
            .replace(/ ?([,()]) ?/g, '$1')
            .replace('url("./', 'url("/');
        const said = (sheet: CSSStyleSheet | null | undefined): string[] =>
          [...(sheet?.cssRules ?? [])].map((rule) => plain(rule.cssText));
        return { page: said(document.querySelector('style')?.sheet), source: said(written) };
      },
      readFileSync('src/elements/theme.css', 'utf8'),
    );
    expect(rules.source.length).toBeGreaterThan(15);
    expect(rules.page).toEqual(rules.source);
  });
});
