import type { Travel } from '../core/cut/infeed';
import type { CutPlan } from '../core/cut/plan';
import type { DialSetting } from '../core/cut/pass';
import type { Infeed, PassHold, PassRule } from '../core/job';
import { mark, significant } from './numbers';
import { capital, words } from './words';

/** A figure to so many places, zeros kept, so that columns stand. */
export const places = (x: number, n: number): string => x.toFixed(n).replace('.', mark());

/** A reckoned length in the dial's unit. @param x mm */
export const lengthIn = (x: number, unit: 'mm' | 'in'): string =>
  unit === 'in' ? `${places(x / 25.4, 4)}\u00a0in` : `${places(x, 3)}\u00a0mm`;

export const areaText = (mm2: number): string => `${places(mm2, 3)}\u00a0mm²`;

/** Whole minutes from two on, seconds below. */
export const timeText = (s: number): string => {
  if (s < 10) return `${places(s, 1)}\u00a0s`;
  return s < 120 ? `${Math.round(s)}\u00a0s` : `${Math.round(s / 60)}\u00a0min`;
};

/** Degrees to the tenth. */
export const degreesText = (x: number): string => `${significant(Math.round(x * 10) / 10, 4)}°`;

export const infeedKey: Readonly<Record<Infeed, string>> = {
  radial: 'Straight in',
  flank: 'Along the flank',
  'modified-flank': 'Modified flank',
  'alternate-flank': 'Alternate flanks',
};
export const ruleKey: Readonly<Record<PassRule, string>> = {
  'constant-chip': 'Makers’ rule',
  'equal-area': 'Equal area',
  'fixed-step': 'Equal steps',
};
export const ruleHelp: Readonly<Record<PassRule, string>> = {
  'constant-chip': 'A light first pass, then chips of one area.',
  'equal-area': 'Chips of one area from the first pass on: that one goes deep.',
  'fixed-step': 'The same step each time: the chip grows with the depth.',
};
export const holdKey: Readonly<Record<PassHold, string>> = {
  count: 'Number of passes',
  first: 'First pass',
  chip: 'Chip area',
};
export const holdLabel: Readonly<Record<PassHold, string>> = {
  count: 'Passes, at most',
  first: 'First pass, at most',
  chip: 'Chip area, at most',
};

const SLIDE = {
  cross: () => 'Cross-slide',
  top: () => capital(words().topSlide),
} as const;
const END: Readonly<Record<Travel, string>> = { headstock: 'headstock', tailstock: 'tailstock' };

/** "1 turn 36", "36 divisions"; the sign that a setting may not need is never there. */
export const turnsOf = ({ turns, past, divisions }: DialSetting): string => {
  if (!turns) return `${divisions} ${divisions === 1 ? 'division' : 'divisions'}`;
  return `${turns} ${turns === 1 ? 'turn' : 'turns'} ${past}`;
};

export const planText = {
  title: 'Plan of passes',
  back: 'Back to the cut',
  backToPlan: 'Back to the plan',
  outcome: (first: string, last: string, chip: string): string =>
    `First ${first} deep, last ${last}; largest chip ${chip}`,
  toolUnknown: 'What the tool is made of isn’t chosen: passes as for HSS, spring passes as for carbide.',
  full: 'full depth',
  notPlanned: 'Not planned yet',
  needs: 'Missing for a plan',
  enter: (label: string): string => `Enter: ${label}`,
  passes: (n: number): string => (n === 1 ? 'pass' : 'passes'),
  springs: (n: number): string =>
    n === 0 ? 'no spring pass' : n === 1 ? '1 more at the last setting' : `${n} more at the last setting`,
  eachStart: (n: number): string => `each in ${n} starts, all starts to one depth before the next`,
  before: 'Set before the first pass',
  angle: () => `${SLIDE.top()}, on its scale`,
  handle: (to: Travel): string => `Its handle swung towards the ${END[to]}`,
  parallel: 'Along the work’s axis',
  fromSquare: (deg: string): string => `${deg} from square to the axis`,
  feeds: 'Goes deeper',
  slide: SLIDE,
  crossBack: 'Cross-slide back to 0 for each pass',
  shifts: () => `${SLIDE.top()} shifted by turns, towards the way of travel`,
  reads: { diameter: 'DIAMETER', radius: 'RADIUS' },
  readsLabel: 'Cross-slide dial reads',
  division: 'One division',
  divisionOf: (deep: string): string => `${deep} deep`,
  zero: 'Touch the work with the tool, set the dials to zero there.',
  zeroUp: 'Take up the slack the way the slide goes deeper, always the same.',
  outward: 'Inside, deeper is outwards: count the divisions from zero that way.',
  depth: 'Depth',
  fromMeasured: (from: string, to: string): string => `From ${from} as measured to ${to} on the flanks`,
  fromNominal: 'From the nominal diameter; measure the blank for a truer one',
  enterBlank: (inside: boolean): string =>
    inside ? 'Enter the bore as measured' : 'Enter the blank as measured',
  reached: 'Last setting',
  short: (x: string): string => `${x} short of the depth: a division more would pass it`,
  creep: 'Along the axis at full depth',
  creepNote: (to: Travel, shaved: string): string =>
    `Towards the ${END[to]}; ${shaved} shaved off the other flank`,
  picture: 'The groove as it fills',
  headstock: '◀ headstock',
  tailstock: 'tailstock ▶',
  pictureText: (n: number, of: number, depth: string, how: string): string =>
    `Section of the groove to scale, ${n} of ${of} passes taken: ${depth} deep. ${how}`,
  how: {
    radial: 'Both flanks cut at once.',
    flank: 'The tool comes down along one flank; the other one cuts.',
    'modified-flank': 'The leading flank cuts; the trailing one is shaved clean.',
    'alternate-flank': 'The flanks cut by turns; the last pass stands in the middle.',
  } satisfies Record<Infeed, string>,
  after: (n: number, of: number, depth: string): string => `After pass ${n} of ${of}: ${depth} deep`,
  none: 'Before the first pass',
  less: 'One less',
  more: 'One more',
  list: 'The passes',
  listHelp: 'Settings from zero, past a full turn counted on.',
  left: (x: string): string => `${x} left`,
  chip: (x: string): string => `chip ${x}`,
  spring: 'Spring pass',
  same: 'Same setting again',
  choices: 'How it is planned',
  infeed: 'Infeed',
  topSlide: () => `${SLIDE.top()} set to`,
  rule: 'Shared out by',
  hold: 'Held',
  least: 'Least a pass takes',
  springsLabel: 'Spring passes',
  usual: 'Not chosen: as is common practice',
  usualAll: 'All as is usual',
  speedTime: 'Speed and time',
  speed: 'Cutting speed for threading',
  speedNote: (rpm: string): string => `${rpm} at this diameter. Teaching texts and common practice, HSS`,
  carbideNote: (rpm: string): string =>
    `${rpm} at this diameter, seldom reached by hand: take a sharp ground insert or HSS. Common practice`,
  atSet: (v: string, rpm: string): string => `At ${rpm} set: ${v}`,
  stopFirst: 'The stopping room nearly always asks for less: Speed has the last word.',
  speedUnknown: 'Not known',
  speedNeeds: 'Material and diameter decide it',
  rpmRange: (from: number, to: number | null): string =>
    to === null ? `from ${Math.ceil(from)} rpm` : `${Math.ceil(from)} to ${Math.floor(to)} rpm`,
  vRange: (from: number, to: number | null): string => (to === null ? `from ${from}` : `${from} – ${to}`),
  time: 'One pass',
  timeNote: 'Run-in of three leads counted',
  inAll: 'In all',
  inAllNote: 'With about 20 s by hand for each, an estimate',
  timeUnknown: 'Not known',
  timeNeeds: 'Length and speed decide it',
  enterLength: 'Enter the length of the thread',
  caution: 'Reckoned from what you entered. Measure the thread before the last passes.',
  chooseOn: 'Material and tool: choose',
  chooseThread: 'Choose a thread',
} as const;

/** How a plan goes, in a few words. */
export const planHow = (p: CutPlan): string => `${infeedKey[p.infeed]} · ${ruleKey[p.rule].toLowerCase()}`;
