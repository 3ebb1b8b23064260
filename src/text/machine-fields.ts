import type { FieldName } from '../core/machine';
import { dialFields } from './dial-fields';
import { loadFields } from './load-fields';
import { stopFields } from './stop-fields';

export interface FieldText {
  /** At most 28 characters. */
  readonly label: string;
  readonly question: string;
  /** Where to read it off, with the trap. */
  readonly where: string;
  /** What isn't known until this is. */
  readonly needed: string;
}

const RATIO = 'Without it the gear ratio is not known, and so no speed.';
const SPEED = 'Without it no speed for the job is known.';
const TEST_ANSWERS = 'Without it this limit is not known; a ramp test can answer for it.';
const TRAIN = 'Without it no train of wheels can be reckoned.';
const REACH = 'Without it nothing is checked against this limit, and the page says so.';
const DIAL = 'Without it the app says: keep the nut closed.';

/** What each field is called, asked as, found at, and good for. */
export const fieldText: Record<FieldName, FieldText> = {
  name: {
    label: 'Name',
    question: 'What is this machine called?',
    where: 'Any name you use for it. It stands at the top of every screen.',
    needed: 'So that two machines are never mistaken for each other.',
  },
  workshop: {
    label: 'Workshop',
    question: 'Where does it stand?',
    where: 'The shed, club or room. It parts machines of the same name.',
    needed: 'So that two machines are never mistaken for each other.',
  },
  colour: {
    label: 'Colour',
    question: 'Which colour marks it?',
    where: 'A colour no other machine here has. A dab of the same paint on the lathe helps.',
    needed: 'So that two machines are told apart at a glance. Nothing is reckoned from it.',
  },

  driveKind: {
    label: 'Drive of the leadscrew',
    question: 'What turns the leadscrew?',
    where:
      'A motor of its own that follows the spindle’s encoder, or a train of wheels from the spindle. What belongs to the other kind is then not asked.',
    needed: RATIO,
  },

  screwPitch: {
    label: 'Leadscrew pitch',
    question: 'What is the pitch of the leadscrew?',
    where:
      'Lay a rule along the screw and measure ten crests or more. A metric lathe may carry an inch screw and the other way round. 3 mm and 8 tpi differ by 6 %: easily mistaken over one inch.',
    needed: RATIO,
  },
  screwStarts: {
    label: 'Leadscrew starts',
    question: 'How many starts has the leadscrew?',
    where: 'Nearly always 1. Count the grooves that begin at the end of the screw.',
    needed: RATIO,
  },

  halfNut: {
    label: 'Half-nut',
    question: 'Does a lever open the half-nut?',
    where: 'On the apron. Some small lathes keep the nut closed and have a clutch instead.',
    needed: DIAL,
  },
  threadDial: {
    label: 'Thread dial',
    question: 'Is there a thread dial?',
    where: 'A numbered dial at the apron, turned by the leadscrew.',
    needed: DIAL,
  },
  dialTeeth: {
    label: 'Thread dial gear',
    question: 'How many teeth has the gear in mesh with the leadscrew?',
    where:
      'Count the teeth of the gear under the dial. Some dials have several gears: count the one in mesh.',
    needed: DIAL,
  },
  dialLines: {
    label: 'Thread dial lines',
    question: 'How many lines has the dial?',
    where: 'Count every line, long and short, numbered or not. They must be evenly spaced.',
    needed: DIAL,
  },

  gearWheels: {
    label: 'Change wheels',
    question: 'Which change wheels are there?',
    where: 'Count the teeth of each, or read what is stamped on it. Those mounted now belong to the set.',
    needed: TRAIN,
  },
  spindleWheel: {
    label: 'Fixed wheel on the spindle',
    question: 'How many teeth has the fixed wheel on the spindle?',
    where:
      'The gearing that always stays: from the spindle to the shaft that bears the first change wheel. 1 and 1 where that shaft makes one turn to one of the spindle. Tumbler wheels between count as nothing.',
    needed: TRAIN,
  },
  shaftWheel: {
    label: 'Fixed wheel on first shaft',
    question: 'How many teeth has the fixed wheel on the first shaft?',
    where:
      'On the shaft or stud that bears the first change wheel, towards the spindle. 1 and 1 where both turn alike.',
    needed: TRAIN,
  },
  shaftTurns: {
    label: 'First shaft turns',
    question: 'Which way does the first shaft turn?',
    where: 'Turn the chuck by hand and watch it. With a tumbler it can be turned either way.',
    needed: 'Without it no one can say which hand a train cuts.',
  },
  quickBox: {
    label: 'Quick-change box',
    question: 'Is there a quick-change box before the leadscrew?',
    where: 'Levers or a tumbler on the front that change the feed while the wheels stay.',
    needed: TRAIN,
  },
  boxTable: {
    label: 'Box lever positions',
    question: 'What does each lever position give?',
    where:
      'Turns of the leadscrew for one turn of the box’s input. Write a name, =, and the ratio: A=1/2 B=1 C=2. Set each and count turns: plates on boxes give threads, not ratios.',
    needed: TRAIN,
  },
  gearMounted: {
    label: 'Wheels mounted now',
    question: 'Which wheels are mounted now?',
    where:
      'From the spindle’s end: what drives, what is between, what is driven. The Change gears page enters it by one key.',
    needed: 'Without it no one can say what the lathe cuts now, nor whether the nut may be opened.',
  },
  shaftSum: {
    label: 'First shaft to leadscrew',
    question: 'How far is the first shaft from the leadscrew, in teeth?',
    where:
      'Teeth of two wheels that would just mesh from one to the other: twice the distance between centres in mm, divided by the module of the wheels.',
    needed: REACH,
  },
  slotLeast: {
    label: 'Stud nearest the screw',
    question: 'Fewest teeth together, from last stud to leadscrew?',
    where: 'Push the stud to the inner end of its slot: teeth of two wheels that would mesh there.',
    needed: REACH,
  },
  slotMost: {
    label: 'Stud farthest from it',
    question: 'Most teeth together, from last stud to leadscrew?',
    where: 'Pull the stud to the outer end of its slot: teeth of two wheels that would mesh there.',
    needed: REACH,
  },
  studs: {
    label: 'Studs on the banjo',
    question: 'How many studs can be set at once?',
    where: 'Studs that bear wheels between first shaft and leadscrew, spare ones in the drawer counted.',
    needed: REACH,
  },
  studGap: {
    label: 'Studs apart, at least',
    question: 'How few teeth together from stud to stud?',
    where: 'With the collars of two studs side by side: teeth of two wheels that would mesh there.',
    needed: REACH,
  },
  wheelClearance: {
    label: 'Clearance to a shaft',
    question: 'How many teeth keep a wheel off the shaft beside it?',
    where:
      'Two wheels in mesh must have more teeth together than the wheel beside them and this. 15 is common practice; thick shafts and nuts need more.',
    needed: REACH,
  },

  encoderLines: {
    label: 'Encoder lines',
    question: 'How many lines per rev has the encoder?',
    where:
      'On its label or data sheet. Lines are often called pulses per rev. Where the maker counts edges per rev, divide by 4.',
    needed: RATIO,
  },
  edgesPerLine: {
    label: 'Edges counted per line',
    question: 'How many edges per line does the controller count?',
    where:
      'In the controller’s settings. Quadrature counting of both channels is 4. Wrong here is wrong by 2 or 4.',
    needed: RATIO,
  },
  spindlePulley: {
    label: 'Pulley on the spindle',
    question: 'How many teeth on the spindle, towards the encoder?',
    where:
      'Count teeth. 1 and 1 where the encoder turns with the spindle. A plain belt slips: not for threads.',
    needed: RATIO,
  },
  encoderPulley: {
    label: 'Pulley on the encoder',
    question: 'How many teeth on the encoder?',
    where: 'Count teeth. 1 and 1 where the encoder turns with the spindle.',
    needed: RATIO,
  },
  encoderMaxRpm: {
    label: 'Encoder highest speed',
    question: 'How fast may the encoder’s shaft turn?',
    where: 'Its data sheet: highest mechanical speed.',
    needed: TEST_ANSWERS,
  },
  encoderMaxChannel: {
    label: 'Encoder highest frequency',
    question: 'What frequency does one encoder channel reach?',
    where:
      'Data sheet of the encoder or its receiver, whichever is lower. It is rated per channel, not in edges.',
    needed: TEST_ANSWERS,
  },
  counterMaxEdges: {
    label: 'Counter highest rate',
    question: 'How many edges a second can the controller count?',
    where:
      'The controller’s data sheet, or your own measurement. Edges, not channel frequency: 4 edges to a line. Opto inputs are slower than the counter behind them.',
    needed: SPEED,
  },

  motorKind: {
    label: 'Motor',
    question: 'What drives the leadscrew?',
    where: 'On the motor’s and driver’s labels. A step angle, such as 1.8°, is a stepper’s.',
    needed: RATIO,
  },
  fullSteps: {
    label: 'Motor full steps per rev',
    question: 'How many full steps per rev has the motor?',
    where: 'On its label as the step angle: 1.8° is 200, 0.9° is 400.',
    needed: RATIO,
  },
  microsteps: {
    label: 'Microsteps',
    question: 'How many microsteps per full step?',
    where:
      'The driver’s switches or settings. Some tables give pulses per rev instead: divide by the full steps.',
    needed: RATIO,
  },
  servoPulses: {
    label: 'Servo pulses per rev',
    question: 'How many pulses turn the servo once?',
    where:
      'The drive’s settings: its electronic gear or pulses per rev. Not the lines of the servo’s own encoder.',
    needed: RATIO,
  },
  servoEncoder: {
    label: 'Servo encoder counts',
    question: 'How many counts per rev has the servo’s own encoder?',
    where:
      'The motor’s label or the drive’s manual. Counts, after the drive’s multiplication: 2500 lines counted four times are 10000; 17 bits are 131072.',
    needed:
      'Without it the electronic gear to enter in the drive is not known. The lead does not depend on it.',
  },
  servoGearMax: {
    label: 'Electronic gear, largest',
    question: 'How large may the numbers of its electronic gear be?',
    where: 'The drive’s manual: range of the gear’s top and bottom number. The smaller of the two.',
    needed: 'Without it the electronic gear to enter in the drive is not known.',
  },
  motorPulley: {
    label: 'Pulley on the motor',
    question: 'How many teeth on the motor?',
    where: 'Count teeth. 1 and 1 where motor and screw are coupled directly.',
    needed: RATIO,
  },
  screwPulley: {
    label: 'Pulley on the leadscrew',
    question: 'How many teeth on the leadscrew’s side?',
    where: 'Count teeth. 1 and 1 where motor and screw are coupled directly.',
    needed: RATIO,
  },
  gearboxRatio: {
    label: 'Gears left in the path',
    question: 'How many motor-side turns make one turn of the leadscrew, by gears left in between?',
    where:
      '1 when nothing is left in. A feed gearbox still in the path changes every thread when its lever moves. Pulleys are not counted here.',
    needed: RATIO,
  },
  gearboxLever: {
    label: 'Lever positions',
    question: 'Where must the levers stand?',
    where: 'Write down every lever between motor and screw as it stood when the ratio was taken.',
    needed: 'So that a moved lever is seen before a thread is spoiled.',
  },
  motorMaxRpm: {
    label: 'Motor highest speed',
    question: 'How fast may the motor turn?',
    where:
      'For a stepper: where its pull-out torque, at your supply voltage, is still enough. For a servo: its rated speed.',
    needed: SPEED,
  },
  overload: {
    label: 'Overload protection',
    question: 'What gives way when the carriage jams?',
    where: 'Look between motor and screw, or in the servo drive’s torque limit.',
    needed: 'The checks ask about it: what gives way in time saves nut, screw and tool.',
  },

  pulseHigh: {
    label: 'Step pulse, on',
    question: 'How long must a step pulse be on?',
    where: 'The driver’s data sheet. Boxed drivers with opto inputs often ask for 2.5 µs or more.',
    needed: TEST_ANSWERS,
  },
  pulseLow: {
    label: 'Step pulse, off',
    question: 'How long must it be off between pulses?',
    where: 'The driver’s data sheet. Opto inputs with weak pull-ups need longer than the sheet says.',
    needed: TEST_ANSWERS,
  },
  stepInputMax: {
    label: 'Step input highest rate',
    question: 'What step frequency does the driver’s input bear?',
    where: 'The driver’s data sheet. Opto inputs are slower than differential ones.',
    needed: TEST_ANSWERS,
  },
  directionSetup: {
    label: 'Direction set-up time',
    question: 'How long must direction stand before a step?',
    where: 'The driver’s data sheet. It counts at every reversal, even when the chuck is rocked by hand.',
    needed: 'It is part of what a ramp test vouches for.',
  },

  controllerMaxSteps: {
    label: 'Controller highest steps',
    question: 'How many steps a second can the controller send?',
    where: 'The controller’s data sheet, or your own measurement with the encoder counting at full speed.',
    needed: SPEED,
  },
  pulseTiming: {
    label: 'When steps are sent',
    question: 'Does it send its steps at each edge, or spread evenly?',
    where:
      'The controller’s manual. If it isn’t said, leave it not known: bunched pulses are then allowed for.',
    needed: 'It decides whether bunched pulses limit the speed.',
  },
  ratioHeld: {
    label: 'How the ratio is held',
    question: 'How does the controller hold the gear ratio?',
    where:
      'Its settings and manual: two whole numbers, or a decimal number; the program itself, if you wrote it. A number with a point in it says nothing of how it is kept inside.',
    needed: 'Without it no one can say whether the lead is exact, nor whether the nut may be opened.',
  },
  ratioTopMax: {
    label: 'Ratio: largest top number',
    question: 'How large may the top number be?',
    where: 'The controller’s manual. 16 bits hold up to 65535, or 32767 with a sign.',
    needed: 'Without it the nearest ratio it can hold is not known.',
  },
  ratioBottomMax: {
    label: 'Ratio: largest bottom number',
    question: 'How large may the bottom number be?',
    where: 'The controller’s manual. 16 bits hold up to 65535, or 32767 with a sign.',
    needed: 'Without it the nearest ratio it can hold is not known.',
  },

  ratioDigits: {
    label: 'Ratio: decimals',
    question: 'How many digits does it keep after the decimal mark?',
    where: 'Enter a ratio with many digits, leave the page, and look what is left of it.',
    needed: 'Without it the error of the ratio is not known.',
  },
  ratioBits: {
    label: 'Ratio: bits of fraction',
    question: 'How many bits has the fraction?',
    where: 'The controller’s manual or program: 16.16 has 16, a scale of 65536 has 16, one of 256 has 8.',
    needed: 'Without it the error of the ratio is not known.',
  },

  carriageMax: {
    label: 'Carriage highest speed',
    question: 'How fast may the carriage travel under drive?',
    where: 'Your own choice: what ways, rack and hand can follow. 25 mm/s is brisk.',
    needed: TEST_ANSWERS,
  },
  backlash: {
    label: 'Carriage backlash',
    question: 'How much backlash is there, screw to carriage?',
    where: 'Nut closed, indicator on the carriage: turn the screw one way, then back until the needle moves.',
    needed: 'Without it the run-in before the thread is not known.',
  },

  spindleDrive: {
    label: 'Spindle speeds',
    question: 'Has the spindle fixed speeds, or a range?',
    where: 'Belts and gears give fixed speeds. A speed knob gives a range.',
    needed: 'Without it no speed can be picked from those it has.',
  },
  spindleSpeeds: {
    label: 'Its fixed speeds',
    question: 'Which speeds has the spindle?',
    where: 'The plate on the headstock, or better a tachometer: motors and pulleys get changed.',
    needed: 'Without them no speed can be picked from those it has.',
  },
  spindleMin: {
    label: 'Slowest speed',
    question: 'How slowly does it turn and still cut?',
    where: 'A tachometer at the slowest setting that does not stall.',
    needed: 'So that no speed is offered that it hasn’t.',
  },
  spindleMax: {
    label: 'Fastest speed',
    question: 'How fast does it turn?',
    where: 'A tachometer or the plate on the headstock.',
    needed: TEST_ANSWERS,
  },
  chuckMaxRpm: {
    label: 'Chuck highest speed',
    question: 'What speed is marked on the chuck?',
    where:
      'Stamped on its face or body. Nothing marked: ask the maker, and leave it not known till then. It holds for the chuck in sound order, jaws inside the body.',
    needed: SPEED,
  },
  chuckMount: {
    label: 'Chuck mounting',
    question: 'Can the chuck unscrew in reverse?',
    where: 'A threaded nose without a lock lets go in reverse. Camlock, bolted and clamped chucks do not.',
    needed: 'It decides whether running in reverse may be advised.',
  },

  ...dialFields,

  ...loadFields,
  ...stopFields,

  stopCuts: {
    label: 'The stop button cuts',
    question: 'What does the stop button really cut?',
    where: 'The wiring diagram, then a test with the nut open. A button wired to an input is only a request.',
    needed: 'The checks ask about it. The app never takes a stop for granted.',
  },
  wholeStopTime: {
    label: 'Whole stopping time',
    question: 'How long from the mark until the nut is open?',
    where:
      'Ten dummy runs in air past a mark; take the longest overrun. Reaction and lever together, never the lever alone. 0.5 s is a practised hand, 1 s anyone else.',
    needed: SPEED,
  },
  safetyFactor: {
    label: 'Safety factor on stopping',
    question: 'By how much is the stopping room multiplied?',
    where: '1.5 is common practice. It is applied once, to the stopping travel.',
    needed: SPEED,
  },

  notes: {
    label: 'Notes',
    question: 'Anything else about this machine?',
    where: 'Firmware version, wiring colours, where the drawings are.',
    needed: 'For yourself in a year, and for whoever comes after. Nothing is reckoned from it.',
  },
};
