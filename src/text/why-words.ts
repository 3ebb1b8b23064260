import { words } from './words';

/** Codes under which core/figures gives its formulas. A test runs the figures and asks for words for each. */
export type FormulaCode =
  | 'chosen'
  | 'pitch'
  | 'lead'
  | 'screwLead'
  | 'countsPerRev'
  | 'motorPerScrew'
  | 'stepsPerMotorRev'
  | 'servoPulses'
  | 'stepsPerScrewRev'
  | 'stepsPerCount'
  | 'stepOnCarriage'
  | 'countOnCarriage'
  | 'ratioHeld'
  | 'held-decimal'
  | 'held-fixed-rounded'
  | 'held-fixed-truncated'
  | 'held-float32'
  | 'held-float32-sum'
  | 'held-float64'
  | 'held-rev-count'
  | 'held-rate'
  | 'train'
  | 'no-train'
  | 'train-box'
  | 'trainHeld'
  | 'nutRule'
  | 'depth'
  | 'depth-sharp'
  | 'depth-flat'
  | 'depth-radius'
  | 'depth-full-form'
  | 'depth-square'
  | 'crest-sharp'
  | 'crest-flat'
  | 'crest-radius'
  | 'crest-full-form'
  | 'blank'
  | 'blank-external'
  | 'blank-internal'
  | 'blank-full-form-external'
  | 'blank-full-form-internal'
  | 'blank-basic-external'
  | 'blank-basic-internal'
  | 'drill'
  | 'drill-metric'
  | 'drill-inch'
  | 'plan'
  | 'plan-measured'
  | 'plan-nominal'
  | 'stopRoom'
  | 'stopSpeed'
  | 'coasting'
  | 'limits'
  | 'speed';

const HALF = 'half the difference of {start} and {pitchDiameter}';
const HALF_ANGLE =
  'A is half the angle of the thread: 30° of a 60° thread, 27.5° Whitworth, 23.75° BA, 15° trapezoidal, 14.5° Acme. Where the flanks differ, both are reckoned with.';

const HELD = 'Ratio the controller holds';

export interface FormulaText {
  readonly title: string;
  /** With {terms}; shown once with their names, once with their values. */
  readonly formula: string;
  /** What the formula's own signs mean. */
  readonly signs?: string;
  /** The line only names values, so they stand as they were stated; else lengths become millimetres in it. */
  readonly asStated?: true;
}

type Nosed = 'sharp' | 'flat' | 'radius' | 'full-form';

/** From the pitch line to the tip of each nose. */
const TIPS: Readonly<Record<Nosed, readonly [title: string, formula: string, signs?: string]>> = {
  sharp: ['Depth, sharp nose', '({pitch} ÷ 4) × cot A', HALF_ANGLE],
  flat: ['Depth, flat nose', '({pitch} ÷ 4 − {nose} ÷ 2) × cot A', HALF_ANGLE],
  radius: ['Depth, round nose', '({pitch} ÷ 4) × cot A − {nose} × (1 ÷ sin A − 1)', HALF_ANGLE],
  'full-form': ['Depth, full-form insert', '{tip}'],
};
const depths = <P extends 'depth' | 'crest'>(before: P, first: string) =>
  Object.fromEntries(
    Object.entries(TIPS).map(([kind, [title, tip, signs]]) => [
      `${before}-${kind}`,
      { title, formula: `${first}, + ${tip}`, ...(signs ? { signs } : {}) },
    ]),
  ) as Record<`${P}-${Nosed}`, FormulaText>;
/** From the starting diameter, or from the crest of a thread that has no diameter of its own. */
const DEPTHS = { ...depths('depth', HALF), ...depths('crest', '{addendum}') };

export const formulaText: Record<FormulaCode, FormulaText> = {
  chosen: { title: 'What is cut', formula: '{pitch}', asStated: true },
  pitch: { title: 'Pitch', formula: '{stated}' },
  lead: { title: 'Lead', formula: '{starts} × {pitch}' },
  screwLead: { title: 'Leadscrew lead', formula: '{pitch} × {starts}' },
  countsPerRev: { title: 'Counts per spindle rev', formula: '{lines} × {edges} × {spindle} ÷ {encoder}' },
  motorPerScrew: { title: 'Motor revs per leadscrew rev', formula: '{screw} ÷ {motor} × {gearbox}' },
  stepsPerMotorRev: { title: 'Steps per motor rev', formula: '{fullSteps} × {microsteps}' },
  servoPulses: { title: 'Steps per motor rev', formula: '{servoPulses}' },
  stepsPerScrewRev: { title: 'Steps per leadscrew rev', formula: '{steps} × {revs}' },
  stepsPerCount: { title: 'Steps per count', formula: '({lead} ÷ {screw}) × ({steps} ÷ {counts})' },
  stepOnCarriage: { title: 'One step on the carriage', formula: '{screw} ÷ {steps}' },
  countOnCarriage: { title: 'One count along the thread', formula: '{lead} ÷ {counts}' },
  ratioHeld: {
    title: HELD,
    formula: 'the fraction nearest to {ratio}, its top at most {top}, its bottom at most {bottom}',
  },
  train: { title: 'What the mounted train cuts', formula: '{screw} × ({spindle} ÷ {shaft}) × {wheels}' },
  'no-train': { title: 'What the mounted train cuts', formula: 'no train' },
  'train-box': {
    title: 'What the mounted train cuts',
    formula: '{screw} × ({spindle} ÷ {shaft}) × {wheels} × {box}',
  },
  'held-decimal': { title: HELD, formula: '{ratio}, to {digits} digits after the mark' },
  'held-fixed-rounded': {
    title: HELD,
    formula: '{ratio} × 2^{bits}, to the nearest whole number, ÷ 2^{bits}',
  },
  'held-fixed-truncated': { title: HELD, formula: '{ratio} × 2^{bits}, the rest dropped, ÷ 2^{bits}' },
  'held-float32': { title: HELD, formula: '{ratio}, to 24 binary digits' },
  'held-float32-sum': {
    title: HELD,
    formula: '{ratio}, to 24 binary digits; so is the sum after each count',
  },
  'held-float64': { title: HELD, formula: '{ratio}, to 53 binary digits' },
  'held-rev-count': { title: HELD, formula: '{ratio}, to the nearest whole number of steps per spindle rev' },
  'held-rate': { title: HELD, formula: '{ratio} is not held: a step rate is sent instead' },
  trainHeld: { title: 'Lead of the mounted train', formula: '{cuts} for {lead}' },
  nutRule: {
    title: 'Half-nut rule',
    formula: '{screw} ÷ {lead}',
    signs: 'In lowest terms this is a ÷ b. The nut finds the same groove every b pitches of the screw.',
  },
  depth: { title: 'Depth', formula: `${HALF}, and from the pitch line to the tool’s tip` },
  ...DEPTHS,
  'depth-square': {
    title: 'Depth, square thread',
    formula: '{pitch} ÷ 2',
    signs: 'The tool makes the width, half the pitch as well.',
  },
  blank: { title: 'Blank', formula: 'limits of the class for the crest' },
  'blank-external': { title: 'Turn blank to', formula: '{min} to {max}, {class}', asStated: true },
  'blank-internal': { title: 'Bore to', formula: '{min} to {max}, {class}', asStated: true },
  'blank-full-form-external': {
    title: 'Turn blank to',
    formula: '{max} + {least} to {max} + {most}',
    asStated: true,
  },
  'blank-full-form-internal': {
    title: 'Bore to',
    formula: '{min} − {most} to {min} − {least}',
    asStated: true,
  },
  'blank-basic-external': { title: 'Turn blank to', formula: 'basic size {max}', asStated: true },
  'blank-basic-internal': { title: 'Bore to', formula: 'basic size {min}', asStated: true },
  drill: { title: 'Tapping drill', formula: 'the standard drill that leaves the thread wanted' },
  'drill-metric': {
    title: 'Tapping drill',
    formula: '{major} − {pitch}, nearest standard drill: {drill}',
    asStated: true,
  },
  'drill-inch': {
    title: 'Tapping drill',
    formula: 'standard drill nearest to 75 % of thread: {drill}',
    asStated: true,
  },
  plan: { title: 'Plan of passes', formula: '{depth}, shared out in whole divisions' },
  'plan-measured': {
    title: 'Plan of passes',
    formula: 'half the difference of {blank} and {target}, + {below}',
  },
  'plan-nominal': { title: 'Plan of passes', formula: '{depth}' },
  stopRoom: {
    title: 'Room to stop in',
    formula: '{whole} − {tool} − {creep} − {margin}',
    signs: 'Rounded down to a thousandth of a millimetre.',
  },
  stopSpeed: {
    title: 'Highest for this room',
    formula: '60 × {room} ÷ ({lead} × {time} × {factor})',
    signs: 'Rounded down to whole rpm.',
  },
  coasting: { title: 'Travel while the spindle coasts', formula: '{turns} × {lead}' },
  limits: { title: 'Speed limits', formula: 'each limit by itself' },
  speed: { title: 'Highest for this job', formula: 'the lowest of the limits, rounded down' },
};

/** Names of terms. A key "formula.term" is for a term that means something else in that formula. */
export const termText: Record<string, string> = {
  a: 'a, spindle revs',
  addendum: 'crest to pitch line',
  amperes: 'current of a phase',
  angle: 'slide from square to the axis',
  b: 'b, screw pitches',
  allowed: 'allowed',
  below: 'pitch line to the tool’s tip',
  bits: 'bits of fraction',
  blank: 'blank as measured',
  bottom: 'largest bottom number',
  class: 'class',
  count: 'passes that cut',
  counts: 'counts per spindle rev',
  depth: 'depth',
  digits: 'digits after the mark',
  division: 'depth of one division',
  diameter: 'diameter of the leadscrew',
  drill: 'drill',
  edges: 'edges per line',
  efficiency: 'efficiency of screw and nut',
  encoder: 'encoder pulley',
  error: 'error',
  factor: 'safety factor',
  force: 'cutting force',
  friction: 'friction of the ways',
  fullSteps: 'full steps per rev',
  gearbox: 'gears in the path',
  high: 'pulse on',
  inductance: 'inductance of a phase',
  largest: 'largest that reaches',
  lead: 'lead',
  least: 'left over, least',
  leastChip: 'chip of the least pass at full depth',
  length: 'length of the leadscrew',
  limit: 'limit',
  lines: 'encoder lines',
  low: 'pulse off',
  major: 'major diameter',
  mass: 'mass of the carriage',
  max: 'largest',
  microsteps: 'microsteps',
  min: 'smallest',
  minor: 'minor diameter',
  most: 'left over, most',
  motor: 'motor pulley',
  nose: 'tool nose',
  off: 'error over that length',
  over: 'length judged',
  peak: 'peak torque',
  percent: 'percentage of thread',
  phase: 'phase error',
  pitch: 'pitch',
  get pitchDiameter() {
    return words().pitchDiameter;
  },
  ramp: 'fastest start or stop',
  rated: 'rated rate',
  ratio: 'steps per count',
  revs: 'motor revs per leadscrew rev',
  rotor: 'inertia of the rotor',
  room: 'usable stopping room',
  rpm: 'speed set',
  screw: 'leadscrew lead',
  servoPulses: 'pulses per rev',
  setup: 'time the direction must stand',
  short: 'short by',
  shift: 'groove moved by the last pass',
  spindle: 'spindle pulley',
  start: 'starting diameter',
  starts: 'starts',
  stated: 'pitch as stated',
  steps: 'steps per leadscrew rev',
  target: 'diameter aimed at on the flanks',
  teeth: 'teeth of the dial gear',
  time: 'whole stopping time',
  tip: 'pitch line to the insert’s tip',
  top: 'largest top number',
  torque: 'holding torque',
  volts: 'supply voltage',
  wait: 'time the controller waits',
  width: 'width of the tool',
  'stopRoom.whole': 'groove, gap or run-out',
  'stopRoom.tool': 'tool’s leading side before its tip',
  'stopRoom.creep': 'creep of the slide by full depth',
  'stopRoom.margin': 'margin',
  'coasting.turns': 'turns it coasts',
  'torque.rated': 'rated torque',
  'screwLead.pitch': 'leadscrew pitch',
  'screwLead.starts': 'leadscrew starts',
  'motorPerScrew.screw': 'leadscrew pulley',
  'stepsPerScrewRev.steps': 'steps per motor rev',
  'nutRule.screw': 'half-nut pitch',
  'nutRule.sum': 'groove moved after 200 passes',
  'nutRule.tenth': 'a tenth of what is allowed',
  'nutRule.lasts': 'used up after',
  'train.spindle': 'fixed wheel on the spindle',
  'train.shaft': 'fixed wheel on the first shaft',
  'train.wheels': 'drivers ÷ driven wheels',
  'train-box.spindle': 'fixed wheel on the spindle',
  'train-box.shaft': 'fixed wheel on the first shaft',
  'train-box.wheels': 'drivers ÷ driven wheels',
  'train-box.box': 'lever position',
  'trainHeld.cuts': 'lead the train cuts',
  'trainHeld.lead': 'lead wanted',
};

/** The name of a term in one formula. */
export const termName = (formula: string, term: string): string =>
  termText[`${formula}.${term}`] ?? termText[term] ?? term;
