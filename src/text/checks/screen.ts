import { phaseName } from './states';

const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** The words of the Checks screen around its questions. */
export const checksText = {
  phaseName,
  left: (left: number, tier: string): string => `${tier} · ${left} left`,
  leftCount: (left: number): string => many(left, 'check left', 'checks left'),
  /** The time is written out by the phone's own clock. Never says more than that they were recorded. */
  allRecorded: (time: string): string => `All checks recorded ${time}`,
  failedCount: (n: number): string => many(n, 'doesn’t hold', 'don’t hold'),
  unknownCount: (n: number): string => `${n} not known`,
  wasNotOk: 'You recorded this as not OK. It stays so until you record it anew.',
  why: 'Why',
  done: 'DONE',
  notOk: 'NOT OK',
  enterReading: 'Enter the figure',
  doneWithout: 'DONE, without a figure',
  list: 'All checks',
  print: 'Print, with boxes to tick',
  allChecks: 'Pre-start checks',
  cutting: 'Checks while cutting',
  later: 'Later',
  /** Where a reading has to lie; empty where nothing bounds it. */
  bounds: (low: string | null, high: string | null): string =>
    low && high
      ? low === high
        ? low
        : `${low} to ${high}`
      : low
        ? `At least ${low}`
        : high
          ? `At most ${high}`
          : '',
  back: 'Back',
  toNext: 'To the next one',
  service: 'Before service: isolate',
  changedTitle: 'Something changed?',
  changedHelp: 'Say so here, and the checks that depend on it are due again.',
  changed: 'Something changed',
  toCut: 'To the cut',
  startCut: 'Cut begins now',
  endCut: 'Cut has ended',
  /** A run with passes begins and ends its cut itself. */
  toRun: 'To the pass',
  afterAll: 'The rest is what you see and hear at the lathe. If anything changes, stop and check again.',
  caution:
    'Records of what you did and saw: the app sees nothing of the lathe. Local rules and trained people decide. A key in this app stops nothing.',
  stopTests: 'Stop tests',
  noThread: 'Which thread?',
  chooseThread: 'Choose a thread',
} as const;
