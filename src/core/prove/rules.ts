import type { CommissioningId, EventKind, InputPath, LapseRule } from '../context';
import { RAMP_RULE } from '../figures/evidence';

const PULLEYS = [
  'machine.spindlePulley',
  'machine.encoderPulley',
  'machine.motorPulley',
  'machine.screwPulley',
  'machine.gearboxRatio',
  'machine.gearboxLever',
] as const satisfies readonly InputPath[];
const ENCODER = [
  'machine.encoderLines',
  'machine.edgesPerLine',
  'machine.spindlePulley',
  'machine.encoderPulley',
] as const satisfies readonly InputPath[];
const SCREW = ['machine.screwPitch', 'machine.screwStarts'] as const satisfies readonly InputPath[];
const MOTOR = [
  'machine.motorKind',
  'machine.fullSteps',
  'machine.microsteps',
  'machine.servoPulses',
  'machine.motorPulley',
  'machine.screwPulley',
  'machine.gearboxRatio',
  'machine.gearboxLever',
] as const satisfies readonly InputPath[];
const HELD = [
  'machine.ratioHeld',
  'machine.ratioTopMax',
  'machine.ratioBottomMax',
  'machine.ratioDigits',
  'machine.ratioBits',
] as const satisfies readonly InputPath[];
const CHAIN = [...SCREW, ...ENCODER, ...MOTOR, ...HELD] as const satisfies readonly InputPath[];

/** Work on the electrics; belts as well; and what shakes a machine loose. */
export const ELECTRIC = ['wiring', 'firmware', 'driver'] as const satisfies readonly EventKind[];
const DRIVE = [...ELECTRIC, 'belt', 'crash'] as const satisfies readonly EventKind[];
const SHAKEN = ['belt', 'crash', 'long-rest'] as const satisfies readonly EventKind[];

/** Half a year and 50 running hours: intervals of common practice. */
export const HALF_YEAR = 180;
export const HOURS = 50;

const rule = (
  reads: readonly InputPath[],
  events: readonly EventKind[],
  more: Partial<LapseRule> = {},
): LapseRule => ({ version: 1, reads, events, ...more });

/** What each commissioning test rests on, and what makes its record lapse. */
export const RULES: Readonly<Record<CommissioningId, LapseRule>> = {
  'look-over': rule([...PULLEYS, ...SCREW, 'machine.overload'], SHAKEN, { afterDays: HALF_YEAR }),
  direction: rule(['machine.motorKind', ...ENCODER], [...ELECTRIC, 'belt']),
  counts: rule(ENCODER, [...DRIVE, 'long-rest']),
  'there-and-back': rule(ENCODER, [...DRIVE, 'long-rest'], { afterDays: HALF_YEAR }),
  drift: rule([...ENCODER, 'machine.spindleDrive'], [...ELECTRIC, 'long-rest'], { afterDays: HALF_YEAR }),
  'screw-turns': rule(CHAIN, DRIVE),
  'screw-travel': rule([...SCREW, 'machine.halfNut'], ['crash']),
  travel: rule(CHAIN, DRIVE),
  backlash: rule([...SCREW, 'machine.halfNut', 'machine.backlash'], ['crash'], { afterHours: HOURS }),
  repeat: rule([...CHAIN, 'machine.pulseTiming', 'machine.directionSetup'], [...DRIVE, 'long-rest'], {
    afterDays: HALF_YEAR,
  }),
  ramp: RAMP_RULE,
  scratch: rule(CHAIN, DRIVE),
  're-entry': rule(
    [...CHAIN, 'machine.halfNut', 'machine.threadDial', 'machine.dialTeeth', 'machine.dialLines'],
    DRIVE,
  ),
  'stopping-time': rule(['machine.halfNut', 'machine.stopCuts', 'machine.wholeStopTime'], ['crash'], {
    afterHours: HOURS,
  }),
  coast: rule(['machine.spindleDrive', 'machine.stopCuts', 'machine.coast'], ['wiring', 'crash'], {
    afterDays: HALF_YEAR,
  }),
};
