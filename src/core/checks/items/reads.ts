import type { EventKind, InputPath } from '../../context';

/** What decides how far the carriage goes for each spindle rev on this machine. */
export const GEARING = [
  'machine.screwPitch',
  'machine.screwStarts',
  'machine.encoderLines',
  'machine.edgesPerLine',
  'machine.spindlePulley',
  'machine.encoderPulley',
  'machine.motorKind',
  'machine.fullSteps',
  'machine.microsteps',
  'machine.servoPulses',
  'machine.motorPulley',
  'machine.screwPulley',
  'machine.gearboxRatio',
  'machine.gearboxLever',
] as const satisfies readonly InputPath[];

/** The thread to be cut. */
export const THREAD = [
  'job.thread',
  'job.starts',
  'job.hand',
  'job.side',
] as const satisfies readonly InputPath[];

/** Anything done to the drive's electrics that may have changed how it behaves. */
export const ELECTRIC = ['wiring', 'firmware', 'driver'] as const satisfies readonly EventKind[];

/** Each day and after each power-up. */
export const EACH_DAY = { version: 1, daily: true, events: ['power'] } as const;

/** The workpiece or tool set-up. */
export const SET_UP = ['work-moved'] as const satisfies readonly EventKind[];
