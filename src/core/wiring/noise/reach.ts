import { MARGIN_ELECTRONIC } from '../../figures/standing';
import { toNumber } from '../../quantity';
import { bitRate, differentialReach, OPEN_COLLECTOR_REACH, SINGLE_ENDED_REACH } from '../reach';
import { OUTPUTS, type Output } from './fields';
import { standingAt, Sum, type NoiseGiven, type Worked } from './sum';

/** Whether the encoder's cable is short enough for the way its signals are driven. */
export const reach = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const length = sum.length();
  if (!given.output) sum.lacks('output');
  // What differential signals reach depends on the rate; the other two are rules of thumb.
  const gap = given.output === 'single' || given.output === 'collector' ? null : sum.gap();
  const rate = gap && bitRate(gap.channel);
  if (rate !== null) sum.line('rate', rate, 'bit/s', { round: 'up' });
  const pair = rate === null ? null : differentialReach(rate);
  if (rate !== null && pair === null) sum.note('beyond-guide');
  const reaches: Readonly<Record<Output, number | null>> = {
    differential: pair,
    single: SINGLE_ENDED_REACH,
    collector: OPEN_COLLECTOR_REACH,
  };
  for (const output of OUTPUTS) {
    const most = reaches[output];
    const mine = given.output === output;
    if (mine || most !== null)
      sum.line(`reach-${output}`, most, 'm', {
        round: 'down',
        ...(mine
          ? {
              standing:
                most === null || length === null
                  ? 'unknown'
                  : standingAt(length, most, toNumber(MARGIN_ELECTRONIC)),
            }
          : {}),
      });
  }
  return sum.done();
};
