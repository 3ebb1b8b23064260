import { MISTAKES, mistakesAt, type MistakeId } from '../core/cut/mistakes';
import { trade } from './prove';

interface MistakeText {
  readonly title: string;
  /** What becomes of the thread. */
  readonly thread: string;
  readonly notice: string;
  readonly avoid: string;
  /** What stands at the place where it is set or checked. */
  readonly place: string;
}

/** Tokens in braces are trade words. */
const TEXTS: Readonly<Record<MistakeId, MistakeText>> = {
  'pitch-for-lead': {
    title: 'Pitch set for lead',
    thread:
      'A thread of several starts gets the lead of one. Each start is cut over the one before, and the nut does not go on.',
    notice:
      'The scratch moves along by one pitch in a turn. It must move by the lead: pitch times number of starts.',
    avoid:
      'Enter the pitch and the number of starts, and let the lead be reckoned. Hold a rule to the scratch over one whole turn.',
    place: 'Threads: number of starts',
  },
  'screw-unit': {
    title: 'Metric screw taken for inch',
    thread:
      'Every thread is wrong by the same part. 8 tpi entered as 3 mm is 5.8 % off: a gauge goes on for one turn and jams.',
    notice: 'Ten crests of the leadscrew measure 31.75 mm where 8 tpi is meant, and 30 mm where 3 mm is.',
    avoid:
      'Measure the screw over ten crests or more. Do not go by the dials: they may be of the other kind.',
    place: 'Leadscrew pitch',
  },
  'lines-edges': {
    title: 'Lines taken for edges',
    thread: 'Every lead comes out at a quarter, a half, twice or four times what was meant.',
    notice: 'Ten turns of the spindle by hand count a quarter or four times as many as they should.',
    avoid:
      'Look up whether the figure on the encoder is lines or counts, and how many edges of each line the controller counts. Then count ten turns.',
    place: 'Edges counted per line',
  },
  'wrong-mark': {
    title: 'Nut closed on a wrong mark',
    thread:
      'The tool falls beside the groove. With a metric thread on an inch screw, or the other way round, the dial’s usual marks do not hold, and a second groove is cut through the first.',
    notice: 'The tool does not meet the groove. In a scratch pass two lines stand where one should be.',
    avoid:
      'Close the nut only where the rule for this thread on this screw says. Where it says closed, leave it closed and run back under drive.',
    place: 'Half-nut rule',
  },
  'opened-once': {
    title: 'Nut opened just once',
    thread: 'Carriage and spindle no longer belong together, and the next pass cuts another groove.',
    notice: 'The tool meets the crest where there was a groove.',
    avoid:
      'Where the nut has to stay closed, withdraw the tool, stop, and run back under drive. If it was opened, pick the thread up before you cut again.',
    place: 'Half-nut rule',
  },
  'speed-changed': {
    title: 'Speed changed between passes',
    thread:
      'A servo lags more at a higher speed, so the groove moves along. One flank is cut again, and the thread becomes thin.',
    notice: 'One flank is bright and the other is not. The chip is wider on one side.',
    avoid:
      'Set the speed before the first pass and keep it to the last, spring passes too. If it must change, pick the thread up at the new speed.',
    place: 'Speed',
  },
  'reversed-tool-in': {
    title: 'Reversed with the tool in',
    thread:
      'Going back, the carriage lags by the backlash. The tool rides on a flank, tears it, and its tip breaks.',
    notice: 'A torn flank, and a tip that is gone.',
    avoid: 'Withdraw the tool first, then stop, then reverse. Rehearse that in air until the hands know it.',
    place: 'Check: withdrawal rehearsed',
  },
  'backlash-in': {
    title: 'Backlash not taken up',
    thread: 'The first turns have another pitch, until screw and nut bear on the right side.',
    notice: 'The first two or three turns don’t fit a pitch gauge that the rest does.',
    avoid:
      'Start at least the backlash and three pitches before the work, always moving in the direction of the cut.',
    place: 'Backlash',
  },
  'work-slipped': {
    title: 'Work slipped in the chuck',
    thread: 'The groove begins again elsewhere. Between centres a carrier that has moved does the same.',
    notice: 'A pencil line across work and jaw no longer meets. The tool cuts on one flank of a sudden.',
    avoid:
      'Tighten again after the first passes. Draw a line across work and jaw, and look at it before each pass.',
    place: 'Check: work tight',
  },
  'power-cycled': {
    title: 'Controller switched off in between',
    thread: 'It has forgotten where the spindle stood, and the next pass begins anywhere on the turn.',
    notice: 'A second groove. The controller says that it starts anew.',
    avoid:
      'Leave it on from the first pass to the last. After a stop or a power cut pick the thread up, and begin with a scratch that hardly marks.',
    place: 'Picking up',
  },
  'other-nose': {
    title: 'Depth of another tool nose',
    thread:
      'Depth depends on the tip. A sharp tip stopped at a round one’s depth leaves the flanks fat; a round one at a sharp one’s depth cuts them thin.',
    notice: 'The dial says finished and the gauge does not. Wires say what is left.',
    avoid: 'Choose the nose that is in the post, and end by gauge or wires, not by the dial.',
    place: 'Threads: tool and work',
  },
  'wrong-axis': {
    title: 'Angle read from the other axis',
    thread:
      'Set to 29° on a scale that counts from the other axis, the {topSlide} stands at 61°. Most of its feed goes along the thread, and the depth is little more than half of what was meant.',
    notice:
      'The {topSlide} points nearly along the bed, and wires or gauge say that much is left at the planned end.',
    avoid:
      'Look which way the slide points when its scale shows 0. Hold a square to it, and set what the plan says for that scale.',
    place: 'What the scale counts from',
  },
  'blank-large': {
    title: 'Blank too large',
    thread: 'The crests become too high and too sharp: a nut jams though the flanks are right.',
    notice: 'The micrometer over the blank, before the first pass.',
    avoid:
      'Turn the blank within its limits and measure it at both ends. Soft metal is pushed up a little by cutting: keep below the middle.',
    place: 'Check: blank measured',
  },
  'tool-off': {
    title: 'Tool off centre or not square',
    thread:
      'The flanks lean, or their angle is not the thread’s. It measures right over wires and a nut binds or rocks.',
    notice: 'Light shows on one side when a thread gauge is held to the tool and to the thread.',
    avoid:
      'Set the tip to centre height, square it by a gauge against the turned blank, and do both again after grinding.',
    place: 'Check: tool',
  },
  'ratio-drifts': {
    title: 'Ratio kept as a rounded number',
    thread:
      'The lead is a little off, and the error grows with travel. If the nut is opened, the groove also moves with each pass.',
    notice: 'A mark on the work no longer meets the tool after many runs to and fro.',
    avoid:
      'Have the controller keep two whole numbers where it can. Where it can’t, look at what the rounding makes over this length.',
    place: 'How the ratio is held',
  },
  'microsteps-differ': {
    title: 'Microsteps not as entered',
    thread: 'Every lead is wrong by 2, 4 or another whole factor.',
    notice: 'One turn of the screw takes another number of steps than is shown under Machine.',
    avoid:
      'Read the driver’s switches with its power off. Some drivers look at them only when they are switched on: switch off and on after a change.',
    place: 'Microsteps',
  },
  'bursts-lost': {
    title: 'Steps in bursts too quick',
    thread:
      'At speed single steps go missing, though on the average the rate is low enough. The thread becomes short or drunken.',
    notice:
      'After a run to and fro at speed the carriage does not come back to its mark. At low speed it does.',
    avoid:
      'Keep below the limit by the shortest gap of edges, or have the controller spread its steps. A ramp test shows it.',
    place: 'When steps are sent',
  },
  'noise-loaded': {
    title: 'Noise under load alone',
    thread:
      'Counts too many or too few come with the {inverter} working hard, so the groove moves while metal is cut and at no other time.',
    notice: 'At rest and in air every count is right. After a cut, ten turns back to the mark are not.',
    avoid: 'Repeat the count with the {inverter} loaded. See to {screen} and {earth} before filters.',
    place: 'Noise',
  },
  'wrong-wires': {
    title: 'Wires of another size',
    thread:
      'The reading is held against another figure: the thread is stopped early, or cut past its limit with no way back.',
    notice: 'Wires that sit on the crests or fall below them. A gauge that disagrees with the wires.',
    avoid:
      'Measure the wires themselves with the same micrometer, and enter what it says, not what is on the box.',
    place: 'Measure: wires, gauges',
  },
  'measured-warm': {
    title: 'Measured while warm',
    thread:
      'Warm work measures large, so too much is taken off. 30 mm of steel 20 °C above the room is 0.007 mm larger.',
    notice: 'The same place measures smaller ten minutes later.',
    avoid: 'Let it cool, or cool it in its fluid; clean and deburr it, then measure.',
    place: 'Measure: wires, gauges',
  },
  'no-chamfer': {
    title: 'No chamfer, no groove',
    thread:
      'The first turn stands up as a burr and is torn off by the nut. Without a groove the tool ends each pass in full metal.',
    notice: 'A gauge stops at the first turn, or the last turn is deeper and torn.',
    avoid:
      'Chamfer both ends to below the root. Cut a groove wide enough for the tool and for the stop, or let the thread fade out by withdrawing.',
    place: 'Check: chamfer',
  },
  'spring-rubs': {
    title: 'Rubbing where it should cut',
    thread:
      'A pass with no infeed hardens stainless steel. The next one slides over the skin, then breaks through and tears.',
    notice: 'No chip, a shine on the flanks, a squeal.',
    avoid:
      'Give each pass at least the least depth for the tool. Take no spring passes in steels that harden, and none with carbide where the plan has none.',
    place: 'Plan of passes',
  },
  'dial-plate': {
    title: 'Trusting the dial’s plate',
    thread:
      'The plate holds for the screw and the dial’s gear that came with the lathe. With others the nut falls into a wrong groove.',
    notice: 'A second line in the scratch pass though the plate allowed the mark.',
    avoid:
      'Count the teeth of the dial’s gear and its lines, and go by the rule reckoned from them. Try it with a scratch.',
    place: 'Half-nut rule',
  },
  'rocked-back': {
    title: 'Spindle rocked back in picking up',
    thread:
      'The backlash lies on the wrong side, so the tool stands beside the groove by that much though it looked right.',
    notice: 'The first pass cuts one flank alone.',
    avoid:
      'Turn the spindle only in the direction of the cut, nut closed, and set the tool while it stands. If you went too far, go well back and come again.',
    place: 'Picking up',
  },
};

/** A mistake in the trade words of the person's choice. */
export const mistakeText = (id: MistakeId): MistakeText => {
  const told = Object.entries(TEXTS[id] as unknown as Record<string, string>);
  return Object.fromEntries(told.map(([k, v]) => [k, trade(v)])) as unknown as MistakeText;
};

export const mistakesText = {
  title: 'Common mistakes',
  intro: 'What spoils threads, most frequent first. The order is common practice: nobody has counted.',
  thread: 'What becomes of the thread',
  notice: 'How to notice',
  avoid: 'How to avoid it',
  back: 'Back to where you were',
  all: 'All common mistakes',
  toCut: 'Back to the cut',
} as const;

/** Links to what is often got wrong at an address. */
export const mistakeLinksAt = (address: string): readonly { href: string; label: string }[] =>
  mistakesAt(address).map((id) => ({
    href: `#/cut/mistakes/${id}`,
    label: `Common mistake: ${mistakeText(id).title.replace(/^./, (c) => c.toLowerCase())}`,
  }));

/** Where a mistake is set or checked. */
export const mistakePlace = (id: MistakeId): string => `#/${MISTAKES[id].at}`;
