import { inchSeries, type Family } from './family';

/** Size and threads per inch: ASME B1.1 Table 1, columns UNC, UNF and UNEF (from memory of that table). */
const UNC = `no1:64 no2:56 no3:48 no4:40 no5:40 no6:32 no8:32 no10:24 no12:24 1/4:20 5/16:18 3/8:16 7/16:14 1/2:13 9/16:12
5/8:11 3/4:10 7/8:9 1:8 1-1/8:7 1-1/4:7 1-3/8:6 1-1/2:6 1-3/4:5 2:4.5 2-1/4:4.5 2-1/2:4 2-3/4:4 3:4 3-1/4:4 3-1/2:4
3-3/4:4 4:4`;
const UNF = `no0:80 no1:72 no2:64 no3:56 no4:48 no5:44 no6:40 no8:36 no10:32 no12:28 1/4:28 5/16:24 3/8:24 7/16:20 1/2:20
9/16:18 5/8:18 3/4:16 7/8:14 1:12 1-1/8:12 1-1/4:12 1-3/8:12 1-1/2:12`;
const UNEF = `no12:32 1/4:32 5/16:32 3/8:32 7/16:28 1/2:28 9/16:24 5/8:24 11/16:24 3/4:20 13/16:20 7/8:20 15/16:20 1:20
1-1/16:18 1-1/8:18 1-3/16:18 1-1/4:18 1-5/16:18 1-3/8:18 1-7/16:18 1-1/2:18 1-9/16:18 1-5/8:18 1-11/16:18`;

const UNIFIED = {
  standard: 'ASME B1.1',
  form: 'iso60',
  unit: 'in',
  system: 'asmeB1.1',
  externalClasses: ['2A', '3A', '1A'],
  internalClasses: ['2B', '3B', '1B'],
  externalDefault: '2A',
  internalDefault: '2B',
} as const satisfies Partial<Family>;

/** The standard gives classes 1A and 1B to the coarse and fine series only. */
const NO_CLASS_1 = { externalClasses: ['2A', '3A'], internalClasses: ['2B', '3B'] } as const;

export const UNIFIED_FAMILIES: readonly Family[] = [
  { ...UNIFIED, id: 'unc', build: inchSeries(UNC, 'UNC') },
  { ...UNIFIED, id: 'unf', build: inchSeries(UNF, 'UNF') },
  { ...UNIFIED, ...NO_CLASS_1, id: 'unef', build: inchSeries(UNEF, 'UNEF') },
];
