import type { Outcome } from '../core/run';
import type { Shift } from '../core/run/changes';
import { significant, withUnit } from './numbers';
import { capital, words } from './words';

const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;
const mm = (x: number): string => withUnit(significant(x, 2), 'mm');

/** Gain of a servo drive to show a shift by where its own isn't known, 1/s (common practice). */
const USUAL_GAIN = 30;

const shiftLine = (shift: Shift, speed: number | null): string => {
  const change = speed === null ? 'the change of speed' : withUnit(significant(Math.abs(speed), 3), 'mm/s');
  switch (shift.kind) {
    case 'servo':
      if (shift.mm !== null) return `A servo drive lags behind: the groove moves by ${mm(shift.mm)}.`;
      return `A servo drive lags behind: the groove moves by ${change} ÷ its gain, which isn’t known.${
        speed === null ? '' : ` At ${USUAL_GAIN} per second that is ${mm(Math.abs(speed) / USUAL_GAIN)}.`
      }`;
    case 'stepper':
      return shift.mm === null
        ? 'A stepper stays within two full steps of its place, or it has lost steps.'
        : `A stepper stays within two full steps of its place, ${mm(shift.mm)} along the work, or it has lost steps.`;
    case 'none':
      return 'Wheels don’t lag: the groove stays where it is.';
    case 'unknown':
      return 'How far the groove moves depends on a drive that isn’t entered.';
  }
};

export const outcomeText: Record<Outcome, string> = {
  within: 'Within limits by my reading',
  gauged: 'Gauge or mating part fits',
  'not-measured': 'Finished, not measured',
  scrapped: 'Scrapped',
  'given-up': 'Given up',
};

export const runText = {
  cut: (n: number, of: number): string => `Cut ${n} of ${of}`,
  left: (depth: string, cuts: number): string => `${depth} to go, ${many(cuts, 'cut', 'cuts')}`,
  cross: 'Cross-slide',
  top: (): string => capital(words().topSlide),
  crossBack: 'Cross-slide back to 0',
  spring: 'Spring pass: the same setting again',
  notMoved: 'No slide is named for this pass',
  turns: (n: number): string => (n === 1 ? 'turn' : 'turns'),
  divisions: (n: number): string => (n === 1 ? 'division' : 'divisions'),
  reads: { diameter: 'DIAMETER', radius: 'RADIUS' },
  readsUnknown: 'diameter or radius: not known',
  along: 'along the slide',
  outward: 'Internal: outwards, towards you',
  start: (n: number, of: number): string => `Start ${n} of ${of}`,
  round: (n: number): string => `Round ${n}`,
  toStart: (n: number): string => (n === 1 ? 'Back to start 1: how' : `To start ${n}: how`),
  leftHand: 'Left hand: the tool travels towards the tailstock',
  away: 'Spindle reversed: the tool travels away from the shoulder',
  rpm: 'rpm',
  rpmUnknown: 'Speed not known',
  taken: 'TAKEN',
  takenNote: (n: number, changed: boolean): string => {
    if (changed) return `cut ${n}, although something changed`;
    return n === 1 ? 'cut 1, as planned' : `cut ${n}, nothing changed since cut ${n - 1}`;
  },
  back: 'Back one',
  pause: 'Pause',
  measure: 'Measure now',
  wipe: 'Wipe',
  wipeText: 'Wipe the screen now',
  stopped: 'Stopped in mid-cut',
  changedKey: 'Something changed',
  end: 'End this run',
  plan: 'All passes',
  toPass: 'Back to the pass',
  scratch: (n: number): string => `Scratch pass: ${many(n, 'check', 'checks')} left`,
  checks: (n: number): string => `Checks before the cut: ${n} left`,

  allTaken: (n: number): string => (n === 1 ? 'The one cut is taken' : `All ${n} cuts are taken`),
  allTakenNote: 'Clean, deburr, let it cool. The dials don’t say what size it is: measure.',

  asked: (n: number): string => `Was cut ${n} taken?`,
  askedNote:
    'The app was closed in the middle of this run. Nothing is assumed. Look at the work and the dials.',
  askedSetting: (setting: string): string => `Its setting: ${setting}.`,
  yes: 'YES',
  yesNote: 'it counts as taken',
  no: 'NO',
  noNote: 'the same pass again',
  notSure: 'NOT SURE',

  paused: 'Paused',
  pausedNote:
    'Tool clear, spindle stopped. Leave the power, the ratio, the nut and the work as they are; if one changes, pick the thread up anew. The checks of a start are due again.',
  resume: 'Go on',
  startChecks: 'Checks for the start',

  elsewhere: 'Another tab takes the passes of this run. Here it can only be read.',
  takeOver: 'Take passes here',
  noLocks: 'This browser can’t keep tabs apart. Use this run in one tab only.',
  unsaved:
    'The key you pressed is kept, but isn’t saved. This page stays as it was until it is: free some space, then save again.',
  notEnded: 'Not saved. The run goes on; try again.',
  notLogged: 'Not saved. Nothing was recorded; try again.',

  changed: (what: string): string => `Changed since the run began: ${what}. See below.`,
  changedWhat: {
    rpm: 'speed',
    thread: 'thread',
    drive: 'drive',
    nut: 'half-nut or dial',
    dials: 'handwheels',
  },
  asBegun: 'All figures here are as the run was begun.',
  rpmChanged: (from: string, to: string, shift: Shift, speed: number | null): string =>
    `Speed now ${to}, begun at ${from}. ${shiftLine(shift, speed)} ${
      shift.kind === 'none' ? '' : 'Set the speed again as it was, or pick the thread up anew.'
    }`.trim(),
  enterLag: 'Enter how far the servo is behind',
  unknownSpeed: 'not known',
  threadChanged: (now: string, then: string): string =>
    `The job is another now (${now}). This plan is that of ${then}: don’t cut the one by the other.`,
  driveChanged: (fields: string): string =>
    `The drive was changed (${fields}). Where it stands to the spindle is no longer known, and the lead may be another: pick the thread up anew.`,
  nutChanged: (fields: string): string =>
    `What decides where the nut may be closed was changed (${fields}). The rule shown is the new one.`,
  dialsChanged: (fields: string): string =>
    `The handwheels were changed (${fields}). The settings of this plan were counted in the old divisions: plan anew.`,

  stoppedAt: (time: string): string => `You recorded at ${time} that it stopped in mid-cut.`,
  recovery: 'Recovery steps',
  stoppedTitle: 'After a stop in mid-cut',
  unsureTitle: (n: number): string => `Not sure whether cut ${n} was taken`,
  steps: (): readonly string[] => [
    `Isolate. Switch off at the ${words().mains} isolator and keep the key.`,
    'Withdraw. Bring the tool clear of the groove with the cross-slide; don’t turn the work against it.',
    'Open the nut, where there is one.',
    'Inspect the edge, the groove, the work in its chuck or carrier, the pin and belts of the drive.',
  ],
  stepMeasure: 'Measure what is there, and hold it against the depth this pass was to reach.',
  stepPickUp:
    'Pick the thread up: after a stop, spindle and carriage are not taken to be in step. A first pass with no infeed shows it.',
  pickUp: 'Pick up the thread',
  countsTaken: (n: number): string => `Cut ${n} counts as taken`,
  samePass: (n: number): string => `Cut ${n} again`,

  endTitle: 'End this run',
  endNote: 'It goes into the records with what you say here. It can be brought back.',
  endEarly: (n: number): string => `${many(n, 'cut is', 'cuts are')} not taken.`,
  outcomes: 'How did it end?',

  none: 'No run is open on this machine',
  noneNote: 'A run begins from the plan of passes.',
  toCut: 'To Cut',
  other: (machine: string, thread: string, n: number, of: number): string =>
    `An open run belongs to ${machine}: ${thread}, cut ${Math.min(n, of)} of ${of}.`,
  use: (machine: string): string => `Use ${machine}`,
  unreadable: (n: number): string =>
    `${many(n, 'open run', 'open runs')} can’t be read by this version. Nothing was thrown away.`,
  lastEnded: (thread: string, outcome: string): string => `Last run ended: ${thread}. ${outcome}.`,
  bringBack: 'Bring it back',
} as const;
