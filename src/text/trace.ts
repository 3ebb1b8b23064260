import type { IngredientName } from '../core/drive/trace';
import type { FormatChoice, Origin, TraceKey } from '../core/figures/trace';
import { words } from './words';

/** Words of the page on lead error in time. */
export const traceText = {
  title: 'Lead error',
  model: 'A model with these figures; the lathe was not measured.',
  noThread: 'Choose a thread first.',
  missing: 'Not known yet:',
  setSpeed: 'Set a speed',
  back: 'Back to the speed',
  run: 'Run the model',
  rank: 'Which one spoils it?',
  cancel: 'Cancel',
  running: (done: number): string => `Running: ${done} %`,
  changed: 'Figures have changed since this was run.',
  refused: (name: string): string => `The model is not made for this figure: ${name}.`,
  failed: 'The model did not start in this browser.',
  tooMany: 'Too many counts for one run: take a shorter length.',
  shift: (): string => `The nut feels the ${words().pitchDiameter} changed by`,
  shiftNote: (nut: string, tolerance: string | null): string =>
    tolerance === null
      ? `Pitch off by ${nut} over the nut’s length, × 2 ÷ (tan a + tan b) of the flanks. What is allowed: not known.`
      : `Pitch off by ${nut} over the nut’s length, × 2 ÷ (tan a + tan b) of the flanks. The class allows ${tolerance} in all; half is fair for pitch.`,
  nutAlone: 'Pitch off over the nut’s length',
  plotLabel: 'Error along the thread',
  plotNote: 'Line: mean. Band: least and most, single steps included. Above zero the tool is ahead.',
  plot: (low: string, high: string, length: string): string =>
    `Lead error along ${length} of thread, from ${low} to ${high}.`,
  spread: 'Least to most along it',
  spreadNote: 'Single steps evened out over a 32nd of a turn.',
  cumulative: 'Adds up to',
  cumulativeNote: (ppm: string, length: string): string => `${ppm} ppm over ${length}, first turn to last.`,
  drunken: 'Swing within one turn',
  drunkenNote: 'A drunken thread. No limit of its own is known; it is counted in what the nut feels.',
  singleTurn: 'Not known of a single turn',
  over60: 'Most in any 60 mm',
  over60Note: 'A centre lathe: 15 µm. ISO 1708, from memory.',
  over300: 'Most in any 300 mm',
  over300Note: 'A centre lathe: 40 µm. ISO 1708, from memory.',
  lost: 'Steps and counts lost',
  lostNone: 'None',
  lostOutput: (n: string): string => `${n} steps that found no room`,
  lostMotor: (n: string): string => `${n} steps pulled out, in whole electrical cycles`,
  lostCounts: (missed: string, extra: string): string => `${missed} counts missed, ${extra} seen twice`,
  lag: 'Behind by',
  lagNote: (shift: string): string =>
    `A constant lag does not change the pitch. A speed changed by a tenth between passes would move the groove by ${shift}.`,
  table: 'In figures',
  at: (place: string): string => `At ${place}`,
  ranked: 'Each alone',
  rankedNote:
    'What the pitch is off by over the nut’s length with that one on and the rest off. A speed that swings does nothing by itself: it acts through a motor that lags.',
  withoutIt: (x: string): string => `All the others without it: ${x}`,
  baseline: 'None on: steps and counts alone',
  ingredients: 'What is in the model',
  figures: (assumed: number): string =>
    assumed === 0 ? 'The figures' : `The figures: ${assumed} assumed, nobody’s measurement`,
  onlyIf: (word: string, assumed: number): string =>
    `Not known: ${word} only if ${assumed} assumed ${assumed === 1 ? 'figure is' : 'figures are'} true.`,
  job: 'Of the thread',
  rpm: 'Speed set',
  format: 'The ratio is held as',
  reversal: 'Started after a reversal',
  unavailable: (name: string): string => `${name}: not known for this machine, so it is left out.`,
  none: 'left out',
  seconds: (s: string): string => `Took ${s} s.`,
} as const;

export const ingredientText: Readonly<Record<IngredientName, string>> = {
  ripple: 'Speed swings',
  ramp: 'Start from rest',
  dip: 'Slows at the cut',
  eccentricity: 'Encoder wheel runs out',
  phase: 'Encoder channels uneven',
  miscounts: 'Counts missed',
  format: 'How the ratio is held',
  timing: 'Controller looks late',
  output: 'Step output',
  motor: 'Motor follows',
  screw: 'Leadscrew off',
  backlash: 'Backlash',
};

export const traceLabels: Readonly<Record<TraceKey, string>> = {
  'trace.length': 'Length of thread',
  'trace.engagement': 'Length of the nut',
  'trace.runIn': 'Run-in before it',
  'trace.ripple': 'Speed swings by ±',
  'trace.ripplePerRev': 'Swings a rev',
  'trace.ramp': 'From rest to speed',
  'trace.dip': 'Slows at the cut by',
  'trace.dipTime': 'Slowest after',
  'trace.offset': 'Wheel on the spindle runs out by ±',
  'trace.radius': 'Its pitch radius',
  'trace.phase': 'Channel B off its place',
  'trace.missed': 'Counts missed in a million',
  'trace.extra': 'Counts seen twice in a million',
  'trace.period': 'Looks every',
  'trace.latency': 'Acts after',
  'trace.rate': 'Step output at most',
  'trace.rampUp': 'Output from rest to that',
  'trace.lag': 'Servo behind by',
  'trace.torque': 'Motor from rest to top speed',
  'trace.natural': 'Stepper swings at',
  'trace.damping': 'Its damping ratio',
  'trace.corner': 'Motor torque falls above',
  'trace.load': 'Load, of pull-out torque',
  'trace.cyclic': 'Screw off within its turn by ±',
  'trace.per300': 'Screw off in 300 mm by',
  'trace.play': 'Backlash',
};

export const originText: Readonly<Record<Origin, string>> = {
  entered: 'entered',
  machine: 'from the machine',
  job: 'from the job',
  rule: 'by rule of thumb',
  assumed: 'assumed',
};

export const formatText: Readonly<Record<FormatChoice, string>> = {
  own: 'As recorded for this machine',
  exact: 'Exact whole numbers',
  decimal: 'Three decimals',
  fixed: '16 bits after the point, cut off',
  float32: 'Single precision, multiplied',
  'float32-sum': 'Single precision, added up',
  'rev-count': 'Whole steps a rev',
};
