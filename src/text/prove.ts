import type { CommissioningId } from '../core/context';
import type { Caution } from '../core/prove/spec';
import { capital, words, type Word } from './words';

/** Puts in the trade words of the setting: `{screen}`, `{Screen}`. */
export const trade = (text: string): string =>
  text.replace(/\{(\w+)\}/g, (_, name: string) => {
    const word = words()[(name.charAt(0).toLowerCase() + name.slice(1)) as Word];
    return /^[A-Z]/.test(name) ? capital(word) : word;
  });

/** What a test is about, and what a person does, step by step. */
interface TestWords {
  readonly title: string;
  readonly why: string;
  readonly steps: () => readonly string[];
}

export const cautionText: Readonly<Record<Caution, string>> = {
  isolate: 'Isolate the whole machine first: main switch off and locked.',
  'isolate-spindle':
    'Isolate the spindle’s motor, so that it can’t start, before you turn the spindle by hand.',
  'nothing-wedged': 'Nothing is ever wedged into spindle or chuck to hold it.',
  'belt-guard': 'Put the belt’s guard back before the motor runs.',
  'hands-clear': 'Hands, sleeves and rags clear of screw, chuck and carriage. Chuck key out.',
  'drive-live': 'The drive is live: the screw turns with the spindle.',
  'low-speed': 'Begin at the lowest speed.',
  'tool-clear': 'No work in the chuck, tool well clear.',
  'nut-open': 'Half-nut open.',
  'hand-on-stop': 'One hand at the stop. Know where the main switch is.',
  'no-reverse': 'A screwed-on chuck can unscrew when reversed or stopped hard: don’t, unless it is locked.',
};

export const testText: Readonly<Record<CommissioningId, TestWords>> = {
  'look-over': {
    title: 'Mechanical look-over',
    why: 'What slips or is loose makes every later reading worthless.',
    steps: () => [
      `With the power off: press the belts, try each ${words().grubScrew}, count the teeth of the pulleys against the machine’s entries.`,
      'Open and close the half-nut; push and pull the leadscrew along its axis.',
    ],
  },
  direction: {
    title: 'Direction and sign',
    why: 'Swapped channels or a motor the wrong way round cut a left-hand thread.',
    steps: () => [
      'Choose a right-hand thread. Drive on, half-nut closed.',
      'Turn the spindle forward by hand, slowly, and watch count and carriage.',
    ],
  },
  counts: {
    title: 'Counts over turns',
    why: 'Shows lines, edges and pulleys of the encoder by themselves.',
    steps: () => [
      'Mark the chuck against a fixed point. Turn forward to the mark and set the count to 0, or note it.',
      'Turn forward so many whole turns, to the mark from the same side. Enter turns and counts.',
    ],
  },
  'there-and-back': {
    title: 'There and back',
    why: 'A count missed or added now and then is left over at the end.',
    steps: () => [
      'Set the count to 0 at the mark, isolated.',
      'Run fast, slow and, where it may, in reverse: 100 turns or more in all, as many back as forward; or by hand.',
      'Isolate, bring the mark back by hand, whole turns undone, and enter what the count shows.',
    ],
  },
  drift: {
    title: 'Drift at rest',
    why: 'The motor’s electrical noise must not count while the spindle stands.',
    steps: () => [
      'Isolated: slip off the drive belt or choose neutral, so that the motor turns and the spindle doesn’t. Guard back on.',
      'Drive enabled, count at 0. Run the motor ten minutes each at low, middle and full frequency. Switch the contactors on and off. Enter what the count shows after each.',
      'This is noise without load: watch again while cutting.',
    ],
  },
  'screw-turns': {
    title: 'Screw turns per spindle turns',
    why: 'Shows the ratio by itself, without the screw’s own pitch.',
    steps: () => [
      'Mark the leadscrew. Turn the spindle forward a little until the screw follows, then note both marks.',
      'Turn forward whole turns to the mark. Enter the spindle’s turns and the screw’s, with parts of a turn.',
    ],
  },
  'screw-travel': {
    title: 'Carriage per screw turn',
    why: 'Shows the leadscrew by itself: its pitch, millimetres or inches, its starts.',
    steps: () => [
      'Half-nut closed. Turn the screw a little in one direction until the carriage follows; then zero.',
      'Turn on in the same direction, whole turns by the mark. Enter turns and travel.',
    ],
  },
  travel: {
    title: 'Commanded and measured travel',
    why: 'The whole ratio on the carriage, over 100 mm or more.',
    steps: () => [
      'Half-nut closed, machine warm. Run the carriage a little in the cutting direction, then zero the reading.',
      'Run on in the same direction. Enter the spindle’s turns by the controller’s count, and the travel. Average five.',
    ],
  },
  backlash: {
    title: 'Backlash at three places',
    why: 'How much the carriage stands still when the screw reverses.',
    steps: () => [
      'Indicator against the carriage, near the headstock. Move up to it by the screw, zero, then turn the screw back until the carriage just follows, as read on the screw or the controller.',
      'Again at the middle and near the tailstock. Enter the lost travel.',
    ],
  },
  repeat: {
    title: 'Go and return',
    why: 'Steps lost at thread speed show as a place not come back to.',
    steps: () => [
      'Indicator against the carriage, approached in the cutting direction; zero.',
      'At thread speed go and return 20 times. Enter the largest spread of the readings.',
    ],
  },
  ramp: {
    title: 'Fastest start, stop, reverse',
    why: 'The drive must follow whatever the spindle does, at the highest speed you use.',
    steps: () => [
      'At this lead and the highest speed, the fastest start and stop there are; reverse where it may.',
      'Come back to the indicator in the cutting direction. Enter speed and spread.',
    ],
  },
  scratch: {
    title: 'Scratch on scrap',
    why: 'The whole chain at once. A pitch gauge proves the right thread, never the last ppm.',
    steps: () => [
      'Scrap held safely; a scratch just deep enough to see, over as many pitches as there is room for.',
      'Measure over a whole number of pitches, crest to crest.',
    ],
  },
  're-entry': {
    title: 'Picking up the scratch',
    why: 'Proves the rule for closing the nut for this thread.',
    steps: () => ['On the scratch: open, return, close by the rule. Ten times. One line, or more?'],
  },
  'stopping-time': {
    title: 'Whole stopping time',
    why: 'The stopping room is reckoned from it.',
    steps: () => [
      'Half-nut closed, tool in air. Stop as you would at a shoulder when the tool passes a mark; measure how far past it went.',
      'Ten runs at one lead and speed. The longest counts.',
    ],
  },
  coast: {
    title: 'Coasting',
    why: 'A live drive follows a spindle that coasts: lead × turns.',
    steps: () => [
      'From the highest threading speed switch the spindle off as the stop does, and count its turns until it stands, by mark or counter. Three times.',
    ],
  },
};

/** What the figures and choices are called; each is short, since it stands on a key. */
export const readingName: Readonly<Record<string, string>> = {
  turns: 'Turns',
  counts: 'Counts',
  low: 'Count after low frequency',
  middle: 'Count after middle frequency',
  full: 'Count after full frequency',
  switched: 'Count after switching',
  spindle: 'Spindle turns',
  screw: 'Screw turns',
  travel: 'Measured',
  step: 'Scale’s step',
  accuracy: 'Accuracy, ±',
  repeats: 'Tries differ by, ±',
  head: 'Near the headstock',
  middlePlace: 'Middle',
  tail: 'Near the tailstock',
  cycles: 'Times',
  rpm: 'Spindle speed',
  spread: 'Spread',
  pitches: 'Turns of thread',
  times: 'Times',
};

/** A reading's name; of runs and coasts with their number. */
export const readingLabel = (test: string, id: string): string => {
  const [what, n] = id.split('-');
  if (what === 'run' && n) return `Run ${n}`;
  if (what === 'coast' && n) return `Coast ${n}`;
  return readingName[test === 'backlash' && id === 'middle' ? 'middlePlace' : id] ?? id;
};

const CHOICES: Readonly<Record<string, readonly [name: string, options: Readonly<Record<string, string>>]>> =
  {
    tension: ['Belts', { ok: 'Tight, sound', 'not-ok': 'Not OK' }],
    screws: ['Screws of pulleys and couplings', { ok: 'Tight', 'not-ok': 'Not OK' }],
    teeth: ['Teeth counted as entered', { ok: 'Yes', 'not-ok': 'No' }],
    'nut-free': ['Half-nut opens freely, closes home', { ok: 'Yes', 'not-ok': 'No' }],
    'end-play': ['Leadscrew has no end play to feel', { ok: 'Yes', 'not-ok': 'No' }],
    'counts-go': ['The count goes', { up: 'Up', down: 'Down', nowhere: 'Nowhere' }],
    'carriage-goes': [
      'The carriage goes',
      { 'to-headstock': 'To the headstock', 'to-tailstock': 'To the tailstock', nowhere: 'Nowhere' },
    ],
    mark: ['Mark', { line: 'Line, 0.6° in all', indicator: 'By indicator, 0.1°' }],
    inverter: ['{Inverter}', { fitted: 'Fitted', none: 'None' }],
    dither: ['The last digit', { steady: 'Steady', 'one-count': 'One to and fro', more: 'More' }],
    instrument: [
      'Read with',
      {
        indicator: 'Dial indicator',
        readout: 'Readout',
        caliper: 'Caliper',
        rule: 'Rule',
        'pitch-gauge': 'Pitch gauge',
      },
    ],
    goal: ['Good enough', { 80: '80 ppm', 130: '130 ppm', 200: '200 ppm', 500: '500 ppm', 1000: '1000 ppm' }],
    fits: ['The gauge', { yes: 'Fits', no: 'Doesn’t' }],
    line: ['The scratch is', { one: 'One line', more: 'More lines' }],
    start: ['Fastest start', { kept: 'Followed', lost: 'Lost it' }],
    stop: ['Fastest stop', { kept: 'Followed', lost: 'Lost it' }],
    reverse: ['Fastest reverse', { kept: 'Followed', lost: 'Lost it', 'not-used': 'Not done' }],
  };

export const choiceLabel = (id: string): string => trade(CHOICES[id]?.[0] ?? id);
export const optionName = (choice: string, option: string): string => CHOICES[choice]?.[1][option] ?? option;

/** Why it stands as it does. */
export const codeText: Readonly<Record<string, string>> = {
  lacking: 'Not all entered yet.',
  'not-known': 'Something it needs isn’t known.',
  'seen-ok': 'All as it should be, by what you saw.',
  'seen-not-ok': 'Put right what isn’t, then look again.',
  'direction-right': 'Count and carriage go the right way.',
  'direction-wrong': 'The wrong way round.',
  'counts-agree': 'The counts agree, within what the mark resolves.',
  'counts-backwards': 'As many as expected, but downwards.',
  'counts-differ': 'The counts differ by more than the mark resolves.',
  'counts-left': 'Counts were lost or added.',
  'counts-return': 'Nothing left over but what the mark resolves.',
  'too-few-turns': 'Right so far; more turns would settle it.',
  'no-drift': 'No count gained or lost.',
  drifted: 'It counted while the spindle stood.',
  dithers: 'The count jumps by more than one.',
  'turns-agree': 'The ratio agrees, whatever the screw’s own pitch.',
  'turns-differ': 'The screw turns differ.',
  'length-agrees': 'Agrees within goal and uncertainty.',
  'screw-agrees': 'The ratio is exact by counts and screw turns; this is the leadscrew, and it agrees.',
  'length-differs': 'Further off than goal and uncertainty allow.',
  'too-coarse': 'These readings can’t tell: longer travel or a finer instrument.',
  'gauge-fits': 'The right thread. Its ppm can’t be told by gauge.',
  'gauge-differs': 'Not the right thread.',
  measured: 'Measured.',
  repeated: 'Comes back within two steps and the readings.',
  'not-repeated': 'It doesn’t come back to its place.',
  'too-few-times': 'Right so far; not often enough yet.',
  'too-coarse-for-jump': 'The instrument would not show one slip of a stepper, four full steps.',
  'ramp-kept': 'Followed, and came back. Holds for this lead and speed, and below.',
  'ramp-lost': 'The drive didn’t follow.',
  'lines-apart': 'The rule for closing the nut doesn’t hold.',
  'one-line': 'One line: the rule held.',
  'out-of-range': 'More than 10 s, or less than 0.05 s: not a stopping time.',
};

/** What it points to. */
const POINTS: Readonly<Record<string, string>> = {
  tension: 'Belts',
  screws: 'Screws of pulleys and couplings',
  teeth: 'Pulleys as entered',
  'nut-free': 'Half-nut',
  'end-play': 'Thrust bearing of the leadscrew',
  'swap-channels':
    'Encoder’s A and B swapped, or one pair of a differential encoder: swap them, or its setting',
  'turn-motor': 'Direction of the motor: turn its setting, or one winding with the power off',
  'no-counts': 'Encoder’s supply, plug or coupling',
  'not-enabled': 'Drive not enabled, ratio not set, or nut open',
  'lines-or-edges': 'Lines taken for edges: a factor of 2 or 4; 1000 for 1024',
  'encoder-pulleys': 'Pulleys of the encoder',
  'encoder-slips': 'Encoder’s coupling or belt slips',
  'missed-edges': 'Counts missed: there and back will show it',
  'miscounted-turns': 'Turns miscounted: do it again',
  noise: 'Electrical noise: each {screen}, bonding, cable runs',
  'too-fast-for-counter': 'Faster than counter or encoder bears',
  'phase-error': 'Edges too close together: encoder’s phase error',
  contactors: 'Contactors’ coils without suppression',
  screens: 'Each cable’s {screen} and its bonding',
  'inverter-noise': 'Cable and filter of the {inverter}',
  'encoder-supply': 'Encoder’s supply',
  'ratio-set': 'Ratio in the controller',
  microsteps: 'Microsteps, or pulses per rev of a servo',
  'motor-pulleys': 'Pulleys of motor and screw',
  'lead-for-pitch': 'Pitch entered for lead',
  'lost-steps': 'Lost steps',
  'screw-mm-inch': 'A millimetre screw taken for an inch one, or the other way',
  'screw-starts': 'Starts of the leadscrew',
  'screw-pitch': 'Pitch of the leadscrew as entered',
  'screw-itself': 'The leadscrew’s own error, or its temperature',
  'backlash-in-reading': 'Not taken up in one direction before zero',
  finder: 'A wrong entry: the fault finder compares them all',
  'wrong-thread': 'Another thread set than chosen here',
  'more-than-entered': 'More than was entered: what was planned with the old figure was too close',
  'uneven-wear': 'Differs from place to place: screw or nut worn',
  'pulse-timing': 'Step pulses too short or too close',
  'belt-slips': 'Belt or screw of a pulley slips',
  'nut-not-home': 'Half-nut not fully home',
  torque: 'More torque asked than there is',
  'ramp-too-fast': 'Spindle starts or stops faster than the drive bears: a gentler ramp',
  'dial-rule': 'Dial’s teeth or lines as entered',
  'dial-mesh': 'Dial not in mesh',
  'ratio-not-exact': 'Ratio not held exactly: keep the nut closed',
};

export const pointText = (id: string): string => trade(POINTS[id] ?? id);

/** Pages under a machine that prove it. */
export const proveKeys = {
  prove: 'Test records',
  stops: 'Stop tests',
  faults: 'Fault finder',
  wiring: 'Wiring record',
  noise: 'Electrical noise',
} as const;

export const proveText = {
  title: 'Test records',
  intro:
    'In this order: each leans on those before it. The app sees nothing of the lathe: it keeps what you did and read.',
  unreadable: (n: number): string =>
    `${n === 1 ? 'One record' : `${n} records`} can’t be read by this version: kept, and counted as not done.`,
  notDone: 'Not done',
  recorded: (how: string, day: string): string => `${how}, you recorded ${day}`,
  lapsed: (why: string): string => `Lapsed: ${why}`,
  back: 'Back to Machine',
  list: 'Back to the list',
  none: 'Not one of this machine’s tests.',
  decides: 'What it decides',
  expected: 'Expected',
  difference: 'Difference',
  onCarriage: 'On the carriage',
  spread: 'Between places',
  allowed: 'Allowed, ±',
  uncertainty: 'Uncertainty of the reading, ± (k = 2)',
  off: 'Off by',
  inside: (ppm: string): string => `less than ${ppm} ppm, which is all these readings can tell`,
  seen: (ppm: string, u: string): string => `${ppm} ± ${u} ppm`,
  settles: 'Would settle it',
  forPpm: (ppm: string): string => `For ${ppm} ppm`,
  turnsMore: (turns: string): string => `${turns} turns`,
  travelMore: (travel: string): string => `a travel of ${travel} or more`,
  word: { passed: 'Passes', failed: 'Fails', undecided: 'Undecided' },
  was: { passed: 'Passed', failed: 'Failed', undecided: 'Undecided' },
  measured: 'Measured',
  points: 'Look here first',
  needs: 'To be entered or chosen first',
  usual: 'as usual',
  notEntered: 'Not entered',
  enter: 'Enter',
  atLead: (lead: string): string => `At a lead of ${lead}`,
  note: 'A note, if you like',
  record: 'Record it',
  recordSet: (what: string): string => `Record it, and set ${what} on the machine`,
  earlier: 'Recorded before',
  clear: 'Clear what was entered',
  finder: 'Fault finder',
  screwFirst:
    'Counts and screw turns both recorded as passed prove the ratio exactly: no ppm test is needed for it.',
  setName: { wholeStopTime: 'whole stopping time', coast: 'coasting', backlash: 'backlash' },
  pictures: {
    slack: 'A finger presses the belt between its pulleys; grub screws in both hubs',
    ways: 'The spindle turned forward; the carriage moves towards the headstock',
    mark: 'A mark on the chuck against a fixed pointer',
    indicator: 'A dial indicator on the bed, its plunger against the carriage',
    belt: 'The motor turns, the belt is off, the spindle stands',
    scratch: 'A scratch of whole turns, measured from crest to crest',
    run: 'A mark, and how far past it the tool went',
  },
} as const;
