import type { FormatSpec } from './format';

/**
 * The job as the model sees it. Plain numbers, since it is physics: mm, rev, s. The exact ratio stands in the
 * format of the controller; `lead` is what the thread should have.
 */
export interface TraceJob {
  /** Lead wanted, mm per spindle rev. */
  readonly lead: number;
  /** Counts per spindle rev; may be a fraction. */
  readonly counts: number;
  /** Steps per leadscrew rev, and what the carriage travels in one, mm. */
  readonly steps: number;
  readonly screwLead: number;
  readonly rpm: number;
  /** Length of thread looked at, after the run-in; both mm. */
  readonly length: number;
  readonly runIn: number;
  /** Length over which a nut holds the thread, mm. */
  readonly engagement: number;
}

/** What can spoil a thread. Each is off (null) or on with its figures. */
export interface Ingredients {
  /** Spindle speed swings by ± `amount` of itself, `perRev` times a rev. */
  readonly ripple: { readonly amount: number; readonly perRev: number } | null;
  /** Spindle speed goes evenly in time from `from` × set speed to the set speed, within `seconds` of the start. */
  readonly ramp: { readonly from: number; readonly seconds: number } | null;
  /** Speed falls by `drop` of itself when the tool meets the work, lowest after `seconds`, and comes back. */
  readonly dip: { readonly drop: number; readonly seconds: number } | null;
  /** A wheel of the encoder drive turns `perRev` times a rev and runs out by `offset` on its pitch radius; mm. */
  readonly eccentricity: {
    readonly offset: number;
    readonly radius: number;
    readonly perRev: number;
  } | null;
  /** Channel B is off its place by so many electrical degrees; four edges a line. */
  readonly phase: { readonly degrees: number } | null;
  /** Counts missed, and counts seen twice, in a million. */
  readonly miscounts: { readonly missed: number; readonly extra: number } | null;
  /** How the controller holds the ratio; off: `exact`. */
  readonly format: FormatSpec | null;
  /** The controller looks at its count every `period`, and acts `latency` later; s. */
  readonly timing: { readonly period: number; readonly latency: number } | null;
  /** Steps/s at most, steps/s² at most (null: none); when a step has no room it waits, or is lost. */
  readonly output: {
    readonly rate: number;
    readonly acceleration: number | null;
    readonly full: 'wait' | 'lose';
  } | null;
  readonly motor: MotorSpec | null;
  /** Screw off by ± `cyclic` once per its rev, and by `per300` over 300 mm; mm. */
  readonly screw: { readonly cyclic: number; readonly per300: number } | null;
  /** Play between screw and nut, mm; `takenUp`: the last move before the start was in the cutting direction. */
  readonly backlash: { readonly play: number; readonly takenUp: boolean } | null;
}

/** How the motor follows its steps: a second-order follower, of a servo or of a stepper. */
export type MotorSpec =
  | {
      readonly kind: 'servo';
      /** Speed ÷ lag, 1/s. */
      readonly gain: number;
      readonly damping: number;
      /** What its torque can do, steps/s²; null: enough. */
      readonly acceleration: number | null;
    }
  | {
      readonly kind: 'stepper';
      /** Natural frequency with its load, Hz. */
      readonly natural: number;
      readonly damping: number;
      /** Steps in one full step. */
      readonly fullStep: number;
      /** Steps/s above which torque falls as 1 ÷ speed; null: beyond what is asked. */
      readonly corner: number | null;
      /** Load as a part of the pull-out torque at low speed. */
      readonly load: number;
    };

export type IngredientName = keyof Ingredients;
export const INGREDIENTS = [
  'ripple',
  'ramp',
  'dip',
  'eccentricity',
  'phase',
  'miscounts',
  'format',
  'timing',
  'output',
  'motor',
  'screw',
  'backlash',
] as const satisfies readonly IngredientName[];

export const NOTHING: Ingredients = {
  ripple: null,
  ramp: null,
  dip: null,
  eccentricity: null,
  phase: null,
  miscounts: null,
  format: null,
  timing: null,
  output: null,
  motor: null,
  screw: null,
  backlash: null,
};

export interface TraceSpec {
  readonly job: TraceJob;
  /** The ratio without error, or its nearest fraction where it carries π. */
  readonly exact: { readonly top: number; readonly bottom: number };
  readonly with: Ingredients;
  /** Starts the generator that says which counts are missed: the same seed gives the same trace. */
  readonly seed: number;
}

/** Everything but one ingredient: what taking it away would gain, its part in others' doings included. */
export const without = (spec: TraceSpec, name: IngredientName): TraceSpec => ({
  ...spec,
  with: { ...spec.with, [name]: null },
});

/** One ingredient alone: everything else off. */
export const alone = (spec: TraceSpec, name: IngredientName): TraceSpec => ({
  ...spec,
  with: { ...NOTHING, [name]: spec.with[name] },
});

export const namesOn = (all: Ingredients): IngredientName[] => INGREDIENTS.filter((n) => all[n] !== null);
