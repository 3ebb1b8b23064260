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
import { standingAt, Sum, type NoiseGiven, type Worked } from './sum';

/** An open collector: how late its rising edge comes, and which pull-up would do. */
export const pullUp = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const r = sum.need('pullUp');
  const perMetre = sum.need('perMetre');
  const length = sum.length();
  const input = sum.need('inputCapacitance');
  const threshold = sum.need('threshold');
  const gap = sum.gap();
  const volts = sum.need('pullVolts');
  const rated = sum.need('sink');

  const cable =
    perMetre === null || length === null || input === null ? null : timeConstant(1, perMetre, length, input);
  const tau = r === null || cable === null ? null : r * cable;
  const delay = tau === null || threshold === null ? null : delayTo(tau, threshold);
  sum.line('delay', delay, 's', {
    round: 'up',
    standing: delay === null ? 'unknown' : sum.inGap(delay, gap, DELAY_SHARE),
  });
  const most = gap && (gap.shortest ?? gap.best) * DELAY_SHARE;
  sum.line(gap?.shortest === null ? 'delay-most-best' : 'delay-most', most, 's', { round: 'down' });
  if (tau !== null) {
    sum.line('tau', tau, 's');
    sum.line('rise', riseTime(tau), 's', { round: 'up' });
    sum.line('rc-corner', cornerOf(tau), 'Hz', { round: 'down' });
  }
  const sunk = r === null || volts === null ? null : sinkCurrent(volts, r);
  sum.line('sunk', sunk, 'A', {
    round: 'up',
    standing: sunk === null || rated === null ? 'unknown' : standingAt(sunk, rated),
  });
  const largest =
    most === null || cable === null || threshold === null ? null : largestPullUp(most, cable, threshold);
  const smallest = volts === null || rated === null ? null : smallestPullUp(volts, rated);
  if (largest !== null) sum.line('largest', largest, 'ohm', { round: 'down' });
  if (smallest !== null) sum.line('smallest', smallest, 'ohm', { round: 'up' });
  if (largest !== null && smallest !== null && smallest > largest) sum.note('no-pull-up');
  return sum.done();
};
