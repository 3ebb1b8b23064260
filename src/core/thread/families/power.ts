import { inchSeries, rows, type Family } from './family';
import { metricSeries } from './iso';

/** Trapezoidal: ISO 2902 Table 1, diameter and pitches in mm (from memory of that table). */
const TR = `8:1.5 9:2,1.5 10:2,1.5 11:3,2 12:3,2 14:3,2 16:4,2 18:4,2 20:4,2 22:8,5,3 24:8,5,3 26:8,5,3 28:8,5,3 30:10,6,3
32:10,6,3 34:10,6,3 36:10,6,3 38:10,7,3 40:10,7,3 42:10,7,3 44:12,7,3 46:12,8,3 48:12,8,3 50:12,8,3 52:12,8,3 55:14,9,3
60:14,9,3 65:16,10,4 70:16,10,4 75:16,10,4 80:16,10,4 85:18,12,4 90:18,12,4 95:18,12,4 100:20,12,4 105:20,12,4
110:20,12,4 115:22,14,6 120:22,14,6 125:22,14,6 130:22,14,6 135:24,14,6 140:24,14,6 145:24,14,6 150:24,16,6 155:24,16,6
160:28,16,6 165:28,16,6 170:28,16,6 175:28,16,8 180:28,18,8 185:32,18,8 190:32,18,8 195:32,18,8 200:32,18,8 210:36,20,8
220:36,20,8 230:36,20,8 240:36,22,8 250:40,22,12 260:40,22,12 270:40,24,12 280:40,24,12 290:44,24,12 300:44,24,12`;

/** Acme, general purpose: ASME B1.5, preferred diameters and pitches (from memory of that table). */
const ACME = `1/4:16 5/16:14 3/8:12 7/16:12 1/2:10 5/8:8 3/4:6 7/8:6 1:5 1-1/8:5 1-1/4:5 1-3/8:4 1-1/2:4 1-3/4:4 2:4
2-1/4:3 2-1/2:3 2-3/4:3 3:2 3-1/2:2 4:2 4-1/2:2 5:2`;
/** Acme of other pitches on bought screws and nuts, common practice: no class limits. */
const ACME_OTHER = `3/8:10,8 1/2:8 5/8:10,5 3/4:10,8,5 7/8:5 1:10,8,4 1-1/4:4 1-1/2:5,10 2:5`;

/**
 * Buttress 7°/45°: ASME B1.9, threads per inch recommended for each range of diameters (from memory). Each row is
 * pitches : diameters.
 */
const BUTTRESS: readonly (readonly [tpi: string, sizes: string])[] = [
  ['20,16,12', '1/2 9/16 5/8 11/16'],
  ['16,12,10', '3/4 7/8 1'],
  ['16,12,10,8,6', '1-1/8 1-1/4 1-3/8 1-1/2'],
  ['16,12,10,8,6,5,4', '1-3/4 2 2-1/4 2-1/2 2-3/4 3 3-1/2 4'],
  ['12,10,8,6,5,4,3', '4-1/2 5 5-1/2 6'],
  ['10,8,6,5,4,3,2.5,2', '7 8 9 10'],
  ['10,8,6,5,4,3,2.5,2,1.5,1.25', '11 12 14 16'],
  ['8,6,5,4,3,2.5,2,1.5,1.25,1', '18 20 22 24'],
];

/** Square threads as older handbooks list them: twice the pitch of the coarse thread of the day. No standard. */
const SQUARE = `1/4:10 5/16:9 3/8:8 7/16:7 1/2:6.5 9/16:6 5/8:5.5 11/16:5 3/4:5 13/16:4.5 7/8:4.5 15/16:4 1:4 1-1/8:3.5
1-1/4:3.5 1-3/8:3 1-1/2:3 1-5/8:2.75 1-3/4:2.5 1-7/8:2.5 2:2.25 2-1/4:2.25 2-1/2:2 2-3/4:2 3:1.75 3-1/4:1.75
3-1/2:1.625 3-3/4:1.5 4:1.5`;

/** Round: DIN 405-1, diameters in mm for each number of threads per inch (from memory of that table). */
const ROUND: readonly (readonly [tpi: string, diameters: string])[] = [
  ['10', '8 9 10 11 12'],
  ['8', '14 16 18 20 22 24 26 28 30 32 34 36 38'],
  ['6', '40 42 44 46 48 50 52 55 58 60 62 65 68 70 72 75 78 80 82 85 88 90 92 95 98 100'],
  ['4', '105 110 115 120 125 130 135 140 145 150 155 160 165 170 175 180 185 190 195 200'],
];

const GENERAL = {
  unit: 'in',
  externalClasses: ['screw-2G', 'screw-3G', 'screw-4G'],
  internalClasses: ['nut-2G', 'nut-3G', 'nut-4G'],
  externalDefault: 'screw-2G',
  internalDefault: 'nut-2G',
} as const satisfies Partial<Family>;
const BARE = {
  system: null,
  externalClasses: [],
  internalClasses: [],
  externalDefault: null,
  internalDefault: null,
} as const satisfies Partial<Family>;

export const trapezoidal: Family = {
  id: 'tr',
  standard: 'ISO 2902',
  form: 'trapezoidal30',
  unit: 'mm',
  system: 'iso2903',
  externalClasses: ['7e', '8e', '8c', '9c'],
  internalClasses: ['7H', '8H', '9H'],
  externalDefault: '7e',
  internalDefault: '7H',
  words: 'trapezoidal leadscrew',
  table: metricSeries(() => rows(TR), 'Tr'),
};
export const acme: Family = {
  ...GENERAL,
  id: 'acme',
  standard: 'ASME B1.5',
  form: 'acme29',
  system: 'asmeB1.5',
  words: 'leadscrew',
  table: inchSeries(() => [...rows(ACME), ...rows(ACME_OTHER)], 'Acme'),
};
export const stubAcme: Family = {
  ...GENERAL,
  id: 'stub-acme',
  standard: 'ASME B1.8',
  form: 'stubAcme29',
  system: 'asmeB1.8',
  externalClasses: ['screw-2G'],
  internalClasses: ['nut-2G'],
  table: inchSeries(() => rows(ACME), 'Stub Acme'),
};
/** True for the diameter and pitch pairs of ASME B1.5: its tolerance tables cover no others. */
export const isPreferredAcme = (size: string, tpi: string): boolean =>
  [...rows(ACME)].some(([s, p]) => s.replace('-', ' ') === size && p === tpi);

const crossed = (table: readonly (readonly [pitches: string, sizes: string])[]): [string, string][] =>
  table.flatMap(([pitches, sizes]) =>
    sizes.split(' ').flatMap((size) => pitches.split(',').map((p): [string, string] => [size, p])),
  );

export const buttress: Family = {
  id: 'buttress',
  standard: 'ASME B1.9',
  form: 'buttress7x45',
  unit: 'in',
  system: 'asmeB1.9',
  externalClasses: ['screw-2', 'screw-3'],
  internalClasses: ['nut-2', 'nut-3'],
  externalDefault: 'screw-2',
  internalDefault: 'nut-2',
  table: inchSeries(() => crossed(BUTTRESS), 'Butt'),
};
export const square: Family = {
  ...BARE,
  id: 'square',
  standard: 'common practice',
  form: 'square',
  unit: 'in',
  table: inchSeries(() => rows(SQUARE), 'Square'),
};
export const round: Family = {
  ...BARE,
  id: 'round',
  standard: 'DIN 405-1',
  form: 'round30',
  unit: 'mm',
  words: 'round knuckle',
  table: (family) =>
    crossed(ROUND).map(([d, tpi]) => ({
      family,
      key: `Rd${d}x1/${tpi}`,
      designation: `Rd ${d}×1/${tpi}`,
      size: `Rd${d}`,
      major: d,
      pitch: tpi,
      pitchUnit: 'tpi',
    })),
};
