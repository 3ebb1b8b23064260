import { add, equal, greater, isPositive, mul, ratio, sub, type Ratio } from '../quantity';

/**
 * Undercuts for ISO metric threads, as two families that are never mixed: each result carries the standard it
 * comes from in its type, and nothing here takes one standard's figure into the other's.
 */

interface ExternalFigures {
  /** Least length of the parallel floor, mm. */
  readonly floor: Ratio;
  /** Greatest length from the shoulder to the first full thread, mm. */
  readonly length: Ratio;
  /** Floor diameter dg, mm; tolerance h13, or h12 up to 3 mm nominal. */
  readonly diameter: Ratio;
  readonly tolerance: 'h12' | 'h13';
  /** Corner radius, about, mm. */
  readonly radius: Ratio;
}
export interface IsoUndercut extends ExternalFigures {
  readonly standard: 'ISO 4755';
  /** True for the finest pitches, whose row was typed from memory of the standard. */
  readonly fromMemory: boolean;
}
export interface DinUndercut extends ExternalFigures {
  readonly standard: 'DIN 76-1';
  /** A: regular; B: short. */
  readonly form: 'A' | 'B';
  readonly fromMemory: true;
}
export interface InternalUndercut {
  readonly standard: 'GB/T 3';
  readonly form: 'normal' | 'short';
  /** Length of the groove, mm: 4 P or 2 P. */
  readonly length: Ratio;
  /** Diameter of the groove: D + 0.3 up to P = 0.8, else D + 0.5. */
  readonly diameter: Ratio;
}
export type Undercut = IsoUndercut | DinUndercut | InternalUndercut;

export type UndercutRefusal = 'not-positive' | 'pitch-not-in-table';
export type UndercutResult<T extends Undercut> =
  { readonly ok: true; readonly undercut: T } | { readonly ok: false; readonly refusal: UndercutRefusal };

/**
 * Pitch | d − dg | r | ISO 4755 g1, g2 | DIN 76-1 form A g1, g2 | form B g1, g2, all in hundredths of a mm.
 * ISO columns: GB/T 3-1997 table 2, declared equivalent to ISO 4755, from 0.5; rows below 0.5 and the DIN
 * columns from memory of the standards.
 */
const ROWS: readonly (readonly number[])[] = [
  [25, 40, 12, 40, 75, 55, 90, 25, 60],
  [30, 50, 16, 50, 90, 60, 105, 30, 75],
  [35, 60, 16, 60, 105, 70, 120, 40, 90],
  [40, 70, 20, 60, 120, 80, 140, 50, 100],
  [45, 70, 20, 70, 135, 100, 160, 50, 110],
  [50, 80, 20, 80, 150, 110, 175, 50, 125],
  [60, 100, 40, 90, 180, 120, 210, 60, 150],
  [70, 110, 40, 110, 210, 150, 245, 80, 175],
  [75, 120, 40, 120, 225, 160, 260, 90, 190],
  [80, 130, 40, 130, 240, 170, 280, 90, 200],
  [100, 160, 60, 160, 300, 210, 350, 110, 250],
  [125, 200, 60, 200, 375, 270, 440, 150, 320],
  [150, 230, 80, 250, 450, 320, 520, 180, 380],
  [175, 260, 100, 300, 525, 390, 610, 210, 430],
  [200, 300, 100, 340, 600, 450, 700, 250, 500],
  [250, 360, 120, 440, 750, 560, 870, 320, 630],
  [300, 440, 160, 520, 900, 670, 1050, 370, 750],
  [350, 500, 160, 620, 1050, 770, 1200, 470, 900],
  [400, 570, 200, 700, 1200, 900, 1400, 500, 1000],
  [450, 640, 250, 800, 1350, 1050, 1600, 550, 1100],
  [500, 700, 250, 900, 1500, 1150, 1750, 650, 1250],
  [550, 770, 320, 1100, 1750, 1250, 1900, 750, 1400],
  [600, 830, 320, 1100, 1800, 1400, 2100, 800, 1500],
];
/** Every pitch that has a row, mm, rising. */
export const UNDERCUT_PITCHES: readonly Ratio[] = ROWS.map(([pitch]) => ratio(pitch ?? 0, 100));
const COLUMN = { drop: 1, radius: 2, iso: 3, A: 5, B: 7 } as const;

const hundredths = (row: readonly number[], column: number): Ratio => ratio(row[column] ?? 0, 100);

const rowFor = (
  major: Ratio,
  pitch: Ratio,
): { readonly row: readonly number[] } | { readonly refusal: UndercutRefusal } => {
  if (!isPositive(major) || !isPositive(pitch)) return { refusal: 'not-positive' };
  const row = ROWS.find((r) => equal(pitch, hundredths(r, 0)));
  if (!row) return { refusal: 'pitch-not-in-table' };
  return greater(major, hundredths(row, COLUMN.drop)) ? { row } : { refusal: 'not-positive' };
};

const figures = (row: readonly number[], from: number, major: Ratio): ExternalFigures => ({
  floor: hundredths(row, from),
  length: hundredths(row, from + 1),
  diameter: sub(major, hundredths(row, COLUMN.drop)),
  tolerance: greater(major, 3) ? 'h13' : 'h12',
  radius: hundredths(row, COLUMN.radius),
});

/** External undercut to ISO 4755. Nominal major diameter and pitch in mm; a pitch without a row is refused. */
export const isoUndercut = (major: Ratio, pitch: Ratio): UndercutResult<IsoUndercut> => {
  const found = rowFor(major, pitch);
  if ('refusal' in found) return { ok: false, refusal: found.refusal };
  const fromMemory = (found.row[0] ?? 0) < 50;
  return {
    ok: true,
    undercut: { standard: 'ISO 4755', fromMemory, ...figures(found.row, COLUMN.iso, major) },
  };
};

/** External undercut to DIN 76-1, form A (regular) or B (short); mm. Editions differ in the finest pitches. */
export const dinUndercut = (major: Ratio, pitch: Ratio, form: 'A' | 'B'): UndercutResult<DinUndercut> => {
  const found = rowFor(major, pitch);
  if ('refusal' in found) return { ok: false, refusal: found.refusal };
  return {
    ok: true,
    undercut: { standard: 'DIN 76-1', form, fromMemory: true, ...figures(found.row, COLUMN[form], major) },
  };
};

/** Internal undercut by GB/T 3-1997: 4 P (normal) or 2 P (short) long; mm. */
export const internalUndercut = (
  major: Ratio,
  pitch: Ratio,
  form: InternalUndercut['form'],
): UndercutResult<InternalUndercut> => {
  const found = rowFor(major, pitch);
  if ('refusal' in found) return { ok: false, refusal: found.refusal };
  return {
    ok: true,
    undercut: {
      standard: 'GB/T 3',
      form,
      length: mul(pitch, form === 'normal' ? 4 : 2),
      diameter: add(major, greater(pitch, ratio(4, 5)) ? ratio(1, 2) : ratio(3, 10)),
    },
  };
};
