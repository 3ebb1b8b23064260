import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { chooseM10, takeExample } from '../../browser/support/screens';
import type { Visitor } from '../support/visitor';
import type { Journey } from './journey';

const setPitch = async (visitor: Visitor, key: string): Promise<void> => {
  await visitor.place('Machine');
  await visitor.link(/^Leadscrew pitch/);
  await visitor.key(key);
  await visitor.reads(`Leadscrew pitch ${key}`);
};

const CHOICES = ['Inches', 'Dark', 'American'];

const choicesDown = async (visitor: Visitor): Promise<void> => {
  for (const choice of CHOICES)
    await expect.poll(() => visitor.isDown(choice), { message: choice, timeout: 20_000 }).toBe(true);
};

/** Runs in the page: whether the copy beside the database holds everything that was changed. */
const copied = async (): Promise<boolean> => {
  const copy = await caches.open('latheside-mirror');
  const found = await copy.match(`${location.origin}/latheside-mirror/head`);
  const last = await new Promise<number>((resolve) => {
    const asked = indexedDB.open('latheside');
    asked.onsuccess = () => {
      const row = asked.result.transaction('meta').objectStore('meta').get('device');
      row.onsuccess = () => {
        asked.result.close();
        resolve((row.result as { value: { counter: number } }).value.counter);
      };
    };
  });
  return ((await found?.json()) as { counter: number } | undefined)?.counter === last;
};

/** Runs in the page: the database goes, as browsers clear it away. The app lets go of it when it is told. */
const loseDatabase = (): Promise<void> =>
  new Promise((resolve, reject) => {
    const gone = indexedDB.deleteDatabase('latheside');
    gone.onsuccess = () => resolve();
    gone.onerror = () => reject(new Error('not deleted'));
  });

/** What is stored, carried to another phone, or lost and put back. */
export const kept: readonly Journey[] = [
  {
    name: 'a machine goes as a file to another phone, and one undo takes it back',
    async run({ visitor, another, visits }) {
      await takeExample(visitor);
      await chooseM10(visitor);
      await setPitch(visitor, '4 mm');
      await visitor.place('Machine');
      await visitor.link('Share, back up, open a file');
      await visitor.heads('Share, back up, open a file');
      await visitor.looks('files');
      const path = await visitor.tab.saved(() => visitor.key('Share Heron'));
      expect(path).toMatch(/Heron \d{4}-\d\d-\d\d\.latheside\.json$/);
      expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ kind: 'machine' });

      const other = visits((await another()).page);
      await other.link('Open a file');
      await other.heads('Share, back up, open a file');
      await other.tab.choose(path);
      await other.heads('A machine from elsewhere');
      await other.reads('New here');
      await other.looks('a machine in a file');
      await other.key('Bring it in');
      await other.heads('Brought in');
      await other.key('Use Heron');
      await other.reads('Leadscrew pitch 4 mm');
      await other.place('Threads');
      await other.heads(/^M10/);
      await other.place('Machine');
      await other.link('Share, back up, open a file');
      await other.key('Take back what the file brought');
      await other.readsNot('Heron');
    },
  },
  {
    name: 'a tab shows what another changed; theme, units and trade words stay',
    async run({ visitor, browser, host, visits }) {
      await takeExample(visitor);
      const second = visits(await browser.newTab(host.url));
      await second.reads('Heron');
      await visitor.tab.front();
      await setPitch(visitor, '4 mm');
      await second.tab.front();
      await second.place('Machine');
      await second.reads('Leadscrew pitch 4 mm');
      await second.link('Settings, cautions and log');
      for (const choice of CHOICES) await second.key(choice);
      await second.looks('settings');
      // A tab says what it wrote once that is on the disk: only then may the other one be closed.
      await visitor.tab.front();
      await visitor.link('Settings, cautions and log');
      await choicesDown(visitor);
      await second.tab.close();

      await visitor.tab.reload();
      await choicesDown(visitor);
      await visitor.looks('settings, dark');
    },
  },
  {
    name: 'a database that the browser lost is filled again from the copy beside it',
    async run({ visitor }) {
      await takeExample(visitor);
      await chooseM10(visitor);
      await setPitch(visitor, '4 mm');
      await expect.poll(() => visitor.tab.evaluate(copied, null), { timeout: 10_000 }).toBe(true);
      await visitor.tab.evaluate(loseDatabase, null);
      await visitor.tab.reload();
      await visitor.reads('The database on this phone was lost. Its copy of');
      await visitor.looks('database lost');
      await visitor.reads('Leadscrew pitch 4 mm');
      await visitor.place('Threads');
      await visitor.heads(/^M10/);
    },
  },
];
