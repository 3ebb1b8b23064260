import type { CarryDocument } from '../core/carry';
import type { Backing } from './backing';
import { apply, takeBack } from './carry-apply';
import { collect, type Collected } from './carry-collect';
import { nextStamp } from './versioned';
import { planOf, type Incoming, type Plan, type Reads } from './carry-plan';

export type { Incoming, LeftOut, Outcome, Plan } from './carry-plan';
export { nameOf } from './carry-plan';

/** When everything was last backed up, and how much has changed since. */
export interface BackedUp {
  /** null: never, as far as this phone knows. */
  readonly at: number | null;
  readonly changes: number;
}

const BACKED_UP = 'value/backed-up';
type Kept = { value?: { at?: number; counter?: number } } | undefined;

/** Takes rows out of the database for a file, and brings those of a file in. */
export class Carry {
  private readonly backing: Backing;
  private readonly reads: Reads;

  constructor({ backing, reads }: { readonly backing: Backing; readonly reads: Reads }) {
    this.backing = backing;
    this.reads = reads;
  }

  /** Rows of one machine, or (null) of everything. */
  collect(machine: string | null): Promise<Collected> {
    return collect(this.backing, machine);
  }

  /** What a file would change. */
  plan(document: CarryDocument): Promise<Plan> {
    return planOf(this.backing, document, this.reads);
  }

  /** Writes what was planned; gives the name of its way back, null when something changed meanwhile. @throws StorageError */
  apply(rows: readonly Incoming[], keep: readonly string[]): Promise<string | null> {
    return apply(this.backing, rows, keep);
  }

  /** Takes an import back by that name. @throws StorageError */
  takeBack(id: string): ReturnType<typeof takeBack> {
    return takeBack(this.backing, id);
  }

  async backedUp(): Promise<BackedUp> {
    return this.backing.run('readonly', ['meta'], async (w) => {
      const counter = ((await w.get('meta', 'device')) as Kept)?.value?.counter ?? 0;
      const last = ((await w.get('meta', BACKED_UP)) as Kept)?.value;
      // A phone that lost its database began to count anew from what it had.
      return { at: last?.at ?? null, changes: Math.max(0, counter - (last?.counter ?? 0)) };
    });
  }

  /** Notes that everything was handed on as a file now. */
  noteBackUp(at: number): Promise<void> {
    return this.backing.run('readwrite', ['meta'], async (w) => {
      const { counter } = await nextStamp(w);
      w.put('meta', { id: BACKED_UP, value: { at, counter } });
    });
  }
}
