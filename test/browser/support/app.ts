import { expect } from 'vitest';
import { Hand, type PadUnitNow } from './hand';
import type { Phone } from './phone';
import { padUnit, readWords } from './words';

/** What a person does on the screens, by touch alone. */
export class Person extends Hand {
  constructor(readonly phone: Pick<Phone, 'page' | 'finger'>) {
    super();
  }

  /** Waits until some text can be read on the screen. */
  async sees(text: string | RegExp): Promise<void> {
    await this.phone.page.getByText(text).first().waitFor({ state: 'visible' });
  }

  async seesNot(text: string | RegExp): Promise<void> {
    await expect.poll(() => this.phone.page.getByText(text).filter({ visible: true }).count()).toBe(0);
  }

  words(): Promise<string> {
    return readWords(this.phone.page);
  }

  async reads(text: string): Promise<void> {
    await expect.poll(() => this.words(), { timeout: 15_000 }).toContain(text);
  }

  key(name: string | RegExp): Promise<void> {
    return this.phone.finger.tap(name);
  }

  link(name: string | RegExp): Promise<void> {
    return this.phone.finger.tap(name, 'link');
  }

  heads(text: string | RegExp): Promise<void> {
    return this.phone.page.getByRole('heading', { name: text }).first().waitFor();
  }

  protected async pad(): Promise<PadUnitNow> {
    await this.phone.page.locator('ls-pad').waitFor();
    return this.phone.page.evaluate(padUnit);
  }

  protected padGone(): Promise<void> {
    return this.phone.page.locator('ls-pad').waitFor({ state: 'detached' });
  }
}
