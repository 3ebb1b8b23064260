import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Builder, Capabilities, type WebDriver, type WebElement } from 'selenium-webdriver';
import { findWebKit } from '../../../.ci/engines.js';
import { newFile } from './downloads';
import { SCREEN, type Browser, type Engine, type Tab } from './engine';

/** The window's own bar would be wider than a phone; this leaves only a strip of it. */
const NARROW_BAR =
  '* { min-width: 0; min-height: 0; padding: 0; margin: 0; border-width: 0; font-size: 1px; } image { -gtk-icon-transform: scale(0); }';
/** High enough for a page of the right size below that strip. */
const DISPLAY = `${SCREEN.width * 2}x${SCREEN.height * 2 + 200}x24`;
/** Pixels as fine as a phone's where pictures are asked for: drawn by the processor they take four times as long. */
const SCALE = process.env.LATHESIDE_SHOTS ? '2' : '1';
/** The button of a touch or of the mouse. */
const MAIN = 0;

/** Runs in the page: a file input wherever it stands. */
const fileInput = (): Element | null => {
  const look = (root: ParentNode): Element | null => {
    for (const e of root.querySelectorAll('*')) {
      const found = e.matches('input[type=file]') ? e : e.shadowRoot && look(e.shadowRoot);
      if (found) return found;
    }
    return null;
  };
  return look(document);
};

class WebKitTab implements Tab {
  constructor(
    private readonly driver: WebDriver,
    private readonly window: string,
    private readonly downloads: string,
  ) {}

  private async at(): Promise<WebDriver> {
    if ((await this.driver.getWindowHandle().catch(() => '')) !== this.window)
      await this.driver.switchTo().window(this.window);
    return this.driver;
  }
  async evaluate<R, A>(work: (argument: A) => R | Promise<R>, argument: A): Promise<R> {
    const driver = await this.at();
    return driver.executeScript<R>(`return (${work.toString()})(arguments[0])`, argument);
  }
  async goto(address: string): Promise<void> {
    await (await this.at()).get(address);
  }
  async reload(): Promise<void> {
    await (await this.at()).navigate().refresh();
  }
  async front(): Promise<void> {
    // Windows of one size lie on each other, and each counts as shown.
    await this.at();
  }
  async tap(x: number, y: number): Promise<void> {
    const driver = await this.at();
    await driver
      .actions()
      .move({ x: Math.round(x), y: Math.round(y), duration: 0 })
      .press(MAIN)
      .release(MAIN)
      .perform();
  }
  async type(text: string): Promise<void> {
    await (await this.at()).actions().sendKeys(text).perform();
  }
  async choose(path: string): Promise<void> {
    const driver = await this.at();
    const input = await driver.executeScript<WebElement>(`return (${fileInput.toString()})()`);
    await input.sendKeys(path);
  }
  saved(press: () => Promise<void>): Promise<string> {
    return newFile(this.downloads, press);
  }
  async shoot(path: string): Promise<void> {
    writeFileSync(path, Buffer.from(await (await this.at()).takeScreenshot(), 'base64'));
  }
  async close(): Promise<void> {
    await (await this.at()).close();
  }
}

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
};

/** A screen that nobody sees; gives its name once it is there. */
const startDisplay = async (program: string): Promise<{ child: ChildProcess; name: string }> => {
  const child = spawn(program, ['-displayfd', '1', '-screen', '0', DISPLAY, '-nolisten', 'tcp'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [said] = (await once(child.stdout, 'data')) as [Buffer];
  return { child, name: `:${said.toString().trim()}` };
};

class WebKit implements Browser {
  readonly problems: string[] = [];
  private readonly folder = mkdtempSync(join(tmpdir(), 'latheside-webkit-'));
  private readonly downloads = join(this.folder, 'files');
  private readonly children: ChildProcess[] = [];
  private driver: WebDriver | undefined;
  private first: Tab | undefined;

  get page(): Tab {
    if (!this.first) throw new Error('The browser is not running.');
    return this.first;
  }

  async start(address: string): Promise<void> {
    const found = findWebKit();
    if (found === null) throw new Error('No WebKit: node .ci/engines.js says what to install.');
    mkdirSync(join(this.folder, 'gtk-3.0'), { recursive: true });
    mkdirSync(this.downloads, { recursive: true });
    writeFileSync(join(this.folder, 'gtk-3.0', 'gtk.css'), NARROW_BAR);
    writeFileSync(join(this.folder, 'user-dirs.dirs'), `XDG_DOWNLOAD_DIR="${this.downloads}"\n`);
    const display = await startDisplay(found.display);
    const port = await freePort();
    const driver = spawn(found.driver, [`--port=${port}`], {
      stdio: 'ignore',
      env: { ...process.env, DISPLAY: display.name, XDG_CONFIG_HOME: this.folder, GDK_SCALE: SCALE },
    });
    this.children.push(driver, display.child);
    const options = { binary: found.browser, args: ['--automation'] };
    this.driver = await this.session(
      `http://127.0.0.1:${port}`,
      new Capabilities({ browserName: 'MiniBrowser', 'webkitgtk:browserOptions': options }),
    );
    this.first = await this.sized(await this.driver.getWindowHandle());
    await this.first.goto(address);
  }

  /** The driver listens a moment after it was started. */
  private async session(address: string, wanted: Capabilities): Promise<WebDriver> {
    for (let left = 50; ; left -= 1) {
      try {
        return await new Builder()
          .disableEnvironmentOverrides()
          .usingServer(address)
          .withCapabilities(wanted)
          .build();
      } catch (e) {
        if (left === 0 || !/ECONNREFUSED/.test(String(e))) throw e;
        await pause(100);
      }
    }
  }

  /** Makes the page in this window as large as a phone's. */
  private async sized(window: string): Promise<Tab> {
    if (!this.driver) throw new Error('The browser is not running.');
    const tab = new WebKitTab(this.driver, window, this.downloads);
    await tab.front();
    const rect = { x: 0, y: 0, ...SCREEN };
    await this.driver.manage().window().setRect(rect);
    const bar = SCREEN.height - (await tab.evaluate(() => innerHeight, null));
    await this.driver
      .manage()
      .window()
      .setRect({ ...rect, height: SCREEN.height + bar });
    return tab;
  }

  async newTab(address: string): Promise<Tab> {
    // A window of its own: what lies in a tab behind another is not drawn.
    await this.driver?.switchTo().newWindow('window');
    const tab = await this.sized((await this.driver?.getWindowHandle()) ?? '');
    await tab.goto(address);
    return tab;
  }

  restart(): Promise<void> {
    return Promise.reject(new Error('A session keeps no profile.'));
  }

  async close(): Promise<void> {
    await this.driver?.quit().catch(() => undefined);
    for (const child of this.children) child.kill();
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

/** WebKitGTK's own small browser by WebDriver. */
export const webkit: Engine = {
  name: 'webkit',
  async open(address) {
    const browser = new WebKit();
    try {
      await browser.start(address);
    } catch (e) {
      await browser.close();
      throw e;
    }
    return browser;
  },
};
