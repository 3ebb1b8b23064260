/**
 * An hour's use at a touch every three seconds, done as fast as the page lets it: what the page holds afterwards. Memory is
 * read after the browser has collected what nobody needs.
 */
import { serve } from '../../.ci/serve.js';
import { newProfile, openBrowser } from './browser.js';
import { prepare } from './moves.js';

const TOUCHES = 1200;
/** Rounds between two looks. */
const EVERY = 6;

/** What a person goes round, with what they enter: addresses, names of keys. */
const ROUND = [
  '#/threads',
  '#/threads/family/iso-coarse',
  'M12',
  '#/threads/limits',
  '#/threads/measure',
  '#/threads/type',
  '1',
  '0',
  '#/threads/family/iso-coarse',
  'M10',
  '#/speed',
  'Faster by 10 rpm',
  'Slower by 10 rpm',
  '#/speed/chart',
  '#/speed',
  '#/checks',
  'Later',
  '#/checks/list',
  '#/cut',
  '#/cut/work',
  '#/cut/nut',
  '#/cut/plan',
  '#/machine',
  '#/machine/prove',
  '#/machine/wiring',
  '#/machine/carry',
  '#/machine/faults',
  '#/machine/stops',
  '#/machine/field/backlash',
  '#/enter/machine/backlash',
  '2',
  '#/machine/sheet',
  '#/settings',
];

/**
 * One touch, and a wait until what it led to stands.
 * @param {import('playwright-core').Page} page
 * @param {string} what
 */
const does = (page, what) =>
  page.evaluate(async (step) => {
    const shell = /** @type {any} */ (document.querySelector('ls-app'));
    if (step.startsWith('#')) location.hash = step;
    else {
      const keys = (/** @type {ParentNode} */ root) =>
        [...root.querySelectorAll('*')].flatMap((/** @type {Element} */ e) => [
          ...(e.localName === 'button' ? [e] : []),
          ...(e.shadowRoot ? /** @type {Element[]} */ (keys(e.shadowRoot)) : []),
        ]);
      const key = keys(document).find(
        (e) =>
          (e.getAttribute('aria-label') ?? e.textContent ?? '').trim().split(/\s/)[0] === step.split(' ')[0],
      );
      if (!key) throw new Error(`no key ${step} at ${location.hash}`);
      /** @type {HTMLElement} */ (key).click();
    }
    await new Promise((done) => setTimeout(done));
    await shell.shown();
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  }, what);

/** @param {string} folder the built app */
export async function measureHour(folder) {
  const profile = newProfile();
  const host = await serve(folder);
  const { context, page } = await openBrowser(profile.path);
  try {
    await page.goto(host.url);
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await prepare(page);
    const session = await context.newCDPSession(page);
    await session.send('Performance.enable');
    const held = async () => {
      await page.waitForTimeout(500);
      for (let twice = 0; twice < 2; twice += 1) await session.send('HeapProfiler.collectGarbage');
      const { metrics } = await session.send('Performance.getMetrics');
      const of = (/** @type {string} */ name) => metrics.find((m) => m.name === name)?.value ?? NaN;
      return { heap: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners') };
    };
    const looks = [];
    for (let round = 0, touches = 0; ; round += 1) {
      if (round % EVERY === 0) {
        await does(page, '#/threads');
        looks.push({ touches, ...(await held()) });
        if (touches >= TOUCHES - ROUND.length) return looks;
      }
      for (const what of ROUND) await does(page, what);
      touches += ROUND.length;
    }
  } finally {
    await context.close();
    await host.close();
    profile.remove();
  }
}
