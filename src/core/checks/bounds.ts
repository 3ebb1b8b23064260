import type { InputPath } from '../context';
import { stoppingPerRpm } from '../drive';
import type { FigureId, Sheet } from '../figures';
import { roomOf } from '../figures/room-from';
import {
  add,
  ceil,
  compare,
  inBase,
  leadHigh,
  leadLow,
  MM_PER_INCH,
  mul,
  ratio,
  sub,
  type Ratio,
} from '../quantity';
import type { FormId } from '../thread';
import { finding } from './findings';
import type { Bounds, Finding } from './item';

const between = (low: Ratio | null, high: Ratio | null, figure: FigureId | null = null): Bounds => ({
  low,
  high,
  closeFrom: null,
  figure,
  missing: [],
});
const notKnown = (missing: readonly InputPath[], figure: FigureId | null = null): Bounds => ({
  low: null,
  high: null,
  closeFrom: null,
  figure,
  missing: [...new Set(missing)],
});

/** Judges a reading against its bounds; a bound itself is still within. */
export const judgeBounds = (reading: Ratio, b: Bounds): Finding => {
  const figure = b.figure ? { figure: b.figure } : {};
  if (b.missing.length > 0) return finding('unknown', 'inputs-missing', { ...figure, missing: b.missing });
  if (b.low && compare(reading, b.low) < 0) return finding('over', 'reading-low', figure);
  if (b.high && compare(reading, b.high) > 0) return finding('over', 'reading-high', figure);
  if (b.closeFrom && compare(reading, b.closeFrom) > 0) return finding('near', 'reading-close', figure);
  return finding('within', 'reading-within', figure);
};

/** No more than the machine's whole stopping time, s: a longer one means that the plan is too quick. */
export const stopTimeBounds = ({ inputs: { machine } }: Sheet): Bounds =>
  machine.wholeStopTime ? between(null, inBase(machine.wholeStopTime)) : notKnown(['machine.wholeStopTime']);

/** No more than the machine's backlash as entered, mm: more means that the entry is out of date. */
export const backlashBounds = ({ inputs: { machine } }: Sheet): Bounds =>
  machine.backlash ? between(null, inBase(machine.backlash)) : notKnown(['machine.backlash']);

/**
 * Counts in ten spindle revs, 10·C, give or take what a mark resolves at each end: C ÷ 600, that is 0.6° or
 * half a millimetre at 50 mm radius, rounded up to whole counts (own choice; common practice is "to the mark").
 */
export const tenTurnsBounds = (sheet: Sheet): Bounds => {
  const counts = sheet.get('countsPerRev');
  if (!counts.value) return notKnown(counts.missing, 'countsPerRev');
  const mark = ratio(ceil(mul(counts.value, ratio(1, 600))));
  const ten = mul(counts.value, 10);
  return between(sub(ten, mark), add(ten, mark), 'countsPerRev');
};

/** Run-in of at least backlash + 3 pitches, mm. Common practice; an irrational pitch is taken a hair larger. */
export const runInBounds = (sheet: Sheet): Bounds => {
  const pitch = sheet.get('pitch');
  const { backlash } = sheet.inputs.machine;
  if (!pitch.value || !backlash)
    return notKnown([...pitch.missing, ...(backlash ? [] : (['machine.backlash'] as const))], 'pitch');
  return between(add(inBase(backlash), mul(leadHigh(pitch.value), 3)), null, 'pitch');
};

/** Gap of at least L·n/60 × whole stopping time × safety factor, mm. Own derivation from uniform motion. */
export const gapBounds = (sheet: Sheet): Bounds => {
  const lead = sheet.get('lead');
  const { machine, job } = sheet.inputs;
  const { wholeStopTime, safetyFactor } = machine;
  if (lead.value && wholeStopTime && safetyFactor && job.rpm) {
    const perRpm = stoppingPerRpm(lead.value, inBase(wholeStopTime), inBase(safetyFactor));
    return between(mul(perRpm, job.rpm), null, 'lead');
  }
  const missing: InputPath[] = [...lead.missing];
  if (!wholeStopTime) missing.push('machine.wholeStopTime');
  if (!safetyFactor) missing.push('machine.safetyFactor');
  if (!job.rpm) missing.push('job.rpm');
  return notKnown(missing, 'lead');
};

/** A groove can't be narrower than the stopping room left in it, mm. */
export const grooveBounds = ({ inputs }: Sheet): Bounds | null => {
  const room = roomOf(inputs);
  return room && between(inBase(room), null);
};

/** Blank or bore between its limits, mm; a bare pitch has no diameter to hold it to, nor does a basic size judge. */
export const blankBounds = (sheet: Sheet): Bounds | null => {
  const { value, missing } = sheet.get('blank');
  if (value && !value.min) return null;
  if (!value) return missing.length > 0 ? notKnown(missing, 'blank') : null;
  const mm = (x: Ratio): Ratio => (value.unit === 'in' ? mul(x, MM_PER_INCH) : x);
  return between(value.min && mm(value.min), mm(value.max), 'blank');
};

const SIXTY: readonly FormId[] = ['iso60', 'unj60', 'mj60', 'npt60'];

/** Wires usable on a 60° form, 0.56 to 0.90 of the pitch, mm. Handbook practice; other forms aren't judged. */
export const wireBounds = (sheet: Sheet): Bounds | null => {
  const chosen = sheet.get('chosen');
  const pitch = sheet.get('pitch').value;
  if (!chosen.value || !pitch) return notKnown(chosen.missing, 'chosen');
  const form = chosen.value.thread?.form;
  if (!form || !SIXTY.includes(form)) return null;
  return between(mul(leadHigh(pitch), ratio(56, 100)), mul(leadLow(pitch), ratio(90, 100)), 'pitch');
};

/** Torque asked for as a part of the pull-out torque at that speed: near beyond a half, over beyond all of it. */
export const torqueBounds = (): Bounds => ({ ...between(null, ratio(1)), closeFrom: ratio(1, 2) });

/** Nothing at all: a count at rest is a fault. */
export const noneBounds = (): Bounds => between(null, ratio(0));
