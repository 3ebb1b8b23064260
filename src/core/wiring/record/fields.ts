import { number } from '../../machine';
import { WIRING_BOUNDS } from './shape';

/** The numbers of a cable: units and plausible range (common practice). Signals are extra-low voltage: 50 V at most. */
export const CABLE_FIELDS = {
  length: number('notes', ['m', 'ft', 'mm'], '0.05', '200'),
  supply: number('notes', ['V'], '1', '50', { suggest: ['5', '24'] }),
  least: number('notes', ['V'], '0.5', '50', { suggest: ['4.75', '4.5'] }),
  current: number('notes', ['mA', 'A'], '1', '5000'),
} as const;
export type CableField = keyof typeof CABLE_FIELDS;
export const CABLE_FIELD_NAMES = Object.keys(CABLE_FIELDS) as CableField[];

export const PINS_FIELD = number('notes', ['count'], '1', `${WIRING_BOUNDS.pins}`, { whole: true });

/** A pin of a connector, which has no more than it has. */
export const pinField = (pins: number) => number('notes', ['count'], '1', `${pins}`, { whole: true });
