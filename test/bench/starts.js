/**
 * Time to first paint and to usable: from the network with nothing stored (cold), from the worker with the server
 * gone (offline), and the same after the browser was closed and started again (reopened).
 */
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { median } from './numbers.js';

const ROUNDS = 9;
const KINDS = /** @type {const} */ (['cold', 'offline', 'reopened']);

/**
 * @typedef {object} Subject
 * @property {string} name
 * @property {string} folder
 * @property {Record<string, string>} [headers] in place of the usual ones
 * @property {string | null} mark performance mark that says usable
 * @property {(page: import('playwright-core').Page) => Promise<void>} prepare what a person did on the visit before
 */

/**
 * What was written on the visit before comes to rest, and the page before is gone: nobody opens an app again within a tenth of
 * a second, and what is measured is a start and not the end of a visit.
 */
const AT_REST = 2_000;
/** A page that starts is left alone for so long; all that is measured has happened by then, on most machines. */
const LEFT_ALONE = 1_500;
const LIMIT = 60_000;

const pause = (/** @type {number} */ ms) => new Promise((resolve) => setTimeout(resolve, ms));

/**
 * Leaves the page alone for a while, and then until this is true. Asked by the protocol itself: the driver's own ways of waiting
 * put a script into the page first, whose compilation at this slowdown was counted to whatever page was still starting (40 ms).
 * @param {import('playwright-core').Page} page
 * @param {string} expression or one that gives a promise
 * @param {number} [limit] ms
 */
export async function leftAloneUntil(page, expression, limit = LIMIT) {
  const session = await page.context().newCDPSession(page);
  const ask = { expression, returnByValue: true, awaitPromise: true };
  const isSo = async () => (await session.send('Runtime.evaluate', ask)).result.value === true;
  await pause(LEFT_ALONE);
  for (let waited = 0; !(await isSo()); waited += 500) {
    if (waited > limit) throw new Error(`Not so in ${limit / 1000} s: ${expression}`);
    await pause(500);
  }
  await session.detach();
}

/**
 * Opens the address, slowed, and reads the page's own clock, which begins with the navigation.
 * @param {import('playwright-core').Page} page
 * @param {string} url
 * @param {string | null} mark
 */
export async function start(page, url, mark) {
  await page.goto('about:blank');
  await slow(page);
  await page.goto(url, { waitUntil: 'commit' });
  const marks = ['first-contentful-paint', ...(mark === null ? [] : [mark])];
  await leftAloneUntil(
    page,
    `${JSON.stringify(marks)}.every((n) => performance.getEntriesByName(n).length > 0)`,
  );
  return page.evaluate((name) => {
    const at = (/** @type {string} */ entry) => performance.getEntriesByName(entry)[0]?.startTime ?? null;
    return { paint: at('first-contentful-paint'), usable: name === null ? null : at(name) };
  }, mark);
}

/**
 * A start, and full speed again for what comes after it.
 * @param {import('playwright-core').Page} page
 * @param {string} url
 * @param {string | null} mark
 */
async function visit(page, url, mark) {
  const times = await start(page, url, mark);
  await slow(page, 1);
  return times;
}

/** @param {Subject} subject */
async function round({ folder, headers, mark, prepare }) {
  const profile = newProfile();
  const host = await serve(folder, { headers });
  try {
    let { context, page } = await openBrowser(profile.path);
    const cold = await visit(page, host.url, mark);
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await prepare(page);
    await page.goto('about:blank');
    await pause(AT_REST);
    await host.close();
    const offline = await visit(page, host.url, mark);
    await context.close();
    ({ context, page } = await openBrowser(profile.path));
    const reopened = await visit(page, host.url, mark);
    await context.close();
    return { cold, offline, reopened };
  } finally {
    profile.remove();
    await host.close();
  }
}

/**
 * Medians for each subject, the subjects taken in turn so that a slow minute hits all alike.
 * @param {Subject[]} subjects
 * @param {number} [rounds]
 */
export async function measureStarts(subjects, rounds = ROUNDS) {
  const runs = subjects.map(() => /** @type {Awaited<ReturnType<typeof round>>[]} */ ([]));
  for (let turn = 0; turn < rounds; turn += 1) {
    for (const [at, subject] of subjects.entries()) runs[at]?.push(await round(subject));
  }
  return subjects.map(({ name }, at) => {
    const of = (/** @type {typeof KINDS[number]} */ kind, /** @type {'paint' | 'usable'} */ what) =>
      median((runs[at] ?? []).flatMap((run) => run[kind][what] ?? []));
    return {
      name,
      ...Object.fromEntries(
        KINDS.map((kind) => [kind, { paint: of(kind, 'paint'), usable: of(kind, 'usable') }]),
      ),
      runs: runs[at],
    };
  });
}
