import { expect } from 'vitest';
import type { Phone } from './phone';

/** What a person does on the screens, by touch alone; the names on the keys stand here and nowhere else. */
const PAD: Readonly<Record<string, string>> = { '.': 'Decimal mark', '/': 'Over', ' ': 'Space' };

export class Person {
  constructor(readonly phone: Pick<Phone, 'page' | 'finger'>) {}

  /** Waits until some text can be read on the screen. */
  async sees(text: string | RegExp): Promise<void> {
    await this.phone.page.getByText(text).first().waitFor({ state: 'visible' });
  }

  async seesNot(text: string | RegExp): Promise<void> {
    await expect.poll(() => this.phone.page.getByText(text).filter({ visible: true }).count()).toBe(0);
  }

  /** All the words of the screen, for literal figures that stand in several elements. */
  async words(): Promise<string> {
    const all = await this.phone.page.evaluate(() => {
      const read = (node: Node): string => {
        if (node instanceof Element && getComputedStyle(node).display === 'none') return '';
        const root = node instanceof Element ? node.shadowRoot : null;
        if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
        if (node instanceof HTMLSlotElement) return node.assignedNodes({ flatten: true }).map(read).join('');
        return [...(root ?? node).childNodes].map(read).join(' ');
      };
      return read(document.body);
    });
    return all.replace(/\s+/g, ' ').replace(/ (?=[.:,;])/g, '');
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
  place(name: 'Threads' | 'Speed' | 'Checks' | 'Cut' | 'Machine'): Promise<void> {
    return this.link(name);
  }

  /** Types on our own pad and accepts. */
  async types(text: string, unit?: string): Promise<void> {
    await this.phone.page.locator('ls-pad').waitFor();
    for (const sign of text) await this.key(PAD[sign] ?? sign);
    if (unit) await this.unit(unit);
    await this.key('Done');
  }

  /** Brings the pad to a unit by its key: two units are swapped, more are chosen from. */
  async unit(unit: string): Promise<void> {
    const now = await this.phone.page.locator('ls-pad').evaluate((pad) => {
      const p = pad as unknown as { units: { id: string; label: string }[]; unit: string };
      return { label: p.units.find((u) => u.id === p.unit)?.label ?? '', many: p.units.length > 2 };
    });
    if (now.label === unit) return;
    await this.key(new RegExp(`Unit\\s+${now.label}$`));
    if (now.many) await this.key(unit);
  }
}
