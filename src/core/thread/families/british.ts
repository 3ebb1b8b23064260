import { inchSeries, rows, type Family, type Row } from './family';

/**
 * Size and threads per inch: BS 84 Table 1 (BSW) and Table 2 (BSF), from memory; the small and in-between sizes of
 * BSW (1/16, 3/32, 5/32, 7/32, 13/16, 15/16, 1 3/8, 1 5/8, 1 7/8) come from older lists of the same series.
 */
const BSW = `1/16:60 3/32:48 1/8:40 5/32:32 3/16:24 7/32:24 1/4:20 5/16:18 3/8:16 7/16:14 1/2:12 9/16:12 5/8:11 11/16:11
3/4:10 13/16:10 7/8:9 15/16:9 1:8 1-1/8:7 1-1/4:7 1-3/8:6 1-1/2:6 1-5/8:5 1-3/4:5 1-7/8:4.5 2:4.5 2-1/4:4 2-1/2:4
2-3/4:3.5 3:3.5 3-1/4:3.25 3-1/2:3.25 3-3/4:3 4:3 4-1/2:2.875 5:2.75 5-1/2:2.625 6:2.5`;
const BSF = `3/16:32 7/32:28 1/4:26 9/32:26 5/16:22 3/8:20 7/16:18 1/2:16 9/16:16 5/8:14 11/16:14 3/4:12 13/16:12 7/8:11
1:10 1-1/8:9 1-1/4:9 1-3/8:8 1-1/2:8 1-5/8:8 1-3/4:7 2:7 2-1/4:6 2-1/2:6 2-3/4:6 3:5 3-1/4:5 3-1/2:4.5 3-3/4:4.5 4:4.5
4-1/4:4`;

/** BA number : diameter, pitch in mm. BS 93 Table 1 (0 to 16) and the older list of the same rule (17 to 25). */
const BA = `0:6.0,1.00 1:5.3,0.90 2:4.7,0.81 3:4.1,0.73 4:3.6,0.66 5:3.2,0.59 6:2.8,0.53 7:2.5,0.48 8:2.2,0.43
9:1.9,0.39 10:1.7,0.35 11:1.5,0.31 12:1.3,0.28 13:1.2,0.25 14:1.0,0.23 15:0.90,0.21 16:0.79,0.19 17:0.70,0.17
18:0.62,0.15 19:0.54,0.14 20:0.48,0.12 21:0.42,0.11 22:0.37,0.098 23:0.33,0.089 24:0.29,0.080 25:0.25,0.072`;

const baSeries = (family: Family): Row[] => {
  const figures = [...rows(BA)];
  return figures.flatMap(([number, major], i) => {
    const pitch = figures[i + 1]?.[1];
    // rows() gives each number twice: with its diameter, then with its pitch.
    if (i % 2 || pitch === undefined) return [];
    return [
      {
        family,
        key: number,
        designation: `${number} BA`,
        size: number,
        major,
        pitch,
        pitchUnit: 'mm',
      },
    ];
  });
};

const WHITWORTH = {
  standard: 'BS 84',
  form: 'whitworth55',
  unit: 'in',
  system: 'bs84',
  externalClasses: ['bolt-medium', 'bolt-close', 'bolt-free'],
  internalClasses: ['nut-medium', 'nut-close', 'nut-normal'],
  externalDefault: 'bolt-medium',
  internalDefault: 'nut-medium',
} as const satisfies Partial<Family>;

export const bsw: Family = { ...WHITWORTH, id: 'bsw', table: inchSeries(() => rows(BSW), 'BSW') };
export const bsf: Family = { ...WHITWORTH, id: 'bsf', table: inchSeries(() => rows(BSF), 'BSF') };
export const ba: Family = {
  id: 'ba',
  standard: 'BS 93',
  form: 'ba47',
  unit: 'mm',
  system: 'bs93',
  externalClasses: ['bolt-normal', 'bolt-close'],
  internalClasses: ['nut'],
  externalDefault: 'bolt-normal',
  internalDefault: 'nut',
  table: baSeries,
};

/** Families of which no standard's limits are known here. */
const BARE = {
  unit: 'in',
  system: null,
  externalClasses: [],
  internalClasses: [],
  externalDefault: null,
  internalDefault: null,
} as const satisfies Partial<Family>;

/** Cycle threads, BS 811, and the sizes of spoke and pedal that go with them. From memory of its list. */
const CYCLE = `1/8:40 5/32:32 3/16:32 7/32:26 1/4:26 17/64:26 9/32:26 5/16:26 3/8:26 7/16:26 1/2:26 9/16:26,20 5/8:26
11/16:26 3/4:26 7/8:24 1:26,24 1-1/8:26 1.37:24 1.29:24`;
/** Model engineer's series: constant pitch on fractional sizes. Common practice; the 26 tpi sizes pass as brass. */
const MODEL = `1/8:40 5/32:40 3/16:40,32 7/32:40,32 1/4:40,32 9/32:40,32 5/16:40,32 11/32:40 3/8:40,32 7/16:40,32 1/2:40,32
1/16:60 3/32:60 9/16:32 5/8:32`;
/** Brass thread, 26 to the inch on every size; common practice of the British trade. */
const BRASS = `1/8:26 3/16:26 1/4:26 5/16:26 3/8:26 7/16:26 1/2:26 9/16:26 5/8:26 11/16:26 3/4:26 7/8:26 1:26 1-1/8:26
1-1/4:26 1-3/8:26 1-1/2:26`;

export const cycle: Family = {
  ...BARE,
  id: 'cycle',
  standard: 'BS 811',
  form: 'cycle60',
  table: inchSeries(() => rows(CYCLE), 'BSC'),
};
export const modelEngineer: Family = {
  ...BARE,
  id: 'model-engineer',
  standard: 'common practice',
  form: 'whitworth55',
  table: inchSeries(() => rows(MODEL), 'ME'),
};
export const brass: Family = {
  ...BARE,
  id: 'brass',
  standard: 'common practice',
  form: 'whitworth55',
  table: inchSeries(() => rows(BRASS), 'Brass'),
};
