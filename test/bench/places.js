/**
 * From a touch on the bar to the picture of the place, and what moved on the screen by itself meanwhile and at the start:
 * layout shifts, those after a touch counted apart (the browser leaves them out of its own score for half a second).
 */
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { prepare } from './moves.js';
import { median, quantile } from './numbers.js';

const PLACES = ['Threads', 'Speed', 'Checks', 'Cut', 'Machine'];
/** Each place from each other one, so often. */
const ROUNDS = 3;

/** Runs in the page before anything of the app. */
const watch = () => {
  /** @type {{ times: number[], shifts: { value: number, touched: boolean, at: string, what: string[] }[] }} */
  const bench = { times: [], shifts: [] };
  Object.assign(globalThis, { benchPlaces: bench });
  let touched = 0;
  addEventListener('click', (e) => (touched = e.timeStamp), { capture: true });
  addEventListener('hashchange', () => {
    const from = touched;
    void (async () => {
      const shell = /** @type {any} */ (document.querySelector('ls-app'));
      await shell.shown();
      requestAnimationFrame(() => setTimeout(() => bench.times.push(performance.now() - from)));
    })();
  });
  new PerformanceObserver((list) => {
    for (const entry of /** @type {any[]} */ (list.getEntries()))
      bench.shifts.push({
        value: entry.value,
        touched: entry.hadRecentInput,
        at: location.hash,
        what: entry.sources.map((/** @type {any} */ { node }) => node?.className || node?.localName || '?'),
      });
  }).observe({ type: 'layout-shift', buffered: true });
};

/** Each place from each other one. */
const pairs = () => PLACES.flatMap((from) => PLACES.filter((to) => to !== from).map((to) => [from, to]));

/** @param {string} folder the built app */
export async function measurePlaces(folder) {
  const profile = newProfile();
  const host = await serve(folder);
  const { context, page } = await openBrowser(profile.path);
  try {
    await page.addInitScript(watch);
    await page.goto(host.url);
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await prepare(page);
    await host.close();
    await page.goto('about:blank');
    await slow(page);
    await page.goto(host.url);
    await page.getByText('16.93 tpi').waitFor();
    await page.waitForTimeout(4000);
    const bar = new Map();
    for (const name of PLACES) {
      const box = await page.getByRole('link', { name, exact: true }).boundingBox();
      if (!box) throw new Error(`no place ${name}`);
      bar.set(name, [box.x + box.width / 2, box.y + box.height / 2]);
    }
    const tap = async (/** @type {string} */ name) => {
      const [x, y] = bar.get(name);
      await page.touchscreen.tap(x, y);
      await page.waitForTimeout(600);
    };
    const bench = () => page.evaluate(() => /** @type {any} */ (globalThis).benchPlaces);
    const start = (await bench()).shifts;
    /** @type {Record<string, number[]>} */
    const times = Object.fromEntries(PLACES.map((name) => [name, []]));
    for (let round = 0; round < ROUNDS; round += 1) {
      for (const [from = '', to = ''] of pairs()) {
        await tap(from);
        const before = (await bench()).times.length;
        await tap(to);
        times[to]?.push(...(await bench()).times.slice(before));
      }
    }
    const shifts = (await bench()).shifts.slice(start.length);
    const each = Object.fromEntries(
      Object.entries(times).map(([name, of]) => [
        name,
        { median: median(of), p95: quantile(of, 0.95), worst: quantile(of, 1), count: of.length },
      ]),
    );
    return { each, start, shifts };
  } finally {
    await context.close();
    await host.close();
    profile.remove();
  }
}
