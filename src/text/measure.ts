import type { Instrument, LeadMethod, Verdict, WireKind } from '../core/thread/wires';
import { words, capital } from './words';
import { noteText, sourceText } from './why-notes';

export const WAYS = ['three', 'one', 'two', 'micrometer', 'gauge'] as const;
export type Way = (typeof WAYS)[number];

const REFUSALS: Readonly<Record<string, string>> = {
  'not-positive': 'A reading or a wire is not there yet, or not above nothing.',
  'angle-out-of-range': 'This form has no flanks for wires.',
  'parallel-flanks': 'A square thread has no flanks for wires.',
  'no-seat': 'This wire does not sit in this thread.',
  'internal-thread': 'Wires and thread micrometers measure outside threads. An inside one is gauged.',
  'taper-thread': 'A taper thread is gauged by how far its gauge goes on, not over wires: see its limits.',
};

/** How the pitch diameter E follows from what was read, to check by hand. A: half the thread’s angle. */
const OVER = 'E = M + (P/2) cot A − W (1 + csc A) − lead term (NBS Handbook H28; the term solved in space).';
const FORMULA: Readonly<Record<Exclude<Way, 'gauge'>, string>> = {
  three: OVER,
  one: `M = 2 × reading − major diameter. ${OVER}`,
  two: `M = cylinder + reading on the thread − reading on the cylinder + 2 W. ${OVER}`,
  micrometer: 'Reading on the work + size of the standard − reading on the standard.',
};
const UNEVEN =
  'Wires seated on two unlike flanks; the lead angle is not counted, but widens the uncertainty.';

/** Words of the measuring page. */
export const measureText = {
  title: 'Measure',
  ways: {
    three: 'Three wires',
    one: 'One wire',
    two: 'Two wires',
    micrometer: 'Thread micrometer',
    gauge: 'Go and no-go',
  } satisfies Record<Way, string>,
  way: 'How it is measured',
  how: {
    three: 'Two wires on one side, one on the other, the micrometer across all three.',
    one: 'One wire, the anvil opposite on the crest. The crest must be round and true.',
    two: 'On a bench with floating centres: first on a cylinder of known size with the wires in place, then on the thread.',
    micrometer: 'Anvils for this form and pitch, set on a standard of known size.',
    gauge: 'A gauge says yes or no, and no size.',
  } satisfies Record<Way, string>,
  clean: 'Spindle stopped. Deburr, clean, and let the work cool before you measure.',
  bestWire: 'Best wire',
  bestNote: 'P ÷ (2 cos A): touches at the pitch line, where an error of the flank angle does not show.',
  bestUneven: 'Touches evenly above and below the pitch line. Own geometry.',
  usable: 'Usable, by the groove’s shape',
  customary: 'Usable, 0.56 P to 0.90 P',
  owned: 'Wires and shanks you own',
  ownedHelp: 'Touch one to use it. Measure drill shanks: they are often under size.',
  addWire: 'Add one',
  takeOutOne: 'Take one out',
  takeOutWhich: 'Which one goes?',
  takeOutEnd: 'None',
  takeOut: (size: string): string => `Take out ${size}`,
  pick: 'Best of yours',
  pickNone: 'None of yours suits this thread.',
  shank: 'Nearest drill shank',
  shankNone: 'No standard drill’s shank suits this thread.',
  misfit: {
    'too-thin': 'Too thin for this thread: it would sink below the crest, or touch the root.',
    'too-thick': 'Too thick for this thread: it would ride on the crest’s corners.',
  },
  perDegree: (x: string): string => `With this wire, 1° more of half angle shows as ${x}.`,
  over: (cls: string): string => `Over the wires for ${cls}`,
  overBasic: 'Over the wires, basic size',
  drawing: 'The thread to scale with the wires seated in its grooves',
  overAt: { min: 'Least', max: 'Most' },
  leadTerm: (x: string, method: string): string => `Lead angle: ${x} counted in, ${method}.`,
  method: {
    solved: 'solved in space',
    series: 'series form',
    root: 'root form',
    none: 'not counted for this form',
  } satisfies Record<LeadMethod, string>,
  notClear: 'These wires do not stand above the crest: the micrometer would touch the thread.',
  enter: 'Enter',
  instrument: 'Read with',
  instruments: {
    fine: 'Micrometer, 0.002',
    coarse: 'Micrometer, 0.01',
    dro: 'DRO',
    caliper: 'Caliper',
  } satisfies Record<Instrument, string>,
  wires: 'Wires are',
  wireKinds: { set: 'A measuring set', shanks: 'Shanks, measured' } satisfies Record<WireKind, string>,
  assumed: (reading: string, wire: string): string =>
    `Standard uncertainty ${reading} for a reading${wire ? `, ${wire} for a wire` : ''}: common practice.`,
  found: (): string => capital(words().pitchDiameter),
  uncertainty: (u: string): string => `± ${u}, twice the standard uncertainty`,
  formula: (way: Exclude<Way, 'gauge'>, uneven: boolean): string =>
    uneven && way !== 'micrometer' ? UNEVEN : FORMULA[way],
  limits: (cls: string): string => `Limits of ${cls}`,
  source: (code: string): string => (sourceText as Readonly<Record<string, string>>)[code] ?? code,
  verdict: (verdict: Verdict, byWires: boolean): string => {
    switch (verdict) {
      case 'within':
        return `${capital(words().pitchDiameter)} within limits by your ${byWires ? 'wires' : 'micrometer'}; lead and form not checked.`;
      case 'above':
        return 'Above the limits: more to take off.';
      case 'below':
        return 'Below the limits. No infeed corrects that.';
      case 'unsure':
        return 'Can’t tell: a limit lies inside the uncertainty.';
      case 'unknown':
        return 'Not known: there are no limits to hold it to.';
    }
  },
  scale: (found: string, low: string, high: string): string => `Found ${found}, limits ${low} to ${high}`,
  left: 'Left to take, radially',
  leftNote: 'To the middle of the limits. Take about two thirds of it, a spring pass, then measure again.',
  go: 'Go: runs on by hand over',
  goLength: 'the whole thread',
  noGo: 'No-go: at most',
  turns: (n: number): string => `${n} turns`,
  along: 'That is, along the axis',
  gaugeNote: {
    'iso-1502': 'ISO 1502, from memory.',
    'asme-b1.2': 'ASME B1.2, from memory.',
  },
  gaugeFeel: (): readonly string[] => [
    'Clean and dry, by hand, without force. A gauge that is forced is worn, and tells nothing.',
    'The no-go may enter, and must bind by the time its turns are over. Try both ends.',
    `A go gauge that binds while the ${words().pitchDiameter} is right tells of lead, flank angle, or a root left full.`,
  ],
  refusal: (code: string): string =>
    REFUSALS[code] ?? (noteText as Readonly<Record<string, string>>)[code] ?? code,
  noThread: 'Choose a thread first.',
  back: 'Back to the thread',
} as const;

/** Labels of the figures that are read off, by their key. */
export const measureLabels = {
  'measure.wire': 'Wire in use',
  'measure.over': 'Reading over three wires',
  'measure.one': 'Reading, one wire to the crest',
  'measure.major': 'Major diameter, measured',
  'measure.cylinder': 'Cylinder, known size',
  'measure.onCylinder': 'Reading on the cylinder',
  'measure.onThread': 'Reading on the thread',
  'measure.standard': 'Standard, known size',
  'measure.shown': 'Reading on the standard',
  'measure.mic': 'Reading on the work',
} as const;
export type MeasureKey = keyof typeof measureLabels;
export const newWireLabel = 'Wire or shank you own';
export const wireRefusal = {
  known: 'This one is among yours already.',
  many: 'The list is full. Take one out first.',
} as const;
