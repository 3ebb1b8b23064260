import { fingerprint, inputAt, snapshot, type InputPath, type Inputs, type JobPath } from '../context';
import { GEARING } from '../checks/items/reads';
import { toNumber, type Ratio } from '../quantity';
import type { Run } from './run';

/** What of the machine decides how far the carriage goes for each spindle rev, and how truly. */
const DRIVE = [
  'machine.driveKind',
  ...GEARING,
  'machine.gearMounted',
  'machine.ratioHeld',
  'machine.ratioTopMax',
  'machine.ratioBottomMax',
  'machine.ratioDigits',
  'machine.ratioBits',
] as const satisfies readonly InputPath[];

/** What decides where the nut may be closed. */
const NUT = [
  'machine.halfNut',
  'machine.threadDial',
  'machine.dialTeeth',
  'machine.dialLines',
] as const satisfies readonly InputPath[];

/** What the plan's settings of the handwheels are counted in. */
const DIALS = [
  'machine.crossReads',
  'machine.crossDivision',
  'machine.crossDivisions',
  'machine.topDivision',
  'machine.topDivisions',
  'machine.topScale',
] as const satisfies readonly InputPath[];

/** The thread itself: with another one the plan is another's. */
const THREAD = ['job.thread', 'job.starts', 'job.hand', 'job.side'] as const satisfies readonly JobPath[];

/** What a run keeps of the machine when it begins. */
export const machineNow = (inputs: Inputs): Record<string, string> =>
  snapshot(inputs, [...DRIVE, ...NUT, ...DIALS]);

/** How a change of speed moves the groove, for the drive as it is entered. */
export type Shift =
  /** A servo lags by speed ÷ gain: the groove moves by the change of speed ÷ gain. */
  | { readonly kind: 'servo'; readonly mm: number | null }
  /** An open-loop stepper keeps within two full steps of its place, or has lost steps. */
  | { readonly kind: 'stepper'; readonly mm: number | null }
  /** Wheels don't lag. */
  | { readonly kind: 'none' }
  | { readonly kind: 'unknown' };

export type RunChange =
  | {
      readonly code: 'rpm';
      readonly from: Ratio | null;
      readonly to: Ratio | null;
      /** Change of carriage speed, mm/s; null while a speed or the lead isn't known. */
      readonly speed: number | null;
      readonly shift: Shift;
    }
  | { readonly code: 'thread' | 'drive' | 'nut' | 'dials'; readonly paths: readonly InputPath[] };

/** What the reckoning of a shift needs beside the inputs. Lengths in mm. */
export interface ShiftInputs {
  readonly lead: number | null;
  /** Delay of the drive, s: 1 ÷ gain; null where it isn't known. */
  readonly lag: number | null;
  /** Carriage travel of one full step; null where it isn't known. */
  readonly fullStep: number | null;
}

/** Δz = Δv ÷ K for a servo, two full steps for an open-loop stepper (own derivation; two steps: common practice). */
const shiftOf = (inputs: Inputs, speed: number | null, x: ShiftInputs): Shift => {
  const { driveKind, motorKind } = inputs.machine;
  if (driveKind === 'change-gears') return { kind: 'none' };
  if (motorKind === 'servo')
    return { kind: 'servo', mm: speed === null || x.lag === null ? null : Math.abs(speed) * x.lag };
  if (motorKind === 'stepper') return { kind: 'stepper', mm: x.fullStep === null ? null : 2 * x.fullStep };
  return { kind: 'unknown' };
};

const speedOf = (rpm: Ratio | null, lead: number | null): number | null =>
  rpm === null || lead === null ? null : (toNumber(rpm) * lead) / 60;

/**
 * What of the job and the machine is no longer as it was when the run began: the plan, the groove and the nut rule
 * rest on it. Empty while nothing has changed. A run that kept nothing of the machine is compared by its job alone.
 */
export const changesSince = (run: Run, inputs: Inputs, x: ShiftInputs): readonly RunChange[] => {
  const { job, machineThen: then } = run;
  const changed = (paths: readonly InputPath[], was: (p: InputPath) => string | undefined): InputPath[] =>
    paths.filter((p) => {
      const before = was(p);
      return before !== undefined && before !== fingerprint(inputAt(inputs, p));
    });
  const ofJob = (p: InputPath): string => fingerprint(inputAt({ ...inputs, job }, p));
  const ofMachine = (p: InputPath): string | undefined => then?.[p];
  const found = (
    [
      ['thread', changed(THREAD, ofJob)],
      ['drive', changed(DRIVE, ofMachine)],
      ['nut', changed(NUT, ofMachine)],
      ['dials', changed(DIALS, ofMachine)],
    ] as const
  ).flatMap(([code, paths]): RunChange[] => (paths.length > 0 ? [{ code, paths }] : []));
  if (changed(['job.rpm'], ofJob).length === 0) return found;
  const [before, after] = [speedOf(job.rpm, x.lead), speedOf(inputs.job.rpm, x.lead)];
  const speed = before === null || after === null ? null : after - before;
  return [
    ...found,
    { code: 'rpm', from: job.rpm, to: inputs.job.rpm, speed, shift: shiftOf(inputs, speed, x) },
  ];
};
