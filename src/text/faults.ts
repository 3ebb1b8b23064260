import type { Change, FaultTest, Pattern, PatternCause, PatternTest, SlipKind } from '../core/prove/faults';
import type { FieldName } from '../core/machine';
import { fieldText } from './machine-fields';
import { showStated } from './numbers';
import { fieldUnitFor } from './units';

const valueText = (field: FieldName, v: Change['to']): string => {
  if (typeof v === 'string') return v;
  return `${showStated(v).value}\u00a0${fieldUnitFor(field, v)}`.trim();
};

/** One entry on a line: what it says, and what may be so. */
export const changeText = (c: Change): { label: string; from: string; to: string } => ({
  label: fieldText[c.field].label,
  from: valueText(c.field, c.from),
  to: valueText(c.field, c.to),
});

/** What kind of slip it is; empty where the entry says it all. */
export const slipText: Readonly<Record<SlipKind, string>> = {
  value: '',
  'lines-as-edges': 'Lines and counted edges mixed up',
  unit: 'The same figure in another unit',
  swapped: 'Pulleys the other way round',
  'belt-forgotten': 'A belt is entered, the drive is direct',
  'belt-missing': 'A belt that is not entered',
  tooth: 'One tooth miscounted',
  'pitch-for-lead': 'Pitch and lead of a thread of several starts mixed up',
  'lead-unit': 'The thread’s pitch typed in another unit',
  pi: '22/7 entered for π',
  'stand-in': 'Wheels of 63/80 or 37/47 in place of 127',
  wheel: 'Another wheel is mounted',
  turned: 'A pair of wheels the other way round',
  backlash: 'Backlash, not taken up before the reading',
  lost: 'Lost steps, or something slips',
  screw: 'The leadscrew’s own error',
};

/** What each test is called, what to do, and what is typed in. */
export const faultTestText: Readonly<
  Record<
    FaultTest,
    { name: string; over: string; got: string; unit: string; next: (n: string) => string; how: string }
  >
> = {
  counts: {
    name: 'Counts',
    over: 'Spindle turns',
    got: 'Counts read',
    unit: 'counts',
    next: (n) => `Counts over ${n} spindle turns`,
    how: 'Isolate the spindle’s motor. Turn the spindle by hand from a mark to the same mark, always one way.',
  },
  screw: {
    name: 'Leadscrew turns',
    over: 'Spindle turns',
    got: 'Leadscrew turns read',
    unit: 'turns',
    next: (n) => `Leadscrew turns over ${n} spindle turns`,
    how: 'Nut open, hands clear of the leadscrew. Isolate the spindle’s motor and turn the spindle by hand, always one way. Mark spindle and leadscrew.',
  },
  carriage: {
    name: 'Carriage per leadscrew turn',
    over: 'Leadscrew turns',
    got: 'Travel read',
    unit: 'mm',
    next: (n) => `Carriage over ${n} leadscrew turns`,
    how: 'Isolate the drive. Nut closed. Turn the leadscrew by hand, always one way; set zero once it pulls.',
  },
  travel: {
    name: 'Commanded against measured',
    over: 'Travel commanded',
    got: 'Travel measured',
    unit: 'mm',
    next: (n) => `Measured travel, ${n} mm commanded`,
    how: 'No work, low speed, a hand at the stop. Commanded: spindle turns × lead. One way; set zero once the carriage moves.',
  },
  back: {
    name: 'There and back',
    over: 'Travel each way',
    got: 'Off by, on return',
    unit: 'mm',
    next: (n) => `There and back over ${n} mm`,
    how: 'No work, low speed, a hand at the stop. Zero an indicator, go there and back to the same spindle mark, nut closed all the time.',
  },
};

export const patternText: Readonly<Record<Pattern, string>> = {
  offset: 'Off by the same over any length',
  runs: 'Differs from run to run',
  'per-rev': 'Comes once per turn',
  speed: 'Grows with speed',
  inverter: 'Only with the inverter running',
};

export const patternCauseText: Readonly<Record<PatternCause, string>> = {
  backlash: 'Backlash of nut, screw bearing or belt',
  approach: 'Read after coming from the other side',
  slip: 'A grub screw, belt or coupling slips',
  'lost-steps': 'Lost steps',
  noise: 'Noise on encoder or step wires',
  'eccentric-pulley': 'A pulley or wheel runs out',
  'eccentric-encoder': 'The encoder’s disc or shaft runs out',
  'screw-wobble': 'A bent leadscrew or its thrust face',
  'rate-limit': 'Edges or steps faster than a part can take',
  burst: 'Steps sent in bunches',
  torque: 'Too little torque at that speed',
  'common-mode': 'Current from the inverter through earth and screens',
  screen: 'A screen not bonded',
  supply: 'The encoder’s supply dips',
};

export const patternTestText: Readonly<Record<PatternTest, string>> = {
  'two-lengths': 'Measure 10 mm and 100 mm, same side each: backlash is the same in both.',
  'back-slow-fast':
    'There and back twenty times, slow, then fast. Marks across each coupling show a slip; off by whole steps only when fast, lost steps.',
  'indicator-per-turn':
    'Read an indicator every eighth of a turn over two turns: once per spindle turn is the encoder, once per leadscrew turn the screw.',
  'half-speed':
    'The same at half the speed. Gone: look at Speed, what limits the drive. Half as much: look at torque.',
  'inverter-on-still':
    'Spindle still, inverter at low, middle and full frequency, nothing wedged: watch the counts ten minutes each.',
};

export const faultsText = {
  title: 'Find a fault',
  intro: 'From readings that disagree with the profile, the entries that may be wrong.',
  noMachine: 'Choose a machine first.',
  working: 'Working it out…',
  recorded: 'In your test records',
  takeRecorded: 'Take these readings',
  begin: 'Begin with',
  next: 'Next test: it tells most',
  look: 'No test tells these apart. Look at the parts: labels, switches, teeth.',
  agrees: 'The profile fits your readings.',
  finest: (ppm: string): string => `These readings show nothing finer than ${ppm} ppm in travel.`,
  hidden: 'Could still hide in them',
  fits: 'Fits your readings; others may',
  none: 'Nothing on the list fits your readings. Take them again, or see below.',
  alike: 'Your readings can’t tell these apart:',
  outside: 'A little outside your readings',
  showMore: (n: number): string => `Show ${n} more`,
  pairs: (n: number): string => `And ${n} less likely pairs.`,
  not: (from: string): string => `not ${from}`,
  typed: (from: string): string => `typed in the controller, not ${from}`,
  both: 'Two at once',
  travel: 'Travel measured ÷ commanded',
  now: 'In the profile now',
  then: 'After the change',
  lookFirst: 'Look at the part first: label, switch, teeth.',
  apply: 'Change the profile',
  controller: 'The profile stays. Enter the settings sheet in the controller again.',
  done: 'Done: test again',
  noEntry: 'No entry to change.',
  again: 'Enter the settings sheet in the controller again, then repeat the test.',
  againGears: 'Repeat the test.',
  sheet: 'Settings sheet',
  measured: 'What was measured',
  pattern: 'Is it no ratio?',
  shown: 'Your readings show it',
  likely: 'Likely, first to last',
  tell: 'What tells',
  half: '± at each end',
  taken: 'usual, taken',
  second: 'Another length, or once more',
  secondOf: (what: string): string => `Second: ${what.toLowerCase()}`,
  enter: 'Enter',
  expects: 'The profile expects',
  expectsNot:
    'The profile doesn’t say what to expect: enter what is not known, or choose the thread that is set.',
  atLead: (lead: string): string => `Read with a lead of ${lead} mm set.`,
  result: 'Measured ÷ expected',
  stale: 'The profile has changed since the travel was read: it counts no more.',
  clearRuns: 'Clear and read again',
  clearAll: 'Clear all readings',
  toFaults: 'Causes and next test',
  toMachine: 'All of this machine',
} as const;
