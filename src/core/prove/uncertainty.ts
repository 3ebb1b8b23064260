import {
  ceil,
  compare,
  div,
  inBase,
  mul,
  ONE,
  ratio,
  roundToStep,
  toNumber,
  type Ratio,
  type Stated,
} from '../quantity';

/** What lengths are read with. A pitch gauge reads no length: it fits or it doesn't. */
export const INSTRUMENTS = ['indicator', 'readout', 'caliper', 'rule', 'pitch-gauge'] as const;
export type InstrumentId = (typeof INSTRUMENTS)[number];

/** How a length is read, mm: the step of its scale, and how far the whole may be off (±). */
export interface Instrument {
  readonly step: Ratio;
  readonly accuracy: Ratio;
}

/**
 * Usual workshop instruments, mm, where nothing better is entered: common practice. A pitch gauge shows a gap of about
 * 0.1 mm over a blade's length.
 */
export const USUAL: Readonly<Record<InstrumentId, Instrument>> = {
  indicator: { step: ratio(1, 100), accuracy: ratio(15, 1000) },
  readout: { step: ratio(5, 1000), accuracy: ratio(10, 1000) },
  caliper: { step: ratio(1, 100), accuracy: ratio(30, 1000) },
  rule: { step: ratio(1, 2), accuracy: ratio(1, 5) },
  'pitch-gauge': { step: ratio(0), accuracy: ratio(1, 10) },
};

/** Length of a pitch gauge's blade that lies in the thread, mm. Common practice. */
export const GAUGE_BLADE = ratio(20);

/** Coverage factor: about 95 %. GUM (JCGM 100:2008), 6.2.1 and G.6.6. */
export const COVERAGE = 2;

/**
 * Square of the standard uncertainty of a reading to a scale's step a: a²/12, each value within the step as likely as
 * another. GUM, 4.3.7 and F.2.2.1.
 */
export const stepVariance = (step: number): number => (step * step) / 12;
/** The same of bounds ±A, within which nothing is likelier: A²/3. GUM, 4.3.7. */
export const boundsVariance = (accuracy: number): number => (accuracy * accuracy) / 3;
/** Variances of independent parts add up. GUM, 5.1.2. */
export const combined = (...variances: readonly number[]): number =>
  Math.sqrt(variances.reduce((sum, v) => sum + v, 0));

/**
 * Expanded uncertainty of a length that is the difference of two readings, mm (k = 2): both readings to the scale's step,
 * the instrument's accuracy once, and the spread ±r of several tries where they were made.
 * @example lengthUncertainty(USUAL.readout, 0.003) // 0.0127
 */
export const lengthUncertainty = ({ step, accuracy }: Instrument, spread = 0): number =>
  COVERAGE *
  combined(2 * stepVariance(toNumber(step)), boundsVariance(toNumber(accuracy)), boundsVariance(spread));

/** An uncertainty as an exact length, mm: up to the next 0.1 µm, so that no rounding makes it finer than it is. */
export const roundedUp = (mm: number): Ratio => ratio(BigInt(Math.ceil(mm * 10_000 - 1e-9)), 10_000n);

/** The instrument used: what was entered of it, else as usual. */
export const instrumentOf = (id: InstrumentId, step: Stated | null, accuracy: Stated | null): Instrument => ({
  step: step ? inBase(step) : USUAL[id].step,
  accuracy: accuracy ? inBase(accuracy) : USUAL[id].accuracy,
});

/** Travel at which an uncertainty is p millionths of it, mm: ℓ = U ÷ p. @param ppm above 0 */
export const travelFor = (uncertainty: Ratio, ppm: Ratio): Ratio => div(mul(uncertainty, 1_000_000), ppm);

/** Whole turns after which ±δ counts are no more than p millionths: N ≥ 10⁶·δ ÷ (C·p). */
export const turnsFor = (delta: Ratio, countsPerRev: Ratio, ppm: Ratio): bigint =>
  ceil(div(mul(delta, 1_000_000), mul(countsPerRev, ppm)));

/** A deviation as it may be shown: never finer than its uncertainty. All in ppm, whole numbers. */
export type Ppm =
  /** Smaller than what the readings can tell. */
  | { readonly kind: 'inside'; readonly uncertainty: bigint }
  | { readonly kind: 'seen'; readonly ppm: bigint; readonly uncertainty: bigint };

const MILLION = ratio(1_000_000);

/** Up to two figures: 127.3 is 130. Never below what it was. */
const twoFiguresUp = (x: Ratio): bigint => {
  const whole = ceil(x);
  const unit = 10n ** BigInt(Math.max(0, whole.toString().length - 2));
  return ((whole + unit - 1n) / unit) * unit;
};

/**
 * How far a measured value is off, in millionths of what was expected, with its uncertainty rounded up to two figures and
 * the deviation cut to the uncertainty's own first figure. Null where nothing was expected.
 */
export const ppmOf = (difference: Ratio, expected: Ratio, uncertainty: Ratio): Ppm | null => {
  if (expected.n <= 0n) return null;
  const u = twoFiguresUp(div(mul(uncertainty, MILLION), expected));
  const off = div(mul(difference, MILLION), expected);
  if (compare(off, ratio(u)) <= 0 && compare(off, ratio(-u)) >= 0) return { kind: 'inside', uncertainty: u };
  const unit = 10n ** BigInt(u.toString().length - 1);
  return { kind: 'seen', ppm: roundToStep(off, ratio(unit)).n, uncertainty: u };
};

/** Of a turn, what a mark resolves at both ends together: 0.6°, half a millimetre at 50 mm radius; or 0.1° by indicator. */
export const MARKS = { line: ratio(1, 600), indicator: ratio(1, 3600) } as const;
export type MarkId = keyof typeof MARKS;

/** What a mark lets through of so many counts per turn: whole counts, at least one. */
export const markCounts = (countsPerRev: Ratio, mark: Ratio = MARKS.line): Ratio => {
  const counts = ratio(ceil(mul(countsPerRev, mark)));
  return compare(counts, ONE) < 0 ? ONE : counts;
};
