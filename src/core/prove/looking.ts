import { chose, choice, lacksOf, asked, read } from './given';
import { RULES } from './rules';
import { decision, lacking, type Given, type ProveTest } from './spec';
import { compare } from '../quantity';

const OK = ['ok', 'not-ok'] as const;
const LOOKED = ['tension', 'screws', 'teeth', 'nut-free', 'end-play'].map((id) => choice(id, OK));

/** Before anything is switched on. Common practice. */
export const lookOver: ProveTest = {
  id: 'look-over',
  rule: RULES['look-over'],
  cautions: () => ['isolate'],
  choices: LOOKED,
  readings: () => [],
  decide: (given) => {
    const bad = LOOKED.filter((c) => chose(given, c) === 'not-ok').map((c) => c.id);
    if (bad.length > 0) return decision('failed', 'seen-not-ok', { points: bad });
    const lacks = lacksOf(given, [], LOOKED);
    return lacks.length > 0 ? lacking(lacks) : decision('passed', 'seen-ok');
  },
};

const COUNTS_GO = choice('counts-go', ['up', 'down', 'nowhere']);
const CARRIAGE_GOES = choice('carriage-goes', ['to-headstock', 'to-tailstock', 'nowhere']);

const astray = (counts: string, carriage: string): readonly string[] => {
  const points: string[] = [];
  if (counts === 'nowhere') points.push('no-counts');
  if (counts === 'down') points.push('swap-channels');
  // Counts the wrong way round turn the carriage round as well: then the motor's own sense is right.
  const turned = counts === 'down' ? 'to-headstock' : 'to-tailstock';
  if (carriage === turned) points.push('turn-motor');
  if (carriage === 'nowhere' && counts !== 'nowhere') points.push('not-enabled');
  return points;
};

/** Forward by hand: the count rises, and for a right-hand thread the carriage goes towards the headstock. */
export const direction: ProveTest = {
  id: 'direction',
  rule: RULES.direction,
  cautions: () => ['isolate-spindle', 'drive-live', 'hands-clear', 'tool-clear'],
  choices: [COUNTS_GO, CARRIAGE_GOES],
  readings: () => [],
  decide: (given) => {
    const [counts, carriage] = [chose(given, COUNTS_GO), chose(given, CARRIAGE_GOES)];
    if (!counts || !carriage) return lacking(lacksOf(given, [], [COUNTS_GO, CARRIAGE_GOES]));
    return counts === 'up' && carriage === 'to-headstock'
      ? decision('passed', 'direction-right')
      : decision('failed', 'direction-wrong', { points: astray(counts, carriage) });
  },
};

/** Openings and closings of the nut that a test of picking up takes. Common practice. */
const RE_ENTRIES = 10;
const LINE = choice('line', ['one', 'more']);
const TIMES = asked('times', ['count'], '1', '1000', { whole: true, suggest: ['10'] });

/** A scratch picked up again and again by the rule for closing the nut: one line or more. */
export const reEntry: ProveTest = {
  id: 're-entry',
  atLead: true,
  rule: RULES['re-entry'],
  cautions: () => ['hands-clear', 'low-speed', 'hand-on-stop'],
  choices: [LINE],
  readings: () => [TIMES],
  decide: (given: Given) => {
    const line = chose(given, LINE);
    if (line === 'more') {
      const points = ['dial-rule', 'dial-mesh', 'nut-not-home', 'ratio-not-exact', 'lost-steps'];
      return decision('failed', 'lines-apart', { points });
    }
    const lacks = lacksOf(given, [TIMES], [LINE]);
    const times = read(given, 'times');
    if (lacks.length > 0 || !times) return lacking(lacks);
    return compare(times, RE_ENTRIES) < 0
      ? decision('undecided', 'too-few-times')
      : decision('passed', 'one-line');
  },
};
