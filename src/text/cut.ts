import type { BeginNeed } from '../core/run/begin';
import { words } from './words';

/** Words of the place Cut: what is planned, what is missing, the way on. */
export const cutText = {
  title: 'Cut',
  none: 'Nothing to cut yet',
  noneHelp: 'Choose a thread; what it is cut with is planned from there.',
  feed: 'A turning feed is chosen, not a thread: there is nothing to plan.',
  feedKey: 'Turning feeds',
  rows: {
    work: 'Work and tool',
    stop: 'Stopping room',
    nut: 'Half-nut',
    plan: 'Plan of passes',
    speed: 'Speed',
    checks: 'Checks',
  },
  notKnown: 'Not known',
  notPlanned: 'Not planned',
  notSet: 'Not set',
  /** What the plan still needs. */
  needs: (labels: string): string => `Missing: ${labels}`,
  angle: (angle: string): string => `${words().topSlide} at ${angle}`,
  minutes: (n: number): string => `about ${n} min in all`,
  inStarts: (starts: number, passes: number): string => `each in ${starts} starts: ${starts * passes} cuts`,
  passes: (n: number): string => (n === 1 ? '1 pass' : `${n} passes`),
  highest: (rpm: string): string => `Highest for this job ${rpm} rpm`,
  roomLapsed: 'Worked out for other figures: work it out again.',
  highestUnknown: 'Highest for this job not known',
  long: (length: string): string => `${length} long`,
  workOpen: 'Nothing entered yet',
  left: (n: number): string => `${n} left`,
  allRecorded: (time: string): string => `All recorded ${time}`,
  failed: (n: number): string => (n === 1 ? 'One doesn’t hold' : `${n} don’t hold`),
  begin: 'Begin the cut',
  beginNotSaved: 'Not begun: it could not be saved. Try again.',
  first: (what: string): string => `First: ${what}`,
  caution:
    'What is planned is reckoned from what you entered. Tool withdrawn and spindle stopped whenever you touch this.',
  goOn: (n: number, of: number): string => `Go on with cut ${n} of ${of}`,
  goOnAfter: 'Go on: every cut planned is taken',
  running: 'A cut is under way',
  measure: 'Measure',
  records: 'Records',
  ways: 'Other work',
  recovery: 'Stopped in mid-cut: what to do',
} as const;

/** What is missing before a cut can begin, after "First:". */
export const needText: Readonly<Record<BeginNeed, string>> = {
  plan: 'complete the plan',
  'speed-not-set': 'set the speed',
  'speed-over': 'a slower speed',
  'speed-unknown': 'what the speed rests on',
  'checks-failed': 'a check that doesn’t hold',
  checks: 'the checks that are left',
};
