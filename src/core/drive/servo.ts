import { bestFraction, type Held } from './gearing';
import { compare, div, floor, mul, ratio, type Ratio } from '../quantity';

/**
 * Electronic gear of a servo drive: counts of the motor's own encoder ÷ pulses wanted for one turn, as a fraction whose
 * parts the drive takes. Not exact means that a turn of the motor is not what the pulses say. Own derivation; the way
 * drive makers define it. @param most largest top and bottom number @returns null where nothing fits
 */
export const electronicGear = (encoder: bigint, pulses: bigint, most: bigint): Held | null =>
  bestFraction(ratio(encoder, pulses), most, most);

/** Most pulses per motor rev that the input bears at a speed: rate × margin × 60 ÷ rpm, rounded down. @param rate Hz */
export const mostPulses = (rate: Ratio, margin: Ratio, rpm: Ratio): bigint =>
  floor(div(mul(rate, margin, 60), rpm));

/** Steps on the carriage that are fine enough, mm: a hundredth of the finest pitch in common use, 0.5 mm (own choice). */
export const FINE_STEP = ratio(1, 200);

/** Pulses per rev that drives are usually set to, rising: 1, 2, 2.5, 4, 5 and 8 by powers of ten (common practice). */
const ROUND: readonly bigint[] = [100n, 1000n, 10_000n, 100_000n].flatMap((ten) =>
  [10n, 20n, 25n, 40n, 50n, 80n].map((x) => (x * ten) / 10n),
);

export interface PulseChoice {
  readonly pulses: bigint;
  readonly gear: Held;
}

/**
 * The largest usual number of pulses per rev that the input still bears and whose electronic gear is exact, if its step is
 * fine enough too; null where no number does both. @param perMotorRev carriage travel per motor rev, mm
 */
export const choosePulses = (x: {
  readonly encoder: bigint;
  readonly most: bigint;
  readonly top: bigint;
  readonly perMotorRev: Ratio;
}): PulseChoice | null => {
  const fine = ROUND.filter((p) => p <= x.top && compare(div(x.perMotorRev, p), FINE_STEP) <= 0);
  const choices = fine.flatMap((pulses) => {
    const gear = electronicGear(x.encoder, pulses, x.most);
    return gear?.exact ? [{ pulses, gear }] : [];
  });
  return choices.at(-1) ?? null;
};
