import { Emitter } from './emitter';

/** What can be undone: its name for the key, and how. */
export interface Undoable {
  readonly code: string;
  readonly detail: string;
  readonly undo: () => Promise<void>;
}

const KEPT = 30;

/** The last changes of this session, newest last. Each screen offers the newest in words. */
export class UndoList extends Emitter {
  private entries: Undoable[] = [];

  get newest(): Undoable | null {
    return this.entries.at(-1) ?? null;
  }

  push(entry: Undoable): void {
    this.entries = [...this.entries, entry].slice(-KEPT);
    this.tell();
  }

  async undo(): Promise<void> {
    const entry = this.entries.at(-1);
    if (!entry) return;
    this.entries = this.entries.slice(0, -1);
    await entry.undo();
    this.tell();
  }
}
