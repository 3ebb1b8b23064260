import { ratio, roundTo, type Ratio } from '../../quantity';

/**
 * A computed tolerance or allowance cut to the places that its standard prints: the only door from the standards'
 * irrational formulas (cube roots and the like) into exact sizes.
 */
export const printedTo = (value: number, places: number): Ratio => {
  const scale = 10 ** places;
  return ratio(Math.round(value * scale), scale);
};

/** Four decimals of an inch, the last digit of inch tables. */
export const inch4 = (x: Ratio): Ratio => roundTo(x, 4);
/** Three decimals of a millimetre. */
export const mm3 = (x: Ratio): Ratio => roundTo(x, 3);
