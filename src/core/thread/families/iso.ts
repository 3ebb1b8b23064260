import { rows, type Family, type Row } from './family';

/** Diameter and coarse pitch, mm: ISO 261 Table 2, "coarse" column (from memory of that table). */
const COARSE = `1:0.25 1.1:0.25 1.2:0.25 1.4:0.3 1.6:0.35 1.8:0.35 2:0.4 2.2:0.45 2.5:0.45 3:0.5 3.5:0.6 4:0.7
4.5:0.75 5:0.8 6:1 7:1 8:1.25 9:1.25 10:1.5 11:1.5 12:1.75 14:2 16:2 18:2.5 20:2.5 22:2.5 24:3 27:3 30:3.5 33:3.5
36:4 39:4 42:4.5 45:4.5 48:5 52:5 56:5.5 60:5.5 64:6 68:6`;

/** Diameter and fine pitches, mm: ISO 261 Table 2, "fine" columns (from memory of that table). */
const FINE = `1:0.2 1.1:0.2 1.2:0.2 1.4:0.2 1.6:0.2 1.8:0.2 2:0.25 2.2:0.25 2.5:0.35 3:0.35 3.5:0.35 4:0.5 4.5:0.5
5:0.5 5.5:0.5 6:0.75 7:0.75 8:1,0.75 9:1,0.75 10:1.25,1,0.75 11:1,0.75 12:1.5,1.25,1 14:1.5,1.25,1 15:1.5,1 16:1.5,1
17:1.5,1 18:2,1.5,1 20:2,1.5,1 22:2,1.5,1 24:2,1.5,1 25:2,1.5,1 26:1.5 27:2,1.5,1 28:2,1.5,1 30:3,2,1.5,1 32:2,1.5
33:3,2,1.5 35:1.5 36:3,2,1.5 38:1.5 39:3,2,1.5 40:3,2,1.5 42:4,3,2,1.5 45:4,3,2,1.5 48:4,3,2,1.5 50:3,2,1.5
52:4,3,2,1.5 55:4,3,2,1.5 56:4,3,2,1.5 58:4,3,2,1.5 60:4,3,2,1.5 62:4,3,2,1.5 64:4,3,2,1.5 65:4,3,2,1.5 68:4,3,2,1.5
70:6,4,3,2,1.5 72:6,4,3,2,1.5 75:4,3,2,1.5 76:6,4,3,2,1.5 78:2 80:6,4,3,2,1.5 82:2 85:6,4,3,2 90:6,4,3,2 95:6,4,3,2
100:6,4,3,2 105:6,4,3,2 110:6,4,3,2 115:6,4,3,2 120:6,4,3,2 125:8,6,4,3,2 130:8,6,4,3,2 135:6,4,3,2 140:8,6,4,3,2
145:6,4,3,2 150:8,6,4,3,2 155:6,4,3 160:8,6,4,3 165:6,4,3 170:8,6,4,3 175:6,4,3 180:8,6,4,3 185:6,4,3 190:8,6,4,3
195:6,4,3 200:8,6,4,3 205:6,4,3 210:8,6,4,3 215:6,4,3 220:8,6,4,3 225:6,4,3 230:8,6,4,3 235:6,4,3 240:8,6,4,3
245:6,4,3 250:8,6,4,3 255:6,4 260:8,6,4 265:6,4 270:8,6,4 275:6,4 280:8,6,4 285:6,4 290:8,6,4 295:6,4 300:8,6,4`;

/** Sizes outside ISO 261 that are still met: older instrument screws, and cable entries of EN 60423. From memory. */
const OTHER = '1.7:0.35 2.3:0.4 2.6:0.45 63:1.5';

/**
 * Largest diameter (mm) for a fine pitch: ISO 261, clause on pitches finer than its table's (from memory). Below it a
 * finer pitch is allowed; above it a pair of diameter and pitch is no ISO thread and gets no limits.
 */
export const LARGEST_FOR_PITCH: readonly (readonly [pitch: string, diameter: number])[] = [
  ['0.2', 3],
  ['0.25', 5],
  ['0.35', 10],
  ['0.5', 22],
  ['0.75', 33],
  ['1', 80],
  ['1.5', 150],
  ['2', 200],
  ['3', 300],
];

/** The pairs that the clause on finer pitches adds: each diameter with every pitch finer than its finest listed. */
const finer = (): (readonly [string, string])[] => {
  const finest = new Map<string, number>();
  for (const [d, p] of [...rows(COARSE), ...rows(FINE)]) {
    finest.set(d, Math.min(finest.get(d) ?? Infinity, Number(p)));
  }
  return [...finest].flatMap(([d, p]) =>
    LARGEST_FOR_PITCH.filter(([pitch, largest]) => Number(pitch) < p && Number(d) <= largest)
      .reverse()
      .map(([pitch]) => [d, pitch] as const),
  );
};

/** Builder for threads "M10×1"; a coarse series leaves the pitch out of the id. */
export const metricSeries =
  (pairs: () => Iterable<readonly [diameter: string, pitch: string]>, prefix = 'M', pitchInId = true) =>
  (family: Family): Row[] =>
    [...pairs()].map(([d, p]) => ({
      family,
      key: pitchInId ? `${prefix}${d}x${p}` : `${prefix}${d}`,
      designation: `${prefix}${d}×${p}`,
      size: `${prefix}${d}`,
      major: d,
      pitch: p,
      pitchUnit: 'mm',
    }));

/** What every metric family of the 60° form shares. */
export const METRIC = {
  standard: 'ISO 261',
  form: 'iso60',
  unit: 'mm',
  system: 'iso965',
  externalClasses: ['6g', '6h', '6e', '6f', '4h', '4g6g', '8g'],
  internalClasses: ['6H', '5H', '4H', '6G', '7H'],
  externalDefault: '6g',
  internalDefault: '6H',
} as const satisfies Partial<Family>;

export const isoCoarse: Family = {
  ...METRIC,
  id: 'iso-coarse',
  table: metricSeries(() => rows(COARSE), 'M', false),
};
export const isoFine: Family = { ...METRIC, id: 'iso-fine', table: metricSeries(() => rows(FINE)) };
/** Constant-pitch sizes beyond the table, and a few from other lists. */
export const isoConstant: Family = {
  ...METRIC,
  id: 'iso-constant',
  table: metricSeries(() => [...finer(), ...rows(OTHER)]),
};

/** MJ: ISO 5855-2, diameters and pitches for bolts and fittings (from memory of its lists). */
const MJ = `1.6:0.35 2:0.4 2.5:0.45 3:0.5 3.5:0.6 4:0.7 5:0.8 6:1 7:1 8:1.25,1 10:1.5,1.25 12:1.75,1.5,1.25 14:2,1.5
16:2,1.5 18:1.5 20:2.5,1.5 22:1.5 24:3,2 27:2 30:2 33:2 36:2 39:2`;
export const mj: Family = {
  ...METRIC,
  id: 'mj',
  standard: 'ISO 5855',
  form: 'mj60',
  externalClasses: ['4h6h', '4g6g', '6g'],
  internalClasses: ['4H5H', '4H6H', '6H'],
  externalDefault: '4h6h',
  internalDefault: '4H5H',
  table: metricSeries(() => rows(MJ), 'MJ'),
};
