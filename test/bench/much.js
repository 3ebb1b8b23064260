/**
 * How start, list, switch of machine, back-up and its opening grow with what is kept: machines, records of them (checks,
 * tests, events, ended runs) and threads of one's own.
 */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser, slow } from './browser.js';
import { prepare } from './moves.js';
import { median } from './numbers.js';
import { leftAloneUntil, start } from './starts.js';
import { record, tasksOf } from './tasks.js';

/** Records, and as many threads; a tenth as many machines. */
export const AMOUNTS = [10, 100, 1000, 10_000];
const STARTS = 3;
const SWITCHES = 5;
/** Reading ten thousand threads and filling the copy take so long at most, ms. */
const LONG = 300_000;

/** @typedef {import('playwright-core').Page} Page */

/**
 * Puts rows into the database as the app would have, and counts them as changes, so that the copy beside it is filled.
 * @param {Page} page
 * @param {number} many
 */
const fill = (page, many) =>
  page.evaluate(async (n) => {
    const db = await new Promise((resolve) => {
      const asked = indexedDB.open('latheside');
      asked.onsuccess = () => resolve(asked.result);
    });
    const tx = db.transaction(['machines', 'evidence', 'runs', 'threads', 'jobs', 'meta'], 'readwrite');
    const put = (/** @type {string} */ store, /** @type {object} */ row) => tx.objectStore(store).put(row);
    const all = (/** @type {string} */ store) =>
      new Promise((resolve) => {
        const asked = tx.objectStore(store).getAll();
        asked.onsuccess = () => resolve(asked.result);
      });
    const [[like], [job], meta] = await Promise.all([all('machines'), all('jobs'), all('meta')]);
    const { id: mine, device, body } = like;
    let { counter } = meta.find((/** @type {{ id: string }} */ row) => row.id === 'device').value;
    const version = (/** @type {string} */ id, /** @type {unknown} */ of) => {
      counter += 1;
      const rev = `${counter.toString(36)}-${device}`;
      const known = { id, schema: 1, rev, parents: [], device, counter, deleted: false };
      return { ...known, changedAt: Date.now() - 1e6 + counter, body: of };
    };
    for (let at = 1; at < Math.max(2, n / 10); at += 1) {
      const profile = { ...body.profile, name: `Lathe ${at}`, workshop: `Shed ${at % 7}` };
      put('machines', version(`machine-${at}`, { profile, example: false }));
    }
    // Half of what was recorded is of the machine in use.
    const whose = (/** @type {number} */ at) => (at % 2 ? mine : `machine-${at % Math.max(1, n / 10)}`);
    const KINDS = [
      [
        'check',
        {
          item: 'chips',
          answer: 'done',
          day: '2026-05-03',
          hours: null,
          inputs: {},
          rule: 1,
          reading: null,
          cut: null,
        },
      ],
      ['event', { kind: 'power' }],
      [
        'test',
        { test: 'counts', rule: 1, result: 'passed', readings: {}, choices: {}, inputs: {}, note: 'Seen.' },
      ],
    ];
    const dial = { divisions: 46, reading: { n: '23', d: '25', unit: 'mm' }, turns: 0, past: 46 };
    const plan = Array.from({ length: 8 }, (_, i) => ({
      ...{ n: i + 1, kind: 'cut', cross: dial, top: null, depth: 0.1 * (i + 1), step: 0.1, chip: 0.02 },
    }));
    for (let at = 0; at < n; at += 1) {
      const recorded = Date.now() - 1e9 + at * 1000;
      const [kind, of] = /** @type {[string, object]} */ (KINDS[at % 3]);
      counter += 1;
      if (at % 4)
        put('evidence', {
          id: `record-${at}`,
          schema: 1,
          kind,
          machine: whose(at),
          at: recorded,
          device,
          counter,
          body: of,
        });
      else {
        const taken = plan.map((pass) => ({ n: pass.n, at: recorded, plan: 0, pass }));
        const names = {
          machine: whose(at >> 2),
          machineName: 'Lathe',
          workshop: 'Shed',
          threadName: 'M10×1.5',
        };
        const ends = {
          begun: recorded,
          ended: recorded + 500,
          paused: false,
          outcome: 'not-measured',
          notes: '',
        };
        const rest = { job: job.body.job, plans: [plan], taken, readings: [], machineThen: {} };
        put('runs', version(`run-${at}`, { ...names, ...ends, ...rest }));
      }
      const own = {
        major: { n: String(1000 + at), d: '100', unit: 'mm' },
        pitch: { n: '3', d: '2', unit: 'mm' },
      };
      const figures = { profile: 'iso60', angle: null, crest: null, depth: null, starts: 1, hand: 'right' };
      put('threads', version(`thread-${at}`, { name: `Own ${at}`, ...own, ...figures }));
    }
    put('meta', { id: 'device', value: { device, counter } });
    await new Promise((resolve, reject) => {
      tx.oncomplete = resolve;
      tx.onabort = () => reject(tx.error);
    });
    db.close();
  }, many);

/**
 * Does something and gives the longest task of the page's own thread meanwhile, ms, with what came of it.
 * @template T
 * @param {Page} page
 * @param {() => Promise<T>} work
 * @returns {Promise<readonly [T, number]>}
 */
async function watched(page, work) {
  const session = await page.context().newCDPSession(page);
  const end = await record(session);
  await page.evaluate(() => console.timeStamp('bench: asked'));
  const result = await work();
  const [task = 0] = tasksOf(await end());
  await session.detach();
  return [result, task];
}

/** Runs in the page: whether the app has read all that it keeps, and the copy has caught up. @param {number} n */
const isWhole = async (n) => {
  const app = /** @type {any} */ (document.querySelector('ls-app'))?.app;
  if (!app || app.own.list.length < n || app.runs.ended.length < n / 4) return false;
  const copy = await caches.open('latheside-mirror');
  const head = await (await copy.match(`${location.origin}/latheside-mirror/head`))?.json();
  return head?.counter > n;
};

/** @param {Page} page @param {number} many */
const whole = (page, many) => leftAloneUntil(page, `(${isWhole})(${many})`, LONG);

/** From the touch that asks for the list, or takes another machine, to the picture that shows it. @param {Page} page */
const list = (page) =>
  page.evaluate(async () => {
    const shell = /** @type {any} */ (document.querySelector('ls-app'));
    const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    const keys = () =>
      shell.shadowRoot.querySelector('ls-machines')?.shadowRoot.querySelectorAll('button.machine');
    let begun = performance.now();
    location.hash = '#/machine/list';
    while (!keys()?.length) await frame();
    await frame();
    const shown = performance.now() - begun;
    // Not one of the examples below, which may be the machine in use.
    const other = [...keys()].find(
      (key) => key.getAttribute('aria-pressed') === 'false' && !/invented/.test(key.textContent),
    );
    const before = shell.app.machine.id;
    begun = performance.now();
    other?.click();
    while (other && (shell.app.machine.id === before || location.hash === '#/machine/list')) await frame();
    await frame();
    return { shown, taken: performance.now() - begun };
  });

/** @param {Page} page @param {string} folder */
async function backUp(page, folder) {
  await page.evaluate(() => (location.hash = '#/machine/carry'));
  const key = page.getByRole('button', { name: 'Back up everything' });
  await key.waitFor();
  const begun = Date.now();
  const saved = page.waitForEvent('download', { timeout: LONG });
  await key.click();
  const path = join(folder, 'all.json');
  await (await saved).saveAs(path);
  return { path, took: Date.now() - begun };
}

/** @param {string} url @param {string} path */
async function bringIn(url, path) {
  const profile = newProfile();
  const { context, page } = await openBrowser(profile.path);
  try {
    await page.goto(`${url}#/machine/carry`);
    await page.getByRole('heading', { name: 'Share, back up, open a file' }).waitFor();
    await page.waitForTimeout(3000);
    await slow(page);
    let begun = Date.now();
    const [opened, openTask] = await watched(page, async () => {
      await page.locator('ls-carry input[type=file]').setInputFiles(path);
      await page.getByRole('heading', { name: 'A back-up' }).waitFor({ timeout: LONG });
      return Date.now() - begun;
    });
    const [broughtIn, bringTask] = await watched(page, async () => {
      begun = Date.now();
      await page.getByRole('button', { name: 'Bring it in' }).click();
      await page.getByRole('heading', { name: 'Brought in' }).waitFor({ timeout: LONG });
      return Date.now() - begun;
    });
    return { opened, openTask, broughtIn, bringTask };
  } finally {
    await context.close();
    profile.remove();
  }
}

/** @param {string} dist @param {number} many */
async function measure(dist, many) {
  const profile = newProfile();
  const host = await serve(dist);
  const folder = mkdtempSync(join(tmpdir(), 'latheside-much-'));
  try {
    const { context, page } = await openBrowser(profile.path);
    await page.goto(host.url);
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await prepare(page);
    await fill(page, many);
    await page.reload();
    await whole(page, many);
    const starts = [];
    for (let n = 0; n < STARTS; n += 1) starts.push(await start(page, host.url, 'latheside:usable'));
    const [, startTask] = await watched(page, async () => {
      await page.reload({ waitUntil: 'commit' });
      await whole(page, many);
      await page.waitForTimeout(1000);
    });
    const turns = [];
    const tasks = [];
    for (let n = 0; n < SWITCHES; n += 1) {
      const [turn, task] = await watched(page, () => list(page));
      turns.push(turn);
      tasks.push(task);
      await page.waitForTimeout(500);
    }
    const [{ path, took }, backUpTask] = await watched(page, () => backUp(page, folder));
    const bytes = statSync(path).size;
    await context.close();
    return {
      ...{ many, bytes, startTask, listTask: median(tasks), backUp: took, backUpTask },
      ...{ paint: median(starts.map((s) => s.paint)), usable: median(starts.map((s) => s.usable)) },
      ...{ shown: median(turns.map((t) => t.shown)), taken: median(turns.map((t) => t.taken)) },
      ...(await bringIn(host.url, path)),
    };
  } finally {
    profile.remove();
    await host.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @param {string} dist the built app @param {number[]} [amounts] */
export async function measureMuch(dist, amounts = AMOUNTS) {
  const all = [];
  for (const many of amounts) all.push(await measure(dist, many));
  return all;
}
