import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { Phone } from '../../browser/support/phone';
import type { Browser, Engine, Tab } from './engine';
import { UNREACHED } from './unreached';

const tabOf = (page: Page, downloads: string): Tab => ({
  evaluate: (work, argument) => page.evaluate(work as never, argument),
  goto: async (address) => void (await page.goto(address)),
  reload: async () => void (await page.reload()),
  front: () => page.bringToFront(),
  tap: (x, y) => page.touchscreen.tap(x, y),
  type: (text) => page.keyboard.type(text),
  choose: (path) => page.locator('input[type=file]').setInputFiles(path),
  async saved(press) {
    const [download] = await Promise.all([page.waitForEvent('download'), press()]);
    const path = join(downloads, download.suggestedFilename());
    await download.saveAs(path);
    return path;
  },
  shoot: async (path) => void (await page.screenshot({ path })),
  close: () => page.close(),
});

/** Chromium by its debugging protocol, as in the other journeys. */
export const chromium: Engine = {
  name: 'chromium',
  async open(address): Promise<Browser> {
    const phone = await Phone.open(address);
    phone.watch.allow(UNREACHED);
    const downloads = mkdtempSync(join(tmpdir(), 'latheside-files-'));
    return {
      get page() {
        return tabOf(phone.page, downloads);
      },
      newTab: async (at) => tabOf(await phone.newTab(at), downloads),
      async restart() {
        await phone.kill();
        await phone.start();
      },
      problems: phone.watch.problems,
      async close() {
        await phone.close();
        rmSync(downloads, { recursive: true, force: true });
      },
    };
  },
};
