import type { FormId } from '../thread';
import { rows, sizeText, type Family } from './family';
import { METRIC, metricSeries } from './iso';

/** Filter threads and lens mounts, diameter : pitch in mm. ISO 6, ISO 9650-1 and common practice; from memory. */
const OPTICAL = `12:0.5 17:0.5 19:0.5 22.5:0.5 24:0.5 25:0.75,0.5 25.5:0.5 27:0.5,0.75 28:0.6,0.75 28.5:0.6 30:0.75
30.5:0.5 34:0.5,0.75 35.5:0.5 37:0.75 39:0.5 40.5:0.5 42:1,0.75 43:0.75 46:0.75 48:0.75 49:0.75 52:0.75 54:0.75 55:0.75
58:0.75 60:0.75 62:0.75 67:0.75 68:1 72:0.75 77:0.75 82:0.75 86:1 95:1 105:1 112:1.5 127:0.75`;

/** Mounts by inch: key, name, size, tpi, form. ISO 1222, ISO 8038 and common practice; from memory. */
const MOUNTS: readonly (readonly [key: string, size: string, tpi: string, form: FormId])[] = [
  ['tripod-1/4', '1/4', '20', 'iso60'],
  ['tripod-3/8', '3/8', '16', 'iso60'],
  ['lens-1-32', '1', '32', 'iso60'],
  ['lens-5/8-32', '5/8', '32', 'iso60'],
];

/** Spark plugs, diameter : pitch in mm. ISO 28741 and common practice; from memory. */
const PLUGS = '8:1 10:1 12:1.25 14:1.25 18:1.5';

/** Modules of ISO 54, first and second choice (from memory), mm. */
const MODULES = `0.3 0.4 0.5 0.6 0.7 0.75 0.8 0.9 1 1.125 1.25 1.375 1.5 1.75 2 2.25 2.5 2.75 3 3.5 4 4.5 5 5.5 6 7 8 9 10`;
/** Diametral pitches in common use, teeth per inch of diameter. */
const DPS = '2 2.5 3 4 5 6 7 8 10 12 14 16 18 20 22 24 26 28 30 32 36 40 48 64 72 80 96 120';

export const optical: Family = {
  ...METRIC,
  id: 'optical',
  standard: 'common practice',
  words: 'camera filter lens telescope',
  table: metricSeries(() => rows(OPTICAL)),
};

export const camera: Family = {
  id: 'camera',
  standard: 'ISO 1222',
  form: 'iso60',
  unit: 'in',
  system: 'asmeB1.1',
  externalClasses: ['2A'],
  internalClasses: ['2B'],
  externalDefault: '2A',
  internalDefault: '2B',
  words: 'tripod lens mount',
  table: (family) =>
    MOUNTS.map(([key, size, tpi, form]) => ({
      family,
      key,
      designation: `${sizeText(size)}-${tpi} UN`,
      size: sizeText(size),
      major: size,
      pitch: tpi,
      pitchUnit: 'tpi',
      form,
    })),
};

/** Microscope objectives (ISO 8038, 0.8 in by 36 to the inch) and the 39 mm by 26 to the inch lens mount. */
export const microscope: Family = {
  id: 'microscope',
  standard: 'ISO 8038',
  form: 'whitworth55',
  unit: 'in',
  system: null,
  externalClasses: [],
  internalClasses: [],
  externalDefault: null,
  internalDefault: null,
  words: 'rms objective lens mount',
  table: (family) => [
    {
      family,
      key: 'rms',
      designation: 'RMS 0.8-36',
      size: 'RMS 0.8',
      major: '0.8',
      pitch: '36',
      pitchUnit: 'tpi',
    },
    {
      family,
      key: '39x26',
      designation: '39 mm × 26 tpi',
      size: '39',
      major: '39',
      unit: 'mm',
      pitch: '26',
      pitchUnit: 'tpi',
    },
  ],
};

export const sparkPlug: Family = {
  ...METRIC,
  id: 'spark-plug',
  standard: 'ISO 28741',
  externalClasses: ['6e', '6g'],
  externalDefault: '6e',
  table: metricSeries(() => rows(PLUGS)),
};

const WORM = {
  system: null,
  externalClasses: [],
  internalClasses: [],
  externalDefault: null,
  internalDefault: null,
} as const satisfies Partial<Family>;

export const wormModule: Family = {
  ...WORM,
  id: 'worm-module',
  standard: 'ISO 54',
  form: 'worm40',
  unit: 'mm',
  words: 'worm module',
  table: (family) =>
    MODULES.split(' ').map((m) => ({
      family,
      key: m,
      designation: `Module ${m}`,
      size: `Module ${m}`,
      major: null,
      pitch: m,
      pitchUnit: 'module',
    })),
};

const wormByDp =
  (angle: string) =>
  (family: Family): ReturnType<Family['table']> =>
    DPS.split(' ').map((dp) => ({
      family,
      key: dp,
      designation: `${dp} DP ${angle}°`,
      size: `${dp} DP`,
      major: null,
      pitch: dp,
      pitchUnit: 'dp',
    }));

export const wormDp29: Family = {
  ...WORM,
  id: 'worm-dp-29',
  standard: 'common practice',
  form: 'worm29',
  unit: 'in',
  words: 'worm dp',
  table: wormByDp('14.5'),
};
export const wormDp40: Family = {
  ...WORM,
  id: 'worm-dp-40',
  standard: 'common practice',
  form: 'worm40',
  unit: 'in',
  words: 'worm dp',
  table: wormByDp('20'),
};
