import {
  isAfter,
  lapseOf,
  newestOf,
  newestTest,
  testLapse,
  type InputPath,
  type Inputs,
  type LapseRule,
  type TestRecord,
} from '../context';
import { compare, inBase, ratio, type Ratio } from '../quantity';

/** The test that answers for supporting limits: fastest start, stop and reverse, at a lead and a speed. */
export const RAMP_TEST = 'ramp-test';

/** What the ramp test rests on besides the lead itself, which it covers downwards. */
const RAMP_READS = [
  'machine.screwPitch',
  'machine.screwStarts',
  'machine.encoderLines',
  'machine.edgesPerLine',
  'machine.spindlePulley',
  'machine.encoderPulley',
  'machine.motorKind',
  'machine.fullSteps',
  'machine.microsteps',
  'machine.servoPulses',
  'machine.motorPulley',
  'machine.screwPulley',
  'machine.gearboxRatio',
  'machine.pulseTiming',
  'machine.directionSetup',
] as const satisfies readonly InputPath[];

/** 180 days: a fixed interval of common practice for repeating tests. */
export const RAMP_RULE = {
  version: 1,
  reads: RAMP_READS,
  afterDays: 180,
  events: ['wiring', 'firmware', 'driver', 'belt', 'crash'],
} as const satisfies LapseRule;

/** The lead a ramp record was made at travels with it under this key, as "n/d" of a mm (π rounded up). */
export const RAMP_LEAD = 'lead';

/** What a commissioning test of the ramp covers: its readings name the lead and the speed it was run at. */
const testCovers = (record: TestRecord, inputs: Inputs, leadMm: Ratio): Ratio | null => {
  const { lead, rpm } = record.readings;
  if (record.result !== 'passed' || !lead || !rpm || testLapse(RAMP_RULE, record, inputs)) return null;
  return compare(leadMm, inBase(lead)) <= 0 ? inBase(rpm) : null;
};

/**
 * The highest rpm that a current ramp record, of a check or of the commissioning test, vouches for at this lead, or null. A record covers its own lead
 * and every smaller one; it must be the newest, passed, and nothing it rests on may have changed.
 */
export const rampCovers = (inputs: Inputs, leadMm: Ratio): Ratio | null => {
  const record = newestOf(inputs.context.records, RAMP_TEST);
  const test = newestTest(inputs, 'ramp');
  if (test && !(record && isAfter(record, test))) return testCovers(test, inputs, leadMm);
  if (!record || record.answer !== 'done' || !record.reading) return null;
  if (lapseOf(RAMP_RULE, record, inputs)) return null;
  const [, n, d] = /^(\d{1,40})\/([1-9]\d{0,39})$/.exec(record.inputs[RAMP_LEAD] ?? '') ?? [];
  if (!n || !d) return null;
  return compare(leadMm, ratio(BigInt(n), BigInt(d))) <= 0 ? record.reading : null;
};
