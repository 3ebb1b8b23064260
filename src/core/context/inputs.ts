import type { Recorded } from './order';
import type { CheckRecord } from './record';
import type { TestRecord } from './test-record';
import type { Recalls } from '../recall';
import type { Job } from '../job';
import type { MachineProfile } from '../machine';

/** Evidence that a person recorded, handed in by the state: core has no clock and no storage. */
export interface Context {
  /** Milliseconds since 1970 by the phone. */
  readonly now: number;
  /** The day by the phone's own calendar, e.g. "2026-05-03". */
  readonly day: string;
  /** Newest entry of the running-hours log, hours; null where none is kept. */
  readonly hours: number | null;
  /** Check records of this machine, oldest first. */
  readonly records: readonly CheckRecord[];
  /** Test records of this machine, oldest first; none where it isn't given. */
  readonly tests?: readonly TestRecord[];
  /** Formulas that were corrected; none where it isn't given. */
  readonly recalls?: Recalls;
  /** Things that happened to this machine, oldest first. */
  readonly events: readonly MachineEvent[];
  /** When the cut now running was started; null when none is. */
  readonly cuttingSince: number | null;
  /** The day on which that cut was started, by the phone's calendar; null when none is running. */
  readonly cuttingDay: string | null;
}

/** What a person can report; `cut-ended` the app logs itself. */
export const EVENT_KINDS = [
  'power',
  'wiring',
  'firmware',
  'driver',
  'belt',
  'work-moved',
  'stopped-in-cut',
  'crash',
  'long-rest',
  'cut-ended',
] as const;
export type EventKind = (typeof EVENT_KINDS)[number];
export interface MachineEvent extends Recorded {
  readonly kind: EventKind;
}

export interface Inputs {
  readonly machine: MachineProfile;
  readonly job: Job;
  readonly context: Context;
}

type PathsOf<P extends string, T> = `${P}.${keyof T & string}`;
export type MachinePath = PathsOf<'machine', MachineProfile>;
export type JobPath = PathsOf<'job', Job>;
export type ContextPath = PathsOf<'context', Context>;
export type InputPath = MachinePath | JobPath | ContextPath;

export type InputAt<P extends InputPath> = P extends `machine.${infer K extends keyof MachineProfile}`
  ? MachineProfile[K]
  : P extends `job.${infer K extends keyof Job}`
    ? Job[K]
    : P extends `context.${infer K extends keyof Context}`
      ? Context[K]
      : never;

/** The value at a path, e.g. "machine.screwPitch". */
export const inputAt = <P extends InputPath>(inputs: Inputs, path: P): InputAt<P> => {
  const dot = path.indexOf('.');
  const room = inputs[path.slice(0, dot) as keyof Inputs] as unknown as Record<string, unknown>;
  return room[path.slice(dot + 1)] as InputAt<P>;
};

/** Text that is the same exactly when the value is the same: what a record keeps to notice a change. */
export const fingerprint = (value: unknown): string =>
  JSON.stringify(value, (_key, v: unknown) => (typeof v === 'bigint' ? v.toString() : v)) ?? 'null';
