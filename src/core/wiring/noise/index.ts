import { commonMode } from './common-mode';
import type { NoiseName } from './fields';
import { inputFilter } from './input';
import { lowPass } from './low-pass';
import { pullUp } from './pull-up';
import { reach } from './reach';
import { SIZES, supply } from './supply';
import type { NoiseGiven, Worked } from './sum';

export * from './fields';
export { SIZES } from './supply';
export type { AmountUnit, Line, LowPassShape, Missing, NoiseGiven, Worked } from './sum';

export const SUMS = ['reach', 'pull-up', 'input', 'supply', 'common-mode', 'low-pass'] as const;
export type SumId = (typeof SUMS)[number];

interface Calculation {
  /** What it asks for, in the order in which it is asked. */
  readonly asks: readonly NoiseName[];
  readonly work: (given: NoiseGiven) => Worked;
}

/** What can be worked out about cables and noise, most asked first. */
export const CALCULATIONS: Readonly<Record<SumId, Calculation>> = {
  reach: { asks: ['length', 'rpm'], work: reach },
  'pull-up': {
    asks: ['pullUp', 'length', 'perMetre', 'inputCapacitance', 'threshold', 'pullVolts', 'sink', 'rpm'],
    work: pullUp,
  },
  input: { asks: ['filterTime', 'noiseTime', 'rpm'], work: inputFilter },
  supply: { asks: ['volts', 'least', 'draw', 'length', ...SIZES], work: supply },
  'common-mode': { asks: ['stray', 'slew', 'tail', 'ringing'], work: commonMode },
  'low-pass': {
    asks: [
      'inductance',
      'capacitance',
      'carrier',
      'source',
      'load',
      'coil',
      'dampResistance',
      'dampCapacitance',
    ],
    work: lowPass,
  },
};
