/**
 * Takes the pictures of README.md and of the manifest from the built app, on an example machine: `npm run build && npm run pictures`.
 * They are kept in public/pictures and stay out of what the worker keeps.
 */
import { mkdirSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findChromium } from '../../.ci/chromium.js';
import { serve } from '../../.ci/serve.js';

const OUT = 'public/pictures';
/** @type {Readonly<Record<string, string>>} */
const SIGNS = { '.': 'Decimal mark', '/': 'Over', ' ': 'Space' };
const host = await serve('dist');
const browser = await chromium.launch({
  executablePath: findChromium() ?? '',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
});

/**
 * @param {'light' | 'dark'} colorScheme
 * @param {{ width: number, height: number }} viewport
 */
const phone = async (colorScheme, viewport = { width: 390, height: 844 }) => {
  const context = await browser.newContext({
    viewport,
    hasTouch: true,
    isMobile: viewport.width < 500,
    colorScheme,
  });
  const page = await context.newPage();
  await page.goto(host.url);
  const tap = async (/** @type {string | RegExp} */ name, /** @type {'button' | 'link'} */ role = 'button') =>
    page
      .getByRole(role, { name, exact: typeof name === 'string' })
      .first()
      .tap();
  const go = async (/** @type {string} */ hash) => {
    await page.goto(`${host.url}#/${hash}`);
    await page.waitForTimeout(400);
  };
  const type = async (/** @type {string} */ text) => {
    for (const sign of text) await tap(SIGNS[sign] ?? sign);
  };
  const accept = async () => {
    await tap('Done');
    await page.waitForTimeout(400);
  };
  const shoot = async (/** @type {string} */ name) => {
    // The key touched last shows it for a moment.
    await page.waitForTimeout(400);
    await page.screenshot({ path: `${OUT}/${name}.png` });
  };
  await tap('Try an example first', 'link');
  await tap(/^Heron/);
  await page.getByText('No thread chosen').waitFor();
  await go('threads/family/iso-coarse');
  await tap('M10');
  await go('threads');
  await tap('Round');
  await go('enter/job/noseSize');
  await type('0.15');
  await accept();
  await go('enter/job/room');
  await type('4');
  await accept();
  await go('speed');
  await tap(/^160/);
  return { go, tap, type, shoot };
};

mkdirSync(OUT, { recursive: true });
const bright = await phone('light');
await bright.go('threads');
await bright.shoot('threads');
await bright.go('speed');
await bright.shoot('speed');
await bright.go('enter/machine/screwPitch');
await bright.tap(/^Unit/);
await bright.tap('tpi');
await bright.tap('Correct');
await bright.type('11 1/2');
await bright.shoot('pad');
await bright.go('cut');
await bright.shoot('cut');
const dark = await phone('dark');
await dark.go('checks/item/chuck-key');
await dark.shoot('checks');
await dark.go('machine');
await dark.shoot('machine');
const wide = await phone('light', { width: 1280, height: 800 });
await wide.go('threads');
await wide.shoot('wide-threads');
await wide.go('speed/chart');
await wide.shoot('wide-chart');
await browser.close();
await host.close();
