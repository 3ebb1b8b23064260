import { figuresFor, type Sheet } from '../../../src/core/figures';
import type { Context } from '../../../src/core/context';
import { blankJob, type Job } from '../../../src/core/job';
import { blankProfile, type MachineProfile } from '../../../src/core/machine';
import { ratio, read, stated, type Ratio, type Stated, type Unit } from '../../../src/core/quantity';

export const exactly = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new Error(text);
  return r.value;
};
export const is = (text: string, unit: Unit): Stated => stated(exactly(text), unit);

/**
 * A machine with 8 tpi screw, 6400 steps per screw rev through a 2:1 belt, 4096 counts per spindle rev; controller
 * 100 kHz, motor 800 rpm, counter 200 thousand edges/s, carriage 25 mm/s, stopping time 0.5 s, safety factor 1.5.
 */
export const PROFILE_A: MachineProfile = {
  ...blankProfile('A', 'Test'),
  driveKind: 'electronic',
  screwPitch: is('8', 'tpi'),
  screwStarts: is('1', 'count'),
  halfNut: 'half-nut',
  threadDial: 'dial',
  dialTeeth: is('16', 'teeth'),
  dialLines: is('8', 'lines'),
  encoderLines: is('1024', 'lines'),
  edgesPerLine: is('4', 'count'),
  spindlePulley: is('1', 'teeth'),
  encoderPulley: is('1', 'teeth'),
  encoderMaxRpm: is('6000', 'rpm'),
  encoderMaxChannel: is('100', 'kHz'),
  encoderPhaseError: is('0', 'deg'),
  counterMaxEdges: is('200', 'kHz'),
  motorKind: 'stepper',
  fullSteps: is('200', 'steps'),
  microsteps: is('16', 'times'),
  motorPulley: is('20', 'teeth'),
  screwPulley: is('40', 'teeth'),
  gearboxRatio: is('1', 'times'),
  motorMaxRpm: is('800', 'rpm'),
  overload: 'shear-pin',
  pulseHigh: is('2.5', 'us'),
  pulseLow: is('2.5', 'us'),
  stepInputMax: is('200', 'kHz'),
  directionSetup: is('5', 'us'),
  directionWait: is('10', 'us'),
  controllerMaxSteps: is('100', 'kHz'),
  pulseTiming: 'each-edge',
  ratioHeld: 'integers',
  ratioTopMax: is('65535', 'count'),
  ratioBottomMax: is('65535', 'count'),
  carriageMax: is('25', 'mm/s'),
  backlash: is('0.12', 'mm'),
  motorTorque: is('4', 'Nm'),
  motorSupply: is('48', 'V'),
  motorCurrent: is('4.2', 'A'),
  motorInductance: is('3.2', 'mH'),
  rotorInertia: is('1', 'kgcm2'),
  rampTime: is('0.5', 's'),
  cuttingForce: is('100', 'N'),
  carriageMass: is('30', 'kg'),
  slideFriction: is('0.1', 'times'),
  screwEfficiency: is('30', 'percent'),
  screwDiameter: is('22', 'mm'),
  screwLength: is('900', 'mm'),
  screwEnds: 'clamped-held',
  spindleDrive: 'speeds',
  spindleSpeeds: ['60', '130', '240', '480', '900'].map((s) => is(s, 'rpm')),
  chuckMaxRpm: is('2500', 'rpm'),
  chuckMount: 'locked',
  stopCuts: 'power-both',
  wholeStopTime: is('0.5', 's'),
};

export const QUIET: Context = {
  now: 1_800_000_000_000,
  day: '2027-01-15',
  hours: null,
  records: [],
  events: [],
  cuttingSince: null,
  cuttingDay: null,
};

export const pitchJob = (pitch: string, more: Partial<Job> = {}): Job => ({
  ...blankJob(),
  thread: { kind: 'pitch', pitch: is(pitch, 'mm') },
  ...more,
});

export const sheet = (
  machine: Partial<MachineProfile> = {},
  job: Job = pitchJob('1.5'),
  context: Partial<Context> = {},
): Sheet => figuresFor({ machine: { ...PROFILE_A, ...machine }, job, context: { ...QUIET, ...context } });

export const rpm = (n: number): Ratio => ratio(n);
