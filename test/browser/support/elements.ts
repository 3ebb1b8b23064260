import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { build } from 'vite';
import { serve } from '../../../.ci/serve.js';
import { Phone } from './phone';

/** The page on which elements stand one at a time, built and open on a phone. */
export class ElementsPage {
  private constructor(
    private readonly folder: string,
    private readonly server: Awaited<ReturnType<typeof serve>>,
    readonly phone: Phone,
  ) {}

  static async open(): Promise<ElementsPage> {
    const folder = mkdtempSync(join(tmpdir(), 'latheside-elements-'));
    await build({
      configFile: false,
      root: 'test/browser/elements',
      publicDir: '../../../public',
      logLevel: 'error',
      build: { outDir: folder, emptyOutDir: true },
    });
    const server = await serve(folder);
    return new ElementsPage(folder, server, await Phone.open(server.url));
  }

  async close(): Promise<void> {
    await this.phone.close();
    await this.server.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Opens one page anew; gives the element that stands first on it. */
  async show(name: string): Promise<Locator> {
    await this.phone.page.goto('about:blank');
    await this.phone.page.goto(`${this.server.url}#${name}`);
    const element = this.phone.page.locator('main > *').nth(1);
    await element.waitFor();
    return element;
  }

  /** What the document heard since it was last asked. */
  heard(): Promise<string[]> {
    return this.phone.page.evaluate(() => window.heard.splice(0));
  }
}
