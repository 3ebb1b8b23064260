import type { Ratio } from '../../quantity';

/** Smallest and largest permitted size; null where the standard leaves that side open. */
export interface Band {
  readonly min: Ratio | null;
  readonly max: Ratio | null;
}

/**
 * Where the figures come from: the standard's tables or rule, or its formula as remembered. Words live in text.
 * `iso965-table` and `iso965-formula` differ: the second is the rule applied to a diameter and pitch that the
 * standard's table leaves out.
 */
export type LimitSource =
  | 'iso965-table'
  | 'iso965-formula'
  | 'asmeB1.1-formula'
  | 'asmeB1.15-formula-from-memory'
  | 'bs84-formula-from-memory'
  | 'bs93-formula'
  | 'iso228-table'
  | 'iso2903-formula'
  | 'iso2903-multi-start-from-memory'
  | 'asmeB1.5-formula'
  | 'asmeB1.5-formula-from-memory'
  | 'asmeB1.8-formula-from-memory'
  | 'asmeB1.9-formula-from-memory';

/** Limits of size of one member, exact to the standard's last printed digit, in the thread's own unit. */
export interface Limits {
  readonly ok: true;
  readonly kind: 'external' | 'internal';
  readonly unit: 'mm' | 'in';
  readonly major: Band;
  readonly pitch: Band;
  /** External threads: at the bottom of the rounded root that the standard draws. */
  readonly minor: Band;
  /** External threads with a flat root: its largest minor diameter, where the standard gives one as well. */
  readonly minorFlat: Ratio | null;
  readonly source: LimitSource;
}

export type LimitRefusal =
  | 'no-limits-known'
  | 'class-not-in-standard'
  | 'class-unreadable'
  | 'no-grade-at-this-pitch'
  | 'no-deviation-at-this-pitch'
  | 'pitch-not-in-standard'
  | 'pitch-too-fine-for-diameter'
  | 'diameter-not-in-standard'
  | 'no-major-diameter'
  | 'taper-gauged-by-length'
  | 'multi-start-not-covered';

export interface Refused {
  readonly ok: false;
  readonly refusal: LimitRefusal;
}

export type LimitsResult = Limits | Refused;

export const refused = (refusal: LimitRefusal): Refused => ({ ok: false, refusal });
export const band = (min: Ratio | null, max: Ratio | null): Band => ({ min, max });
