import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { BrowserContext, CDPSession, Page } from 'playwright-core';
import { findChromium } from '../../../.ci/chromium.js';
import { Finger } from './finger';
import { Watch } from './watch';

/** Flags that keep Chromium from talking to anyone and let it run as root in a container. */
export const CHROMIUM_FLAGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
];

export interface PhoneOptions {
  /** CSS pixels; 390 × 844 unless told. */
  width?: number;
  height?: number;
  dark?: boolean;
  /** The phone's language, "de-DE": it decides the decimal mark. */
  locale?: string;
  /** The person has forbidden sites to store anything: no cookies, no database, no worker. */
  storesNothing?: boolean;
  /** More flags for the browser. */
  flags?: readonly string[];
}

/**
 * A phone with a browser that keeps its profile: opened, killed and opened again it still has what it stored.
 * Close it in `afterEach`; that removes the profile.
 */
export class Phone {
  readonly watch = new Watch(() => new URL(this.address).origin);
  private readonly profile = mkdtempSync(join(tmpdir(), 'latheside-phone-'));
  private current: BrowserContext | undefined;
  private currentPage: Page | undefined;

  private constructor(
    readonly address: string,
    private readonly options: PhoneOptions,
  ) {}

  /** Starts a browser with an empty profile and opens the address in it. */
  static async open(address: string, options: PhoneOptions = {}): Promise<Phone> {
    const phone = new Phone(address, options);
    if (options.storesNothing) phone.forbidStorage();
    await phone.start();
    return phone;
  }

  /** Where the browser keeps the databases of the app's origin; to be touched only while it doesn't run. */
  get databaseFolder(): string {
    const { protocol, hostname, port } = new URL(this.address);
    const origin = `${protocol.slice(0, -1)}_${hostname}_${port}`;
    return join(this.profile, 'Default', 'IndexedDB', `${origin}.indexeddb.leveldb`);
  }

  get page(): Page {
    if (!this.currentPage) throw new Error('The browser is not running.');
    return this.currentPage;
  }

  get context(): BrowserContext {
    if (!this.current) throw new Error('The browser is not running.');
    return this.current;
  }

  /** Moves on the page by touch alone. */
  get finger(): Finger {
    return new Finger(this.page);
  }

  private forbidStorage(): void {
    const folder = join(this.profile, 'Default');
    mkdirSync(folder, { recursive: true });
    const BLOCK = 2;
    const settings = { profile: { default_content_setting_values: { cookies: BLOCK } } };
    writeFileSync(join(folder, 'Preferences'), JSON.stringify(settings));
  }

  /** Starts the browser again with the same profile, after `kill` or `quit`, and opens the app or another of its files. */
  async start(address = this.address): Promise<void> {
    const { width = 390, height = 844, dark = false, locale, flags = [] } = this.options;
    const executablePath = findChromium();
    if (executablePath === null) throw new Error('No Chromium.');
    this.current = await chromium.launchPersistentContext(this.profile, {
      executablePath,
      args: [...CHROMIUM_FLAGS, ...flags],
      viewport: { width, height },
      deviceScaleFactor: 2,
      isMobile: true,
      hasTouch: true,
      colorScheme: dark ? 'dark' : 'light',
      ...(locale ? { locale } : {}),
    });
    this.current.setDefaultTimeout(20_000);
    this.watch.attach(this.current);
    this.currentPage = this.current.pages()[0] ?? (await this.current.newPage());
    await this.currentPage.goto(address);
  }

  /** Another tab of the same browser. */
  async newTab(address = this.address): Promise<Page> {
    const page = await this.context.newPage();
    await page.goto(address);
    return page;
  }

  /** Ends the browser process as a phone does that runs out of memory: SIGKILL, nothing is flushed. */
  async kill(): Promise<void> {
    const gone = new Promise((resolve) => this.context.once('close', resolve));
    process.kill(await this.processId(), 'SIGKILL');
    await gone;
    this.current = undefined;
    this.currentPage = undefined;
  }

  /** Closes the browser in good order, keeping the profile. */
  async quit(): Promise<void> {
    await this.current?.close();
    this.current = undefined;
    this.currentPage = undefined;
  }

  /** Closes the browser and removes its profile. */
  async close(): Promise<void> {
    await this.quit();
    rmSync(this.profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }

  /** A session of the debugging protocol on the current page. */
  debug(): Promise<CDPSession> {
    return this.context.newCDPSession(this.page);
  }

  /** Ends every worker of the browser at once, as a phone does that runs out of memory. */
  async stopWorkers(): Promise<void> {
    const debug = await this.debug();
    await debug.send('ServiceWorker.enable');
    await debug.send('ServiceWorker.stopAllWorkers');
    await debug.detach();
  }

  /**
   * Waits until what the app was writing is on the disk: what was changed shows at once, and is saved some 20 ms later, in which
   * only a driver can reload the page. What is to be written waits its turn behind all that was to be written before.
   */
  async written(): Promise<void> {
    await this.page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('latheside');
          opening.onerror = () => reject(new Error('not opened'));
          opening.onsuccess = () => {
            const db = opening.result;
            const turn = db.transaction([...db.objectStoreNames], 'readwrite');
            turn.oncomplete = () => {
              db.close();
              resolve();
            };
          };
        }),
    );
  }

  /** Resolves when a worker is active and has claimed the page. */
  async controlled(page = this.page): Promise<void> {
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  }

  private async processId(): Promise<number> {
    const browser = this.context.browser();
    if (!browser) throw new Error('This browser gives no process number.');
    const session = await browser.newBrowserCDPSession();
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    const id = processInfo.find(({ type }) => type === 'browser')?.id;
    if (id === undefined) throw new Error('This browser gives no process number.');
    return id;
  }
}
