import {
  abs,
  add,
  compare,
  inBase,
  lead,
  isPositive,
  max,
  mul,
  stated,
  sub,
  ZERO,
  type Ratio,
  type Stated,
} from '../quantity';
import { checkNumber, FIELDS } from '../machine';
import { DUMMY_RUNS, wholeTime } from '../cut/stop';
import {
  ACCURACY,
  asked,
  choice,
  chose,
  figureOf,
  INSTRUMENT,
  lacksOf,
  leadOf,
  least,
  mm,
  most,
  read,
  STEP,
  turns,
  uncertaintyOf,
} from './given';
import { RULES } from './rules';
import {
  decision,
  lacking,
  notKnown,
  type Asked,
  type Caution,
  type Decision,
  type Given,
  type SetField,
  type ProveTest,
} from './spec';
import type { InstrumentId } from './uncertainty';

const LENGTH_UNITS = ['mm', 'in'] as const;
const PLACES = ['head', 'middle', 'tail'].map((id) => asked(id, LENGTH_UNITS, '0', '5'));

/** What a test measures of the machine is entered with its record, unless it stands there already. */
const setting = (given: Given, field: SetField, value: Stated): Pick<Decision, 'sets'> => {
  const now = given.sheet.inputs.machine[field];
  const same = now !== null && now.unit === value.unit && compare(now.value, value.value) === 0;
  return { sets: same ? null : { field, value } };
};
const longer = (given: Given, field: SetField, value: Ratio): readonly string[] => {
  const now = given.sheet.inputs.machine[field];
  return now && compare(value, inBase(now)) > 0 ? ['more-than-entered'] : [];
};

/** The lost motion of screw, nut and belts at three places along the bed; the largest is the machine's. */
export const backlash: ProveTest = {
  id: 'backlash',
  rule: RULES.backlash,
  measures: true,
  cautions: () => ['isolate-spindle', 'hands-clear', 'tool-clear'],
  choices: [INSTRUMENT],
  readings: () => [...PLACES, STEP, ACCURACY],
  decide: (given) => {
    const all = PLACES.flatMap((p) => read(given, p.id) ?? []);
    const [high, low] = [most(all), least(all)];
    const instrument = chose(given, INSTRUMENT) as InstrumentId | null;
    const u = instrument && uncertaintyOf(given, instrument);
    if (all.length < PLACES.length || !high || !low || !u)
      return lacking(lacksOf(given, PLACES, [INSTRUMENT]), { uncertainty: u && mm(u) });
    const spread = sub(high, low);
    const more = { measured: mm(high), difference: mm(spread), uncertainty: mm(u) };
    if (compare(u, high) > 0 && isPositive(high)) return decision('undecided', 'too-coarse', more);
    // A nut or a stretch of screw that is worn shows as places that differ by more than the readings can.
    const points = [...longer(given, 'backlash', high), ...(compare(spread, u) > 0 ? ['uneven-wear'] : [])];
    return decision('passed', 'measured', {
      ...more,
      points,
      ...setting(given, 'backlash', stated(high, 'mm')),
    });
  },
};

/** Times there and back. Common practice. */
const CYCLES = 20;
const CYCLE = asked('cycles', ['count'], '1', '1000', { whole: true, suggest: ['20'] });
const SPREAD = asked('spread', LENGTH_UNITS, '0', '10');
const RPM = asked('rpm', ['rpm'], '1', '20000');

/** A stepper that loses its place does so by four full steps, one cycle of its currents, or a multiple. Own derivation. */
const jumpOf = (given: Given, step: Ratio): Ratio | null => {
  const { motorKind, microsteps } = given.sheet.inputs.machine;
  return motorKind === 'stepper' && microsteps ? mul(step, microsteps.value, 4) : null;
};

/** Spread of a stop come back to: two steps, and what the readings can't tell. */
const spreadJudged = (given: Given, spread: Ratio, u: Ratio, step: Ratio): Decision => {
  const allowed = add(mul(step, 2), u);
  const more = { expected: mm(ZERO), measured: mm(spread), allowed: mm(allowed), uncertainty: mm(u) };
  if (compare(abs(spread), allowed) > 0)
    return decision('failed', 'not-repeated', {
      ...more,
      points: ['lost-steps', 'pulse-timing', 'belt-slips', 'nut-not-home', 'noise'],
    });
  const jump = jumpOf(given, step);
  return jump && compare(u, jump) > 0
    ? decision('undecided', 'too-coarse-for-jump', { ...more, difference: mm(jump) })
    : decision('passed', 'repeated', more);
};

const repeatList = [CYCLE, RPM, SPREAD, STEP, ACCURACY];

/** Go and return at thread speed against a dial indicator. */
export const repeat: ProveTest = {
  id: 'repeat',
  rule: RULES.repeat,
  cautions: () => ['hands-clear', 'tool-clear', 'hand-on-stop'],
  choices: [INSTRUMENT],
  readings: () => repeatList,
  decide: (given) => {
    const step = figureOf(given, 'stepOnCarriage');
    if (!step.value) return notKnown(step.missing);
    const instrument = chose(given, INSTRUMENT) as InstrumentId | null;
    const [n, spread] = [read(given, 'cycles'), read(given, 'spread')];
    const lacks = lacksOf(given, repeatList, [INSTRUMENT]);
    if (!instrument || !n || !spread || lacks.length > 0) return lacking(lacks);
    const judged = spreadJudged(given, spread, uncertaintyOf(given, instrument), step.value);
    return judged.result === 'passed' && compare(n, CYCLES) < 0
      ? { ...judged, result: 'undecided', code: 'too-few-times' }
      : judged;
  },
};

const KEPT = ['kept', 'lost'] as const;
const START = choice('start', KEPT);
const STOP = choice('stop', KEPT);
const REVERSE = choice('reverse', [...KEPT, 'not-used']);
const rampList = [RPM, SPREAD, STEP, ACCURACY];

/** The fastest start, stop and reverse that the spindle has, at the highest speed to be used; then back to the indicator. */
export const ramp: ProveTest = {
  id: 'ramp',
  atLead: true,
  rule: RULES.ramp,
  cautions: (given): readonly Caution[] => [
    'hands-clear',
    'tool-clear',
    'hand-on-stop',
    ...(given.sheet.inputs.machine.chuckMount === 'locked' ? [] : (['no-reverse'] as const)),
  ],
  choices: [START, STOP, REVERSE, INSTRUMENT],
  readings: () => rampList,
  decide: (given) => {
    const [step, ofJob] = [figureOf(given, 'stepOnCarriage'), leadOf(given)];
    if (!step.value || !ofJob.value) return notKnown([...step.missing, ...ofJob.missing]);
    const lost = [START, STOP, REVERSE].filter((c) => chose(given, c) === 'lost').map((c) => c.id);
    const rpm = read(given, 'rpm');
    if (lost.length > 0 && rpm)
      return decision('failed', 'ramp-lost', {
        points: ['torque', 'pulse-timing', 'ramp-too-fast', 'lost-steps'],
      });
    const lacks = lacksOf(given, rampList, [START, STOP, REVERSE, INSTRUMENT]);
    const spread = read(given, 'spread');
    const instrument = chose(given, INSTRUMENT) as InstrumentId | null;
    if (lacks.length > 0 || !rpm || !spread || !instrument) return lacking(lacks);
    const judged = spreadJudged(given, spread, uncertaintyOf(given, instrument), step.value);
    return judged.result === 'passed' ? { ...judged, code: 'ramp-kept' } : judged;
  },
};

const RUNS: readonly Asked[] = Array.from({ length: DUMMY_RUNS }, (_, i) =>
  asked(`run-${i + 1}`, LENGTH_UNITS, '0.01', '500'),
);

/** Whole time from the mark to the carriage standing still, by the longest overrun of ten dummy runs. */
export const stoppingTime: ProveTest = {
  id: 'stopping-time',
  atLead: true,
  rule: RULES['stopping-time'],
  measures: true,
  cautions: () => ['tool-clear', 'hands-clear', 'low-speed', 'hand-on-stop'],
  choices: [],
  readings: () => [RPM, ...RUNS],
  decide: (given) => {
    const ranAt = leadOf(given);
    if (!ranAt.value) return notKnown(ranAt.missing);
    const rpm = read(given, 'rpm');
    const all = RUNS.flatMap((r) => read(given, r.id) ?? []);
    const longest = most(all);
    const time = rpm && wholeTime(all, lead(ranAt.value), rpm);
    const more = {
      measured: time && { value: time, unit: 's' as const },
      difference: longest && mm(longest),
    };
    const lacks = lacksOf(given, [RPM, ...RUNS], []);
    if (lacks.length > 0 || !time) return lacking(lacks, more);
    const value = stated(time, 's');
    if (!checkNumber(FIELDS.wholeStopTime, value).ok) return decision('failed', 'out-of-range', more);
    const points = longer(given, 'wholeStopTime', time);
    return decision('passed', 'measured', { ...more, points, ...setting(given, 'wholeStopTime', value) });
  },
};

const COASTS = [1, 2, 3].map((n) => asked(`coast-${n}`, ['turns'], '0', '1000'));

/** Turns that the spindle makes after its power is cut at the highest threading speed: the most of three. */
export const coast: ProveTest = {
  id: 'coast',
  atLead: true,
  rule: RULES.coast,
  measures: true,
  cautions: () => ['hands-clear', 'tool-clear', 'nut-open'],
  choices: [],
  readings: () => [RPM, ...COASTS],
  decide: (given) => {
    const all = COASTS.flatMap((c) => read(given, c.id) ?? []);
    const lacks = lacksOf(given, [RPM, ...COASTS], []);
    const [first, ...rest] = all;
    const high = first && max(first, ...rest);
    if (lacks.length > 0 || !high) return lacking(lacks, { measured: high ? turns(high) : null });
    const perTurn = leadOf(given).value;
    const more = { measured: turns(high), difference: perTurn && mm(mul(high, perTurn)) };
    const value = stated(high, 'turns');
    return decision('passed', 'measured', {
      ...more,
      points: longer(given, 'coast', high),
      ...setting(given, 'coast', value),
    });
  },
};
