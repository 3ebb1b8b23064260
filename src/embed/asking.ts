import {
  checkState,
  ITEMS,
  phaseState,
  PHASES,
  type CheckState,
  type Item,
  type Phase,
} from '../core/checks';
import type { CheckRecord, Inputs } from '../core/context';
import { figuresFor, type Sheet } from '../core/figures';
import { blankJob } from '../core/job';
import { blankProfile, type MachineProfile } from '../core/machine';
import { read, type Ratio } from '../core/quantity';
import { threadCalled } from './thread';

/** What the page says of machine and job; `machine` null: nothing, and then only general questions are asked. */
export interface Asked {
  readonly phase: Phase;
  readonly machine: MachineProfile | null;
  readonly thread: string;
  readonly rpm: string;
  readonly side: 'external' | 'internal';
  readonly records: readonly CheckRecord[];
  /** The time, and the day by the reader's calendar; when the asking began. */
  readonly now: number;
  readonly day: string;
  readonly begun: number;
}

/** The calendar day where the reader is: in Swedish, as in ISO 8601. */
export const dayOf = (at: number): string => new Date(at).toLocaleDateString('sv');

export const sheetFor = (a: Asked): Sheet => {
  const thread = threadCalled(a.thread);
  const rpm = read(a.rpm);
  const speed: Ratio | null = rpm.ok && rpm.value.n > 0n ? rpm.value : null;
  const cutting = a.phase === 'scratch' || a.phase === 'pass';
  const inputs: Inputs = {
    machine: a.machine ?? blankProfile('', ''),
    job: {
      ...blankJob(),
      thread: thread ? { kind: 'catalogue', id: thread.id } : null,
      starts: thread?.starts ?? 1,
      rpm: speed,
      side: a.side,
    },
    context: {
      now: a.now,
      day: a.day,
      hours: null,
      records: a.records,
      events: [],
      cuttingSince: cutting ? a.begun : null,
      cuttingDay: cutting ? a.day : null,
    },
  };
  return figuresFor(inputs);
};

/** Asked of any lathe: what a person looks at. Nothing is worked out, so nothing has to be known first. */
const generally = ({ id, tier, rule }: Item, sheet: Sheet): CheckState =>
  checkState({ id, tier, rule, kind: 'physical' }, sheet);

/** Every item of the phase as it stands, in the order of asking. */
export const statesOf = (a: Asked, sheet: Sheet): readonly CheckState[] => {
  if (a.machine) return phaseState(a.phase, sheet).items;
  return PHASES[a.phase].flatMap((tier) =>
    (ITEMS as readonly Item[])
      .filter((i) => i.tier === tier && i.kind === 'physical' && (i.applies?.(sheet.inputs) ?? true))
      .map((i) => generally(i, sheet)),
  );
};
