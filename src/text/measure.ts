import { words, capital } from './words';
import { noteText } from './why-notes';

export const WAYS = ['three', 'one', 'two', 'micrometer', 'gauge'] as const;
export type Way = (typeof WAYS)[number];

const REFUSALS: Readonly<Record<string, string>> = {
  'not-positive': 'A reading or a wire is not there yet, or not above nothing.',
  'angle-out-of-range': 'This form has no flanks for wires.',
  'parallel-flanks': 'A square thread has no flanks for wires.',
  'no-seat': 'This wire does not sit in this thread.',
  'internal-thread': 'Wires measure outside threads. An inside one is gauged.',
  'taper-thread': 'A taper thread is gauged by its length, not over wires.',
};

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
  clean: 'Spindle stopped. Deburr, clean, and let the work cool before you measure.',
  bestWire: 'Best wire',
  bestNote: 'Touches at the pitch line: an error of the flank angle then does not show.',
  usable: 'Usable',
  customary: 'Handbook range',
  owned: 'Wires and shanks you own',
  addWire: 'Add one',
  takeOut: (size: string): string => `Take out ${size}`,
  ownedHelp: 'Touch one to take it out. Measure drill shanks: they are often under size.',
  pick: 'Take',
  pickNone: 'None of yours suits this thread.',
  shank: 'Nearest drill shank',
  using: 'Wire in use',
  enterWire: 'Enter the wire in use',
  over: 'Over the wires, by class',
  overAt: { min: 'Least', max: 'Most' },
  leadTerm: 'Lead angle counted in',
  method: {
    solved: 'solved in space',
    series: 'series form',
    root: 'root form',
    none: 'not counted for this form',
  },
  notClear: 'These wires do not stand above the crest: the micrometer would touch the thread.',
  reading: {
    three: 'Reading over three wires',
    one: 'Reading, one wire to the crest',
    two: 'Wires less cylinder',
    micrometer: 'Micrometer on the work',
  },
  major: 'Major diameter, measured',
  cylinder: 'Cylinder, known size',
  standardActual: 'Standard, known size',
  standardShown: 'Micrometer on the standard',
  enter: 'Enter',
  instrument: 'Read with',
  instruments: { fine: 'Micrometer, 0.001', coarse: 'Micrometer, 0.01', caliper: 'Caliper' },
  wires: 'Wires are',
  wireKinds: { set: 'A measuring set', shanks: 'Shanks, measured' },
  assumed: 'Uncertainties by common practice for such an instrument in a workshop.',
  found: (): string => capital(words().pitchDiameter),
  uncertainty: (u: string): string => `± ${u}, twice the standard uncertainty`,
  verdict: {
    within: (): string =>
      `${capital(words().pitchDiameter)} within limits by your reading; lead and form not checked.`,
    above: 'Above the limits: more to take off.',
    below: 'Below the limits. No infeed corrects that.',
    unsure: 'Can’t tell: the limit lies inside the uncertainty.',
    unknown: 'No limits known to hold it to.',
  },
  scale: (found: string, low: string, high: string): string => `Found ${found}, limits ${low} to ${high}`,
  left: 'Left to take, radially',
  leftNote: 'To the middle of the limits. Take about two thirds of it, then measure again.',
  go: 'Go: runs on by hand over',
  goLength: 'the whole thread',
  noGo: 'No-go: at most',
  turns: (n: number): string => `${n} turns`,
  along: 'That is, along the axis',
  gaugeNote: 'Clean and dry, by hand, without force. From memory of the standards.',
  gaugeFeel:
    'A go gauge that binds while the effective size is right tells of lead, angle, or a root left full.',
  refusal: (code: string): string =>
    REFUSALS[code] ?? (noteText as Readonly<Record<string, string>>)[code] ?? code,
  noThread: 'Choose a thread first.',
  back: 'Back to the thread',
} as const;

/** Labels of the figures that are read off, by their key. */
export const measureLabels = {
  'measure.wire': 'Diameter of the wire',
  'measure.over': 'Reading',
  'measure.one': 'Reading, one wire',
  'measure.major': 'Major diameter',
  'measure.cylinder': 'Cylinder',
  'measure.difference': 'Wires less cylinder',
  'measure.mic': 'Micrometer on the work',
  'measure.standard': 'Standard, known size',
  'measure.shown': 'Micrometer on the standard',
} as const;
export const newWireLabel = 'Wire or shank you own';
