import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { build } from 'vite';
import { serve } from '../../../.ci/serve.js';
import { Phone } from './phone';

/** What the elements must do without: whoever asks for it is told of by the watch. */
const forbid = (): void => {
  for (const name of ['indexedDB', 'caches', 'localStorage', 'sessionStorage', 'fetch'])
    Object.defineProperty(window, name, {
      get: () => {
        console.error(`${name} was asked for`);
        return undefined;
      },
    });
  Object.defineProperty(Navigator.prototype, 'serviceWorker', {
    get: () => console.error('a worker was asked for'),
  });
};

/** The page that shows the elements for other pages, built and open on a phone, with neither storage nor worker. */
export class EmbedPage {
  private constructor(
    readonly folder: string,
    readonly server: Awaited<ReturnType<typeof serve>>,
    readonly phone: Phone,
  ) {}

  static async open(): Promise<EmbedPage> {
    const folder = mkdtempSync(join(tmpdir(), 'latheside-embed-'));
    await buildEmbed(folder);
    const server = await serve(folder);
    const phone = await Phone.open('about:blank', { width: 360, height: 740 });
    await phone.context.addInitScript(forbid);
    return new EmbedPage(folder, server, phone);
  }

  async close(): Promise<void> {
    await this.phone.close();
    await this.server.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** The page as it is when it was just opened. */
  async anew(): Promise<void> {
    await this.phone.page.setViewportSize({ width: 360, height: 740 });
    await this.phone.page.goto(this.server.url);
    await this.phone.page.getByText('The page was told the figures of').waitFor();
  }

  part(name: string): Locator {
    return this.phone.page.locator(`#${name}`);
  }

  /** Sets properties as a page's script does. */
  set(name: string, values: object): Promise<void> {
    return this.part(name).evaluate((e, all) => void Object.assign(e, all), values);
  }

  /** Where the page is long, a finger would swipe for seconds to get there: the element is brought into sight first. */
  async inSight(name: string): Promise<void> {
    await this.part(name).evaluate((e) => e.scrollIntoView({ behavior: 'instant' }));
  }

  async touch(name: string, key: string): Promise<void> {
    await this.inSight(name);
    await this.phone.finger.tapOn(this.part(name).getByRole('button', { name: key, exact: true }));
  }
}

/** The elements' own build, as `npm run build:embed` makes it, into another folder. */
export const buildEmbed = async (folder: string): Promise<void> => {
  await build({
    configFile: 'vite.embed.config.ts',
    mode: 'production',
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
  });
};
