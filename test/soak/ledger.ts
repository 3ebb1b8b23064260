import type { SavedDatabase } from '../browser/support/saved';

/** How the value of a name is read off the database as it lies on the disk; undefined: it isn't there. */
export type ReadName = (db: SavedDatabase, name: string) => string | undefined;

interface Line {
  /** What it was (null: not looked at yet), then what was tried in this order. */
  tried: (string | null)[];
  /** Which of them the app has said to be saved; those before it may not come back. */
  said: number;
}

/**
 * What the app said to be saved, kept outside the browser. A value that was tried and not acknowledged may be there or
 * not; one that was acknowledged is there, unless a later one is.
 */
export class Ledger {
  private readonly lines = new Map<string, Line>();
  /** Acknowledgements taken down since they were looked up last, and those looked up since `take`. */
  private fresh = 0;
  private looked = 0;

  constructor(private readonly read: ReadName) {}

  /** Takes down what is going to be tried, in this order for each name. */
  trying(name: string, value: string): void {
    const line = this.lines.get(name) ?? { tried: [null], said: 0 };
    line.tried.push(value);
    this.lines.set(name, line);
  }

  /** The app said that this is saved. */
  acknowledged(name: string, value: string): void {
    const line = this.lines.get(name);
    const at = line ? line.tried.lastIndexOf(value) : -1;
    if (!line || at < 0) throw new Error(`acknowledged, never tried: ${name} ${value}`);
    line.said = Math.max(line.said, at);
    this.fresh += 1;
  }

  /** How many acknowledgements were looked up since this was asked last. */
  take(): number {
    const { looked } = this;
    this.looked = 0;
    return looked;
  }

  /** What of all that was ever acknowledged isn't in the database, one line each. What is found counts from now on. */
  missing(db: SavedDatabase): string[] {
    const lost: string[] = [];
    for (const [name, line] of this.lines) {
      const found = this.read(db, name) ?? '';
      const at = Math.max(line.tried.lastIndexOf(found), line.tried[0] === null ? 0 : -1);
      if (at < line.said)
        lost.push(`${name}: ${found || 'nothing'} is there, "${line.tried[line.said]}" was acknowledged`);
      line.tried = [found];
      line.said = 0;
    }
    this.looked += this.fresh;
    this.fresh = 0;
    return lost;
  }
}
