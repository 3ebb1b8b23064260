/** Resistivity of annealed copper at 20 °C, Ω·mm²/m: IEC 60028. */
const COPPER = 1 / 58;
/**
 * Most that fine-stranded copper may have at 20 °C, Ω·mm²/m: 39 Ω/km at 0.5 mm², 26 at 0.75, 19.5 at 1 (IEC 60228 class 5,
 * from memory).
 */
const STRANDED = 0.0195;

/** Cross-section of an AWG size, mm²: diameter 0.127 · 92^((36 − n)/39) mm (ASTM B258). Whole n, 0 to 40. */
export const awgArea = (n: number): number => (Math.PI / 4) * (0.127 * 92 ** ((36 - n) / 39)) ** 2;

/** Resistance of an AWG conductor at 20 °C, Ω/m, as solid copper; a stranded one is a few per cent above. */
export const awgResistance = (n: number): number => COPPER / awgArea(n);

/** Resistance of a stranded conductor by its cross-section in mm², Ω/m at 20 °C, rounded to the careful side. */
export const strandedResistance = (area: number): number => STRANDED / area;

/** Voltage lost along a supply and its return, V: 2·length·I·R′. Metres, amperes, ohms per metre. */
export const supplyDrop = (length: number, current: number, perMetre: number): number =>
  2 * length * current * perMetre;

/** Longest cable at which the far end still has its least voltage, m: (V − V_min) ÷ (2·I·R′). Never below 0. */
export const longestSupply = (volts: number, least: number, current: number, perMetre: number): number =>
  Math.max(0, volts - least) / (2 * current * perMetre);
