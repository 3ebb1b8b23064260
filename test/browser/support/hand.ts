/** The names on the keys of signs stand here and nowhere else. */
const PAD: Readonly<Record<string, string>> = { '.': 'Decimal mark', '/': 'Over', ' ': 'Space' };

/** The unit that the pad shows, and whether there are more than two. */
export interface PadUnitNow {
  readonly label: string;
  readonly many: boolean;
}

/** What a person does on the screens, whatever browser it is. */
export abstract class Hand {
  /** Presses the one key with this name: the whole name, or a RegExp for a part. */
  abstract key(name: string | RegExp): Promise<void>;
  abstract link(name: string | RegExp): Promise<void>;
  /** Waits until a heading says this. */
  abstract heads(text: string | RegExp): Promise<void>;
  /** Waits until some text, which may stand in several elements, is on the screen. */
  abstract reads(text: string): Promise<void>;
  /** Waits until the number pad is there. */
  protected abstract pad(): Promise<PadUnitNow>;
  protected abstract padGone(): Promise<void>;

  place(name: 'Threads' | 'Speed' | 'Checks' | 'Cut' | 'Machine'): Promise<void> {
    return this.link(name);
  }

  /** Types on our own pad and accepts. */
  async types(text: string, unit?: string): Promise<void> {
    await this.pad();
    for (const sign of text) await this.key(PAD[sign] ?? sign);
    if (unit) await this.unit(unit);
    await this.key('Done');
  }

  /** Brings the pad to a unit by its key: two units are swapped, more are chosen from. */
  async unit(unit: string): Promise<void> {
    const now = await this.pad();
    if (now.label === unit) return;
    await this.key(new RegExp(`Unit\\s+${now.label}$`));
    if (now.many) await this.key(unit);
  }

  /** Sets what the pad asks, having opened it by a key. */
  async enters(key: string | RegExp, text: string, unit?: string): Promise<void> {
    await this.link(key);
    await this.types(text, unit);
    await this.padGone();
  }
}
