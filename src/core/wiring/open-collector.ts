/** An open collector with its pull-up resistor: falling it is quick, rising it charges the cable through the resistor. */

/** Time constant, s: R·(C' · length + C_in). Ohms, farads per metre, metres, farads. */
export const timeConstant = (pullUp: number, perMetre: number, length: number, input: number): number =>
  pullUp * (perMetre * length + input);

/** Corner of a time constant, Hz: 1 ÷ 2πτ. */
export const cornerOf = (tau: number): number => 1 / (2 * Math.PI * tau);

/** Rise from 10 to 90 %, s: ln 9 · τ, about 2.2 τ. */
export const riseTime = (tau: number): number => Math.log(9) * tau;

/** Time in which it rises to a share of the supply, s: −τ·ln(1 − x); x above 0 and below 1. */
export const delayTo = (tau: number, share: number): number => -tau * Math.log(1 - share);

/** What the output has to sink while it is low, A: V ÷ R. */
export const sinkCurrent = (volts: number, pullUp: number): number => volts / pullUp;

/** A delay of no more than this share of the shortest gap between edges; common practice. */
export const DELAY_SHARE = 1 / 4;

/** Largest pull-up whose delay stays within a time, Ω. */
export const largestPullUp = (delay: number, capacitance: number, share: number): number =>
  delay / delayTo(capacitance, share);

/** Smallest pull-up whose current the output bears, Ω. */
export const smallestPullUp = (volts: number, rated: number): number => volts / rated;
