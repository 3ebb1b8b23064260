import type { FieldName, FIELDS, Group, MachineProfile } from '../core/machine';
import type { ExampleId } from '../core/machine/examples';
import { colourName } from './frame';
import { stopChoices } from './stop-fields';

export { fieldText, type FieldText } from './machine-fields';

export const groupName: Record<Group, string> = {
  name: 'Name',
  drive: 'Drive',
  screw: 'Leadscrew',
  nut: 'Half-nut and dial',
  gears: 'Change gears',
  encoder: 'Spindle encoder',
  motor: 'Leadscrew motor',
  pulses: 'Step pulses',
  controller: 'Controller',
  carriage: 'Carriage',
  dials: 'Handwheels’ dials',
  load: 'Load and torque',
  spindle: 'Spindle and chuck',
  stop: 'Stopping',
  notes: 'Notes',
};

type Fields = typeof FIELDS;
export type ChoiceName = {
  [F in FieldName]: Fields[F] extends { kind: 'choice' } ? F : never;
}[FieldName];
type Option<F extends ChoiceName> = Fields[F]['options'][number];
export interface ChoiceText {
  readonly label: string;
  /** What follows from it; empty where nothing does. */
  readonly note: string;
}

const colour = (name: keyof typeof colourName): ChoiceText => ({ label: colourName[name], note: '' });

export const choiceText: { readonly [F in ChoiceName]: Record<Option<F>, ChoiceText> } = {
  colour: {
    teal: colour('teal'),
    amber: colour('amber'),
    plum: colour('plum'),
    moss: colour('moss'),
    brick: colour('brick'),
    slate: colour('slate'),
  },
  driveKind: {
    electronic: { label: 'An electronic drive', note: 'A motor follows the spindle’s encoder.' },
    'change-gears': {
      label: 'Change gears',
      note: 'Wheels from the spindle. No steps, no counts, no ratio to enter.',
    },
  },
  shaftTurns: {
    either: { label: 'Either way, by the tumbler', note: 'Any train cuts both hands.' },
    same: { label: 'As the spindle', note: 'An even number of meshes cuts the hand of the screw.' },
    opposite: { label: 'Against the spindle', note: 'An odd number of meshes cuts the hand of the screw.' },
  },
  quickBox: {
    none: { label: 'No box', note: 'The train drives the leadscrew itself.' },
    levers: { label: 'There is a box', note: 'Its lever positions multiply what the train gives.' },
  },
  screwEnds: {
    'held-held': { label: 'One bearing at each end', note: '' },
    'clamped-held': { label: 'A pair at one end, one at the other', note: 'The usual leadscrew.' },
    'clamped-clamped': { label: 'A pair at each end', note: '' },
    'clamped-free': { label: 'A pair at one end, the other free', note: 'It whips soonest.' },
  },
  halfNut: {
    'half-nut': {
      label: 'A lever opens it',
      note: 'It may be opened only where the rule for the thread allows.',
    },
    'always-closed': { label: 'It stays closed', note: 'Withdraw the tool, stop, and run back under drive.' },
  },
  threadDial: {
    dial: { label: 'There is a dial', note: 'Its gear and lines decide where the nut may be closed.' },
    none: { label: 'No dial', note: 'Without one the nut is opened only for leads that fit anywhere.' },
  },
  motorKind: {
    stepper: {
      label: 'Stepper',
      note: 'It loses steps without a sign when it is overloaded or driven too fast.',
    },
    servo: {
      label: 'Servo',
      note: 'It lags a little and faults when overloaded. Keep the same speed for one thread.',
    },
  },
  overload: {
    'shear-pin': {
      label: 'Shear pin',
      note: 'It breaks and must be replaced: the thread is picked up anew.',
    },
    'slipping-clutch': { label: 'Slipping clutch', note: 'After a slip the thread is picked up anew.' },
    'torque-limit': {
      label: 'Torque limit in the drive',
      note: 'It must be set and tested; it is lost when settings are.',
    },
    none: { label: 'Nothing', note: 'In a jam the motor’s full force bears on nut, screw and tool.' },
  },
  pulseTiming: {
    'each-edge': {
      label: 'At each edge',
      note: 'With more than one step per count, pulses come in bunches.',
    },
    spread: { label: 'Spread evenly', note: 'No bunches: only the average rate counts.' },
  },
  ratioHeld: {
    integers: { label: 'Two whole numbers', note: 'If both fit, the lead is exact for ever.' },
    decimal: {
      label: 'A decimal number',
      note: 'With so many digits after the mark. The error grows with travel.',
    },
    'fixed-rounded': {
      label: 'Fixed point, rounded',
      note: 'A whole number of 1/256, 1/65536 and the like, to the nearest. The error grows with travel.',
    },
    'fixed-truncated': {
      label: 'Fixed point, cut off',
      note: 'The same with the rest dropped: up to twice as far off, and always short.',
    },
    float32: {
      label: 'Single precision, multiplied',
      note: 'All counts × the ratio. True to 0.06 ppm; coarse, and a counter of this kind ends, at 16777216.',
    },
    'float32-sum': {
      label: 'Single precision, added up',
      note: 'The ratio added at each count: every addition is rounded. Not for threads.',
    },
    float64: { label: 'Double precision', note: 'Not exact, but its error can’t be measured on a lathe.' },
    'rev-count': {
      label: 'Whole steps per rev',
      note: 'Rounded, and set right at the encoder’s index. A small error in each rev that never adds up.',
    },
    rate: {
      label: 'A step rate, from rpm',
      note: 'Reckoned from the speed measured: nothing ties the screw to the spindle. Never for threads.',
    },
    other: {
      label: 'Another form',
      note: 'Its error is not reckoned. Keep the nut closed.',
    },
  },
  spindleDrive: {
    speeds: { label: 'Fixed speeds', note: 'Belts or gears.' },
    range: { label: 'A range', note: 'A speed knob.' },
  },
  crossReads: {
    diameter: { label: 'Diameter', note: 'The slide moves half of what the dial says.' },
    radius: { label: 'Radius', note: 'The slide moves what the dial says.' },
  },
  topScale: {
    'from-cross-slide': {
      label: 'Square to the axis',
      note: 'Zero with the top slide along the cross-slide.',
    },
    'from-axis': { label: 'Along the axis', note: 'Zero with the top slide along the bed.' },
  },
  chuckMount: {
    'screw-on': {
      label: 'Screwed on, no lock',
      note: 'It can unscrew in reverse and under hard braking. Do not cut in reverse.',
    },
    locked: { label: 'Locked on', note: 'Camlock, bolted or clamped.' },
  },
  ...stopChoices,
  stopCuts: {
    'power-both': {
      label: 'Power of spindle and drive',
      note: 'The spindle may coast. Charged capacitors can keep the drive alive for a moment.',
    },
    'power-drive': {
      label: 'Power of the drive only',
      note: 'The spindle goes on turning or coasts, and the tool stays in the groove. Withdraw the tool first.',
    },
    'drive-sto': {
      label: 'The drive’s torque-off input (STO)',
      note: 'No torque, but no isolation. How the spindle stops is asked by itself.',
    },
    enable: {
      label: 'The drive’s enable only',
      note: 'A signal, not the power: not an emergency stop. The spindle goes on turning.',
    },
    input: {
      label: 'An input of the controller',
      note: 'A stop in software: not an emergency stop. It works only as long as the program does.',
    },
    none: { label: 'Nothing', note: 'There is no stop button for the drive.' },
  },
};

export const exampleText: Record<ExampleId, { readonly name: string; readonly note: string }> = {
  heron: {
    name: 'Heron',
    note: 'Example: invented figures. Metric screw of 3 mm, stepper, six fixed speeds.',
  },
  bittern: {
    name: 'Bittern',
    note: 'Example: invented figures. Inch screw of 8 tpi, servo, speed knob.',
  },
  plover: {
    name: 'Plover',
    note: 'Example: invented figures. Encoder by belt 2 to 1, no thread dial.',
  },
  dunlin: {
    name: 'Dunlin',
    note: 'Example: invented figures. Change gears, inch screw of 8 tpi.',
  },
};

export const newMachine = {
  heading: 'New machine',
  name: 'What is it called?',
  workshop: 'Where does it stand? May stay empty.',
  add: 'Add this machine',
  next: 'Nothing is known of it yet. Guided entry asks one thing at a time; anything may stay not known.',
} as const;

/** On a sheet for the wall: whose machine it is about, and of what day. */
export const whoseText = (
  m: Pick<MachineProfile, 'name' | 'workshop' | 'colour'> | null,
  day: string,
): string =>
  [[m?.name, m?.workshop, m?.colour && colourName[m.colour]].filter(Boolean).join(', '), day].join(' · ');

/** What a machine could be mistaken for, among others of its workshop. */
export const mistakenText = {
  colour: (name: string): string => `Same colour as ${name}`,
  name: (name: string): string => `Name like ${name}`,
} as const;

export const workshopText = {
  others: 'Other workshops',
  more: (n: number): string => (n === 1 ? '1 more machine here' : `${n} more machines here`),
  /** The machine that would be put in use, and how many there are. */
  last: (machine: string, n: number): string => (n === 1 ? machine : `${machine}, one of ${n} machines`),
  open: (thread: string): string => `Run not ended: ${thread}`,
  show: (n: number, workshop: string): string => `Show the ${n} machines of ${workshop}`,
  rename: (workshop: string): string => (workshop ? `Rename ${workshop}` : 'Name this workshop'),
  alone: (machine: string): string => `Only ${machine} stands there`,
  all: (n: number, workshop: string): string =>
    workshop ? `Rename ${workshop}: all ${n} machines` : `All ${n} machines without one stand there`,
  known: 'Workshops there are:',
  move: (machine: string): string => `Move ${machine} alone to:`,
  joins: (workshop: string): string => `${workshop} is there already. Renamed, all stand together in it.`,
} as const;

export const machineText = {
  machines: 'Machines',
  nothing: 'Nothing written',
  worked: 'What follows from it',
  direct: '(direct)',
  trainCuts: 'Travel per spindle rev, as mounted',
  countsPerRev: 'Counts per spindle rev',
  stepsPerScrewRev: 'Steps per leadscrew rev',
  stepOnCarriage: 'One step on the carriage',
  allKnown: 'Every field is known.',
  openCount: (n: number): string => (n === 1 ? '1 field is not known.' : `${n} fields are not known.`),
  notKept: 'None kept',
  settings: 'Settings, cautions and log',
  putAwayKey: (name: string): string => `Put ${name} away`,
  awayTitle: 'Put away',
  bringBackKey: (name: string): string => `Bring back ${name}`,
  progress: (at: number, of: number): string => `${at} of ${of}`,
  typeIt: 'Enter another value',
  typeFirst: 'Enter the value',
  removeSpeedKey: (rpm: string): string => `Take out ${rpm} rpm`,
  removeHelp: 'Touch a speed to take it out.',
  save: 'Keep',
  toMachine: 'All of this machine',
  noSuchField: 'There is no such field',
  examples: 'Examples',
  examplesHelp: 'Invented figures, to learn on. They are no lathe of yours.',
  exampleShort: 'Example',
  unreadableMachines: (n: number): string =>
    `${n === 1 ? 'One machine' : `${n} machines`} on this phone can’t be read by this version. Nothing was thrown away: a newer version may read it.`,
  notKnown: 'Not known',
  guided: 'Guided entry',
  guidedNext: 'Next',
  guidedBack: 'Back',
  another: 'Another machine',
  newMachine: 'New machine',
  example: 'Example: invented figures',
  none: 'No machine yet',
  unreadable: 'These could not be read from this phone’s storage and are not known now. Enter them again.',
  hours: 'Running hours',
  hoursNote: 'Your own log, or the hour meter. Checks due by hours follow it.',
  addSpeed: 'Add a speed',
} as const;

const choicesOf = (field: FieldName): Readonly<Record<string, ChoiceText>> =>
  (choiceText as Readonly<Record<string, Readonly<Record<string, ChoiceText>>>>)[field] ?? {};
export const choiceLabel = (field: FieldName, option: string): string =>
  choicesOf(field)[option]?.label ?? option;
export const choiceNote = (field: FieldName, option: string): string => choicesOf(field)[option]?.note ?? '';
