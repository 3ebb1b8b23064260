import { commonModeCurrent, tailReactance } from '../common-mode';
import { made, Sum, type NoiseGiven, type Worked } from './sum';

/** What an inverter's edges drive through stray capacitance, and what a screen's tail opposes to it. */
export const commonMode = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  sum.line('current', made(commonModeCurrent, sum.need('stray'), sum.need('slew')), 'A', { round: 'up' });
  const [tail, f] = [sum.may('tail'), sum.may('ringing')];
  if (tail !== null && f !== null)
    sum.line('tail', tailReactance(tail / 1000, f), 'ohm', { at: f, round: 'up' });
  return sum.done(false);
};
