import { div, mul, type Ratio } from '../../quantity';

const METRES_PER_KM = 1000;

/**
 * Voltage lost along a cable, there and back, V: ΔV = 2·ℓ·I·R′. Contacts come on top.
 * @param length of the cable, m
 * @param current A
 * @param perKm resistance of one conductor, Ω/km
 * Source: Ohm's law, as in drive makers' encoder cable formulas.
 */
export const supplyDrop = (length: Ratio, current: Ratio, perKm: Ratio): Ratio =>
  div(mul(2, length, current, perKm), METRES_PER_KM);

/** The longest cable that loses no more than `allowed` volts, m. @throws NotExactError for no current */
export const longestSupply = (allowed: Ratio, current: Ratio, perKm: Ratio): Ratio =>
  div(mul(allowed, METRES_PER_KM), mul(2, current, perKm));
