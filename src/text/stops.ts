import type { StopTestId } from '../core/context';
import type {
  ArrangementCode,
  NotHere,
  Seen,
  Severity,
  StopCaution,
  StopRefusal,
  StopSource,
} from '../core/prove/stops';
import type { Caution } from '../core/prove';
import { cautionText } from './prove';

const OWN_CAUTIONS: Readonly<Record<Exclude<StopCaution, Caution>, string>> = {
  'nut-closed': 'This one with the half-nut closed: room for the carriage both ways.',
  'nut-stays': 'The nut stays closed on this lathe: room for the carriage both ways.',
  'hand-on-main': 'One hand at the main switch: the stop is what is being tested.',
  'low-rpm': 'Lowest speed.',
  helper: 'A helper at the main switch, and a sign agreed on before.',
  'power-off-wires': 'Main switch off and locked before any terminal is touched. Power on only to try.',
  'extra-low': 'Extra-low-voltage circuits alone. Never {mains} voltage.',
  competent:
    'For a person competent in such circuits, under your local rules. Else leave it, and have it done.',
  'never-unplug': 'Never unplug an energised stepper motor: it can destroy its drive.',
  'lock-off': 'Capacitors stay charged: wait as long as the maker says, and prove dead before touching.',
  'drive-off': 'Spindle and drive stopped.',
};

export const stopCautionText: Readonly<Record<StopCaution, string>> = { ...cautionText, ...OWN_CAUTIONS };

/** What is done, what must be seen, what would be a fault, and what the test shows. */
interface StopTestWords {
  readonly title: string;
  readonly steps: readonly string[];
  readonly must: string;
  /** The same as a person saw it: "You recorded that …". */
  readonly saw: string;
  readonly fault: string;
  readonly why: string;
}

export const stopTestText: Readonly<Record<StopTestId, StopTestWords>> = {
  'stop-press-at-rest': {
    title: 'Pressed at rest',
    steps: [
      'Spindle at rest, drive on. Press the stop.',
      'Isolate the spindle’s motor. Turn the spindle by hand.',
    ],
    must: 'Not one step of the screw. Its motor is limp, or a spring brake holds it. Something shows that it is stopped.',
    saw: 'nothing followed and the motor had no power',
    fault: 'The screw follows, or the motor is stiff with current.',
    why: 'Shows that the power is gone and not the command alone. A motor held by its current is category 2, which no emergency stop may be.',
  },
  'stop-press-moving': {
    title: 'Pressed while moving',
    steps: [
      'Thread ratio, lowest speed, carriage moving past a mark. Press the stop at the mark.',
      'Measure how far the carriage went past it, and enter it.',
    ],
    must: 'Carriage and spindle both come to rest, within the stopping room of the job.',
    saw: 'carriage and spindle stopped',
    fault: 'Either goes on, or the carriage goes further than there is room.',
    why: 'If the spindle runs on while the drive is dead, the thread drags tool and carriage.',
  },
  'stop-stays-in': {
    title: 'Stays in',
    steps: ['Press the stop and take the hand away.'],
    must: 'It stays in, held by itself, until it is turned or pulled.',
    saw: 'the button stays in',
    fault: 'It springs back.',
    why: 'The command has to last until somebody ends it on purpose.',
  },
  'stop-release': {
    title: 'Released',
    steps: [
      'Release the stop and touch nothing else.',
      'With the spindle’s motor isolated turn the spindle by hand; then let it run slowly.',
    ],
    must: 'Still no motion of the screw.',
    saw: 'the release started nothing',
    fault: 'Anything starts on the release.',
    why: 'The release may only permit a start, never make one.',
  },
  'stop-separate-start': {
    title: 'Separate start',
    steps: ['After the release, start the drive by its own key.'],
    must: 'It takes that deliberate act, and the controller shows that it has lost its place in the thread.',
    saw: 'it took a separate start',
    fault: 'It carries on by itself in the middle of a thread.',
    why: 'A drive that carries on moves while you lean in, and cuts a second groove.',
  },
  'stop-start-held': {
    title: 'Start held in',
    steps: ['Stop pressed. Hold the start key in, then release the stop.'],
    must: 'No start, until the key is let go and pressed again.',
    saw: 'a start key held in started nothing',
    fault: 'It starts.',
    why: 'A start key that sticks must not turn the release into a start.',
  },
  'stop-power-returns': {
    title: 'Power returns',
    steps: [
      'Nut closed, spindle turning slowly. Cut the power at the main switch.',
      'Hands clear. The helper restores it.',
    ],
    must: 'No motion until you start it on purpose. On that start a stepper may snap by up to two full steps.',
    saw: 'returning power started nothing',
    fault: 'The screw jumps, or follows the spindle.',
    why: 'Power comes back when nobody expects it, with the nut as it was left.',
  },
  'stop-brown-out': {
    title: 'Short interruption',
    steps: ['While the screw moves, the helper interrupts the power for 0.1 to 1 second.'],
    must: 'It stops, and stays stopped.',
    saw: 'it stayed stopped after an interruption',
    fault: 'It starts again by itself.',
    why: 'A dip can drop one contactor and not the other.',
  },
  'stop-wire-open': {
    title: 'Each wire open',
    steps: [
      'Power off and locked: open one wire of the stop circuit. Power on and try to start. Power off, close it again.',
      'Each wire in turn.',
    ],
    must: 'It can’t be started with any one of them open.',
    saw: 'it can’t be started with a wire open',
    fault: 'It starts with a wire open.',
    why: 'Wires break. A stop has to be the state that is left when they do.',
  },
  'stop-wire-short': {
    title: 'Each wire shorted',
    steps: [
      'Power off and locked: join one wire to {earth}, then to its neighbour, where such a fault could happen. Power on and try.',
      'A stop circuit that carries {mains} voltage isn’t tested so: record that there is none to test.',
    ],
    must: 'It stops or a fuse goes; at the latest the next start is refused.',
    saw: 'a shorted wire was noticed',
    fault: 'Nothing shows it, and the button no longer stops.',
    why: 'A chafed cable bridges the button: pressed, it then does nothing.',
  },
  'stop-channel-bridged': {
    title: 'One channel bridged',
    steps: [
      'Power off and locked: bridge the contact of one channel. Power on, press and release the stop, try to start.',
    ],
    must: 'The start is refused. Take the bridge out.',
    saw: 'a bridged channel refused the start',
    fault: 'It starts.',
    why: 'Two channels are worth no more than one where nothing compares them.',
  },
  'stop-encoder-lost': {
    title: 'Encoder lost',
    steps: [
      'While the screw follows, open the encoder’s signals by a switch fitted for it: A, B, and each half of a pair.',
    ],
    must: 'The drive stops or gives an alarm within its limit; the spindle stops if it is built so.',
    saw: 'it stopped when the encoder was lost',
    fault: 'It runs on, or the screw swings to and fro.',
    why: 'A broken signal looks like a spindle that stands or trembles.',
  },
  'stop-drive-alarm': {
    title: 'Alarm of the drive',
    steps: ['While it moves, open the alarm contact of the drive by a switch fitted for it.'],
    must: 'The spindle stops, or an alarm is seen or heard.',
    saw: 'the drive’s alarm was noticed',
    fault: 'Nothing tells of it.',
    why: 'A drive that gave up leaves the tool standing in a turning groove.',
  },
  'stop-controller-frozen': {
    title: 'Controller frozen',
    steps: [
      'While the screw moves, freeze the controller’s program: hold its reset, or as its maker says.',
      'Press the stop.',
    ],
    must: 'It stops all the same.',
    saw: 'it stopped with the controller frozen',
    fault: 'It needs the program to stop.',
    why: 'Programs hang. A stop in software alone is a convenience.',
  },
  'stop-drive-off': {
    title: 'Spindle on, drive off',
    steps: ['Drive off, nut closed, no tool near the work. Start the spindle slowly.'],
    must: 'The spindle refuses to start, or a clear warning says that the carriage won’t follow.',
    saw: 'with the drive off the spindle refused or warned',
    fault: 'It runs, and nothing tells you.',
    why: 'With no gear train left the carriage stands still: a tool in a groove is broken.',
  },
  'stop-plug-reverse': {
    title: 'Reversed while running',
    steps: ['Lowest speed: put the spindle into reverse while it runs, as the lathe allows it.'],
    must: 'The screw follows, or the drive trips. Nothing runs away.',
    saw: 'it followed or tripped when reversed',
    fault: 'Steps are lost and nothing tells of it.',
    why: 'The hardest thing that a spindle can ask of the drive.',
  },
  'stop-carriage-limit': {
    title: 'Limit of the carriage',
    steps: ['At thread speed let the carriage run into its set limit or carriage stop, in air. Ten times.'],
    must: 'It stops in time each time.',
    saw: 'it stopped in time at its limit',
    fault: 'It overruns once.',
    why: 'It spares shoulder and chuck. It protects no person, and stands for no stop.',
  },
  'stop-feedback-open': {
    title: 'Feedback open',
    steps: [
      'Power off and locked: open the feedback of a contactor, as if it had welded. Power on and try to start.',
    ],
    must: 'The start is refused. Close it again.',
    saw: 'an open feedback refused the start',
    fault: 'It starts.',
    why: 'A welded contactor has to be noticed before the other one welds.',
  },
  'stop-lock-off': {
    title: 'Main switch locked off',
    steps: [
      'Main switch off, lock on it. Wait as long as the maker says, then prove that there is no voltage at the drive.',
    ],
    must: 'No voltage, and the time its capacitors take is known and written on the box.',
    saw: 'nothing was live, locked off',
    fault: 'Anything is live.',
    why: 'The stop is no isolation. Whoever works on the machine relies on this switch.',
  },
  'stop-reach': {
    title: 'Within reach',
    steps: ['Stand as you do when threading. Reach for the stop with either hand.'],
    must: 'Either hand reaches it within half a metre, not across the chuck. Red on yellow, nothing in front of it.',
    saw: 'either hand reaches it',
    fault: 'A hand doesn’t, or has to pass the chuck.',
    why: 'It is pressed by a startled hand.',
  },
};

/** What the stop as it is described can do or can't. */
export const arrangementText: Readonly<Record<ArrangementCode, string>> = {
  'not-known': 'Not entered',
  latches: 'Stays in, and opens its contacts by the hand’s own force.',
  'not-direct-opening': 'Its contacts are not direct opening: one that has welded may stay closed.',
  'springs-back': 'Springs back: the command ends with the finger. An emergency stop has to stay in.',
  'closed-contacts': 'Closed contacts: a broken wire stops as the button does.',
  'open-contacts': 'Open contacts: a broken wire leaves a button that does nothing.',
  'cuts-both': 'Takes the power of spindle and drive away.',
  'cuts-drive': 'Takes the power of the drive away.',
  'takes-torque': 'Takes the drive’s torque away. It isolates nothing: voltage stays at the motor.',
  'by-software':
    'Software alone: it stops only while the program runs. A convenience, not an emergency stop.',
  'no-stop': 'There is no stop for the drive.',
  'enabled-by-open': 'The enable is active when open: a broken wire, or the stop itself, leaves it enabled.',
  'enable-signal': 'Takes a signal away and leaves the power: a fault inside the drive can still move it.',
  'category-0': 'Stops by taking the power away at once: category 0.',
  'category-1':
    'Stops in gear, then takes the power away: category 1. The time must not hang on the program.',
  'held-by-current': 'The motor is held by its current: category 2, which no emergency stop may be.',
  'follows-coasting': 'A live drive follows a coasting spindle: the carriage goes on after the stop.',
  'cuts-spindle': 'Takes the spindle’s power away too.',
  'spindle-torque': 'Takes the spindle’s torque away too. It isolates nothing.',
  'spindle-signal': 'Asks the spindle’s drive to stop by a signal that its program has to obey.',
  'spindle-goes-on': 'Leaves the spindle turning: chuck and work go on, and drag the tool along.',
  coasts: 'The spindle coasts: the tool stands in a moving groove, and the thread may be spoilt.',
  brakes: 'The spindle is braked to rest.',
  'separate-start': 'The release only permits a start.',
  'power-cycle': 'Runs again by switching the power on: then power coming back is a start.',
  'release-restarts': 'Starts on the release. It may only permit a start.',
  'stays-off': 'Power that comes back starts nothing.',
  'starts-with-power': 'Power that comes back makes the drive live: it moves unexpectedly.',
  'not-watched': 'Nothing notices a welded contact: one fault can take the stop away unseen.',
  feedback: 'A contactor that has stuck refuses the next start.',
  channels: 'Two channels compared: one that fails refuses the next start.',
  'channel-missing': 'Two channels are compared, but the button opens one contact only.',
};

export const severityText: Readonly<Record<Exclude<Severity, 'unknown'>, string>> = {
  cannot: 'Why it is no emergency stop',
  weak: 'Weak points',
  can: 'What it does',
};

export const sourceText: Readonly<Record<StopSource, string>> = {
  'iso13850-4.1': 'ISO 13850:2015, 4.1',
  'iso13850-4.3': 'ISO 13850:2015, 4.3',
  'iec60204-7.5': 'IEC 60204-1, 7.5',
  'iec60204-9.2': 'IEC 60204-1, 9.2',
  'iec60204-circuit': 'IEC 60204-1, de-energise to stop',
  iso14118: 'ISO 14118',
  iso13849: 'ISO 13849-1',
  'iec60947-k': 'IEC 60947-5-1, Annex K',
  'iec60947-5-5': 'IEC 60947-5-5',
  iec61800: 'IEC 61800-5-2',
};

export const notHereText: Readonly<Record<NotHere, string>> = {
  'change-gears': 'change gears drive the screw',
  'one-channel': 'nothing compares two channels here',
  'no-feedback': 'no contactor’s feedback here',
  'screw-on': 'the chuck is screwed on without a lock and could unscrew',
};

export const refusalText: Readonly<Record<StopRefusal, string>> = {
  'distance-needed': 'Enter how far it went first. What was not as said can be recorded without.',
  'room-not-known': 'Nothing to hold the distance against: the stopping room of the job isn’t known.',
  'not-lacking': 'This test applies here.',
};

const SEEN_TEXT: Readonly<Record<Exclude<Seen, 'as-said'>, string>> = {
  'not-as-said': 'it was not as it must be',
  'none-here': 'there is nothing of the kind here',
};

/** What a person saw of a test, and when; beside it stands that the app did not see it. */
export const recordedText = (test: StopTestId, seen: Seen, day: string): string =>
  `You recorded that ${seen === 'as-said' ? stopTestText[test].saw : SEEN_TEXT[seen]}, ${day}`;

export const stopsText = {
  title: 'Stop tests',
  intro:
    'What you saw of the stop, in your own record. The app did not see it, and no key in the app stops anything.',
  defer:
    'Local rules, the lathe’s maker and people competent in such circuits decide. A stop adds to guards and to a main switch that can be locked off; it replaces neither (ISO 13850, ISO 14118). Clause numbers partly from memory: look them up.',
  faultFirst: 'What is not as said: stop using the machine until it is put right and tested anew.',
  arrangement: 'How the stop is arranged',
  entered: 'As you described it',
  described: 'This judges the description, not the wiring.',
  over: 'No emergency stop as described',
  unknown: 'Not all entered',
  near: 'Weak points',
  within: 'Nothing against it in what you entered',
  due: (n: number): string => (n === 1 ? '1 test due' : `${n} tests due`),
  noneDue: 'No test due',
  notDone: 'Not done',
  lapsed: (why: string): string => `Lapsed: ${why}`,
  notHere: (why: string): string => `Doesn’t apply: ${why}`,
  maybe: (field: string): string => `Not known whether it applies: ${field}`,
  tooFar: 'further than there was room for',
  further: (distance: string, room: string): string =>
    `You recorded ${distance}: further than the ${room} of room there is`,
  notSeen: 'The app did not see it.',
  repeated: (day: string): string => `Repeated among the checks, you recorded ${day}`,
  notOk: (day: string): string => `You recorded it as not OK among the checks, ${day}`,
  daily:
    'Due each day, or before each threading session; after work on wiring, firmware or drive; each half year.',
  interval: 'Due after work on wiring, firmware or drive, and each half year.',
  hours: 'Every 50 running hours too, by your log.',
  steps: 'Do',
  must: 'What must be seen',
  fault: 'Stop using the machine if',
  why: 'Why',
  distance: 'How far it went',
  enter: 'Enter',
  room: 'Stopping room of this job',
  enterRoom: 'Stopping room',
  asSaid: 'SEEN AS SAID',
  notAsSaid: 'NOT AS SAID',
  noneHere: 'Nothing of the kind here',
  next: (title: string): string => `Next: ${title}`,
  earlier: 'Recorded before',
  list: 'Back to the list',
  walk: 'One after another',
  back: 'Back to Machine',
  none: 'Not one of the stop tests.',
} as const;
