import { awgResistance, longestSupply, strandedResistance, supplyDrop } from '../supply';
import { LENGTH_MARGIN, made, standingAt, Sum, type NoiseGiven, type Worked } from './sum';

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
  const drop = made(supplyDrop, length, draw, each);
  const most = made(longestSupply, volts, least, draw, each);
  sum.line(
    'arrives',
    made((fed, lost) => Math.max(0, fed - lost), volts, drop),
    'V',
    {
      round: 'down',
      standing: standingAt(length, most, LENGTH_MARGIN),
    },
  );
  sum.line('drop', drop, 'V', { round: 'up' });
  sum.line('longest', most, 'm', { round: 'down' });
  sum.line('per-metre', each, 'ohm/m', { round: 'up' });
  return sum.done();
};
