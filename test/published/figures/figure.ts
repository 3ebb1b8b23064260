import type { Ratio } from '../../../src/core/quantity';

/** Where a figure is printed: who publishes it, which edition, and the page or table inside. */
export interface Source {
  readonly publisher: string;
  readonly edition: string;
  readonly where: string;
}

/** One printed figure against what the project gives for it. */
export interface Figure {
  /** Family it is counted under. */
  readonly family: string;
  /**
   * What it is, the same for every source that prints it: "unc:1/2-13 2A pitch max". Two figures of one name are one
   * figure, however many sources print it.
   */
  readonly name: string;
  /** As printed: its digits say how exactly it is compared. */
  readonly printed: string;
  /** The project's figure in the unit of the print; text is the reason why it gives none. */
  readonly ours: Ratio | number | string;
}

/** Figures of one table or page of one source. */
export interface Table {
  readonly source: Source;
  readonly figures: readonly Figure[];
}

export const placesOf = (printed: string): number => printed.split('.')[1]?.length ?? 0;

/**
 * True where the project's figure is the printed one after rounding to its last digit. An exact half of that digit
 * may be printed either way; sources differ in that.
 */
export const agrees = ({ printed, ours }: Figure): boolean => {
  if (typeof ours === 'string') return false;
  const scale = 10 ** placesOf(printed);
  const digits = Math.round(Number(printed) * scale);
  if (typeof ours === 'number') return Math.abs(ours * scale - digits) <= 0.5;
  // Exact: |ours − printed| ≤ half a digit, all in whole numbers.
  const off = 2n * (ours.n * BigInt(scale) - BigInt(digits) * ours.d);
  return (off < 0n ? -off : off) <= ours.d;
};

export const sourceText = (s: Source): string => `${s.publisher}, ${s.edition}, ${s.where}`;
