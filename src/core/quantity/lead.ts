import { add, div, mul, ratio, sub, toNumber, type Exact, type Ratio } from './ratio';
import { dimensionOf, inBase, type Stated } from './units';

/**
 * A pitch or lead: an exact fraction of a millimetre, or one times π (worms by module and diametral pitch).
 * Nothing rounds π here; whoever needs a rational takes a bound of it, on the side of safety.
 */
export interface Lead {
  readonly mm: Ratio;
  readonly pi: boolean;
}

export const lead = (mm: Ratio, pi = false): Lead => Object.freeze({ mm, pi });

/** Rational bounds of π, 18 decimals: 3.141592653589793238 < π < 3.141592653589793239. */
export const PI_LOW = ratio(3141592653589793238n, 10n ** 18n);
export const PI_HIGH = ratio(3141592653589793239n, 10n ** 18n);

/** A lead or pitch from what a person stated: mm, inches, tpi, module or diametral pitch. @throws RangeError else */
export const leadFrom = (s: Stated): Lead => {
  const dimension = dimensionOf(s.unit);
  if (dimension !== 'length' && dimension !== 'pi-length') throw new RangeError(`${s.unit} is not a pitch`);
  return lead(inBase(s), dimension === 'pi-length');
};

/** Lead of a thread with so many starts: starts × pitch. */
export const timesStarts = (pitch: Lead, starts: Exact): Lead => lead(mul(pitch.mm, starts), pitch.pi);

/** A rational not below the lead, mm: for limits, where a larger lead is the careful side. */
export const leadHigh = (l: Lead): Ratio => (l.pi ? mul(l.mm, PI_HIGH) : l.mm);
/** A rational not above the lead, mm. */
export const leadLow = (l: Lead): Ratio => (l.pi ? mul(l.mm, PI_LOW) : l.mm);

/** Nearest double, mm. For drawing and display. */
export const leadNumber = (l: Lead): number => toNumber(l.mm) * (l.pi ? Math.PI : 1);

/** Error of a rational stand-in for a number that may carry π, in ppm: (approx ÷ true − 1) × 10⁶. */
export const ppm = (approx: Ratio, exact: Ratio, exactTimesPi = false): number => {
  if (!exactTimesPi) return toNumber(mul(sub(div(approx, exact), 1), 1_000_000));
  // Halfway between the bounds of π is π to 5e-19, finer than any ppm shown.
  const pi = div(add(PI_LOW, PI_HIGH), 2);
  return toNumber(mul(sub(div(approx, mul(exact, pi)), 1), 1_000_000));
};
