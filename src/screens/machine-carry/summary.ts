import type { CarryDocument, RecordRow } from '../../core/carry';
import type { Incoming, Plan } from '../../state/carry';

/** How many rows of one kind are new, change something, or are here already. */
export interface Counted {
  readonly kind: string;
  readonly fresh: number;
  readonly changed: number;
  readonly same: number;
}

const kindOf = ({ store, theirs }: Incoming): string =>
  store === 'evidence' ? (theirs as RecordRow).kind : store;

/** Everything in a file but its machines, counted by kind in the order of the file. */
export const countKinds = ({ rows }: Plan): readonly Counted[] => {
  const all = new Map<string, Counted>();
  for (const row of rows) {
    if (row.store === 'machines') continue;
    const kind = kindOf(row);
    const now = all.get(kind) ?? { kind, fresh: 0, changed: 0, same: 0 };
    const is = (...outcomes: string[]): number => (outcomes.includes(row.outcome) ? 1 : 0);
    all.set(kind, {
      kind,
      fresh: now.fresh + is('new'),
      changed: now.changed + is('forward', 'merged', 'back'),
      same: now.same + is('same', 'ours'),
    });
  }
  return [...all.values()];
};

/** Whether bringing a file in would change anything. */
export const changesAnything = ({ rows }: Plan): boolean =>
  rows.some((r) => r.outcome !== 'same' && r.outcome !== 'ours');

/** The machine that a file is of. */
export const machineOf = ({ kind, records }: CarryDocument): string | null =>
  (kind === 'machine' && records.machines?.[0]?.id) || null;
