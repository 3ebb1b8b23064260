import { MARGIN_ELECTRONIC } from '../../figures/standing';
import { toNumber } from '../../quantity';
import { awgResistance, longestSupply, strandedResistance, supplyDrop } from '../supply';
import { standingAt, Sum, type NoiseGiven, type Worked } from './sum';

/** The ways to say how thick a conductor is; the one entered last is the only one kept. */
export const SIZES = ['awg', 'area', 'perKm'] as const;

/** Resistance of one conductor, Ω/m. */
const perMetre = (sum: Sum): number | null => {
  const [awg, area, own] = SIZES.map((name) => sum.may(name));
  if (own != null) return own;
  if (area != null) return strandedResistance(area);
  if (awg != null) {
    sum.note('solid');
    return awgResistance(awg);
  }
  return sum.lacks('area');
};

/** What of the encoder's supply arrives at its end of the cable. */
export const supply = (given: NoiseGiven): Worked => {
  const sum = new Sum(given);
  const volts = sum.need('volts');
  const least = sum.need('least');
  const draw = sum.need('draw');
  const length = sum.length();
  const each = perMetre(sum);
  const drop = draw === null || length === null || each === null ? null : supplyDrop(length, draw, each);
  const most =
    volts === null || least === null || draw === null || each === null
      ? null
      : longestSupply(volts, least, draw, each);
  const standing =
    most === null || length === null ? 'unknown' : standingAt(length, most, toNumber(MARGIN_ELECTRONIC));
  sum.line('arrives', drop === null || volts === null ? null : Math.max(0, volts - drop), 'V', {
    round: 'down',
    standing,
  });
  sum.line('drop', drop, 'V', { round: 'up' });
  sum.line('longest', most, 'm', { round: 'down' });
  if (each !== null) sum.line('per-metre', each, 'ohm/m', { round: 'up' });
  return sum.done();
};
