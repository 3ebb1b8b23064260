import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect } from 'vitest';
import { sideways } from '../../browser/support/axe';
import { Hand, type PadUnitNow } from '../../browser/support/hand';
import { SHOTS } from '../../browser/support/shots';
import { textFaults } from '../../browser/support/text';
import { padUnit, readWords } from '../../browser/support/words';
import type { Tab } from './engine';
import { find, NOTHING, wanted, type Found, type Wanted } from './find';

const PATIENCE_MS = 20_000;

/** A person at one page of any engine: finds things by what they are called, and touches them. */
export class Visitor extends Hand {
  constructor(
    readonly tab: Tab,
    /** Goes before the names of pictures. */
    private readonly engine: string,
  ) {
    super();
  }

  key(name: string | RegExp): Promise<void> {
    return this.touch(wanted('button', name));
  }

  link(name: string | RegExp): Promise<void> {
    return this.touch(wanted('link', name));
  }

  /** Types into the field of this name, which is empty. */
  async fills(name: string, text: string): Promise<void> {
    await this.touch(wanted('field', name));
    await this.tab.type(text);
  }

  async heads(text: string | RegExp): Promise<void> {
    await this.until(wanted('heading', text), ({ count }) => count > 0);
  }

  async reads(text: string): Promise<void> {
    await expect.poll(() => this.words(), { timeout: PATIENCE_MS, interval: 100 }).toContain(text);
  }

  async readsNot(text: string): Promise<void> {
    await expect.poll(() => this.words(), { timeout: PATIENCE_MS, interval: 100 }).not.toContain(text);
  }

  words(): Promise<string> {
    return readWords(this.tab);
  }

  /** How many keys have this name. */
  async keys(name: RegExp): Promise<number> {
    return (await this.tab.evaluate(find, wanted('button', name))).count;
  }

  /** Whether the key of this name is down. */
  async isDown(name: string): Promise<boolean> {
    return (await this.until(wanted('button', name), ({ count }) => count === 1)).pressed;
  }

  /** Looks at the layout, and takes a picture where pictures are asked for. */
  async looks(name: string): Promise<void> {
    await this.until(wanted('busy', null), ({ count }) => count === 0);
    if (process.env.LATHESIDE_SHOTS) {
      mkdirSync(SHOTS, { recursive: true });
      await this.tab.shoot(join(SHOTS, `${this.engine}-${name.replace(/\W+/g, '-')}.png`));
    }
    // What is scrolled under the bar lies on its words, too.
    const faults = (await textFaults(this.tab)).filter((line) => !line.endsWith('on top of each other'));
    expect(faults, name).toEqual([]);
    expect(await sideways(this.tab), `${name}: wider than the screen`).toBe(0);
  }

  protected async pad(): Promise<PadUnitNow> {
    await this.until(wanted('pad', null), ({ count }) => count > 0);
    return this.tab.evaluate(padUnit, null);
  }

  protected async padGone(): Promise<void> {
    await this.until(wanted('pad', null), ({ count }) => count === 0);
  }

  private async touch(what: Wanted): Promise<void> {
    const { x, y } = await this.until(what, ({ trouble }) => trouble === '');
    await this.tab.tap(x, y);
  }

  private async until(what: Wanted, enough: (found: Found) => boolean): Promise<Found> {
    let found = NOTHING;
    for (const end = Date.now() + PATIENCE_MS; Date.now() < end; await pause(50)) {
      found = await this.tab.evaluate(find, what);
      if (enough(found)) return found;
    }
    throw new Error(`${what.kind} ${what.name}: ${found.trouble}\n${await this.words()}`);
  }
}
