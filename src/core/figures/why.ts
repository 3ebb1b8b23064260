import type { Ratio, Unit } from '../quantity';
import type { FigureId } from './ids';
import type { InputPath } from '../context';

/** Units of calculated figures, beyond those a person states. */
export type ShownUnit =
  Unit | 'counts/rev' | 'steps/rev' | 'steps/count' | 'steps/s' | 'edges/s' | 'mm/rev' | 'ppm' | 'none';

/** One value in a line of reckoning. */
export type Amount =
  | { readonly kind: 'exact'; readonly value: Ratio; readonly unit: ShownUnit; readonly pi?: boolean }
  | { readonly kind: 'approx'; readonly value: number; readonly unit: ShownUnit }
  | { readonly kind: 'words'; readonly code: string };

/** Where a value came from: an input that someone entered, another figure, or a constant of nature or custom. */
export type Origin = InputPath | FigureId | 'constant' | 'table';

export interface Term {
  readonly amount: Amount | null;
  readonly from: Origin;
}

/**
 * The grounds of a figure: a formula by its code (its words, with {names} of the terms, are in text/why), the
 * terms with their values, the result, and the source. A person can reckon it after us.
 */
export interface Why {
  readonly formula: string;
  readonly terms: Readonly<Record<string, Term>>;
  readonly result: Amount | null;
  readonly source: string;
  readonly notes: readonly string[];
}

export const exact = (value: Ratio, unit: ShownUnit, pi = false): Amount =>
  pi ? { kind: 'exact', value, unit, pi } : { kind: 'exact', value, unit };
export const approx = (value: number, unit: ShownUnit): Amount => ({ kind: 'approx', value, unit });
