/**
 * Current through a stray capacitance while an inverter's output swings, A: C·dv/dt. Physics; farads and volts per
 * second. It returns through whatever joins motor and inverter: screens, bearings, an encoder's body.
 */
export const commonModeCurrent = (capacitance: number, slew: number): number => capacitance * slew;

/** A thin wire some centimetres long has about 1 nH per mm; common practice. */
export const TAIL_INDUCTANCE = 1e-6;

/** What a screen's tail opposes to noise, Ω: 2π·f·(1 nH/mm)·length. Metres and hertz. */
export const tailReactance = (length: number, f: number): number =>
  2 * Math.PI * f * TAIL_INDUCTANCE * length;
