import type { OwnFieldName } from '../core/job';
import type { OwnProfile, OwnTrouble } from '../core/thread';

/** Words of the pages with a person's own threads. */
export const ownText = {
  title: 'Own threads',
  none: 'None yet. Any diameter, pitch and flank angle; kept on this phone.',
  add: 'New thread',
  more: (n: number): string => `and ${n} more: type the size or pitch to find them`,
  loading: 'Being read from the phone …',
  unknown: 'There is no such thread on this phone.',
  unfinished: 'unfinished',
  notNamed: 'Nothing entered yet',
  away: 'Put away',
  bringBack: (name: string): string => `Bring back ${name}`,
  unreadable: (n: number): string =>
    `${n === 1 ? 'One could' : `${n} could`} not be read by this version. Kept as stored, nothing is lost.`,
  gone: 'This thread was put away.',
  back: 'Own threads',
  enter: 'Enter',
  name: 'Name, if it has one',
  keepName: 'Keep the name',
  nameLong: (most: number): string => `No more than ${most} signs.`,
  profile: 'Profile',
  hand: 'Hand',
  use: 'Use it',
  usePitch: 'Use its pitch and lead alone',
  putAway: 'Put it away',
  inUse:
    'This is the thread that is to be cut: changes count at once, and checks that rest on it must be done again.',
} as const;

export const ownFieldName: Readonly<Record<OwnFieldName, string>> = {
  major: 'Major diameter',
  pitch: 'Pitch',
  angle: 'Angle between the flanks',
  crest: 'Width of the flat at the crest',
  depth: 'Height of thread on one side',
  starts: 'Number of starts',
};

export const ownProfileName: Readonly<Record<OwnProfile, string>> = {
  iso60: '60°, ISO and UN',
  whitworth55: '55°, Whitworth',
  ba47: '47½°, BA',
  trapezoidal30: '30°, trapezoidal',
  acme29: '29°, Acme',
  stubAcme29: '29°, stub Acme',
  buttress7x45: '7° and 45°, buttress',
  square: 'Square',
  round30: '30°, round',
  worm29: '29°, worm',
  worm40: '40°, worm',
  other: 'Another angle',
};

export const ownTroubleText: Readonly<Record<OwnTrouble, string>> = {
  'no-pitch': 'The pitch is missing.',
  'no-angle': 'The angle between the flanks is missing. Until then only its pitch and lead can be used.',
  'no-crest': 'The width at the crest is missing. Until then only its pitch and lead can be used.',
  'no-depth':
    'The height of thread is missing, or ends above the pitch line. Until then only its pitch and lead can be used.',
  'pitch-by-module':
    'A pitch by module or DP goes with a worm profile. Choose one, or give the pitch in mm or inches.',
  'crest-too-wide':
    'The crest is as wide as half the pitch or wider: no groove is left at the pitch line. Correct one of them.',
  'too-deep':
    'At this angle the flanks have met before that depth. Correct the height, the angle or the crest.',
  'no-core': 'The thread is as deep as the blank is thick. Correct the diameter or the pitch.',
};
