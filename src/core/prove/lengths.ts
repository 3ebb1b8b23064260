import { abs, add, compare, div, mul, ratio, sub, type Ratio } from '../quantity';
import type { InputPath } from '../context';
import {
  ACCURACY,
  asked,
  choice,
  chose,
  figureOf,
  INSTRUMENT,
  lacksOf,
  leadOf,
  mm,
  read,
  REPEATS,
  STEP,
  uncertaintyOf,
} from './given';
import { testNow } from './record';
import { RULES } from './rules';
import { decision, lacking, notKnown, type Choice, type Decision, type Given, type ProveTest } from './spec';
import { GAUGE_BLADE, INSTRUMENTS, ppmOf, travelFor, type InstrumentId } from './uncertainty';

/**
 * How good a lead is good enough, ppm: ball screws of ISO 3408-3 (grade 5: 23 µm in 300 mm, 77; grade 7: 173), a lathe's
 * own leadscrew (ISO 1708, 0.04 mm in 300 mm, from memory: 133), rolled trapezoidal screws (makers' data: 500), an
 * ordinary fastening thread (1000).
 */
export const GOALS = ['80', '130', '200', '500', '1000'] as const;
const goal = (usual: (typeof GOALS)[number]) => choice('goal', GOALS, usual);

const TRAVEL = asked('travel', ['mm', 'in'], '0.01', '10000');

/**
 * A length against what it should be. Failed: further off than goal and uncertainty together can explain. Passed: inside,
 * by readings that can tell the goal from nothing. Else undecided, with the travel that would settle it (ℓ ≥ U ÷ p).
 */
const judge = (part: {
  readonly expected: Ratio;
  readonly got: Ratio;
  readonly u: Ratio;
  readonly goal: Ratio;
}): Omit<Decision, 'code'> & { readonly code: 'length-agrees' | 'length-differs' | 'too-coarse' } => {
  const { expected, got, u } = part;
  const allowed = add(div(mul(expected, part.goal), 1_000_000), u);
  const difference = sub(got, expected);
  const more = {
    expected: mm(expected),
    measured: mm(got),
    difference: mm(difference),
    allowed: mm(allowed),
    uncertainty: mm(u),
    ppm: ppmOf(difference, expected, u),
    settles: mm(travelFor(u, part.goal)),
  };
  const make = (result: Decision['result'], code: 'length-agrees' | 'length-differs' | 'too-coarse') => ({
    ...decision(result, code, more),
    code,
  });
  if (compare(abs(difference), allowed) > 0) return make('failed', 'length-differs');
  return compare(u, div(mul(expected, part.goal), 1_000_000)) > 0
    ? make('undecided', 'too-coarse')
    : make('passed', 'length-agrees');
};

/** One measured travel against so many turns at so much each. */
const travelTest = (
  def: Pick<ProveTest, 'id' | 'cautions' | 'atLead'> & {
    readonly usualGoal: (typeof GOALS)[number];
    readonly each: (given: Given) => { readonly value: Ratio | null; readonly missing: readonly InputPath[] };
    readonly points: (given: Given) => readonly string[];
    readonly passes?: (given: Given) => string;
  },
): ProveTest => {
  const GOAL = goal(def.usualGoal);
  const N = asked('turns', ['turns'], '0.01', '100000');
  const list = [N, TRAVEL, STEP, ACCURACY, REPEATS];
  return {
    id: def.id,
    rule: RULES[def.id],
    ...(def.atLead ? { atLead: true } : {}),
    cautions: def.cautions,
    choices: [INSTRUMENT, GOAL],
    readings: () => list,
    decide: (given) => {
      const each = def.each(given);
      if (!each.value) return notKnown(each.missing);
      const instrument = chose(given, INSTRUMENT) as InstrumentId | null;
      const u = instrument && uncertaintyOf(given, instrument);
      const ppm = ratio(BigInt(chose(given, GOAL) ?? def.usualGoal));
      const [n, got] = [read(given, 'turns'), read(given, 'travel')];
      const expected = n && mul(n, each.value);
      if (!u || !expected || !got)
        return lacking(lacksOf(given, list, [INSTRUMENT]), {
          expected: expected && mm(expected),
          uncertainty: u && mm(u),
          settles: u && mm(travelFor(u, ppm)),
        });
      const judged = judge({ expected, got, u, goal: ppm });
      if (judged.result === 'failed') return { ...judged, points: def.points(given) };
      return judged.result === 'passed' && def.passes ? { ...judged, code: def.passes(given) } : judged;
    },
  };
};

/** Counts and screw turns both recorded as right: the ratio is exact, and what a travel still measures is the screw. */
export const ratioProven = ({ sheet: { inputs } }: Given): boolean =>
  (['counts', 'screw-turns'] as const).every((id) => testNow(inputs, id, RULES[id]).code === 'passed');

/** Carriage per screw turn, nut closed: the screw's lead, by itself. */
export const screwTravel = travelTest({
  id: 'screw-travel',
  cautions: () => ['isolate-spindle', 'hands-clear', 'tool-clear'],
  usualGoal: '500',
  each: (given) => figureOf(given, 'screwLead'),
  points: () => ['screw-mm-inch', 'screw-starts', 'screw-pitch', 'backlash-in-reading', 'miscounted-turns'],
});

/** Commanded against measured travel, in one direction after the take-up. */
export const travel = travelTest({
  id: 'travel',
  atLead: true,
  cautions: () => ['hands-clear', 'tool-clear', 'low-speed', 'hand-on-stop'],
  usualGoal: '200',
  each: leadOf,
  points: (given) =>
    ratioProven(given)
      ? ['screw-itself', 'screw-mm-inch', 'backlash-in-reading']
      : ['finder', 'backlash-in-reading'],
  passes: (given) => (ratioProven(given) ? 'screw-agrees' : 'length-agrees'),
});

const GAUGED = choice('instrument', INSTRUMENTS);
const FITS: Choice = { ...choice('fits', ['yes', 'no']), when: ['instrument', 'pitch-gauge'] };
const PITCHES = asked('pitches', ['count'], '1', '1000', { whole: true, suggest: ['10', '20'] });
const LENGTH = asked('travel', ['mm', 'in'], '0.01', '2000');
const byGauge = (given: Given): boolean => chose(given, GAUGED) === 'pitch-gauge';
const SCRATCH_GOAL = ratio(1000);

/**
 * The whole chain on scrap: a light scratch over N turns, measured. Its goal is that of an ordinary thread, 1000 ppm; a
 * pitch gauge tells the right thread from its neighbours and nothing finer.
 */
export const scratch: ProveTest = {
  id: 'scratch',
  atLead: true,
  rule: RULES.scratch,
  cautions: () => ['hands-clear', 'low-speed', 'hand-on-stop'],
  choices: [GAUGED, FITS],
  readings: (given) => (byGauge(given) ? [] : [PITCHES, LENGTH, STEP, ACCURACY, REPEATS]),
  decide: (given) => {
    const lead = leadOf(given);
    if (!lead.value) return notKnown(lead.missing);
    const points = ['finder', 'wrong-thread', 'lost-steps'];
    const instrument = chose(given, GAUGED) as InstrumentId | null;
    if (byGauge(given)) {
      const u = uncertaintyOf(given, 'pitch-gauge');
      const fits = chose(given, FITS);
      const more = { expected: mm(lead.value), ppm: ppmOf(ratio(0), GAUGE_BLADE, u) };
      if (!fits) return lacking(['fits'], more);
      return fits === 'yes'
        ? decision('passed', 'gauge-fits', more)
        : decision('failed', 'gauge-differs', { ...more, points });
    }
    const u = instrument && uncertaintyOf(given, instrument);
    const [n, got] = [read(given, 'pitches'), read(given, 'travel')];
    const expected = n && mul(n, lead.value);
    if (!u || !expected || !got)
      return lacking([...(instrument ? [] : ['instrument']), ...lacksOf(given, [PITCHES, LENGTH], [])], {
        expected: expected && mm(expected),
        settles: u && mm(travelFor(u, SCRATCH_GOAL)),
      });
    const judged = judge({ expected, got, u, goal: SCRATCH_GOAL });
    return judged.result === 'failed' ? { ...judged, points } : judged;
  },
};
