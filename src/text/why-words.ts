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
  | 'nutRule'
  | 'depth'
  | 'depth-sharp'
  | 'depth-flat'
  | 'depth-radius'
  | 'blank'
  | 'blank-external'
  | 'blank-internal'
  | 'drill'
  | 'drill-metric'
  | 'drill-inch'
  | 'limits'
  | 'speed';

const HALF = 'half the difference of {start} and {pitchDiameter}';
const HALF_ANGLE =
  'A is half the angle of the thread: 30° of a 60° thread, 27.5° Whitworth, 23.75° BA, 15° trapezoidal, 14.5° Acme. Where the flanks differ, both are reckoned with.';

export interface FormulaText {
  readonly title: string;
  /** With {terms}; shown once with their names, once with their values. */
  readonly formula: string;
  /** What the formula's own signs mean. */
  readonly signs?: string;
  /** The line only names values, so they stand as they were stated; else lengths become millimetres in it. */
  readonly asStated?: true;
}

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
    title: 'Ratio the controller holds',
    formula: 'the fraction nearest to {ratio}, its top at most {top}, its bottom at most {bottom}',
  },
  nutRule: {
    title: 'Half-nut rule',
    formula: '{screw} ÷ {lead}',
    signs: 'In lowest terms this is a ÷ b. The nut finds the same groove every b pitches of the screw.',
  },
  depth: { title: 'Depth', formula: `${HALF}, and from the pitch line to the tool’s tip` },
  'depth-sharp': {
    title: 'Depth, sharp nose',
    formula: `${HALF}, + ({pitch} ÷ 4) × cot A`,
    signs: HALF_ANGLE,
  },
  'depth-flat': {
    title: 'Depth, flat nose',
    formula: `${HALF}, + ({pitch} ÷ 4 − {nose} ÷ 2) × cot A`,
    signs: HALF_ANGLE,
  },
  'depth-radius': {
    title: 'Depth, round nose',
    formula: `${HALF}, + ({pitch} ÷ 4) × cot A − {nose} × (1 ÷ sin A − 1)`,
    signs: HALF_ANGLE,
  },
  blank: { title: 'Blank', formula: 'limits of the class for the crest' },
  'blank-external': { title: 'Turn blank to', formula: '{min} to {max}, class {class}', asStated: true },
  'blank-internal': { title: 'Bore to', formula: '{min} to {max}, class {class}', asStated: true },
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
  limits: { title: 'Speed limits', formula: 'each limit by itself' },
  speed: { title: 'Highest for this job', formula: 'the lowest of the limits, rounded down' },
};

/** Names of terms. A key "formula.term" is for a term that means something else in that formula. */
export const termText: Record<string, string> = {
  a: 'a, spindle revs',
  b: 'b, screw pitches',
  bottom: 'largest bottom number',
  class: 'class',
  counts: 'counts per spindle rev',
  drill: 'drill',
  edges: 'edges per line',
  encoder: 'encoder pulley',
  error: 'error',
  factor: 'safety factor',
  fullSteps: 'full steps per rev',
  gearbox: 'gears in the path',
  high: 'pulse on',
  lead: 'lead',
  limit: 'limit',
  lines: 'encoder lines',
  low: 'pulse off',
  major: 'major diameter',
  max: 'largest',
  microsteps: 'microsteps',
  min: 'smallest',
  minor: 'minor diameter',
  motor: 'motor pulley',
  nose: 'tool nose',
  percent: 'percentage of thread',
  pitch: 'pitch',
  get pitchDiameter() {
    return words().pitchDiameter;
  },
  rated: 'rated rate',
  ratio: 'steps per count',
  revs: 'motor revs per leadscrew rev',
  room: 'usable stopping room',
  rpm: 'speed set',
  screw: 'leadscrew lead',
  servoPulses: 'pulses per rev',
  spindle: 'spindle pulley',
  start: 'starting diameter',
  starts: 'starts',
  stated: 'pitch as stated',
  steps: 'steps per leadscrew rev',
  teeth: 'teeth of the dial gear',
  time: 'whole stopping time',
  top: 'largest top number',
  'screwLead.pitch': 'leadscrew pitch',
  'screwLead.starts': 'leadscrew starts',
  'motorPerScrew.screw': 'leadscrew pulley',
  'stepsPerScrewRev.steps': 'steps per motor rev',
  'nutRule.screw': 'half-nut pitch',
};

/** The name of a term in one formula. */
export const termName = (formula: string, term: string): string =>
  termText[`${formula}.${term}`] ?? termText[term] ?? term;
