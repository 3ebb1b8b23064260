import type { Page } from 'playwright-core';
import { routeOf } from '../../../src/screens/shell/routes';

/** At least one address of each screen. */
export const ADDRESSES = [
  ...[
    'threads',
    'threads/find',
    'threads/family/iso-coarse',
    'threads/type',
    'threads/limits',
    'threads/trains',
  ],
  ...['threads/measure', 'threads/what', 'threads/held', 'threads/own', 'threads/own/none'],
  ...['speed', 'speed/feed', 'speed/chart', 'speed/raise', 'speed/trace', 'checks', 'checks/list'],
  ...[
    'cut',
    'cut/work',
    'cut/stop',
    'cut/nut',
    'cut/plan',
    'cut/pass',
    'cut/measure',
    'cut/records',
    'cut/ways',
    'cut/mistakes',
    'cut/mistakes/wrong-mark',
  ],
  ...[
    'machine',
    'machine/list',
    'machine/new',
    'machine/first',
    'machine/field/backlash',
    'machine/guide/0',
    'machine/sheet',
  ],
  ...['machine/prove', 'machine/faults', 'machine/noise', 'machine/stops', 'machine/wiring', 'machine/carry'],
  ...['machine/carry/show', 'machine/carry/read', 'machine/carry/shelf'],
  ...['settings', 'enter/job/rpm', 'enter/machine/backlash'],
];

/** Opens an address by itself, and waits until its screen stands. */
export const go = async (page: Page, address: string): Promise<void> => {
  await page.evaluate((hash) => (location.hash = hash), `#/${address}`);
  const { tag } = routeOf(`#/${address}`, 'threads');
  await page.locator(tag).first().waitFor();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
};
