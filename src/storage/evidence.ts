import * as v from 'valibot';
import type { Backing, EvidenceRow, Work } from './backing';
import { nextStamp } from './versioned';

export interface NewEvidence {
  readonly id: string;
  readonly schema: number;
  readonly kind: string;
  readonly machine: string;
  readonly at: number;
  readonly body: unknown;
  /** Which app and which of its formulas. */
  readonly made?: unknown;
}

const RowShape = v.looseObject({
  id: v.string(),
  schema: v.number(),
  kind: v.string(),
  machine: v.string(),
  at: v.number(),
  device: v.string(),
  body: v.unknown(),
  takenBack: v.optional(v.number()),
});
const isRow = (x: unknown): x is EvidenceRow => v.is(RowShape, x);

/** What people recorded: added, never altered. Taking one back marks it; it stays on disk. */
export class Evidence {
  constructor(private readonly backing: Backing) {}

  /** Rows of a machine that were not taken back, in the order they were recorded. */
  async of(machine: string): Promise<EvidenceRow[]> {
    const rows = await this.backing.run('readonly', ['evidence'], (w) => w.ofMachine(machine));
    return rows.filter(isRow).filter((r) => r.takenBack === undefined);
  }

  async add(rows: readonly NewEvidence[]): Promise<void> {
    await this.backing.run('readwrite', ['evidence', 'meta'], async (w: Work) => {
      const stamp = await nextStamp(w);
      for (const row of rows) w.put('evidence', { ...row, ...stamp });
    });
  }

  /** Marks a row as taken back (or, with `undo`, no longer so). False when it isn't there. */
  takeBack(id: string, undo = false): Promise<boolean> {
    return this.backing.run('readwrite', ['evidence', 'meta'], async (w) => {
      const row = await w.get('evidence', id);
      if (!isRow(row)) return false;
      // The row keeps its number, which is its place among the records.
      await nextStamp(w);
      const { takenBack: _, ...rest } = row;
      w.put('evidence', undo ? rest : { ...rest, takenBack: Date.now() });
      return true;
    });
  }
}
