import type { Sheet } from '../figures';
import { ITEMS } from './items';
import type { Item, Tier } from './item';
import { checkState, type CheckState } from './state';

/** When a group of checks is asked for. */
export const PHASES = {
  before: ['change', 'day', 'job', 'start'],
  scratch: ['scratch'],
  pass: ['pass'],
  service: ['service'],
} as const satisfies Record<string, readonly Tier[]>;
export type Phase = keyof typeof PHASES;

export interface PhaseState {
  readonly phase: Phase;
  /** Every item that applies, in the order of asking: what is computed and failed comes first. */
  readonly items: readonly CheckState[];
  /** What to show next: what failed by itself, then what a person can answer, then what isn't known. Null: none. */
  readonly next: CheckState | null;
  /** The next one that a person can answer, passing over the others. */
  readonly nextToAnswer: CheckState | null;
  /** How many aren't done, failed and unknown ones counted. */
  readonly left: number;
  /** Computed over, a reading outside its bounds, or recorded as not OK. */
  readonly failed: readonly CheckState[];
  readonly unknown: readonly CheckState[];
  /** Time of the newest record counted; null unless every item is done and at least one was recorded. */
  readonly allRecordedAt: number | null;
}

const inPhase = (phase: Phase, sheet: Sheet): Item[] =>
  PHASES[phase].flatMap((tier) =>
    (ITEMS as readonly Item[]).filter((i) => i.tier === tier && (i.applies?.(sheet.inputs) ?? true)),
  );

const failsByItself = (s: CheckState): boolean => s.item.kind === 'computed' && s.state === 'failed';

/** The records that an answer rests on; a ramp test that answers another item is counted as itself. */
const recordedAt = (s: CheckState): readonly number[] => (s.record && !s.lapse ? [s.record.at] : []);

/** All items of a phase with their states. There is no way to answer more than one at a time. */
export const phaseState = (phase: Phase, sheet: Sheet): PhaseState => {
  const states = inPhase(phase, sheet).map((item) => checkState(item, sheet));
  const items = [...states.filter(failsByItself), ...states.filter((s) => !failsByItself(s))];
  const open = items.filter((s) => s.state !== 'done');
  const nextToAnswer = open.find((s) => s.answerable) ?? null;
  const times = items.flatMap(recordedAt);
  return {
    phase,
    items,
    next: open.find(failsByItself) ?? nextToAnswer ?? open[0] ?? null,
    nextToAnswer,
    left: open.length,
    failed: items.filter((s) => s.state === 'failed' || s.state === 'not-ok'),
    unknown: items.filter((s) => s.state === 'unknown'),
    allRecordedAt: open.length === 0 && times.length > 0 ? Math.max(...times) : null,
  };
};
