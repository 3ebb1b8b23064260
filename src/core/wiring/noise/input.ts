import { FILTER_SHARE, filterWindow } from '../input-filter';
import { standingAt, Sum, type NoiseGiven, type Worked } from './sum';

/** How long a controller's input filter may be: longer than the noise, and no more than a third of the gap. */
export const inputFilter = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const set = sum.need('filterTime');
  const noise = sum.need('noiseTime');
  const gap = sum.gap();
  const window = gap && filterWindow(noise ?? 0, gap.least);
  sum.line('filter-most', set, 's', { standing: sum.inGap(set, gap, FILTER_SHARE) });
  sum.line('filter-least', noise, 's', { standing: standingAt(noise, set) });
  sum.line(gap?.sure === false ? 'third-best' : 'third', window && window.most, 's', { round: 'down' });
  if (window && !window.fits) sum.note('no-filter');
  return sum.done();
};
