import {
  cornerOf,
  DELAY_SHARE,
  delayTo,
  largestPullUp,
  riseTime,
  sinkCurrent,
  smallestPullUp,
  timeConstant,
} from '../open-collector';
import { made, standingAt, Sum, type NoiseGiven, type Worked } from './sum';

/** An open collector: how late its rising edge comes, and which pull-up would do. */
export const pullUp = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const resistance = sum.need('pullUp');
  const perMetre = sum.need('perMetre');
  const length = sum.length();
  const input = sum.need('inputCapacitance');
  const threshold = sum.need('threshold');
  const gap = sum.gap();
  const volts = sum.need('pullVolts');
  const rated = sum.need('sink');

  // What one ohm makes of the cable: its capacitance.
  const capacitance = made((c, l, i) => timeConstant(1, c, l, i), perMetre, length, input);
  const tau = made((r, c) => r * c, resistance, capacitance);
  const delay = made(delayTo, tau, threshold);
  sum.line('delay', delay, 's', { round: 'up', standing: sum.inGap(delay, gap, DELAY_SHARE) });
  const most = gap && gap.least * DELAY_SHARE;
  sum.line(gap?.sure === false ? 'delay-most-best' : 'delay-most', most, 's', { round: 'down' });
  sum.line('tau', tau, 's');
  sum.line('rise', made(riseTime, tau), 's', { round: 'up' });
  sum.line('rc-corner', made(cornerOf, tau), 'Hz', { round: 'down' });
  const sunk = made(sinkCurrent, volts, resistance);
  sum.line('sunk', sunk, 'A', { round: 'up', standing: standingAt(sunk, rated) });
  const largest = made(largestPullUp, most, capacitance, threshold);
  const smallest = made(smallestPullUp, volts, rated);
  sum.line('largest', largest, 'ohm', { round: 'down' });
  sum.line('smallest', smallest, 'ohm', { round: 'up' });
  if (standingAt(smallest, largest) === 'over') sum.note('no-pull-up');
  return sum.done();
};
