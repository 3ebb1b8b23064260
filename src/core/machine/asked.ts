import { compare } from '../quantity';
import { FIELDS, type FieldName, type MachineProfile } from './fields';

const ELECTRONIC = [
  'encoderLines',
  'edgesPerLine',
  'spindlePulley',
  'encoderPulley',
  'encoderMaxRpm',
  'encoderMaxChannel',
  'encoderPhaseError',
  'counterMaxEdges',
  'motorKind',
  'fullSteps',
  'microsteps',
  'servoPulses',
  'servoEncoder',
  'servoGearMax',
  'motorPulley',
  'screwPulley',
  'gearboxRatio',
  'gearboxLever',
  'motorMaxRpm',
  'pulseHigh',
  'pulseLow',
  'stepInputMax',
  'directionSetup',
  'controllerMaxSteps',
  'directionWait',
  'pulseTiming',
  'ratioHeld',
  'ratioTopMax',
  'ratioBottomMax',
  'ratioDigits',
  'ratioBits',
  'motorTorque',
  'motorPeak',
  'torqueCurve',
  'motorSupply',
  'motorCurrent',
  'motorInductance',
  'rotorInertia',
  'rampTime',
  'cuttingForce',
  'carriageMass',
  'slideFriction',
  'screwEfficiency',
  'enableOpen',
  'motorAtStop',
] as const satisfies readonly FieldName[];

/** Whether a field belongs to the other kind of drive than the machine's own. */
const otherDrive = (field: FieldName, m: MachineProfile): boolean =>
  m.driveKind === 'electronic'
    ? FIELDS[field].group === 'gears'
    : m.driveKind === 'change-gears' && (ELECTRONIC as readonly FieldName[]).includes(field);

/**
 * The fields that matter only when another field has a certain value; the others are always asked. What is of use to
 * one rare form alone is asked once that form is chosen, not while the form isn't known.
 */
export const ASKED_WHEN: { readonly [K in FieldName]?: (m: MachineProfile) => boolean } = {
  threadDial: (m) => m.halfNut !== 'always-closed',
  dialTeeth: (m) => m.halfNut !== 'always-closed' && m.threadDial !== 'none',
  dialLines: (m) => m.halfNut !== 'always-closed' && m.threadDial !== 'none',
  fullSteps: (m) => m.motorKind !== 'servo',
  microsteps: (m) => m.motorKind !== 'servo',
  servoPulses: (m) => m.motorKind !== 'stepper',
  motorPeak: (m) => m.motorKind !== 'stepper',
  torqueCurve: (m) => m.motorKind !== 'servo',
  motorSupply: (m) => m.motorKind !== 'servo' && m.torqueCurve === null,
  motorCurrent: (m) => m.motorKind !== 'servo' && m.torqueCurve === null,
  motorInductance: (m) => m.motorKind !== 'servo' && m.torqueCurve === null,
  motorTorque: (m) => m.motorKind !== 'stepper' || m.torqueCurve === null,
  encoderPhaseError: (m) => m.edgesPerLine === null || compare(m.edgesPerLine.value, 4) === 0,
  boxTable: (m) => m.quickBox !== 'none',
  spindleSpeeds: (m) => m.spindleDrive !== 'range',
  spindleMin: (m) => m.spindleDrive !== 'speeds',
  spindleMax: (m) => m.spindleDrive !== 'speeds',
  servoEncoder: (m) => m.motorKind === 'servo',
  servoGearMax: (m) => m.motorKind === 'servo',
  enableOpen: (m) => m.stopCuts === 'enable',
  stopSpindle: (m) => m.stopCuts !== 'power-both',
  ratioTopMax: (m) => m.ratioHeld === null || m.ratioHeld === 'integers',
  ratioBottomMax: (m) => m.ratioHeld === null || m.ratioHeld === 'integers',
  ratioDigits: (m) => m.ratioHeld === 'decimal',
  ratioBits: (m) => m.ratioHeld === 'fixed-rounded' || m.ratioHeld === 'fixed-truncated',
};

export const isAsked = (field: FieldName, m: MachineProfile): boolean =>
  !otherDrive(field, m) && (ASKED_WHEN[field]?.(m) ?? true);
