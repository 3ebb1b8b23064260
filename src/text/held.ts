import type { Measure, Use } from '../core/drive/formats';
import type { Grows } from '../core/drive/formats';
import { capital, words } from './words';

const MEASURES: Readonly<Record<Measure['code'], string>> = {
  'grade-1': 'Ball screw, grade 1',
  'grade-3': 'Ball screw, grade 3',
  'grade-5': 'Ball screw, grade 5',
  'grade-7': 'Ball screw, grade 7',
  'grade-10': 'Ball screw, grade 10',
  'lathe-300': 'Centre lathe, 0.04 mm in 300 mm',
  'lathe-60': 'Centre lathe, 0.015 mm in 60 mm',
  'warm-10K': 'Steel 10 °C warmer',
  'rolled-fine': 'Rolled screw, a good one',
  'rolled-coarse': 'Rolled screw, a coarse one',
};
const SOURCES: Readonly<Record<Measure['source'], string>> = {
  iso3408: 'ISO 3408-3, as makers print it',
  'iso3408-memory': 'ISO 3408-3, from memory',
  'iso1708-memory': 'ISO 1708, from memory',
  steel: 'handbook: 11.5 ppm a degree',
  makers: 'makers’ data',
};

const GROWS: Readonly<Record<Grows, string>> = {
  nothing: 'Nothing adds up: exact for ever, if the entries match the machine.',
  travel:
    'It adds up with travel: twice the length, twice the error. A spindle left turning with the nut open counts as travel.',
  counts:
    'It adds up with counts. Each addition is rounded, and the larger the sum, the coarser. These figures begin at a fresh start; after that they are worse.',
  rev: 'It comes back in every rev and never adds up: set right at the encoder’s index.',
  time: 'It adds up with time: the rate follows a measured speed, and nothing ties the screw to the spindle. Not for threads.',
};

export const heldText = {
  title: 'How the ratio is held',
  change: 'Change how it is held',
  enter: (label: string): string => `Enter: ${label}`,
  exactRatio: 'Exact ratio',
  holds: 'Controller holds',
  off: 'Off by',
  notKnown: 'Not known',
  nothingHeld: 'Nothing to hold it by',
  entered: 'It is not known yet how your controller holds the ratio, or something it rests on is missing.',
  gears: 'This machine has change gears: its ratio is that of the wheels.',
  rate: 'Your controller sends a step rate. No ratio is held, and no error can be stated: it grows with time, without end. Not for threads.',
  comesTo: 'What it comes to',
  over: (length: string): string => `Over ${length}`,
  thisThread: (length: string): string => `This thread, ${length}`,
  enterLength: 'Enter the length of the thread',
  changeLength: (length: string): string => `Length of the thread ${length}`,
  withinRev: 'within each rev',
  ppm: (ppm: string): string => `${ppm} ppm`,
  addsUp: 'What adds up',
  grows: (g: Grows): string => GROWS[g],
  ends: (counts: string, revs: string): string =>
    `Counting stands still after ${counts} counts, that is ${revs} revs from a fresh start.`,
  endsProduct: (counts: string, revs: string): string =>
    `If its counter is of this kind too, counting stands still after ${counts} counts, that is ${revs} revs.`,
  minutes: (minutes: string, rpm: string): string => `At ${rpm} rpm: after ${minutes} min.`,
  use: 'What is the thread for?',
  uses: { fastener: 'Fastener', leadscrew: 'Leadscrew', worm: 'Worm' } satisfies Record<Use, string>,
  useHelp: 'Until you say, it is judged as strictly as the finest leadscrew.',
  allowed: 'Allowed',
  allowedFastener: (length: string): string =>
    `Half of the tolerance of the ${words().pitchDiameter}, over ${length} of engagement. Common practice: the standards give pitch no tolerance of its own.`,
  allowedFinest: 'In 300 mm. Finest grade of ball screw: ISO 3408-3 grade 1, from memory.',
  noTolerance: 'No tolerance of the diameter is known for this thread, so it is judged as a leadscrew.',
  errorThere: (length: string): string => `Error over ${length}`,
  diameter: (external: boolean): string =>
    `${capital(words().pitchDiameter)} acts ${external ? 'larger' : 'smaller'} by`,
  diameterNote: 'Error of pitch × cotangent of half the thread angle: 1.732 at 60°. ISO 5408, ASME B1.7.',
  pickingUp: 'If the nut is opened each pass',
  moved: 'Groove moved by the last pass',
  estimate: (passes: string, revs: string): string =>
    `An estimate: ${passes} passes, ${revs} spindle revs from one to the next.`,
  keepClosed: 'Keep the nut closed from first pass to last, and this does not happen.',
  compare: 'How good is that?',
  thisRatio: 'This ratio',
  scale: (ppm: string): string => `Scale of lead errors from 0.01 to 10000 ppm; this ratio at ${ppm} ppm`,
  measure: (m: Measure): string => MEASURES[m.code],
  source: (m: Measure): string => SOURCES[m.source],
  back: 'Back to the thread',
} as const;
