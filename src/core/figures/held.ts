import { bestFraction } from '../drive';
import { mul, PI_HIGH, PI_LOW, ppm, ratio, add, div, type Lead, type Ratio } from '../quantity';
import { define, withheld } from './define';
import type { Standing } from './standing';
import { heldByTrain } from './train';
import { approx, exact, type Term } from './why';

/**
 * An inexact ratio finer than this is called close, a coarser one too much: 20 ppm, 6 µm in 300 mm, the finest
 * grade of ball screw. ISO 3408-3 grade 1 (from memory).
 */
export const HELD_LIMIT_PPM = 20;

const target = (r: Lead): Ratio => (r.pi ? mul(r.mm, div(add(PI_LOW, PI_HIGH), 2)) : r.mm);

/** What the controller really holds: the exact fraction if it fits, else the nearest that does, with its error. */
export const ratioHeld = define({
  reads: ['machine.driveKind', 'machine.ratioHeld', 'machine.ratioTopMax', 'machine.ratioBottomMax'],
  uses: ['stepsPerCount', 'lead', 'train'],
  rule: 1,
  compute: (ask) => {
    if (ask.input('machine.driveKind') === 'change-gears')
      return heldByTrain(ask.figure('lead'), ask.figure('train'));
    const r = ask.figure('stepsPerCount');
    const way = ask.input('machine.ratioHeld');
    const top = ask.input('machine.ratioTopMax');
    const bottom = ask.input('machine.ratioBottomMax');
    const terms: Record<string, Term> = {
      ratio: { amount: r.value && exact(r.value.mm, 'steps/count', r.value.pi), from: 'stepsPerCount' },
      top: { amount: top && exact(top.value, 'count'), from: 'machine.ratioTopMax' },
      bottom: { amount: bottom && exact(bottom.value, 'count'), from: 'machine.ratioBottomMax' },
    };
    if (way !== 'integers')
      return withheld(
        'ratioHeld',
        'bestFraction',
        ['machine.ratioHeld'],
        terms,
        way === 'other' ? ['held-other'] : [],
      );
    if (!r.value || !top || !bottom)
      return withheld(
        'ratioHeld',
        'bestFraction',
        [
          ...r.missing,
          ...(top ? [] : (['machine.ratioTopMax'] as const)),
          ...(bottom ? [] : (['machine.ratioBottomMax'] as const)),
        ],
        terms,
      );
    const held = bestFraction(target(r.value), top.value.n, bottom.value.n);
    if (!held)
      return { ...withheld('ratioHeld', 'bestFraction', [], terms, ['held-nothing']), standing: 'over' };
    const isExact = held.exact && !r.value.pi;
    const error = isExact ? 0 : ppm(ratio(held.top, held.bottom), r.value.mm, r.value.pi);
    const standing: Standing = isExact ? 'within' : Math.abs(error) <= HELD_LIMIT_PPM ? 'near' : 'over';
    return {
      value: { exact: isExact, held, ppm: error },
      standing,
      missing: [],
      why: {
        formula: 'ratioHeld',
        terms: { ...terms, error: { amount: approx(error, 'ppm'), from: 'stepsPerCount' } },
        result: exact(ratio(held.top, held.bottom), 'steps/count'),
        source: 'bestFraction',
        notes: isExact ? ['held-exact'] : ['held-near'],
      },
    };
  },
});
