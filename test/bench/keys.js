/** From a touch on a pad key to the next picture on the screen, by the browser's own event timing. */
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { keepOwnThreads, openPad, prepare } from './moves.js';
import { median, quantile } from './numbers.js';

const ROUNDS = 6;

/**
 * @param {string} folder
 * @param {number} [own] threads of the person's own in the database
 */
export async function measureKeys(folder, own = 0) {
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
    await page.goto(host.url);
    await prepare(page);
    if (own > 0) await keepOwnThreads(page, own);
    const keys = await openPad(page);
    if (keys === null) return null;
    // Places first: to look for a key in the slowed page would count as its work.
    const places = [];
    for (const name of keys) {
      const box = await page.getByRole('button', { name, exact: true }).boundingBox();
      if (box) places.push({ x: box.x + box.width / 2, y: box.y + box.height / 2 });
    }
    await slow(page);
    let taps = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      for (const { x, y } of places) {
        await page.touchscreen.tap(x, y);
        await page.waitForTimeout(150);
        taps += 1;
      }
    }
    await slow(page, 1);
    await page.waitForTimeout(300);
    const slowOnes = await page.evaluate(() => [.../** @type {any} */ (globalThis).benchKeys.values()]);
    // The browser reports only what took 16 ms or more, to the nearest 8; the rest were quicker than that.
    const times = [...slowOnes, ...Array(Math.max(0, taps - slowOnes.length)).fill(8)];
    return { median: median(times), p95: quantile(times, 0.95), worst: quantile(times, 1), count: taps };
  } finally {
    await context.close();
    await host.close();
    profile.remove();
  }
}
