import { setTimeout as pause } from 'node:timers/promises';
import type { Browser } from './engine';
import type { Ability } from './gaps';

/** Run in the page: something is stored so that it outlives the process, and whether it is there. */
const write = (): Promise<void> =>
  new Promise((resolve, reject) => {
    const asked = indexedDB.open('probe', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore('rows');
    asked.onerror = reject;
    asked.onsuccess = () => {
      const work = asked.result.transaction('rows', 'readwrite', { durability: 'strict' });
      work.objectStore('rows').put('kept', 1);
      work.oncomplete = () => resolve();
      work.onerror = reject;
    };
  });
const isThere = async (): Promise<boolean> =>
  (await indexedDB.databases()).some(({ name }) => name === 'probe');

/** Each finds out, on the app's page, whether the engine can do what it is named after; the last one ends the page. */
export const PROBES: Readonly<Record<Ability, (browser: Browser, address: string) => Promise<boolean>>> = {
  async touch({ page }) {
    await page.evaluate(() => {
      addEventListener('touchstart', () => (document.title = 'touched'), true);
    }, null);
    await page.tap(195, 20);
    return page.evaluate(() => document.title === 'touched', null);
  },

  async console({ page, problems }) {
    await page.evaluate(() => console.error('planted'), null);
    for (let n = 0; n < 20 && problems.length === 0; n += 1) await pause(50);
    return problems.some((line) => line.includes('planted'));
  },

  async profile(browser, address) {
    await browser.page.evaluate(write, null);
    return browser.restart(address).then(
      () => browser.page.evaluate(isThere, null),
      () => false,
    );
  },
};
