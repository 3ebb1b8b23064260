/**
 * The longest task of the page's own thread on each page that takes long, in the thread's own time (what other
 * programs on the machine take isn't counted). From the moment a page is asked for until it has been still for a while.
 */
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { prepare } from './moves.js';

/** The pages that reckon or draw most; each is opened anew from the place Machine. */
const PAGES = ['speed/chart', 'speed/trace', 'speed', 'threads', 'checks', 'cut', 'machine/settings-sheet'];

/** How long a page is watched. */
const WATCHED_MS = 4000;

const CATEGORIES = ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'];

/**
 * @param {import('playwright-core').CDPSession} session
 * @returns {Promise<() => Promise<any[]>>} ends the recording and gives its events
 */
export async function record(session) {
  /** @type {any[]} */
  const events = [];
  const keep = (/** @type {any} */ { value }) => void events.push(...value);
  session.on('Tracing.dataCollected', keep);
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: CATEGORIES },
  });
  return async () => {
    const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
    await session.send('Tracing.end');
    await complete;
    session.off('Tracing.dataCollected', keep);
    return events;
  };
}

/**
 * Milliseconds of each task of the page's main thread, longest first.
 * @param {any[]} events
 */
export function tasksOf(events) {
  const asked = events.find(
    (event) => event.name === 'TimeStamp' && event.args.data?.message === 'bench: asked',
  );
  if (asked === undefined) throw new Error('The recording holds no beginning.');
  return events
    .filter((e) => e.name === 'RunTask' || e.name === 'ThreadControllerImpl::RunTask')
    .filter(
      (e) => e.pid === asked.pid && e.tid === asked.tid && e.ts >= asked.ts - 2000 && e.tdur !== undefined,
    )
    .map((e) => e.tdur / 1000)
    .sort((a, b) => b - a);
}

/**
 * @param {string} folder the built app
 * @param {{ rounds?: number, pages?: string[] }} [options]
 */
export async function measureTasks(folder, { rounds = 3, pages = PAGES } = {}) {
  const profile = newProfile();
  const host = await serve(folder);
  /** @type {Record<string, number[]>} */
  const longest = {};
  try {
    const { context, page } = await openBrowser(profile.path);
    await page.goto(host.url);
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await prepare(page);
    const session = await context.newCDPSession(page);
    for (let round = 0; round < rounds; round += 1) {
      for (const name of pages) {
        await page.goto(`${host.url}#/machine`);
        await page.waitForTimeout(1500);
        await slow(page);
        await page.waitForTimeout(500);
        const end = await record(session);
        await page.evaluate((hash) => {
          console.timeStamp('bench: asked');
          location.hash = `#/${hash}`;
        }, name);
        await page.waitForTimeout(WATCHED_MS);
        const tasks = tasksOf(await end());
        await slow(page, 1);
        (longest[name] ??= []).push(tasks[0] ?? 0);
      }
    }
    await context.close();
  } finally {
    profile.remove();
    await host.close();
  }
  return longest;
}
