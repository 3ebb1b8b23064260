import { bitRate, differentialReach, OPEN_COLLECTOR_REACH, SINGLE_ENDED_REACH } from '../reach';
import { OUTPUTS, type Output } from './fields';
import { LENGTH_MARGIN, standingAt, Sum, type NoiseGiven, type Worked } from './sum';

/** Whether the encoder's cable is short enough for the way its signals are driven. */
export const reach = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const length = sum.length();
  if (!given.output) sum.lacks('output');
  // What differential signals reach depends on the rate; the other two are rules of thumb.
  const gap = given.output === 'single' || given.output === 'collector' ? null : sum.gap();
  const rate = gap && bitRate(gap.channel);
  sum.line('rate', rate, 'bit/s', { round: 'up' });
  const pair = rate === null ? null : differentialReach(rate);
  if (rate !== null && pair === null) sum.note('beyond-guide');
  const reaches: Readonly<Record<Output, number | null>> = {
    differential: pair,
    single: SINGLE_ENDED_REACH,
    collector: OPEN_COLLECTOR_REACH,
  };
  for (const output of OUTPUTS) {
    const most = reaches[output];
    const judged = given.output === output && { standing: standingAt(length, most, LENGTH_MARGIN) };
    sum.line(`reach-${output}`, most, 'm', { round: 'down', ...judged });
  }
  return sum.done();
};
