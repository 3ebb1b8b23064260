import type { Job } from '../job';
import type { NoGo, Tried } from '../cut/feel';
import type { PlannedPass } from '../cut/pass';
import type { Stated } from '../quantity';
import type { Made } from '../recall';

/** A pass that a person said was taken. `plan` numbers the plan it belonged to, since a reading makes a new one. */
export interface TakenPass {
  readonly n: number;
  readonly at: number;
  readonly plan: number;
  /** As it stood in the plan: what was set. */
  readonly pass: PlannedPass;
}

/** What was read off the thread during the run, and what followed from it. Lengths in mm. */
export interface RunReading {
  readonly at: number;
  readonly way: 'wires' | 'thread-micrometer' | 'gauge';
  /** As read; null for a gauge, whose answer is `felt`. */
  readonly reading: Stated | null;
  readonly felt: 'goes' | 'tight' | 'does-not-go' | null;
  /** What was tried, and what the no-go gauge did; not there before they were asked. */
  readonly tried?: Tried;
  readonly noGo?: NoGo | null;
  readonly pitchDiameter: number | null;
  readonly uncertainty: number | null;
  /** Passes taken before it. */
  readonly after: number;
}

export const OUTCOMES = ['within', 'gauged', 'not-measured', 'scrapped', 'given-up'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/**
 * One piece of work on one machine from the first pass to the last: what was to be cut as it stood then, the passes
 * said to be taken, the readings. A finished run is the record of the job.
 */
export interface Run {
  readonly machine: string;
  /** Names as they were, so that the record reads the same when either is changed. */
  readonly machineName: string;
  readonly workshop: string;
  readonly threadName: string;
  readonly job: Job;
  readonly plans: readonly (readonly PlannedPass[])[];
  readonly begun: number;
  readonly ended: number | null;
  readonly taken: readonly TakenPass[];
  readonly readings: readonly RunReading[];
  /** Paused on purpose: opening the app again then asks nothing. */
  readonly paused: boolean;
  readonly outcome: Outcome | null;
  readonly notes: string;
  /** What of the machine the plan rests on, by path, as it stood when the run began (see `changes`). */
  readonly machineThen?: Readonly<Record<string, string>>;
  /** By which version it was begun; not there in a run from before that was kept. */
  readonly made?: Made;
}
