import type { MachineProfile } from '../../machine';
import { toNumber } from '../../quantity';
import { BACKLASH, backlashOf, LOST, SCREW, type Cause } from './causes';
import type { FaultTest } from './reading';
import { ODDS } from './usual';

/** What one hypothesis says that a test shows: measured ÷ expected (`back`: mm), give or take `spread`. */
export interface Says {
  readonly mean: number;
  readonly spread: number;
}
export interface Hypothesis {
  /** One slip, or two at once; empty: nothing is wrong, or something that isn't on the list. */
  readonly causes: readonly Cause[];
  readonly odds: number;
  readonly says: (test: FaultTest, length: number) => Says;
}

const exactly = (mean: number): Says => ({ mean, spread: 0 });

/** What a wrong entry says: its factor in each test, and nothing left over there and back. */
export const byRatio = (counts: number, screw: number, carriage: number): Hypothesis['says'] => {
  const of = { counts, screw, carriage, travel: screw * carriage, back: 0 };
  return (test) => exactly(of[test]);
};

/** Lost motion where the profile doesn't say it, mm (common practice). */
const SLACK = { mean: 0.2, spread: 0.15 };
/** How true a leadscrew is: 0.05 mm in 300, give or take (common practice). */
const SCREW_ERROR = 2e-4;
/** Steps that get lost, or a slip: some per cent of a travel, some tenths of a millimetre there and back. */
const LOSS = { ratio: 0.05, mm: 0.5 };

/** What is no ratio, and what isn't on the list. */
export const others = (m: MachineProfile): Hypothesis[] => {
  const known = backlashOf(m);
  const slack = known ? { mean: toNumber(known), spread: 0.3 * toNumber(known) + 0.01 } : SLACK;
  const one = exactly(1);
  return [
    {
      causes: [BACKLASH],
      odds: BACKLASH.odds,
      says: (test, length) =>
        test === 'back'
          ? slack
          : length > 0
            ? { mean: 1 - slack.mean / length, spread: slack.spread / length }
            : one,
    },
    {
      causes: [LOST],
      odds: LOST.odds,
      says: (test) =>
        test === 'back'
          ? { mean: 0, spread: LOSS.mm }
          : test === 'carriage'
            ? one
            : { mean: 1, spread: test === 'counts' ? LOSS.ratio / 10 : LOSS.ratio },
    },
    {
      causes: [SCREW],
      odds: SCREW.odds,
      says: (test, length) =>
        test === 'back' ? exactly(0) : length > 0 ? { mean: 1, spread: SCREW_ERROR } : one,
    },
    { causes: [], odds: ODDS.other, says: () => ({ mean: 1, spread: 1 }) },
  ];
};
