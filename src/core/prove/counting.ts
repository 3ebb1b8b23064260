import { abs, add, compare, div, mul, ratio, sub, ZERO, type Ratio } from '../quantity';
import { asked, choice, chose, count, figureOf, lacksOf, leadOf, mm, read, turns } from './given';
import { RULES } from './rules';
import { decision, lacking, notKnown, type Caution, type Given, type ProveTest } from './spec';
import { markCounts, MARKS, ppmOf, turnsFor, type MarkId } from './uncertainty';

const MARK = choice('mark', ['line', 'indicator'], 'line');
const markOf = (given: Given): Ratio => MARKS[chose(given, MARK) as MarkId];

/** By hand, with the spindle's motor made unable to start. */
const BY_HAND: readonly Caution[] = ['isolate-spindle', 'drive-live', 'tool-clear', 'nut-open'];

/** Turns by hand that a person can keep count of. */
const TURNS = asked('turns', ['turns'], '1', '10000', { whole: true, suggest: ['10', '25', '100'] });
const COUNTS = asked('counts', ['count'], '-100000000', '100000000', { whole: true });

/** A part of a million that counts are held to: finer than any screw (ISO 3408-3, grade 3 is 40 ppm). Own choice. */
const COUNTS_GOAL = ratio(10);

/** N spindle turns to the same mark: N × C counts, give or take what the mark resolves. */
export const counts: ProveTest = {
  id: 'counts',
  rule: RULES.counts,
  cautions: () => BY_HAND,
  choices: [MARK],
  readings: () => [TURNS, COUNTS],
  decide: (given) => {
    const per = figureOf(given, 'countsPerRev');
    if (!per.value) return notKnown(per.missing);
    const [n, got] = [read(given, 'turns'), read(given, 'counts')];
    const bound = markCounts(per.value, markOf(given));
    const expected = n && mul(n, per.value);
    const settles = turns(ratio(turnsFor(bound, per.value, COUNTS_GOAL)));
    const known = { expected: expected && count(expected), allowed: count(bound), settles };
    if (!n || !got || !expected) return lacking(lacksOf(given, [TURNS, COUNTS], []), known);
    const difference = sub(got, expected);
    const more = {
      ...known,
      measured: count(got),
      difference: count(difference),
      uncertainty: count(bound),
      ppm: ppmOf(difference, expected, bound),
    };
    if (compare(abs(difference), bound) <= 0) return decision('passed', 'counts-agree', more);
    // The other way round, but as many: two channels are swapped, and nothing else.
    const swapped = compare(abs(add(got, expected)), bound) <= 0;
    const points = swapped
      ? ['swap-channels']
      : ['lines-or-edges', 'encoder-pulleys', 'encoder-slips', 'missed-edges', 'miscounted-turns'];
    return decision('failed', swapped ? 'counts-backwards' : 'counts-differ', { ...more, points });
  },
};

const BACK_TURNS = asked('turns', ['turns'], '1', '10000', { whole: true, suggest: ['100'] });
/** Turns that show a count lost now and then. Common practice. */
const BACK_LEAST = 100;

/** Fast, slow and in reverse, and back to the mark: no count is left over. */
export const thereAndBack: ProveTest = {
  id: 'there-and-back',
  rule: RULES['there-and-back'],
  cautions: (given) => [
    'isolate-spindle',
    'tool-clear',
    'nut-open',
    'hands-clear',
    ...(given.sheet.inputs.machine.chuckMount === 'locked' ? [] : (['no-reverse'] as const)),
  ],
  choices: [MARK],
  readings: () => [BACK_TURNS, COUNTS],
  decide: (given) => {
    const per = figureOf(given, 'countsPerRev');
    if (!per.value) return notKnown(per.missing);
    const [n, got] = [read(given, 'turns'), read(given, 'counts')];
    const bound = markCounts(per.value, markOf(given));
    const known = { expected: count(ZERO), allowed: count(bound) };
    if (!n || !got) return lacking(lacksOf(given, [BACK_TURNS, COUNTS], []), known);
    const more = { ...known, measured: count(got), difference: count(got), uncertainty: count(bound) };
    if (compare(abs(got), bound) > 0)
      return decision('failed', 'counts-left', {
        ...more,
        points: ['noise', 'too-fast-for-counter', 'encoder-slips', 'phase-error'],
      });
    return compare(n, BACK_LEAST) < 0
      ? decision('undecided', 'too-few-turns', { ...more, settles: turns(ratio(BACK_LEAST)) })
      : decision('passed', 'counts-return', more);
  },
};

const INVERTER = choice('inverter', ['fitted', 'none']);
const DITHER = choice('dither', ['steady', 'one-count', 'more']);
const LEFT = { whole: true } as const;
const drifted = (id: string) => asked(id, ['count'], '-1000000', '1000000', LEFT);
const SWITCHED = drifted('switched');
const AT_SPEEDS = [drifted('low'), drifted('middle'), drifted('full'), SWITCHED];
const driftReadings = (given: Given) => (chose(given, INVERTER) === 'none' ? [SWITCHED] : AT_SPEEDS);

/**
 * The spindle stands still with its motor running and the drive enabled: not one count is gained or lost, and none is
 * shown but one to and fro. What a count would be on the carriage is said for the job's lead.
 */
export const drift: ProveTest = {
  id: 'drift',
  atLead: true,
  rule: RULES.drift,
  cautions: () => ['isolate', 'nothing-wedged', 'belt-guard', 'hands-clear', 'nut-open'],
  choices: [INVERTER, DITHER],
  readings: driftReadings,
  decide: (given) => {
    const list = driftReadings(given);
    const all = list.flatMap((r) => read(given, r.id) ?? []);
    const worst = all.reduce<Ratio>((m, x) => (compare(abs(x), abs(m)) > 0 ? x : m), ZERO);
    const measured = all.length > 0 ? count(worst) : null;
    const more = { expected: count(ZERO), allowed: count(ZERO), measured };
    const lost = compare(worst, 0) !== 0;
    if (lost || chose(given, DITHER) === 'more') {
      const onlySwitched = lost && list.every((r) => r === SWITCHED || !read(given, r.id)?.n);
      const points = onlySwitched
        ? ['contactors', 'screens']
        : ['screens', 'inverter-noise', 'encoder-supply'];
      const [lead, per] = [leadOf(given).value, figureOf(given, 'countsPerRev').value];
      const off = lead && per ? mm(div(mul(abs(worst), lead), per)) : null;
      return decision('failed', lost ? 'drifted' : 'dithers', { ...more, difference: off, points });
    }
    const lacks = lacksOf(given, list, [INVERTER, DITHER]);
    return lacks.length > 0 ? lacking(lacks, more) : decision('passed', 'no-drift', more);
  },
};

const SPINDLE = asked('spindle', ['turns'], '1', '10000', { whole: true });
const SCREW = asked('screw', ['turns'], '-10000', '10000');

/** Fewest spindle turns after which the screw has made whole turns too. */
const wholeTurns = (screwPerSpindle: Ratio): bigint => screwPerSpindle.d;

/** Most turns by hand that are proposed; above it the screw's own mark is read in parts of a turn. */
const BY_HAND_MOST = 200n;

/** Turns of the screw for N turns of the spindle, nut open: N × L ÷ Ls exactly, whatever the screw's own pitch error. */
export const screwTurns: ProveTest = {
  id: 'screw-turns',
  atLead: true,
  rule: RULES['screw-turns'],
  cautions: () => BY_HAND,
  choices: [MARK],
  readings: (given) => {
    const [lead, screw] = [leadOf(given).value, figureOf(given, 'screwLead').value];
    const whole = lead && screw ? wholeTurns(div(lead, screw)) : null;
    return [whole && whole <= BY_HAND_MOST ? { ...SPINDLE, suggest: [`${whole}`] } : SPINDLE, SCREW];
  },
  decide: (given) => {
    const [lead, screw] = [leadOf(given), figureOf(given, 'screwLead')];
    if (!lead.value || !screw.value) return notKnown([...lead.missing, ...screw.missing]);
    const each = div(lead.value, screw.value);
    const [n, got] = [read(given, 'spindle'), read(given, 'screw')];
    // The spindle's mark turns the screw along, and the screw has a mark of its own.
    const bound = mul(markOf(given), add(each, 1));
    const expected = n && mul(n, each);
    const known = { expected: expected && turns(expected), allowed: turns(bound) };
    if (!n || !got || !expected) return lacking(lacksOf(given, [SPINDLE, SCREW], []), known);
    const difference = sub(got, expected);
    const more = {
      ...known,
      measured: turns(got),
      difference: turns(difference),
      uncertainty: turns(bound),
      ppm: ppmOf(difference, expected, bound),
    };
    if (compare(abs(difference), bound) <= 0) return decision('passed', 'turns-agree', more);
    const off = ['ratio-set', 'microsteps', 'motor-pulleys', 'lead-for-pitch', 'lost-steps'];
    return decision('failed', 'turns-differ', { ...more, points: off });
  },
};
