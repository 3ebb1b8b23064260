import {
  amplifiesTo,
  corner,
  crossing,
  dampingFor,
  gain,
  harmonics,
  idealGain,
  insertionLoss,
  peak,
  STATED_PAIRS,
} from '../filter';
import type { Standing } from '../../figures/standing';
import { Sum, type NoiseGiven, type Worked } from './sum';

/** From a tenth passed on, a filter hardly does anything: a rule of our own. dB. */
const HARDLY = -20;

const standingOfGain = (db: number): Standing => (db > 0 ? 'over' : db > HARDLY ? 'near' : 'within');

/** A coil and a capacitor in a supply, and what they leave of an inverter's carrier. */
export const lowPass = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const inductance = sum.need('inductance');
  const capacitance = sum.need('capacitance');
  const source = sum.need('source');
  const load = sum.need('load');
  const carrier = sum.need('carrier');
  const coil = sum.may('coil');
  const [r, c] = [sum.may('dampResistance'), sum.may('dampCapacitance')];
  // One alone damps nothing.
  if ((r === null) !== (c === null)) sum.lacks(c === null ? 'dampCapacitance' : 'dampResistance');
  if (inductance === null || capacitance === null) return sum.done();

  const f0 = corner(inductance, capacitance);
  const damping = r !== null && c !== null ? { resistance: r, capacitance: c } : null;
  const part =
    source !== null && load !== null
      ? { inductance, capacitance, source, load, coil: coil ?? 0, damping }
      : null;
  const marks = carrier === null ? [] : harmonics(carrier);
  sum.line('corner', f0, 'Hz');
  if (part) {
    const top = peak(part);
    const upTo = crossing(part);
    if (upTo === null) sum.note('never');
    else sum.line('amplifies', upTo, 'Hz', { round: 'up' });
    sum.line('peak', top.db, 'dB', { at: top.f });
    if (coil === null) sum.note('coil');
  } else sum.line('amplifies-ideal', amplifiesTo(f0), 'Hz', { round: 'up' });

  const [first, ...multiples] = marks;
  if (first !== undefined) {
    sum.line('carrier-ideal', idealGain(first, f0), 'dB', { at: first });
    const line = (code: string, at: number): void => {
      const db = part && gain(at, part);
      sum.line(code, db, 'dB', { at, standing: db === null ? 'unknown' : standingOfGain(db) });
    };
    line('carrier', first);
    if (part) {
      line(
        'multiple',
        multiples.reduce((a, b) => (gain(b, part) > gain(a, part) ? b : a)),
      );
      for (const pair of STATED_PAIRS)
        sum.line(`loss-${pair}`, insertionLoss(first, part, pair), 'dB', { at: first });
    }
  }
  const advice = dampingFor(inductance, capacitance);
  sum.line('damp-resistance', advice.resistance, 'ohm');
  sum.line('damp-capacitance', advice.capacitance, 'F', { round: 'up' });
  if (part && !damping) sum.line('damped', peak({ ...part, damping: advice }).db, 'dB');
  return { ...sum.done(), shape: { f0, part, marks } };
};
