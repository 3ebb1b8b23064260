import type { StandardGroove } from '../core/cut/fits';
import type { StopRoom } from '../core/cut/stop';
import { mark } from './numbers';
import { capital, words } from './words';

/** A length that isn't exact, mm to hundredths. */
export const mmText = (mm: number): string => mm.toFixed(2).replace('.', mark());

export const grooveNames: Readonly<Record<StandardGroove, string>> = {
  'iso-4755': 'ISO 4755',
  'din-76-a': 'DIN 76 A',
  'din-76-b': 'DIN 76 B',
  'gbt-3': 'GB/T 3',
  'gbt-3-short': 'GB/T 3 short',
};

/** What is measured from where the thread ends. */
export const wholeName: Readonly<Record<StopRoom['from'], string>> = {
  groove: 'Groove',
  'run-out': 'Run-out allowed',
  gap: 'Gap',
};

export const stopText = {
  title: 'Stop in time',
  highest: 'Highest for this room',
  none: 'No speed: nothing is left to stop in',
  noneSlow: 'No speed: the room is too short for the whole time',
  notKnown: 'Not known',
  noForm: 'The thread’s form and depth are not known: choose a thread from the list.',
  why: 'Why',
  noRpm: 'No speed set',
  setRpm: 'Set the speed',
  at: (rpm: string): string => `at ${rpm} rpm`,
  travels: (with_: string, factor: string, without: string): string =>
    `Travels ${with_} mm of the room before the nut is clear: ${without} mm × ${factor}.`,
  missing: 'To be entered or chosen',
  below: (name: string): string => `${name}: choose it below`,
  rows: {
    tool: 'Tool’s leading side',
    toolNote: (height: string, angle: string): string =>
      `${height} mm from tip to the top of what it would meet, × tangent of ${angle}°`,
    creep: 'Creep of the slide',
    creepNote: (depth: string, angle: string): string => `${depth} mm deep × tangent of ${angle}°`,
    noCreep: 'Straight in or by turns along both flanks: none',
    margin: 'Margin',
    marginNote: 'Common practice',
    noMargin: 'None: nothing is met where the thread fades',
    usable: 'Usable room',
    nothing: 'Nothing',
  },
  bars: {
    creep: 'creep',
    travel: 'travel',
    left: 'left',
    room: 'room',
    margin: 'margin',
    tool: 'tool',
    over: 'too far',
    groove: 'groove',
    'run-out': 'run-out',
    gap: 'gap',
  },
  take: (mm: string): string => `Take ${mm} mm as the job’s room`,
  taken: (mm: string): string => `The job’s stopping room: ${mm}, worked out here.`,
  typed: (mm: string): string => `The job’s stopping room was typed by hand: ${mm}.`,
  lapsed: (mm: string): string =>
    `The job’s stopping room, ${mm}, was worked out for other figures. Work it out again.`,
  noRoom: 'The job has no stopping room yet.',
  typeIt: 'Type it instead',
  ending: 'The thread ends in',
  groove: 'Groove',
  grooveWidth: 'Width of its floor',
  grooveOther: 'No standard groove for this thread: enter the width.',
  grooveHelp: 'Least floor by the standard, for this pitch. Two standards, never mixed. DIN 76 from memory.',
  grooveInside: 'Length of the whole groove by the standard.',
  isNamed: (names: string): string => `As ${names}`,
  shoulder: 'Shoulder above the crests',
  shoulderHelp:
    '0 where nothing stands higher than the thread. It decides how far the tool’s side reaches ahead.',
  gap: {
    'run-out': 'Gap to the shoulder or jaws',
    through: 'Gap to jaws, centre or steady',
    outwards: 'Gap outwards, to centre or tailstock',
  },
  infeed: 'Infeed',
  topSlide: (): string => `${capital(words().topSlide)} set to`,
  outwards: 'Direction of the cut',
  towards: 'Towards the end of the thread',
  away: 'From the shoulder outwards',
  awayHelp:
    'The spindle is reversed, and the tool turned over in front or right way up behind. It begins in the groove.',
  awayNever:
    'You entered that the chuck is screwed on: reversed it can unscrew and come off. Not on this machine.',
  awayAsk: 'How the chuck is held on its nose is not known. Enter that first.',
  askChuck: 'How is the chuck held?',
  fades: 'A thread that fades out',
  fadesNormal: (mm: string, rpm: string): string => `Normal, 2.5 pitches: ${mm} mm. Room for ${rpm} rpm.`,
  fadesShort: (mm: string, rpm: string): string => `Short, 1.25 pitches: ${mm} mm. Room for ${rpm} rpm.`,
  fadesNote:
    'From last full thread to where the tool’s mark ends: ISO 3508, from memory. The tool is withdrawn and the nut opened together; the whole time counts for both.',
  fits: 'What would fit',
  fit: {
    slower: (rpm: string): string => `Slower: ${rpm} rpm or less`,
    own: (rpm: string): string => `the fastest of its speeds that is: ${rpm} rpm`,
    ownNone: 'none of its speeds is so slow',
    groove: (mm: string, rpm: string): string => `A groove of ${mm} mm or more, for ${rpm} rpm`,
    grooveNamed: (names: string): string => `such a groove: ${names}`,
    grooveNone: (name: string, mm: string): string =>
      `no standard groove of this pitch is so wide; the widest, ${name}, has ${mm} mm`,
    grooveNoStandard: 'no standard groove for this thread',
    gap: (mm: string, rpm: string): string => `A gap of ${mm} mm or more, for ${rpm} rpm`,
    straight: (mm: string, rpm: string): string => `Straight in: ${mm} mm of room, ${rpm} rpm`,
    straightNote: 'both flanks cut: a wider chip, lighter passes',
    outwards: 'From the shoulder outwards, spindle reversed',
    byHand: 'By hand crank',
    byHandNote: 'Isolate and lock off first. Take the crank out before power comes back.',
  },
  otherStops: 'Other stops',
  coast: 'Spindle cut alone: it coasts',
  coastNote: (turns: string): string =>
    `${turns}: with the nut closed and the drive alive the carriage follows every turn`,
  followed: 'With the whole time before it',
  emergency: 'Emergency stop, drive following',
  emergencyNote: (mm: string): string =>
    `1.05 s to the button and drop-out (from memory of ISO 13855), then coasting; the tip touches after ${mm} mm`,
  emergencyOver:
    'An emergency stop does not save it: the tool meets what is in the way first. Only the lever does.',
  emergencyHelp:
    'Where the stop cuts the drive too, the carriage stands sooner, and the tool rubs in a turning groove. A stop by controller or app is none.',
  time: 'Whole time',
  dummy: 'Ten dummy runs in air',
  cautions: 'Before you cut to a shoulder',
  caution: [
    'Rehearse in air: nut closed, tool withdrawn, mark before the shoulder, hand on the lever.',
    'Look at the other end too: jaws, steady and centre, carriage and top slide.',
    'Should it go wrong: withdraw the tool and open the nut. The stop button is for what comes after.',
  ],
  back: 'Back to the cut',
  drawn: 'To scale, in millimetres',
} as const;

export const dummyText = {
  title: 'Dummy runs in air',
  how: [
    'Tool withdrawn, nothing to meet. A mark on the bed; an indicator or a rule beside it.',
    'At the mark open the nut as if at a shoulder. Read how far past the mark the carriage stood.',
    'Ten times. The longest counts.',
  ],
  begin: (lead: string, rpm: string): string => `Begin: lead ${lead}, ${rpm} rpm`,
  beginAgain: 'Begin anew',
  needs: 'A thread and a speed set are needed first.',
  chooseThread: 'Choose a thread',
  setSpeed: 'Set the speed',
  ranAt: (lead: string, rpm: string): string => `Run at lead ${lead} and ${rpm} rpm.`,
  otherNow: 'The job has another lead or speed now. These runs count at theirs.',
  rpm: 'Speed of the runs',
  run: (n: number): string => `Overrun ${n}`,
  enter: '–',
  longest: 'Longest overrun',
  time: 'Whole time by them',
  timeNote: '60 × overrun ÷ (lead × rpm), rounded up to 0.01 s',
  now: 'Entered for this machine',
  notKnown: 'Not known',
  left: (n: number): string => `${n} of ten still missing.`,
  shorter: 'Fewer than ten runs never replace it by a shorter time.',
  set: (s: string): string => `Set ${s} s as the whole time`,
  same: 'That is what is entered for this machine.',
  outOfRange: 'No whole time from 0.05 to 10 s: look at the overruns and the speed again.',
  video: 'The lever’s throw timed on a video is a part of this time. It never replaces it.',
  clear: 'Forget these runs',
  back: 'Back to the stop',
} as const;
export const dummyLabel = dummyText.run;
