import { setTimeout as pause } from 'node:timers/promises';
import type { Engine } from './engine';
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

/** Each finds out, on the app's page, whether the engine can do what it is named after. */
export const PROBES: Readonly<Record<Ability, (engine: Engine, address: string) => Promise<boolean>>> = {
  async profile(engine, address) {
    const browser = await engine.open(address);
    try {
      await browser.page.evaluate(write, null);
      return await browser.restart(address).then(
        () => browser.page.evaluate(isThere, null),
        () => false,
      );
    } finally {
      await browser.close();
    }
  },

  async touch(engine, address) {
    const browser = await engine.open(address);
    try {
      await browser.page.evaluate(() => {
        addEventListener('touchstart', () => (document.title = 'touched'), true);
      }, null);
      await browser.page.tap(195, 20);
      return await browser.page.evaluate(() => document.title === 'touched', null);
    } finally {
      await browser.close();
    }
  },

  async console(engine, address) {
    const browser = await engine.open(address);
    try {
      await browser.page.evaluate(() => console.error('planted'), null);
      for (let n = 0; n < 20 && browser.problems.length === 0; n += 1) await pause(50);
      return browser.problems.some((line) => line.includes('planted'));
    } finally {
      await browser.close();
    }
  },
};
