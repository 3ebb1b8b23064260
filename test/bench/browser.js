/** A Chromium for measuring: phone size, touch, a slowed processor, a profile that outlives the process. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { findChromium } from '../../.ci/chromium.js';

/** How many times slower than this machine the page runs. */
export const SLOWDOWN = 4;

const FLAGS = ['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'];

export function newProfile() {
  const path = mkdtempSync(join(tmpdir(), 'latheside-bench-'));
  return {
    path,
    remove: () => rmSync(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }),
  };
}

/**
 * Starts the browser on a profile.
 * @param {string} profile
 */
export async function openBrowser(profile) {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('No Chromium: node .ci/chromium.js says what to install.');
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: [...FLAGS, ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
    viewport: { width: 390, height: 844 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
  });
  context.setDefaultTimeout(60_000);
  const page = context.pages()[0] ?? (await context.newPage());
  return { context, page };
}

/**
 * Slows the page's processor, from the next thing it does.
 * @param {import('playwright-core').Page} page
 * @param {number} [rate] 1 is full speed
 */
export async function slow(page, rate = SLOWDOWN) {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
}
