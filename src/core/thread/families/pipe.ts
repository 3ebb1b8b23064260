import { ratio, stated } from '../../quantity';
import { rows, sizeText, type Family } from './family';

/** Size : threads per inch, major diameter in mm. ISO 228-1 Table 1 (from memory; ISO 7-1 has the same diameters). */
const BSP = `1/16:28,7.723 1/8:28,9.728 1/4:19,13.157 3/8:19,16.662 1/2:14,20.955 5/8:14,22.911 3/4:14,26.441
7/8:14,30.201 1:11,33.249 1-1/8:11,37.897 1-1/4:11,41.910 1-1/2:11,47.803 1-3/4:11,53.746 2:11,59.614 2-1/4:11,65.710
2-1/2:11,75.184 2-3/4:11,81.534 3:11,87.884 3-1/2:11,100.330 4:11,113.030 4-1/2:11,125.730 5:11,138.430
5-1/2:11,151.130 6:11,163.830`;
/** The sizes of ISO 7-1. */
const TAPER_SIZES = new Set('1/16 1/8 1/4 3/8 1/2 3/4 1 1-1/4 1-1/2 2 2-1/2 3 4 5 6'.split(' '));

/** Size : threads per inch, outside diameter of the pipe in inches. ASME B1.20.1 Table 2 (from memory). */
const NPT = `1/16:27,0.3125 1/8:27,0.405 1/4:18,0.540 3/8:18,0.675 1/2:14,0.840 3/4:14,1.050 1:11.5,1.315 1-1/4:11.5,1.660
1-1/2:11.5,1.900 2:11.5,2.375 2-1/2:8,2.875 3:8,3.500 3-1/2:8,4.000 4:8,4.500 5:8,5.563 6:8,6.625 8:8,8.625 10:8,10.750
12:8,12.750 14:8,14.000 16:8,16.000 18:8,18.000 20:8,20.000 24:8,24.000`;

/** 1 in 16 on diameter. */
const TAPER = stated(ratio(1, 16), 'times');

const triples = (table: string): (readonly [size: string, tpi: string, diameter: string])[] => {
  const all = [...rows(table)];
  return all.flatMap(([size, tpi], i) => (i % 2 ? [] : [[size, tpi, all[i + 1]?.[1] ?? ''] as const]));
};

const NO_CLASSES = {
  externalClasses: [],
  internalClasses: [],
  externalDefault: null,
  internalDefault: null,
} as const satisfies Partial<Family>;

/** Parallel pipe threads for joints not made in the thread. */
export const gPipe: Family = {
  id: 'g',
  standard: 'ISO 228-1',
  form: 'whitworth55',
  unit: 'mm',
  system: 'iso228',
  externalClasses: ['A', 'B'],
  internalClasses: ['internal'],
  externalDefault: 'A',
  internalDefault: 'internal',
  words: 'bsp bspp pipe',
  table: (family) =>
    triples(BSP).map(([size, tpi, major]) => {
      const name = `G ${sizeText(size)}`;
      return {
        family,
        key: size,
        designation: name,
        size: name,
        major,
        pitch: tpi,
        pitchUnit: 'tpi',
      };
    }),
};

/** Taper pipe threads for joints made in the thread; sizes of the external thread at the gauge plane. */
export const rPipe: Family = {
  ...NO_CLASSES,
  id: 'r',
  standard: 'ISO 7-1',
  form: 'whitworth55',
  unit: 'mm',
  system: 'taper',
  words: 'bspt pipe taper',
  table: (family) =>
    triples(BSP)
      .filter(([size]) => TAPER_SIZES.has(size))
      .map(([size, tpi, major]) => {
        const name = `R ${sizeText(size)}`;
        return {
          family,
          key: size,
          designation: name,
          size: name,
          major,
          pitch: tpi,
          pitchUnit: 'tpi',
          taper: TAPER,
        };
      }),
};

/** American taper pipe threads; the major diameter stated is the outside diameter of the pipe. */
export const npt: Family = {
  ...NO_CLASSES,
  id: 'npt',
  standard: 'ASME B1.20.1',
  form: 'npt60',
  unit: 'in',
  system: 'taper',
  words: 'pipe taper',
  table: (family) =>
    triples(NPT).map(([size, tpi, major]) => ({
      family,
      key: `${size}-${tpi}`,
      designation: `${sizeText(size)}-${tpi} NPT`,
      size: sizeText(size),
      major,
      pitch: tpi,
      pitchUnit: 'tpi',
      taper: TAPER,
    })),
};
