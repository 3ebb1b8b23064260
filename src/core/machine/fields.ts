import { SCREW_ENDS } from '../drive/whip';
import { choice, number, type Field, type ValueOf } from './field';

/**
 * Everything a machine's profile can say, in the order in which a person would walk along the machine. Shape,
 * validation, entry screens and help all follow this table. Ranges are plausibility bounds (common practice):
 * wide enough for a watchmaker's lathe and a large centre lathe.
 *
 * Any number, choice or list may be null: "not known".
 */
export const FIELDS = {
  name: { kind: 'text', group: 'name', maxLength: 30, required: true },
  workshop: { kind: 'text', group: 'name', maxLength: 30 },
  colour: choice('name', ['teal', 'amber', 'plum', 'moss', 'brick', 'slate']),

  driveKind: choice('drive', ['electronic', 'change-gears']),

  screwPitch: number('screw', ['mm', 'tpi', 'in'], '0.25', '25.4', { suggest: ['1.5', '2', '3', '4', '6'] }),
  screwStarts: number('screw', ['count'], '1', '8', { whole: true, suggest: ['1', '2'] }),

  halfNut: choice('nut', ['half-nut', 'always-closed']),
  threadDial: choice('nut', ['dial', 'none']),
  dialTeeth: number('nut', ['teeth'], '4', '200', {
    whole: true,
    suggest: ['14', '15', '16', '20', '21', '24'],
  }),
  dialLines: number('nut', ['lines'], '1', '64', { whole: true, suggest: ['4', '8', '12', '16'] }),

  gearWheels: { kind: 'written', group: 'gears', form: 'wheels', maxLength: 200 },
  spindleWheel: number('gears', ['teeth'], '1', '200', { whole: true, suggest: ['1'] }),
  shaftWheel: number('gears', ['teeth'], '1', '200', { whole: true, suggest: ['1'] }),
  shaftTurns: choice('gears', ['either', 'same', 'opposite']),
  quickBox: choice('gears', ['none', 'levers']),
  boxTable: { kind: 'written', group: 'gears', form: 'box', maxLength: 800 },
  gearMounted: { kind: 'written', group: 'gears', form: 'train', maxLength: 80 },
  shaftSum: number('gears', ['teeth'], '20', '1000', { whole: true }),
  slotLeast: number('gears', ['teeth'], '20', '600', { whole: true }),
  slotMost: number('gears', ['teeth'], '20', '600', { whole: true }),
  studs: number('gears', ['count'], '0', '3', { whole: true, suggest: ['1', '2'] }),
  studGap: number('gears', ['teeth'], '20', '400', { whole: true }),
  wheelClearance: number('gears', ['teeth'], '2', '60', { whole: true, suggest: ['15'] }),

  encoderLines: number('encoder', ['lines'], '10', '100000', {
    whole: true,
    suggest: ['360', '500', '600', '1000', '1024', '2500'],
  }),
  edgesPerLine: number('encoder', ['count'], '1', '4', { whole: true, suggest: ['4', '2', '1'] }),
  spindlePulley: number('encoder', ['teeth'], '1', '500', { whole: true, suggest: ['1'] }),
  encoderPulley: number('encoder', ['teeth'], '1', '500', { whole: true, suggest: ['1'] }),
  encoderMaxRpm: number('encoder', ['rpm'], '10', '60000'),
  encoderMaxChannel: number('encoder', ['kHz', 'Hz', 'MHz'], '0.1', '10000', {
    suggest: ['100', '125', '300'],
  }),
  encoderPhaseError: number('encoder', ['deg'], '0', '89', { suggest: ['10', '30', '45'] }),
  counterMaxEdges: number('encoder', ['kHz', 'Hz', 'MHz'], '0.1', '100000'),

  motorKind: choice('motor', ['stepper', 'servo']),
  fullSteps: number('motor', ['steps'], '20', '1000', { whole: true, suggest: ['200', '400'] }),
  microsteps: number('motor', ['times'], '1', '512', { whole: true, suggest: ['4', '8', '16', '32'] }),
  servoPulses: number('motor', ['steps'], '100', '1000000', {
    whole: true,
    suggest: ['1600', '4000', '10000'],
  }),
  servoEncoder: number('motor', ['count'], '100', '100000000', {
    whole: true,
    suggest: ['2500', '4000', '10000', '131072'],
  }),
  servoGearMax: number('motor', ['count'], '1', '18446744073709551616', {
    whole: true,
    suggest: ['32767', '65535'],
  }),
  motorPulley: number('motor', ['teeth'], '1', '500', { whole: true, suggest: ['1'] }),
  screwPulley: number('motor', ['teeth'], '1', '500', { whole: true, suggest: ['1'] }),
  gearboxRatio: number('motor', ['times'], '0.01', '100', { suggest: ['1'] }),
  gearboxLever: { kind: 'text', group: 'motor', maxLength: 60 },
  motorMaxRpm: number('motor', ['rpm'], '10', '20000'),
  overload: choice('motor', ['shear-pin', 'slipping-clutch', 'torque-limit', 'none']),

  pulseHigh: number('pulses', ['us'], '0.05', '1000', { suggest: ['1', '2.5', '5'] }),
  pulseLow: number('pulses', ['us'], '0.05', '1000', { suggest: ['1', '2.5', '5'] }),
  stepInputMax: number('pulses', ['kHz', 'Hz', 'MHz'], '0.1', '10000', { suggest: ['100', '200', '500'] }),
  directionSetup: number('pulses', ['us'], '0.05', '10000', { suggest: ['5'] }),

  controllerMaxSteps: number('controller', ['kHz', 'Hz', 'MHz'], '0.1', '10000'),
  directionWait: number('controller', ['us'], '0', '100000', { suggest: ['5', '10', '20'] }),
  pulseTiming: choice('controller', ['each-edge', 'spread']),
  ratioHeld: choice('controller', [
    'integers',
    'decimal',
    'fixed-rounded',
    'fixed-truncated',
    'float32',
    'float32-sum',
    'float64',
    'rev-count',
    'rate',
    'other',
  ]),
  ratioTopMax: number('controller', ['count'], '1', '18446744073709551616', { whole: true }),
  ratioBottomMax: number('controller', ['count'], '1', '18446744073709551616', { whole: true }),
  ratioDigits: number('controller', ['count'], '1', '15', { whole: true, suggest: ['3', '4', '5', '6'] }),
  ratioBits: number('controller', ['count'], '1', '64', { whole: true, suggest: ['8', '16', '24', '32'] }),

  carriageMax: number('carriage', ['mm/s', 'mm/min', 'in/min'], '0.1', '500'),
  backlash: number('carriage', ['mm', 'in'], '0', '5'),

  crossReads: choice('dials', ['diameter', 'radius']),
  crossDivision: number('dials', ['mm', 'in'], '0.0005', '1', { suggest: ['0.02', '0.025', '0.05'] }),
  crossDivisions: number('dials', ['count'], '10', '1000', { whole: true, suggest: ['50', '100', '200'] }),
  topDivision: number('dials', ['mm', 'in'], '0.0005', '1', { suggest: ['0.02', '0.025', '0.05'] }),
  topDivisions: number('dials', ['count'], '10', '1000', { whole: true, suggest: ['50', '100'] }),
  topScale: choice('dials', ['from-cross-slide', 'from-axis']),

  motorTorque: number('load', ['Nm'], '0.01', '500'),
  motorPeak: number('load', ['Nm'], '0.01', '1000'),
  torqueCurve: { kind: 'written', group: 'load', form: 'curve', maxLength: 200 },
  motorSupply: number('load', ['V'], '5', '400', { suggest: ['24', '36', '48'] }),
  motorCurrent: number('load', ['A'], '0.1', '50'),
  motorInductance: number('load', ['mH'], '0.05', '200'),
  rotorInertia: number('load', ['kgcm2'], '0.001', '500'),
  rampTime: number('load', ['s', 'ms'], '0.02', '60', { suggest: ['0.3', '1', '3'] }),
  cuttingForce: number('load', ['N'], '1', '50000', { suggest: ['100', '200', '500'] }),
  carriageMass: number('load', ['kg'], '0.5', '2000'),
  slideFriction: number('load', ['times'], '0.005', '0.5', { suggest: ['0.1', '0.15', '0.2'] }),
  screwEfficiency: number('load', ['percent'], '5', '98', { suggest: ['25', '30', '90'] }),
  screwDiameter: number('load', ['mm', 'in'], '3', '150'),
  screwLength: number('load', ['mm', 'in'], '50', '10000'),
  screwEnds: choice('load', SCREW_ENDS),

  spindleDrive: choice('spindle', ['speeds', 'range']),
  spindleSpeeds: { kind: 'speeds', group: 'spindle', min: '5', max: '10000', most: 24 },
  spindleMin: number('spindle', ['rpm'], '1', '10000'),
  spindleMax: number('spindle', ['rpm'], '1', '20000'),
  chuckMaxRpm: number('spindle', ['rpm'], '50', '20000'),
  chuckMount: choice('spindle', ['screw-on', 'locked']),
  coast: number('spindle', ['turns'], '0', '1000', { suggest: ['5', '10', '20'] }),

  stopDevice: choice('stop', ['latching-direct', 'latching-other', 'springs-back']),
  stopContacts: choice('stop', ['nc-one', 'nc-two', 'no']),
  stopCuts: choice('stop', ['power-both', 'power-drive', 'drive-sto', 'enable', 'input', 'none']),
  enableOpen: choice('stop', ['off', 'on']),
  motorAtStop: choice('stop', ['limp', 'spring-brake', 'until-rest', 'held', 'follows']),
  stopSpindle: choice('stop', ['contactor', 'sto', 'run', 'no']),
  spindleRests: choice('stop', ['coasts', 'brake']),
  stopReset: choice('stop', ['start', 'power', 'release']),
  powerReturn: choice('stop', ['off', 'live']),
  stopMonitor: choice('stop', ['none', 'feedback', 'channels', 'both']),
  wholeStopTime: number('stop', ['s', 'ms'], '0.05', '10', { suggest: ['0.5', '1'] }),
  safetyFactor: number('stop', ['times'], '1', '5', { suggest: ['1.5', '2'] }),

  notes: { kind: 'text', group: 'notes', maxLength: 2000 },
} as const satisfies Record<string, Field>;

export type FieldName = keyof typeof FIELDS;
export const FIELD_NAMES = Object.keys(FIELDS) as FieldName[];

export type MachineProfile = { readonly [K in FieldName]: ValueOf<(typeof FIELDS)[K]> };

/** Fields that came later than the first machines kept, beside those of change gears. */
const LATER: readonly FieldName[] = [
  ...(['servoEncoder', 'servoGearMax', 'ratioDigits', 'ratioBits'] as const),
  ...(['encoderPhaseError', 'directionWait', 'coast'] as const),
  ...(['stopDevice', 'stopContacts', 'enableOpen', 'motorAtStop', 'stopSpindle'] as const),
  ...(['spindleRests', 'stopReset', 'powerReturn', 'stopMonitor'] as const),
];

/**
 * What a field counts as on a machine that was kept before the field existed: all of those had an electronic drive,
 * and of change gears, dials, load, forms of the ratio, a servo's gear or how the stop is arranged nothing was known. undefined: the field has always been.
 */
export const beforeItExisted = (field: FieldName): 'electronic' | null | undefined => {
  if (field === 'driveKind') return 'electronic';
  const { group } = FIELDS[field];
  return group === 'gears' || group === 'dials' || group === 'load' || LATER.includes(field)
    ? null
    : undefined;
};

/** Fields that no figure or check reads; the compiler holds this list complete (core/figures/coverage). */
export const AFFECTS_NOTHING = ['name', 'workshop', 'colour', 'notes'] as const satisfies FieldName[];
