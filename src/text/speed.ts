import type { Ceiling, LimitReading, Standing } from '../core/figures';
import type { Ratio } from '../core/quantity';
import { plain, whole } from './numbers';
import { standingWord } from './standing';
import { words } from './words';
import { limitText } from './why-limits';

export const speedText = {
  why: 'Why',
  driveLabel: 'The drive keeps up to',
  slower: 'Slower by 10 rpm',
  faster: 'Faster by 10 rpm',
  enterTime: 'Enter whole stopping time',
  byRecord: 'Not known; answered by your ramp test',
  at: (rpm: string): string => `at ${rpm} rpm`,
  tooMuch: (names: string): string => `Over: ${names}.`,
  notKnownList: (names: string): string => `Not known: ${names}.`,
  close: (names: string): string => `Close to: ${names}.`,
  driveAlone: (word: string): string => `The drive alone: ${word}.`,
  fastestDrive: 'Fastest of its speeds that the drive keeps up with',
  fastestDriveNone: 'The drive keeps up with none of its speeds.',
  highest: 'Highest for this job',
  set: 'Speed set, not measured',
  setKey: 'Set speed',
  noneSet: 'No speed set',
  notKnown: 'Not known',
  anySpeed: 'Any speed',
  has: 'This spindle has',
  fastest: 'Fastest of its speeds',
  fastestNone: 'None of its speeds is within every limit.',
  limits: 'Limits',
  room: 'Usable stopping room',
  roomKey: 'Enter stopping room',
  roomLapsed: (mm: string): string => `${mm} was worked out for other figures: work it out again`,
  workOut: 'Work it out',
  notAThreadingSpeed: 'Not a threading speed: stopping room not known.',
  sameSpeed: 'Keep the same speed from the first pass to the last.',
  noThread: 'Choose a thread first.',
} as const;

export const bindsText = (l: LimitReading): string => limitText[l.id].binds;

/** The highest speed at which a limit stays within, or up to which a test record answers for it. */
const upTo = (l: LimitReading): bigint | null =>
  l.within ?? (l.answeredTo ? l.answeredTo.n / l.answeredTo.d : null);

/** "next: Motor speed at 677". Empty where the limit's speed isn't known. */
export const nextText = (l: LimitReading): string => {
  const rpm = upTo(l);
  return rpm === null ? '' : `next: ${limitText[l.id].name.toLowerCase()} at ${whole(rpm)}`;
};

/** "at most 677, for what is known": an upper bound, never an answer. Empty where nothing is known. */
export const atMostText = (c: Ceiling): string =>
  c.atMost === null ? '' : `Not above ${whole(c.atMost)} rpm by what is known.`;

export const fastestText = (rpm: Ratio): string => `${speedText.fastest}: ${plain(rpm)} rpm`;

/** What the scale says to someone who can't see it: the limit drawn on it, the speed set, and how that stands. */
export const gaugeText = (limit: bigint | null, set: Ratio | null, standing: Standing | null): string => {
  const top = limit === null ? 'Limit on the scale: not known.' : `Limit on the scale: ${whole(limit)} rpm.`;
  if (set === null || standing === null) return `${top} No speed set.`;
  return `${top} Speed set: ${plain(set)} rpm, ${standingWord[standing].toLowerCase()}.`;
};

/** What usable stopping room is, and what must come off the groove or gap first. */
export const roomHelp = {
  what: 'How far the tool may travel past the full thread before it meets anything.',
  measure: 'Measure the groove or the gap to the shoulder. Then take off:',
  get takeOff(): readonly string[] {
    return [
      'half the width of the tool at the work’s surface: the thread is full only up to its middle',
      `how far the ${words().topSlide} moves the tool along: depth × tangent of its angle, 0.52 mm for 0.92 mm deep at 29.5°`,
      'a margin: 0.5 mm or more',
    ];
  },
  rest: 'What is left is the usable room. If nothing is left, cut a wider groove, cut away from the shoulder, or turn by hand.',
  also: 'Look at the other end too: chuck jaws, steady and centre.',
  openEnd: 'A thread that runs out into the open has the room to the next thing in the way.',
  reverse: 'A screw-on chuck can unscrew in reverse: do not cut away from the shoulder with one.',
} as const;
