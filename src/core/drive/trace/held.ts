import { hold, type Format } from '../formats';
import { leadNumber, toNumber, type Lead, type Ratio } from '../../quantity';
import { MOST_PART, type FormatSpec } from './format';

/** A fraction the model can add up in whole numbers; null where its parts are too long. */
export const fractionSpec = (r: Ratio): FormatSpec | null => {
  const [top, bottom] = [Number(r.n), Number(r.d)];
  return top > 0 && top <= MOST_PART && bottom <= MOST_PART ? { kind: 'fraction', top, bottom } : null;
};

/**
 * How a controller with this number format is modelled. null where it keeps no ratio (`rate`), the ratio is too small
 * for it, or the fraction is too long for the model.
 */
export const formatSpec = (format: Format, r: Lead, counts: Ratio): FormatSpec | null => {
  const held = hold(format, r, counts);
  if (!held) return null;
  switch (format.kind) {
    case 'float32':
      return { kind: 'float32-product', ratio: toNumber(held.ratio) };
    case 'float32-sum':
      return { kind: 'float32-sum', ratio: toNumber(held.ratio) };
    case 'float64':
      return { kind: 'float64-sum', ratio: toNumber(held.ratio) };
    case 'rev-count':
      return { kind: 'rev-count', perRev: leadNumber(r) * toNumber(counts), counts: toNumber(counts) };
    case 'rate':
      return null;
    default:
      return fractionSpec(held.ratio);
  }
};
