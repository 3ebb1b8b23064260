import type { NutRule } from '../core/cut';
import type { Job, NoseKind } from '../core/job';
import { marked } from './numbers';

export const familyName: Record<string, string> = {
  'iso-coarse': 'ISO metric coarse',
  'iso-fine': 'ISO metric fine',
  'iso-constant': 'ISO metric, constant pitch',
  mj: 'Metric with rounded root, MJ',
  unc: 'Unified coarse, UNC',
  unf: 'Unified fine, UNF',
  unef: 'Unified extra fine, UNEF',
  un: 'Unified, constant pitch, UN',
  uns: 'Unified special, UNS',
  unj: 'Unified with rounded root, UNJ',
  bsw: 'Whitworth, BSW',
  bsf: 'Whitworth fine, BSF',
  ba: 'British Association, BA',
  g: 'Pipe, parallel, G',
  r: 'Pipe, taper, R',
  npt: 'Pipe, taper, NPT',
  tr: 'Trapezoidal, Tr',
  acme: 'Acme',
  'stub-acme': 'Stub Acme',
  buttress: 'Buttress 7° and 45°',
  square: 'Square',
  round: 'Round, Rd',
  'model-engineer': 'Model engineer, ME',
  brass: 'Brass, 26 tpi',
  cycle: 'Cycle, BSC',
  optical: 'Optical mounts, metric',
  camera: 'Cameras and tripods',
  microscope: 'Microscope objectives, RMS',
  'spark-plug': 'Spark plugs',
  'worm-module': 'Worm by module',
  'worm-dp-29': 'Worm by diametral pitch, 14.5°',
  'worm-dp-40': 'Worm by diametral pitch, 20°',
};

/** What a person's own threads are called by, where a family's name would stand. */
const OWN_FAMILY = 'Own thread';

/** A family's name; its id where no words stand for it. */
export const familyText = (id: string): string => (id === 'own' ? OWN_FAMILY : (familyName[id] ?? id));

/** What each standard lists, for the line under a family. */
export const standardName: Record<string, string> = {
  'ISO 261': 'ISO 261: metric threads, diameters and pitches',
  'ISO 5855': 'ISO 5855: MJ threads',
  'ASME B1.1': 'ASME B1.1: unified inch screw threads',
  'ASME B1.15': 'ASME B1.15: UNJ threads',
  'BS 84': 'BS 84: threads of Whitworth form',
  'BS 93': 'BS 93: British Association threads',
  'BS 811': 'BS 811: cycle threads',
  'ISO 228-1': 'ISO 228-1: pipe threads, joint not made in the thread',
  'ISO 7-1': 'ISO 7-1: pipe threads, joint made in the thread',
  'ASME B1.20.1': 'ASME B1.20.1: taper pipe threads',
  'ISO 2902': 'ISO 2902: trapezoidal threads',
  'ASME B1.5': 'ASME B1.5: Acme threads',
  'ASME B1.8': 'ASME B1.8: Stub Acme threads',
  'ASME B1.9': 'ASME B1.9: buttress threads',
  'DIN 405-1': 'DIN 405-1: round threads',
  'ISO 1222': 'ISO 1222: tripod screws',
  'ISO 8038': 'ISO 8038: microscope objectives',
  'ISO 28741': 'ISO 28741: spark plugs',
  'ISO 54': 'ISO 54: modules',
  'common practice': 'Common practice, no standard',
};
export const standardText = (standard: string): string => standardName[standard] ?? standard;

const className: Readonly<Record<string, string>> = {
  'bolt-close': 'Close bolt',
  'bolt-medium': 'Medium bolt',
  'bolt-free': 'Free bolt',
  'bolt-normal': 'Normal bolt',
  'nut-close': 'Close nut',
  'nut-medium': 'Medium nut',
  'nut-normal': 'Normal nut',
  nut: 'Nut',
  internal: 'Internal',
};
/** A class as its standard says it. @example classText('6g') // "6g", classText('screw-2G') // "2G" */
export const classText = (id: string): string => className[id] ?? id.replace(/^(?:screw|nut)-/, '');

const DRILL: Readonly<Record<'metric' | 'number' | 'letter' | 'fraction', (name: string) => string>> = {
  metric: marked,
  number: (name) => `No. ${name}`,
  letter: (name) => `Letter ${name}`,
  fraction: (name) => `${name} in`,
};
/** A drill as it is stamped. @example drillName('number', '7') // "No. 7" */
export const drillName = (kind: keyof typeof DRILL, name: string): string => DRILL[kind](name);

export const handName: Record<Job['hand'], string> = { right: 'Right-hand', left: 'Left-hand' };
export const sideName: Record<Job['side'], string> = { external: 'External', internal: 'Internal' };
export const noseName: Record<NoseKind, string> = {
  radius: 'Round',
  flat: 'Flat',
  sharp: 'Sharp',
  'full-form': 'Full form',
};
export const startsText = (n: number): string => (n === 1 ? 'Single start' : `${n} starts`);

type Kept = Extract<NutRule, { kind: 'keep-closed' }>['reason'];
const KEEP: Record<Kept, string> = {
  'no-half-nut': 'This machine’s nut stays closed.',
  irrational: 'This lead never comes back in step with the leadscrew.',
  'inexact-ratio': 'The drive does not give this lead exactly: each closing would add its error.',
  'no-dial': 'This lead does not fit everywhere, and there is no thread dial.',
  'gear-misses': 'No mark of this dial’s gear comes back in step with this lead.',
  'no-line': 'No line of this dial stands where the nut may be closed.',
};

const RUN_BACK = 'Withdraw the tool clear, stop, then run back under drive.';
const WATCH = 'Watch the dial on the lathe.';

export interface NutText {
  readonly head: string;
  readonly line: string;
}

/** The lines as long as they are few; of many only how far apart they stand. */
const linesText = (lines: readonly number[]): string => `LINES ${lines.join(' ')}`;

/**
 * The half-nut rule in a few words: head and how. null: not known, and then the nut stays closed.
 * @param hasDial false where the lathe has no thread dial to speak of lines
 */
export const nutText = (rule: NutRule | null, hasDial = true): NutText => {
  if (!rule) return { head: 'KEEP THE NUT CLOSED', line: 'The half-nut rule is not known.' };
  if (rule.kind === 'keep-closed')
    return { head: 'KEEP THE NUT CLOSED', line: `${KEEP[rule.reason]} ${RUN_BACK}` };
  if (rule.kind === 'anywhere')
    return hasDial
      ? { head: 'ANY LINE', line: 'On a line or between: wherever the nut goes fully home.' }
      : { head: 'CLOSE ANYWHERE', line: 'Wherever the nut goes fully home.' };
  if (rule.lines.length === rule.of)
    return { head: 'ANY LINE', line: `Only on a line, not between. ${WATCH}` };
  const first = `Counted so that the line first used is ${rule.of}.`;
  return rule.lines.length === 1
    ? { head: `LINE ${rule.lines.join('')}`, line: `The same line each time. ${WATCH}` }
    : { head: linesText(rule.lines), line: `${first} ${WATCH}` };
};

export const threadsText = {
  hand: 'Hand',
  side: 'External or internal',
  choose: 'Choose a thread',
  noneHelp: 'By family and size, or typed on large keys.',
  feed: 'Feed per rev',
  leadOf: (starts: number): string => `Lead, ${starts} starts`,
  percentThread: (percent: string): string => `${percent} % thread`,
  heldUnknown: 'What the controller can hold is not known',
  heldNearly: (held: string, ppm: string): string => `Controller holds ${held}, ${ppm} ppm off`,
  stepsPerCount: 'Steps per count',
  tool: 'Tool, hand and side',
  barePitch: 'A pitch by itself',
  findTitle: 'Which thread?',
  typeHint: 'Such as 10, 1/4, 13 tpi, 0.8',
  foundCount: (n: number): string => (n === 1 ? '1 thread found' : `${n} threads found`),
  ways: {
    any: 'any',
    mm: 'mm',
    in: 'in',
    tpi: 'tpi',
    module: 'module',
    dp: 'DP',
    'feed-mm': 'feed mm',
    'feed-in': 'feed in',
  },
  none: 'No thread chosen',
  another: 'Another thread',
  use: 'Use it',
  pitch: 'Pitch',
  class: 'Class',
  turnTo: 'Turn blank to',
  boreTo: 'Bore to',
  drill: 'Tapping drill',
  depth: 'Depth',
  depthRadial: 'radial',
  /** @param largest nose of the kind that reaches the root; empty where none does */
  rootShort: (largest: string): string => `root not reached${largest && `, at most ${largest}`}`,
  noseUnfit: 'does not suit the thread',
  basicOnly: 'Basic size, no limits',
  whyNot: {
    'no-diameter': 'No diameter of its own',
    'no-major-diameter': 'No diameter of its own',
    'taper-gauged-by-length': 'Gauged by its length',
  },
  leaveOver: 'The insert cuts the crest',
  nose: 'Tool nose',
  noseSize: 'Size of the nose',
  noseNotKnown: 'Tool nose not known',
  noseEnter: 'Enter the tool nose',
  nut: 'Half-nut',
  favourites: 'Favourites',
  favouriteAdd: 'Add to favourites',
  favouriteRemove: 'Take out of favourites',
  recent: 'Last used',
  search: 'Type a size or pitch',
  searchLabel: 'Size or pitch',
  nothingFound: 'Nothing found',
  ownEdit: 'Change this thread of yours',
  asPitch: 'Use as a pitch',
  asFeed: 'Use as a feed per rev',
  families: 'By family',
  exact: 'Exact if the entries match the machine',
  notKnown: 'Not known',
} as const;

/** The drawing of the profile in words. @param flanks angles of the two flanks, degrees @param nose drawn in the groove */
export const profileWords = (
  name: string,
  pitch: string,
  [a, b]: readonly [number, number],
  nose: NoseKind | null,
): string =>
  `${name} in section to scale: pitch ${pitch}, ${
    a === b ? `included angle ${2 * a}°` : `flanks ${a}° and ${b}°`
  }${nose ? `, tool nose ${noseName[nose].toLowerCase()} in a groove` : ''}`;
