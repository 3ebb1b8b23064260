import type { AmountUnit } from '../core/wiring/noise';
import { mark } from './numbers';

const DIGITS = 3;
const PREFIXES = ['p', 'n', 'µ', 'm', '', 'k', 'M', 'G'];
const NONE = PREFIXES.indexOf('');
const SYMBOL: Readonly<Record<AmountUnit, string>> = {
  Hz: 'Hz',
  s: 's',
  ohm: 'Ω',
  'ohm/m': 'Ω/km',
  F: 'F',
  A: 'A',
  V: 'V',
  m: 'm',
  dB: 'dB',
  'bit/s': 'bit/s',
};

type Rule = 'down' | 'up' | undefined;
/** Rounding of floats: 9.999 999 999 is 10. */
const HAIR = 1e-9;
const round = (x: number, rule: Rule): number => {
  if (rule === 'down') return Math.floor(x * (1 + HAIR));
  return rule === 'up' ? Math.ceil(x * (1 - HAIR)) : Math.round(x);
};

/** To so many digits, rounded as told; what is above 0 stays exact to them whatever its size. */
const toDigits = (x: number, places: number, rule: Rule): number =>
  round(x * 10 ** places, rule) / 10 ** places;

const written = (x: number, places: number): string =>
  `${Number(x.toFixed(Math.max(0, places)))}`.replace('-', '−').replace('.', mark());

/**
 * A figure in base units as it is read, with a prefix of the SI: 2.57 µs, 61.9 kHz. Metres, decibels and resistance per
 * kilometre have none. @example amountOf(5032.9, 'Hz') // { value: '5.03', unit: 'kHz' }
 */
export const amountOf = (x: number, unit: AmountUnit, rule?: 'down' | 'up') => {
  if (unit === 'dB') return { value: written(toDigits(x, 1, undefined), 1), unit: 'dB' };
  const whole = unit === 'm' || unit === 'ohm/m';
  const base = unit === 'ohm/m' ? x * 1000 : x;
  const size = base === 0 ? 0 : Math.floor(Math.log10(base) + HAIR);
  const step = whole || base === 0 ? 0 : Math.max(-NONE, Math.min(3, Math.floor(size / 3)));
  const places = Math.max(0, DIGITS - 1 - (size - step * 3));
  let [value, prefix] = [toDigits(base / 1000 ** step, places, rule), step];
  if (!whole && value >= 1000 && step < 3) [value, prefix] = [value / 1000, step + 1];
  return { value: written(value, places + 3), unit: `${PREFIXES[NONE + prefix] ?? ''}${SYMBOL[unit]}` };
};

export const amountText = (x: number, unit: AmountUnit, rule?: 'down' | 'up'): string => {
  const said = amountOf(x, unit, rule);
  return `${said.value}\u00a0${said.unit}`;
};
