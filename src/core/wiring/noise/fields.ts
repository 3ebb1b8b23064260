import { number, type NumberField } from '../../machine/field';
import type { Unit } from '../../quantity';

const field = <const U extends readonly Unit[]>(units: U, min: string, max: string): NumberField =>
  number('notes', units, min, max);
const volts = field(['V'], '1', '60');
const micro = field(['us', 'ms'], '0.001', '100000');

/** What can be entered about cables and noise; each is kept for the machine in use. Plausible ranges: common practice. */
export const NOISE_FIELDS = {
  rpm: field(['rpm'], '1', '20000'),
  length: field(['m', 'in'], '0.05', '2000'),

  inductance: field(['mH', 'uH'], '0.0001', '1000'),
  capacitance: field(['uF', 'nF', 'pF'], '0.00001', '100000'),
  source: field(['ohm', 'kohm'], '0', '1000000'),
  load: field(['ohm', 'kohm'], '0.01', '10000000'),
  coil: field(['ohm'], '0', '1000'),
  dampResistance: field(['ohm', 'kohm'], '0.01', '100000'),
  dampCapacitance: field(['uF', 'nF'], '0.00001', '100000'),
  carrier: field(['kHz', 'Hz'], '0.2', '200'),

  stray: field(['nF', 'pF'], '0.001', '1000'),
  slew: field(['kV/us'], '0.01', '100'),
  tail: field(['mm', 'in'], '1', '2000'),
  ringing: field(['MHz', 'kHz'], '0.01', '1000'),

  pullUp: field(['kohm', 'ohm'], '0.01', '1000'),
  perMetre: field(['pF/m'], '1', '1000'),
  inputCapacitance: field(['pF', 'nF'], '0', '100000'),
  pullVolts: volts,
  threshold: field(['percent'], '5', '95'),
  sink: field(['mA', 'A'], '0.1', '1000'),

  volts,
  least: volts,
  draw: field(['mA', 'A'], '1', '10000'),
  awg: number('notes', ['count'], '0', '40', { whole: true }),
  area: field(['mm2'], '0.01', '10'),
  perKm: field(['ohm/km'], '0.5', '5000'),

  filterTime: micro,
  noiseTime: micro,
} as const satisfies Record<string, NumberField>;

export type NoiseName = keyof typeof NOISE_FIELDS;
export const NOISE_NAMES = Object.keys(NOISE_FIELDS) as NoiseName[];

/** How the encoder's signals are driven. */
export const OUTPUTS = ['differential', 'single', 'collector'] as const;
export type Output = (typeof OUTPUTS)[number];
