import type { CommissioningId, InputPath, LapseRule } from '../context';
import type { Sheet } from '../figures';
import type { Ratio, Stated, Unit } from '../quantity';
import type { TestResult } from './record';
import type { Ppm } from './uncertainty';

/** Said first and large. The words are in text/prove. */
export const CAUTIONS = [
  'isolate',
  'isolate-spindle',
  'nothing-wedged',
  'belt-guard',
  'hands-clear',
  'drive-live',
  'low-speed',
  'tool-clear',
  'nut-open',
  'hand-on-stop',
  'no-reverse',
] as const;
export type Caution = (typeof CAUTIONS)[number];

/** A figure that a test asks for. `min` and `max` are the plausible range, as text in the first unit. */
export interface Asked {
  readonly id: string;
  readonly units: readonly [Unit, ...Unit[]];
  readonly min: string;
  readonly max: string;
  readonly whole?: true;
  readonly suggest?: readonly string[];
  /** Good to know, and taken as usual where it isn't entered. */
  readonly optional?: true;
}

/** Something chosen or seen, the options in the order of their keys. */
export interface Choice {
  readonly id: string;
  readonly options: readonly string[];
  /** Counts until another is chosen. */
  readonly usual?: string;
  /** Asked only where another choice was so made. */
  readonly when?: readonly [choice: string, option: string];
}

/** What a person has entered of a test, and the figures of machine and job. */
export interface Given {
  readonly sheet: Sheet;
  readonly readings: Readonly<Record<string, Stated | null>>;
  readonly choices: Readonly<Record<string, string>>;
}

export interface Amount {
  readonly value: Ratio;
  readonly unit: Unit;
}

/** What a test measures of the machine. */
export type SetField = 'wholeStopTime' | 'coast' | 'backlash';

/** What a test's readings come to. */
export interface Decision {
  readonly result: TestResult;
  /** Why; the words are in text/prove. */
  readonly code: string;
  /** Readings and choices not made yet: nothing can be recorded. */
  readonly lacks: readonly string[];
  /** What would have to be entered or chosen elsewhere first. */
  readonly missing: readonly InputPath[];
  readonly expected: Amount | null;
  readonly measured: Amount | null;
  readonly difference: Amount | null;
  /** How far off still passes. */
  readonly allowed: Amount | null;
  /** Expanded uncertainty, k = 2. */
  readonly uncertainty: Amount | null;
  readonly ppm: Ppm | null;
  /** Travel or turns that would settle it. */
  readonly settles: Amount | null;
  /** What it points to, likeliest first. */
  readonly points: readonly string[];
  /** Entered in the machine's profile with the record. */
  readonly sets: { readonly field: SetField; readonly value: Stated } | null;
}

export interface ProveTest {
  readonly id: CommissioningId;
  readonly rule: LapseRule;
  readonly cautions: (given: Given) => readonly Caution[];
  /** Measures what the machine is, rather than whether it is right. */
  readonly measures?: true;
  /** Made at the job's lead, which is kept with its readings. */
  readonly atLead?: true;
  readonly choices: readonly Choice[];
  readonly readings: (given: Given) => readonly Asked[];
  readonly decide: (given: Given) => Decision;
}

const NOTHING: Omit<Decision, 'result' | 'code'> = {
  lacks: [],
  missing: [],
  expected: null,
  measured: null,
  difference: null,
  allowed: null,
  uncertainty: null,
  ppm: null,
  settles: null,
  points: [],
  sets: null,
};

export const decision = (result: TestResult, code: string, more: Partial<Decision> = {}): Decision => ({
  ...NOTHING,
  ...more,
  result,
  code,
});

/** Not enough entered to decide anything. */
export const lacking = (lacks: readonly string[], more: Partial<Decision> = {}): Decision =>
  decision('undecided', 'lacking', { lacks, ...more });
export const notKnown = (missing: readonly InputPath[]): Decision =>
  decision('undecided', 'not-known', { missing: [...new Set(missing)] });
