import { checkNumber, FIELDS, type MachineProfile } from '../../machine';
import { isAsked } from '../../machine/asked';
import {
  div,
  equal,
  inBase,
  isWhole,
  mul,
  ratio,
  read,
  stated,
  toNumber,
  type Ratio,
  type Stated,
} from '../../quantity';
import type { ChainField, Change } from './change';
import type { Steps } from './steps';
import {
  BELTS,
  EDGES,
  FULL_STEPS,
  LINES,
  MICROSTEPS,
  ODDS,
  PITCH_MM,
  PITCH_TPI,
  PULSES,
  STARTS,
} from './usual';

/** What kind of slip it is; the words are in text/faults. */
export type SlipKind =
  | 'value'
  | 'lines-as-edges'
  | 'unit'
  | 'swapped'
  | 'belt-forgotten'
  | 'belt-missing'
  | 'tooth'
  | 'pitch-for-lead'
  | 'lead-unit'
  | 'pi'
  | 'stand-in'
  | 'wheel'
  | 'turned'
  | 'backlash'
  | 'lost'
  | 'screw';

/** Entries that may be wrong together, in one slip. */
export interface Slip {
  readonly kind: SlipKind;
  readonly changes: readonly (Change & { field: ChainField; from: Stated; to: Stated })[];
  readonly odds: number;
}

const CLOSE = 0.15;
const close = (a: Stated, b: Stated): boolean =>
  Math.abs(Math.log(toNumber(div(inBase(a), inBase(b))))) < CLOSE;

type Put = (kind: SlipKind, odds: number, ...to: (readonly [ChainField, Stated])[]) => void;

const numbers = (
  m: MachineProfile,
  field: ChainField,
  put: Put,
  list: readonly number[],
  odds?: number,
): void => {
  const now = m[field];
  if (!now) return;
  for (const n of list) {
    const to = stated(ratio(n), now.unit);
    put('value', odds ?? (close(to, now) ? ODDS.close : ODDS.usual), [field, to]);
  }
};

const belt = (m: MachineProfile, driving: ChainField, driven: ChainField, put: Put): void => {
  const [a, b] = [m[driving], m[driven]];
  if (!a || !b) return;
  const one = stated(ratio(1), 'teeth');
  if (equal(a.value, b.value)) {
    for (const [x, y] of BELTS)
      put(
        'belt-missing',
        ODDS.beltMissing,
        [driving, stated(mul(a.value, x), 'teeth')],
        [driven, stated(mul(b.value, y), 'teeth')],
      );
    return;
  }
  put('swapped', ODDS.swapped, [driving, b], [driven, a]);
  put('belt-forgotten', ODDS.beltForgotten, [driving, one], [driven, one]);
  // A pulley of fewer teeth is no pulley but a ratio in lowest terms.
  for (const [field, z] of [
    [driving, a],
    [driven, b],
  ] as const)
    if (toNumber(z.value) >= 9)
      for (const by of [-1n, 1n])
        put('tooth', ODDS.tooth, [field, stated(ratio(z.value.n + by, z.value.d), 'teeth')]);
};

const exactly = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new RangeError(text);
  return r.value;
};

/**
 * Wheels that stand in for one of 127 teeth: 63/80 and 37/47 for 100/127 (handbook practice). What a ratio with 127 in
 * it is multiplied by; none without.
 */
export const standIns = (r: Ratio): readonly Ratio[] => {
  const below = [ratio(63 * 127, 80 * 100), ratio(37 * 127, 47 * 100)];
  if (r.d % 127n === 0n) return below;
  return r.n % 127n === 0n ? below.map((x) => div(1, x)) : [];
};

const screw = (m: MachineProfile, put: Put): void => {
  const now = m.screwPitch;
  if (!now) return;
  for (const unit of ['mm', 'tpi', 'in'] as const)
    if (unit !== now.unit) put('unit', ODDS.unit, ['screwPitch', stated(now.value, unit)]);
  for (const [list, unit] of [
    [PITCH_MM, 'mm'],
    [PITCH_TPI, 'tpi'],
  ] as const)
    for (const text of list) {
      const to = stated(exactly(text), unit);
      put('value', close(to, now) ? ODDS.close : ODDS.usual, ['screwPitch', to]);
    }
};

/**
 * Every plausible wrong entry of this profile: the encoder's edges and lines, belts, steps, screw. Each is a value that
 * the field's own check would take.
 */
export function* slipSteps(m: MachineProfile): Steps<readonly Slip[]> {
  const found = new Map<string, Slip>();
  const put: Put = (kind, odds, ...to) => {
    const changes = to.flatMap(([field, value]) => {
      const from = m[field];
      const other = from && !(from.unit === value.unit && equal(from.value, value.value));
      return other ? [{ field, from, to: value }] : [];
    });
    const key = changes.map((c) => `${c.field} ${c.to.value.n}/${c.to.value.d}${c.to.unit}`).join();
    const before = found.get(key);
    // Of two slips that come to the same, the commoner one names it.
    if (before && before.odds >= odds) return;
    const may = changes.every(
      ({ field, from, to: value }) =>
        isAsked(field, m) && checkNumber(FIELDS[field], value).ok && !equal(inBase(from), inBase(value)),
    );
    if (changes.length > 0 && may) found.set(key, { kind, changes, odds });
  };
  yield;
  const lines = m.encoderLines;
  numbers(m, 'edgesPerLine', put, EDGES, ODDS.edges);
  numbers(m, 'encoderLines', put, LINES);
  if (lines)
    for (const by of [ratio(4), ratio(1, 4)]) {
      const to = stated(mul(lines.value, by), 'lines');
      if (isWhole(to.value)) put('lines-as-edges', ODDS.linesAsEdges, ['encoderLines', to]);
    }
  yield;
  belt(m, 'spindlePulley', 'encoderPulley', put);
  numbers(m, 'fullSteps', put, FULL_STEPS);
  if (m.fullSteps)
    for (const by of [ratio(2), ratio(1, 2)])
      put('value', ODDS.close, ['fullSteps', stated(mul(m.fullSteps.value, by), 'steps')]);
  yield;
  numbers(m, 'microsteps', put, MICROSTEPS);
  numbers(m, 'servoPulses', put, PULSES);
  for (const field of ['microsteps', 'servoPulses'] as const) {
    const now = m[field];
    if (now)
      for (const by of [2, 4, 8].flatMap((k) => [ratio(k), ratio(1, k)]))
        put('value', ODDS.microsteps, [field, stated(mul(now.value, by), now.unit)]);
  }
  yield;
  belt(m, 'motorPulley', 'screwPulley', put);
  const box = m.gearboxRatio;
  if (box)
    for (const to of [ratio(1), ratio(2), ratio(1, 2), ratio(3), ratio(1, 3), ratio(4), div(1, box.value)])
      put('value', ODDS.gearbox, ['gearboxRatio', stated(to, 'times')]);
  if (box)
    for (const by of standIns(box.value))
      put('stand-in', ODDS.standIn, ['gearboxRatio', stated(mul(box.value, by), 'times')]);
  yield;
  belt(m, 'spindleWheel', 'shaftWheel', put);
  yield;
  screw(m, put);
  yield;
  numbers(m, 'screwStarts', put, STARTS, ODDS.starts);
  return [...found.values()];
}
