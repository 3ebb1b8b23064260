import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer-core';
import type { Browser as Puppet, ConsoleMessage, ElementHandle, Page } from 'puppeteer-core';
import { findFirefox } from '../../../.ci/engines.js';
import { newFile } from './downloads';
import { SCREEN, type Browser, type Engine, type Tab } from './engine';
import { UNREACHED } from './unreached';

/** A browser that asks nobody anything, gives pages touch events, and saves files without asking. */
const settings = (downloads: string): Record<string, unknown> => ({
  'dom.w3c_touch_events.enabled': 1,
  // As on a phone they take no width.
  'ui.useOverlayScrollbars': 1,
  'browser.download.folderList': 2,
  'browser.download.dir': downloads,
  'browser.download.always_ask_before_handling_new_types': false,
  'browser.download.alwaysOpenPanel': false,
  'network.captive-portal-service.enabled': false,
  'network.connectivity-service.enabled': false,
});

class FirefoxTab implements Tab {
  constructor(
    private readonly page: Page,
    private readonly downloads: string,
  ) {}

  evaluate<R, A>(work: (argument: A) => R | Promise<R>, argument: A): Promise<R> {
    return this.page.evaluate(work as never, argument as never);
  }
  async goto(address: string): Promise<void> {
    await this.page.goto(address);
  }
  async reload(): Promise<void> {
    await this.page.reload();
  }
  front(): Promise<void> {
    return this.page.bringToFront();
  }
  tap(x: number, y: number): Promise<void> {
    return this.page.touchscreen.tap(x, y);
  }
  type(text: string): Promise<void> {
    return this.page.keyboard.type(text);
  }
  async choose(path: string): Promise<void> {
    const input = await this.page.waitForSelector('pierce/input[type=file]');
    await (input as ElementHandle<HTMLInputElement>).uploadFile(path);
  }
  saved(press: () => Promise<void>): Promise<string> {
    return newFile(this.downloads, press);
  }
  async shoot(path: string): Promise<void> {
    await this.page.screenshot({ path: path });
  }
  close(): Promise<void> {
    return this.page.close();
  }
}

class Firefox implements Browser {
  readonly problems: string[] = [];
  private readonly folder = mkdtempSync(join(tmpdir(), 'latheside-firefox-'));
  private readonly downloads = join(this.folder, 'files');
  private current: Puppet | undefined;
  private first: Tab | undefined;

  get page(): Tab {
    if (!this.first) throw new Error('The browser is not running.');
    return this.first;
  }

  async start(address: string): Promise<void> {
    const executablePath = findFirefox();
    if (executablePath === null) throw new Error('No Firefox: node .ci/engines.js says what to install.');
    const profile = join(this.folder, 'profile');
    for (const folder of [profile, this.downloads]) mkdirSync(folder, { recursive: true });
    this.current = await puppeteer.launch({
      browser: 'firefox',
      executablePath,
      headless: true,
      userDataDir: profile,
      extraPrefsFirefox: settings(this.downloads),
    });
    this.first = await this.newTab(address);
  }

  async newTab(address: string): Promise<Tab> {
    if (!this.current) throw new Error('The browser is not running.');
    const page = await this.current.newPage();
    page.on('console', (message) => this.note(message));
    page.on('pageerror', (e) =>
      this.problems.push(`uncaught: ${e instanceof Error ? e.message : String(e)}`),
    );
    await page.setViewport({ ...SCREEN, deviceScaleFactor: 2, hasTouch: true });
    await page.goto(address);
    return new FirefoxTab(page, this.downloads);
  }

  async restart(address: string): Promise<void> {
    const child = this.current?.process();
    const gone = new Promise((resolve) => child?.once('exit', resolve));
    child?.kill('SIGKILL');
    await gone;
    await this.start(address);
  }

  async close(): Promise<void> {
    await this.current?.close();
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }

  private note(message: ConsoleMessage): void {
    const text = message.text();
    if (message.type() === 'error' && !UNREACHED.test(text)) this.problems.push(`console: ${text}`);
  }
}

/** Firefox by WebDriver BiDi. */
export const firefox: Engine = {
  name: 'firefox',
  async open(address) {
    const browser = new Firefox();
    await browser.start(address);
    return browser;
  },
};
