import { ratio, type Ratio } from '../../quantity';

/**
 * Resistance of one copper conductor at 20 °C, Ω/km, the higher where makers differ: so a drop is rather said too large.
 * Source: IEC 60228 (class 5) from memory, and cable makers' tables.
 */
export const SECTIONS = {
  'mm2-0.08': ratio(235),
  'mm2-0.14': ratio(138),
  'mm2-0.25': ratio(80),
  'mm2-0.5': ratio(40),
  'mm2-0.75': ratio(26),
  'mm2-1.0': ratio(39, 2),
  'awg-28': ratio(213),
  'awg-26': ratio(134),
  'awg-24': ratio(421, 5),
  'awg-22': ratio(53),
  'awg-20': ratio(333, 10),
} as const satisfies Record<string, Ratio>;
export type SectionId = keyof typeof SECTIONS;
export const SECTION_IDS = Object.keys(SECTIONS) as SectionId[];
