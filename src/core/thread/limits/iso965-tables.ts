import { r40At, r40Index } from '../../quantity';
import { figure } from '../number';

/**
 * ISO 965-1 Tables 1, 3 and 5 (from memory of the printed tables; crest tolerances checked against handbook cells).
 * One row a pitch, mm: pitch, then in µm |es| of e, f and g (= EI of G), Td grade 6, TD1 grade 6.
 * "-" where the standard defines none. TD1 at 0.2 and 0.25 stands only for grades 4 and 5 below it.
 */
const BY_PITCH = `0.2 - - 17 56 60; 0.25 - - 18 67 71; 0.3 - - 18 75 85; 0.35 - 34 19 85 100; 0.4 - 34 19 95 112
0.45 - 35 20 100 125; 0.5 50 36 20 106 140; 0.6 53 36 21 125 160; 0.7 56 38 22 140 180; 0.75 56 38 22 140 190
0.8 60 38 24 150 200; 1 60 40 26 180 236; 1.25 63 42 28 212 265; 1.5 67 45 32 236 300; 1.75 71 48 34 265 335
2 71 52 38 280 375; 2.5 80 58 42 335 450; 3 85 63 48 375 500; 3.5 90 70 53 425 560; 4 95 75 60 475 600
4.5 100 80 63 500 670; 5 106 85 71 530 710; 5.5 112 90 75 560 750; 6 118 95 80 600 800; 8 140 118 100 710 1000`;

/**
 * ISO 965-1 Table 4: Td2 grade 6 by diameter range, µm (from memory of the printed table, checked against handbook
 * cells). One row a range: over, up to and including (mm), then pitch:tolerance.
 */
const TD2 = `0.99 1.4 0.2:48 0.25:53 0.3:56; 1.4 2.8 0.2:50 0.25:56 0.35:63 0.4:67 0.45:71
2.8 5.6 0.35:67 0.5:75 0.6:85 0.7:90 0.75:90 0.8:95; 5.6 11.2 0.75:100 1:112 1.25:118 1.5:132
11.2 22.4 1:118 1.25:132 1.5:140 1.75:150 2:160 2.5:170; 22.4 45 1:125 1.5:150 2:170 3:200 3.5:212 4:224 4.5:236
45 90 1.5:160 2:180 3:212 4:236 5:250 5.5:265 6:280; 90 180 2:190 3:224 4:250 6:300 8:335
180 355 3:250 4:280 6:315 8:355`;

export interface PitchRow {
  readonly e: number | null;
  readonly f: number | null;
  readonly g: number;
  readonly td: number;
  readonly td1: number;
}
export interface DiameterRange {
  readonly over: number;
  readonly to: number;
  readonly td2: ReadonlyMap<string, number>;
}

const lines = (table: string): string[][] => table.split(/;|\n/).map((row) => row.trim().split(' '));
/** Pitches are looked up by their exact value, as "n/d". */
export const pitchKey = (p: { readonly n: bigint; readonly d: bigint }): string => `${p.n}/${p.d}`;

let pitches: Map<string, PitchRow> | null = null;
const readPitches = (): Map<string, PitchRow> =>
  new Map(
    lines(BY_PITCH).map(([p = '', e, f, g, td, td1]) => [
      pitchKey(figure(p)),
      {
        e: e === '-' ? null : Number(e),
        f: f === '-' ? null : Number(f),
        g: Number(g),
        td: Number(td),
        td1: Number(td1),
      },
    ]),
  );

/** The row of a standard pitch, or undefined: other pitches have no deviations and are refused. */
export const pitchRow = (key: string): PitchRow | undefined => (pitches ??= readPitches()).get(key);

let ranges: readonly DiameterRange[] | null = null;
const readRanges = (): readonly DiameterRange[] =>
  lines(TD2).map(([over, to, ...cells]) => ({
    over: Number(over),
    to: Number(to),
    td2: new Map(
      cells.map((cell) => {
        const [p = '', um] = cell.split(':');
        return [pitchKey(figure(p)), Number(um)];
      }),
    ),
  }));

/** The diameter range of the standard that a diameter (mm) falls in: lower end excluded, upper included. */
export const diameterRange = (d: number): DiameterRange | undefined =>
  (ranges ??= readRanges()).find((r) => d > r.over && d <= r.to);

export type Tolerance = 'Td' | 'TD1' | 'Td2' | 'TD2';

/**
 * Steps of the R40 series from grade 6, and the smallest pitch (mm) at which the standard defines the grade.
 * That grades are whole steps of R40 was found by fitting the printed tables, 221 of 221 cells.
 */
const GRADES: Record<Tolerance, Record<number, readonly [steps: number, finest: number]>> = {
  Td: { 4: [-8, 0.2], 6: [0, 0.2], 8: [8, 0.8] },
  TD1: { 4: [-8, 0.2], 5: [-4, 0.2], 6: [0, 0.3], 7: [4, 0.5], 8: [8, 0.8] },
  Td2: { 3: [-12, 0.2], 4: [-8, 0.2], 5: [-4, 0.2], 6: [0, 0.2], 7: [4, 0.35], 8: [8, 0.8], 9: [12, 0.8] },
  TD2: { 4: [-3, 0.2], 5: [1, 0.2], 6: [5, 0.3], 7: [9, 0.5], 8: [13, 0.8] },
};

/** True for a grade number that the standard has for this tolerance at some pitch. */
export const hasGrade = (what: Tolerance, grade: number): boolean => grade in GRADES[what];

/** A number rounded to whole µm as the tables are: halves to the even one (26.5 stands as 26, 33.5 as 34). */
export const printed = (r40: number): number => {
  const down = Math.floor(r40);
  const rest = r40 - down;
  return rest > 0.5 || (rest === 0.5 && down % 2 === 1) ? down + 1 : down;
};

/** Tolerance of another grade from grade 6, µm; null where the standard has no such grade at that pitch (mm). */
export const atGrade = (what: Tolerance, grade: number, pitch: number, grade6: number): number | null => {
  const g = GRADES[what][grade];
  return g && pitch >= g[1] ? printed(r40At(r40Index(grade6) + g[0])) : null;
};
