import type { CheckRecord, InputPath, Inputs, LapseRule, TestId } from '../context';
import type { FigureId, LimitId, Sheet, Standing } from '../figures';
import type { Ratio, Unit } from '../quantity';

/** When an item is asked, in the order in which a person meets them. */
export const TIERS = ['change', 'day', 'job', 'start', 'scratch', 'pass', 'service'] as const;
export type Tier = (typeof TIERS)[number];

/**
 * `computed` answers itself. `physical` is looked at and recorded by a person, and may carry a figure.
 * `reading` can't be recorded without its figure.
 */
export type Kind = 'computed' | 'physical' | 'reading';

/** Why a computed item or a reading stands as it does; the words are in text/checks. */
export const FINDINGS = [
  'inputs-missing',
  'not-reckoned',
  'ratio-exact',
  'ratio-close',
  'ratio-off',
  'lead-known',
  'limits-kept',
  'limits-close',
  'limits-broken',
  'limits-not-known',
  'nut-rule-known',
  'speed-chosen',
  'no-stop-fitted',
  'stop-fitted',
  'stop-by-software',
  'stop-by-enable',
  'no-overload-fitted',
  'overload-fitted',
  'reading-within',
  'reading-close',
  'reading-low',
  'reading-high',
  'ramp-covers',
  'ramp-lead-larger',
  'ramp-below-speed',
  'test-passed',
  'test-failed',
  'stop-seen',
  'stop-not-seen',
  'stop-inadequate',
  'stop-not-described',
  'stop-tests-recorded',
  'stop-tests-close',
  'stop-tests-failed',
  'stop-tests-due',
] as const;
export type FindingCode = (typeof FINDINGS)[number];

/** How something stands, and why. */
export interface Finding {
  readonly standing: Standing;
  readonly why: FindingCode;
  /** The figure it rests on, whose "Why" opens. */
  readonly figure: FigureId | null;
  /** Of the limits on speed, the worst one looked at. */
  readonly limit: LimitId | null;
  /** What would have to be entered or chosen first. */
  readonly missing: readonly InputPath[];
}

/** Where a reading has to lie, in base units; null on a side where nothing bounds it. */
export interface Bounds {
  readonly low: Ratio | null;
  readonly high: Ratio | null;
  /** Above this a reading is near its high bound. */
  readonly closeFrom: Ratio | null;
  readonly figure: FigureId | null;
  /** Not empty: the bounds aren't known until these are. */
  readonly missing: readonly InputPath[];
}

/** A figure that a person reads off. `min` and `max` are the plausible range, as text in the first unit. */
export interface Reading {
  readonly units: readonly [Unit, ...Unit[]];
  readonly min: string;
  readonly max: string;
  readonly whole?: true;
  /** Where it has to lie for this job; null where nothing can be said. Reckoned anew each time. */
  readonly bounds?: (sheet: Sheet) => Bounds | null;
  /** For readings whose judgement needs the record itself. */
  readonly judge?: (reading: Ratio, sheet: Sheet, record: CheckRecord | null) => Finding;
}

/** One pre-start check. The order of items within a tier is the order of asking. */
export interface Item {
  readonly id: string;
  readonly tier: Tier;
  readonly kind: Kind;
  /** What a recorded answer rests on. A reading's bounds aren't in it: they are reckoned from what is known now. */
  readonly rule: LapseRule;
  /** Left out where it never applies otherwise. */
  readonly applies?: (inputs: Inputs) => boolean;
  /** A value shown large beside the question. */
  readonly shows?: FigureId | 'job.rpm';
  readonly reading?: Reading;
  /** A computed item's answer; on any other item, what has to be known or right before it can be answered. */
  readonly evaluate?: (sheet: Sheet) => Finding;
  /**
   * A test of the machine whose record speaks for it, by the test's own rule: one that passed answers it for as long as the
   * item's own answer would hold, one that failed fails it until either is done anew.
   */
  readonly test?: { readonly id: TestId; readonly rule: LapseRule };
  /** Another record that answers it too, e.g. a test that covers this lead and speed. */
  readonly answered?: (sheet: Sheet) => Finding | null;
}
