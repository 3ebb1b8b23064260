import { shelfStanding, type ShelfFile, type ShelfStanding } from '../core/carry';
import { Shelf, type ShelfAnswer } from '../storage/shelf';
import type { App } from './app';
import { Emitter } from './emitter';

export type OnShelf = ShelfFile & { readonly standing: ShelfStanding };

/** The shelf of machines beside the app, as it was when the host could last be reached. */
export class ShelfState extends Emitter {
  /** null until it was read, or where nothing is kept. */
  files: readonly OnShelf[] | null = null;
  at = 0;
  missing = 0;
  /** What became of the last look at the host; null while it is looked at. */
  answer: ShelfAnswer | null = 'had';
  private readonly shelf: Shelf;

  constructor(app: App) {
    super();
    this.shelf = new Shelf(app.storage.rows.backing);
  }

  /** What is kept, held against what is here now. */
  async look(): Promise<void> {
    const kept = await this.shelf.kept();
    const files = kept?.files ?? [];
    const here = await this.shelf.here(files.map((f) => f.machine).filter((id) => id !== ''));
    this.files = files.map((f) => ({ ...f, standing: shelfStanding(f, here.get(f.machine) ?? null) }));
    this.at = kept?.at ?? 0;
    this.missing = kept?.missing ?? 0;
    this.tell();
  }

  /** Asks the host once more. */
  async refresh(): Promise<void> {
    this.answer = null;
    this.tell();
    this.answer = await this.shelf.refresh(Date.now());
    await this.look();
  }

  file(name: string): Promise<Blob | null> {
    return this.shelf.file(name);
  }
}

const states = new WeakMap<App, ShelfState>();

/** The one of this page. */
export const shelfOf = (app: App): ShelfState => {
  const known = states.get(app) ?? new ShelfState(app);
  states.set(app, known);
  return known;
};
