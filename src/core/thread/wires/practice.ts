import { toNumber } from '../../quantity';
import { drills, type Drill } from '../drills';
import type { WireRange } from './choose';

/**
 * Standard uncertainties of what is read in a workshop, mm. Common practice: about a third of what such an
 * instrument may be out at worst, feel and temperature counted in. The usual one first: a finer one is said, not assumed.
 */
export const INSTRUMENT_U = { coarse: 0.004, fine: 0.0015, caliper: 0.02, dro: 0.01 } as const;
export type Instrument = keyof typeof INSTRUMENT_U;

/** Standard uncertainties of a wire's diameter, mm: of a measuring set, and of shanks measured by their user. */
export const WIRE_U = { shanks: 0.003, set: 0.0005 } as const;
export type WireKind = keyof typeof WIRE_U;

/** The standard drill whose shank comes nearest to the best wire and is usable; null where none is. mm */
export const nearestShank = (best: number, range: WireRange | null): Drill | null => {
  const off = (d: Drill): number => Math.abs(toNumber(d.diameter) - best);
  return drills()
    .filter((d) => {
      const x = toNumber(d.diameter);
      return range === null ? off(d) < best / 10 : x >= range.least && x <= range.most;
    })
    .reduce<Drill | null>((a, d) => (a === null || off(d) < off(a) ? d : a), null);
};
