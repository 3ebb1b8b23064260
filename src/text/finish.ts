import type { FeelAdvice, Felt, NoGo, Tried } from '../core/cut/feel';
import type { Lies, Target } from '../core/cut/finish';
import type { Outcome, RunReading } from '../core/run/run';
import { mark } from './numbers';
import { capital, words } from './words';

/** Labels of the figures that are read off while a thread is finished, by their key. */
export const finishLabels = {
  'cut.wire': 'Wire in use',
  'cut.over': 'Reading over three wires',
  'cut.standard': 'Standard, known size',
  'cut.shown': 'Reading on the standard',
  'cut.mic': 'Reading on the work',
} as const;
export type FinishKey = keyof typeof finishLabels;

export const FINISH_WAYS = [
  'wires',
  'thread-micrometer',
  'gauge',
] as const satisfies readonly RunReading['way'][];
export type FinishWay = (typeof FINISH_WAYS)[number];

/** A length in mm written in the person's unit, to a micrometre or a tenth of a thou. */
export const mmText = (mm: number, unit: 'mm' | 'in', places = 3): string =>
  (unit === 'in' ? (mm / 25.4).toFixed(places + 1) : mm.toFixed(places))
    .replace('-', '−')
    .replace('.', mark());

const divisions = (n: number): string => (n === 1 ? '1 division' : `${n} divisions`);
const passes = (n: number): string => (n === 1 ? '1 pass' : `${n} passes`);

/** Words of measuring and finishing a thread. */
export const finishText = {
  title: (name: string): string => `Measure ${name}`,
  noThread: 'Nothing to measure: no thread is chosen.',
  choose: 'Choose a thread',
  before: 'Tool withdrawn, spindle stopped. Deburr, wipe clean, let it cool; then measure.',
  spring: (allowed: boolean | null): string => {
    if (allowed === true) return 'Before that a spring pass: the same setting once more.';
    if (allowed === false)
      return 'No spring pass: carbide that only rubs hardens this stock, and the next pass is worse.';
    return 'Whether a spring pass helps is not known: say what the tool and the work are made of.';
  },
  work: 'Tool and work',
  way: 'How it is measured',
  ways: {
    wires: 'Three wires',
    'thread-micrometer': 'Thread micrometer',
    gauge: 'Gauge or nut',
  } satisfies Record<FinishWay, string>,
  inside: 'Wires can’t be laid in an internal thread.',
  enter: 'Enter',
  overFor: (cls: string): string => `Over these wires for ${cls}`,
  aim: 'Aim',
  aimBy: {
    middle: 'Middle of the limits',
    'one-limit': 'As near to basic as the one limit allows',
    basic: 'Basic size: no limits are known',
  } satisfies Record<Target['by'], string>,
  lies: (lies: Lies, side: 'external' | 'internal', byWires: boolean): string => {
    const [small, large] = side === 'external' ? ['Below', 'Above'] : ['Above', 'Below'];
    switch (lies) {
      case 'within':
        return `${capital(words().pitchDiameter)} within limits by your ${byWires ? 'wires' : 'micrometer'}; lead and form not checked.`;
      case 'to-take':
        return `${large} the limits: more to take off.`;
      case 'beyond':
        return `${small} the limits. No infeed corrects that.`;
      case 'unsure':
        return 'Not known: a limit lies inside the uncertainty.';
      case 'unknown':
        return 'Not known whether within: there are no limits to hold it to.';
    }
  },
  lost: 'Whatever is taken now makes it worse. Scrap it, or use it where a loose fit will do.',
  gone: 'Past the aim already: take nothing more. Measure again, more finely, to know.',
  slides: (): Record<'cross' | 'top', string> => ({ cross: 'Cross-slide', top: capital(words().topSlide) }),
  still: (slide: string): string => `${slide}, still to go`,
  stillRadial: 'Radially, still to go',
  divisions,
  ofDivision: (exact: string, one: string): string =>
    `${exact} by its dial; one division is ${one}. Cut down to whole ones, so as not to go past the aim.`,
  inDivisions: (n: number, length: string): string => `${divisions(n)} = ${length}`,
  tooCoarse: 'Less than one division of this dial is left. Leave it, or feed along the other slide.',
  noDial: (slide: string): string => `What one division of the ${slide.toLowerCase()} is isn’t known.`,
  enterDial: 'Enter the dial',
  radial: 'Radial infeed',
  instead: (slide: string): string => `${slide}, instead`,
  reckoned:
    'Left = (E − aim) ÷ 2 radially, the other way round inside; along the top slide ÷ cos of its angle from square. Own geometry.',
  part: (n: number, count: number): string => `Take 70 %: ${divisions(n)} in ${passes(count)}, then measure`,
  rest: (n: number, count: number): string => `Take the rest: ${divisions(n)} in ${passes(count)}`,
  partAdvice:
    'Take 70 % and measure again: deburred, clean, cool. Burrs and a tool that springs make a thread measure large. Common practice.',
  steps: (list: readonly number[]): string =>
    `${passes(list.length)}, ${list.join(' + ')} divisions on from where it stands.`,
  stepsOf: 'Take 70 %, then measure',
  stepsRest: 'Or all of it',
  noLeast: 'How little a pass may take depends on the tool. What is it made of?',
  tools: { hss: 'High-speed steel', carbide: 'Carbide' },
  midRound: (start: number, of: number): string =>
    `The starts stand at different depths: cut this setting in start ${start}${start < of ? ` to ${of}` : ''} first. Then measure, and plan on from there.`,
  otherDial:
    'The dial was entered anew since this run was planned: its settings were counted in other divisions. Plan anew.',
  noPass: 'No pass of this run is taken yet, so what the dials stand at isn’t known.',
  notOpen: 'No run is open: nothing of this is recorded.',
  askedFirst:
    'Whether the last pass was taken isn’t known yet, so neither is what the dials stand at. Answer that first.',
  toPass: 'To the pass',
  notKept:
    'Not recorded. The reading is still here: touch again, or see whether another tab takes the passes of this run.',
  noteIt: 'Note it, back to the passes',
  end: 'End this run',
  outcome: (o: Outcome, read: boolean): string => {
    switch (o) {
      case 'within':
        return 'Finished: within limits';
      case 'gauged':
        return 'Finished: gauged';
      case 'not-measured':
        return read ? 'Finished, not known whether within' : 'Finished, not measured';
      case 'scrapped':
        return 'Scrapped';
      case 'given-up':
        return 'Given up';
    }
  },
  tried: 'Tried with',
  triedWith: { nut: 'The part it fits', gauges: 'Go and no-go' } satisfies Record<Tried, string>,
  go: (tried: Tried): string => (tried === 'nut' ? 'The part' : 'The go gauge'),
  felt: { goes: 'Goes freely', tight: 'Tight', 'does-not-go': 'Does not go' } satisfies Record<Felt, string>,
  noGo: 'The no-go gauge',
  noGoFelt: (turns: number): Record<NoGo, string> => ({
    binds: `Binds within ${turns} turns`,
    'runs-on': 'Runs on further',
  }),
  noGoOf: { binds: 'binds', 'runs-on': 'runs on' } satisfies Record<NoGo, string>,
  feel: 'By hand, without force; a gauge says yes or no, and no size.',
  feelAdvice: {
    fits: 'It fits this part. Others may be tighter or looser: no size is known.',
    gauged: 'Go goes and no-go binds: within limits as far as these gauges tell.',
    'no-go-next': 'Now the no-go gauge.',
    'least-more':
      'Deburr crests and the first turn, wipe both clean, try again. If it still isn’t free: one least pass, then try. For how much there is to go, measure.',
    beyond: 'The no-go gauge runs on: beyond the limits. No infeed corrects that.',
    contradicts:
      'Both can’t be the size’s doing. Look for a burr, a full root, a wrong lead or flank angle; take nothing more before that is found.',
  } satisfies Record<FeelAdvice, string>,
  leastPass: (n: number): string => `Take one least pass: ${divisions(n)}`,
  back: 'Back to Cut',
  records: 'Records',
} as const;
