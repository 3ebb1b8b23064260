import type { KeepClosed, NutRule } from '../core/cut';
import type { Loss, PickStep } from '../core/cut/picking-up';
import { capital, words } from './words';

const KEPT: Readonly<Record<KeepClosed, string>> = {
  'no-half-nut': 'This machine’s nut stays closed.',
  irrational: 'The lead has π in it: it never comes back in step with the leadscrew.',
  'inexact-ratio': 'The drive gives this lead nearly, not exactly: each closing would add its error.',
  'no-dial': 'This lead is not in step everywhere, and there is no thread dial to tell where.',
  'gear-misses':
    'The dial’s gear comes round out of step with this lead: each mark means another groove every turn.',
  'no-line': 'No line of this dial stands where the nut may be closed.',
};

/** Words of the page on the half-nut. */
export const nutPage = {
  title: 'Half-nut and dial',
  noThread: 'Choose a thread first.',
  enter: (label: string): string => `Enter: ${label}`,
  kept: (reason: KeepClosed): string => KEPT[reason],
  anywhere: (a: string): string =>
    a === '1'
      ? 'The lead is the half-nut pitch itself: wherever the nut goes fully home, the tool is in its groove.'
      : `The lead goes ${a} times into the half-nut pitch: wherever the nut goes fully home, the tool is in its groove.`,
  inStep: (a: string, b: string, way: string): string =>
    `In step again after ${b} ${b === '1' ? 'pitch' : 'pitches'} of the leadscrew (${way}), that is ${a} ${
      a === '1' ? 'rev' : 'revs'
    } of the spindle.`,
  /** Half-nut pitch ÷ lead in lowest terms. */
  ab: ({ a, b }: NutRule): string => (a === null || b === null ? 'never in step' : `a ÷ b = ${a}/${b}`),
  places: 'In a turn of the dial',
  placesOf: (places: string): string => (places === '1' ? '1 place' : `${places} places`),
  marked: (n: number, of: string): string => (`${n}` === of ? 'all of them marked' : `${n} of them marked`),
  still: 'This picture stands still: the phone sees nothing of the lathe. Watch the dial on the lathe.',
  dial: (lines: number, good: readonly number[]): string =>
    `A dial with ${lines} lines; the nut may be closed on ${good.join(', ')}`,
  onLine: 'Only on a line named here, never between.',
  firstUsed: 'First closed on line',
  firstNow: (line: number): string => `Counted from line ${line}, where the nut was first closed.`,
  firstAsk: (of: number): string =>
    `Shown as if the nut was first closed on line ${of}. Touch the line it was first closed on; touch it again to forget it.`,
  firstAll: 'Only on a line, never between two. Whichever line was used first, every line is good.',
  firstOne: 'The line on which the nut was first closed, and no other.',
  moved: 'Groove moved after 200 passes',
  movedNote: (ppm: string, revs: string): string =>
    `The ratio is ${ppm} ppm off: far below what the thread needs.${
      revs && ` Not for more than ${revs} revs with the spindle left turning.`
    }`,
  adds: (passes: string): string => `Groove moved by pass ${passes}, were it opened`,
  addsNote: (ppm: string, each: string, revs: string, planned: boolean): string =>
    `${ppm} ppm, ${each} at each closing of about ${revs} revs a pass. ${
      planned ? 'Passes as planned, revs' : 'Passes and revs'
    } estimated.`,
  between: 'Between passes',
  closed: (behind: string, degrees: string): readonly string[] => [
    'At the end of the thread: withdraw the tool clear of the work. Only then reverse.',
    'Stop. Run the spindle back with the nut closed.',
    `Go ${behind} behind the start of the thread, so that the backlash is taken up before the cut.`,
    `Stop, set the next pass, and go forwards.${degrees}`,
  ],
  opened: (behind: string, degrees: string): readonly string[] => [
    'At the end of the thread: withdraw the tool clear, then open the nut.',
    `Wind the carriage back by hand, ${behind} behind the start of the thread.`,
    'Set the next pass. The spindle goes on forwards, the drive stays on.',
    `Close where the rule says, fully home: a nut half closed rides on the crests.${degrees}`,
  ],
  behind: (mm: string, backlash: boolean): string => (backlash ? mm : `${mm} and the backlash`),
  degrees: (deg: string): string => ` The spindle turns ${deg} before the carriage moves.`,
  backlashUnknown: 'The backlash is not known.',
  screwOn:
    'A screw-on chuck can unscrew when the spindle is started or stopped hard in reverse. Start and stop it gently, or turn it back by hand with the spindle isolated.',
  mountUnknown: 'How the chuck is held is not known. One that is screwed on can unscrew in reverse.',
  toolFirst: 'Backlash: reversed with the tool in the groove, it would be pushed into a flank.',
  astray: 'Opened all the same?',
  astrayDial:
    'Don’t move the carriage. Stop before the dial has gone round once; turn the spindle back until the same mark is at its place in that same turn; close there. If the dial has gone round, or you aren’t sure, pick up the thread.',
  astrayNone: 'Don’t close it again. Stop, withdraw, and pick up the thread.',
  counting: 'Without the dial, by counting',
  countingHow:
    'Only where the controller counts the spindle and says when: the carriage at the same fixed stop, the count begun at the first closing.',
  wait: 'In step again every',
  waitNote: (counts: string, seconds: string): string => [counts, seconds].filter(Boolean).join(' · '),
  countsOf: (counts: string): string => `${counts} counts`,
  fraction: (counts: string): string =>
    `${counts} counts, a fraction: kept as one, each closing rounded once`,
  seconds: (s: string, rpm: string): string => `up to ${s} at ${rpm} rpm`,
  noRpm: 'no speed set',
  tooLong: (s: string, rpm: string, most: string): string =>
    `${s} between closings at ${rpm} rpm is more than ${most} (own choice): too long to stand by. Keep the nut closed.`,
  starts: (n: number): string => `From start to start: ${n} starts`,
  pickUp: 'Picking up the thread',
  back: 'Back to Cut',
  backNut: 'Back to Half-nut',
} as const;

/** Words of the page on several starts. */
export const startsPage = {
  title: 'From start to start',
  one: 'This thread has one start.',
  feed: 'A feed has no starts.',
  start: (n: number, of: number): string => `START ${n} of ${of}`,
  round: (n: number): string => `Round ${n}`,
  order: (of: number): string =>
    `Every start to the same depth, then all of them deeper. ${of === 2 ? 'Both' : `All ${of}`} belong to one round.`,
  deeper: 'New round: set the next pass, and take the first start again.',
  same: 'Same depth as the start before.',
  next: 'Next start',
  toPass: 'To the pass: TAKEN counts the start',
  backOne: 'Back one',
  afresh: 'Begin again at start 1',
  keptNote: 'Kept on this phone for this thread on this machine. It follows your key, not the lathe.',
  way: 'How',
  ways: {
    counts: 'Counts',
    get top(): string {
      return capital(words().topSlide);
    },
    nut: 'Half-nut',
    slots: 'Faceplate',
  },
  oneWay:
    'One way for the whole job, always from the same first start: two ways don’t number the starts alike.',
  countsHow: (c: string): string =>
    `By the controller’s own offset, tool clear of the work: spindle against screw by so many of its ${c} counts. Each counted from start 1, not from the start before: a rounded step added up would drift.`,
  exact: (x: string): string => `exactly ${x}`,
  off: (um: string): string => `${um} off`,
  on: 'exact',
  topHow: (angle: string): string =>
    `${capital(words().topSlide)} parallel to the bed${angle}. Each setting counted from start 1.`,
  topAngle: (deg: string): string => `: its scale at ${deg}`,
  topScaleUnknown: 'From which axis its scale counts is not known.',
  topBacklash:
    'Come up to each setting turning the same way, towards the cut. Going back to start 1: well past it, and up again.',
  topInfeed: 'Depth is then set by the cross-slide alone.',
  divisions: (n: string): string => (n === '1' ? '1 division' : `${n} divisions`),
  turns: (turns: string, past: string): string => `${turns} ${turns === '1' ? 'turn' : 'turns'} and ${past}`,
  nutHow:
    'Spindle and screw at rest, tool clear: open, move the carriage away from the cut by so many half-nut pitches, each counted from start 1, close.',
  nutAtRest: 'Only so, at rest: while the spindle turns the nut stays closed.',
  nutOrLine: (lines: string): string => `or in motion on line ${lines}`,
  nutNeverWhy: (starts: readonly string[], b: string): string =>
    `Not by the half-nut: it can close at ${b} ${b === '1' ? 'place' : 'places'} in a lead, evenly apart, and ${starts
      .slice(0, 6)
      .join(', ')
      .toLowerCase()}${starts.length > 6 ? ' and more' : ''} ${starts.length === 1 ? 'lies' : 'lie'} between them. Use counts or the ${words().topSlide}.`,
  startNo: (n: number): string => `Start ${n}`,
  startNow: (n: number): string => `Start ${n}, now`,
  pitches: (n: string): string => (n === '1' ? '1 pitch' : `${n} pitches`),
  noNut: 'Only where the half-nut may be opened. Here it stays closed.',
  slotsHow: (z: number, deg: string): string =>
    `Work between centres, its driver in a slot of the faceplate: ${z} slots, ${deg} apart. Move the driver to the next slot with the spindle isolated; no drive setting changes.`,
  slotsNot: 'Only for work between centres, or on the faceplate itself. This job is held otherwise.',
  slotsOff: (um: string): string =>
    `A slot 0.1 mm out of place at a radius of 60 mm moves its groove by ${um}.`,
  noCounts: 'Counts per spindle rev are not known.',
  first: 'as it stands',
} as const;

interface StepText {
  readonly title: string;
  readonly text: string;
  readonly caution?: string;
}
const STEPS = (): Readonly<Record<PickStep, StepText>> => ({
  isolate: {
    title: 'Make it still',
    text: 'Spindle stopped, tool withdrawn clear, nut open. Look whether the work has moved in the chuck and the tool is whole.',
    caution: 'Isolate the spindle before you turn it by hand. Chuck key out.',
  },
  tool: {
    title: 'Tool square and on centre',
    text: 'Set it with a template against the finished diameter, at centre height.',
    caution: 'Tool withdrawn: its point cuts at rest too.',
  },
  drive: {
    title: 'Drive on, nut closed',
    text: 'Same ratio, direction and microsteps as before. Close the nut fully home; the drive must follow the spindle by hand.',
    caution: 'The spindle stays isolated, the drive is live: the carriage moves when the spindle is turned.',
  },
  forward: {
    title: 'Turn forwards by hand',
    text: 'At least one rev in the direction of the cut, so that the backlash of belt, screw and nut lies on the cutting side. Don’t let it rock back.',
    caution: 'Spindle isolated, tool clear. Rocked back even a little, turn forwards one rev again.',
  },
  groove: {
    title: 'Bring the tool into the groove',
    text: `With ${words().topSlide} and cross-slide, under a magnifier, until it touches both flanks. Or measure how far it stands off along the work, and give the controller that offset in counts.`,
    caution: 'Spindle isolated. Fingers off the edge: the thread has burrs.',
  },
  again: {
    title: 'Look at another place',
    text: 'Withdraw, turn forwards several revs by hand, bring it in again. It must touch both flanks there too: if not, the ratio or the lead is another one.',
    caution: 'Withdraw before turning.',
  },
  marker: {
    title: 'First pass without infeed',
    text: 'Colour the flanks with a marker. One pass at the depth at which it just touches: the colour must go from both flanks alike.',
    caution: 'Hands clear before the spindle’s power is put on again.',
  },
  zero: {
    title: 'Set the depth anew',
    text: 'What the dials showed no longer holds: set zero where the tool touches now, and measure before you go deeper. The line on which the nut is closed now is the new first line.',
  },
});

const LOST: Readonly<Record<Loss, string>> = {
  power: 'power gone, of controller or drive',
  ratio: 'ratio, direction, microsteps or wheels changed',
  slip: 'belt slipped, motor stalled, enable off',
  counts: 'counts missed or made up by noise',
  work: 'work moved in the chuck, or taken out',
  tool: 'tool changed, reground or moved',
};

/** Words of the page on picking up a thread. */
export const pickPage = {
  title: 'Picking up the thread',
  when: 'Needed after any of these:',
  lost: (loss: Loss): string => LOST[loss],
  begin: 'Begin',
  step: (n: number, of: number): string => `Step ${n} of ${of}`,
  at: (step: PickStep): StepText => STEPS()[step],
  next: 'Next',
  backOne: 'Back one',
  end: 'To the half-nut rule',
  guide: 'A guide, not a check: nothing is recorded.',
  offset: 'Offset along the work',
  enterOffset: 'Enter the offset',
  changeOffset: (now: string): string => `Change: ${now}`,
  way: 'The groove lies',
  ahead: 'Ahead, the way of the cut',
  behind: 'Behind',
  counts: 'Offset of the screw against the spindle',
  countsUnit: 'counts',
  countsNote: (exact: string, off: string, deg: string): string =>
    [exact && `exactly ${exact}`, `${off} left`, `${deg} of the spindle`].filter(Boolean).join(' · '),
  countsWay: {
    ahead: 'The screw has to be that much ahead of where it is.',
    behind:
      'The screw has to be that much behind. Then turn forwards one rev by hand again: the backlash has changed sides.',
  },
  more: (turns: string): string => `That is more than one lead: ${turns} leads. The same groove lies nearer.`,
  noCounts: 'Counts per spindle rev are not known: by eye alone.',
  noLead: 'Choose a thread to have the offset in counts.',
  forget: (line: number): string => `Forget line ${line} as the first`,
} as const;

export const pickLabels = { 'pick.offset': 'Offset along the work' } as const;
