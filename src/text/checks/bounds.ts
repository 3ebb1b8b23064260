import type { Item } from '../../core/checks';
import type { Sheet } from '../../core/figures';
import { fromBase, type Ratio, type Unit } from '../../core/quantity';
import { decimal, plain } from '../numbers';
import { unitLabel } from '../units';
import { checksText } from './screen';

/** A figure in a unit; null where there is none. */
export const inUnit = (value: Ratio | null, unit: Unit, rule?: 'up' | 'down'): string | null => {
  if (!value) return null;
  const said = fromBase(value, unit);
  const number = said.d === 1n ? plain(said) : decimal(said, unit === 'in' ? 4 : 3, rule);
  return `${number}\u00a0${unitLabel[unit]}`.trim();
};

/** Where an item's reading has to lie, rounded inwards; empty where nothing is known of it or nothing bounds it. */
export const boundsText = ({ reading }: Item, sheet: Sheet): string => {
  const b = reading?.bounds?.(sheet);
  if (!reading || !b || b.missing.length > 0) return '';
  const [unit] = reading.units;
  return checksText.bounds(inUnit(b.low, unit, 'up'), inUnit(b.high, unit, 'down'));
};
