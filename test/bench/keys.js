/**
 * From a touch on a pad key to the next picture on the screen, by the browser's own event timing; and the same on a page
 * that has nothing but keys and a line of text, which is what this machine and browser take by themselves.
 */
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { keepOwnThreads, openPad, prepare } from './moves.js';
import { median, quantile } from './numbers.js';

const ROUNDS = 4;
/** The app is left alone for so long first, ms: it warms its look-up in small pieces after the start. */
const ALONE = 4000;
/** What is typed and corrected again, as a person looks up one thread after another. */
const TYPED = ['10', '25', '34', '68', '79'];

/** @typedef {import('playwright-core').Page} Page */

/** The app with its look-up open. @param {number} own threads of the person's own in the database */
const lookUp = (own) => async (/** @type {Page} */ page, /** @type {string} */ url) => {
  await page.goto(url);
  await prepare(page);
  if (own > 0) await keepOwnThreads(page, own);
  await openPad(page);
};

/** @param {Page} page @param {string} url */
const bareKeys = async (page, url) => {
  await page.goto(`${url}pad.html`);
};

/**
 * @param {string} folder
 * @param {(page: Page, url: string) => Promise<void>} open
 * @returns {Promise<number[]>} milliseconds, one for each key
 */
async function touchKeys(folder, open) {
  const profile = newProfile();
  const host = await serve(folder);
  const { context, page } = await openBrowser(profile.path);
  try {
    await page.addInitScript(() => {
      const seen = new Map();
      Object.assign(globalThis, { benchKeys: seen });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) {
          const { interactionId, duration } = /** @type {PerformanceEventTiming} */ (entry);
          if (interactionId) seen.set(interactionId, Math.max(duration, seen.get(interactionId) ?? 0));
        }
      }).observe({ type: 'event', durationThreshold: 16, buffered: true });
    });
    await open(page, host.url);
    // Places first: to look for a key in the slowed page would count as its work.
    const places = new Map();
    for (const name of new Set([...TYPED.join(''), 'Correct'])) {
      const box = await page.getByRole('button', { name, exact: true }).boundingBox();
      if (!box) throw new Error(`no key ${name}`);
      places.set(name, { x: box.x + box.width / 2, y: box.y + box.height / 2 });
    }
    await page.waitForTimeout(ALONE);
    await page.evaluate(() => /** @type {any} */ (globalThis).benchKeys.clear());
    await slow(page);
    let taps = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      for (const name of TYPED.flatMap((text) => [...text, 'Correct', 'Correct'])) {
        const { x, y } = places.get(name);
        await page.touchscreen.tap(x, y);
        await page.waitForTimeout(150);
        taps += 1;
      }
    }
    await slow(page, 1);
    await page.waitForTimeout(300);
    const slowOnes = await page.evaluate(() => [.../** @type {any} */ (globalThis).benchKeys.values()]);
    // The browser reports only what took 16 ms or more, to the nearest 8; the rest were quicker than that.
    return [...slowOnes, ...Array(Math.max(0, taps - slowOnes.length)).fill(8)];
  } finally {
    await context.close();
    await host.close();
    profile.remove();
  }
}

/**
 * Bare keys and the app's by turns, so that both meet the machine in the same mood.
 * @param {string} folder of the built app
 * @param {number} own
 */
export async function measureKeys(folder, own) {
  /** @type {Record<string, number[]>} */
  const all = { 'bare keys': [], catalogue: [], [`and ${own} own threads`]: [] };
  for (let turn = 0; turn < 2; turn += 1) {
    all['bare keys']?.push(...(await touchKeys('test/bench/bare', bareKeys)));
    all.catalogue?.push(...(await touchKeys(folder, lookUp(0))));
    all[`and ${own} own threads`]?.push(...(await touchKeys(folder, lookUp(own))));
  }
  return Object.fromEntries(
    Object.entries(all).map(([name, times]) => [
      name,
      {
        median: median(times),
        p95: quantile(times, 0.95),
        worst: quantile(times, 1),
        count: times.length,
      },
    ]),
  );
}
