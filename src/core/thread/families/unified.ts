import { inchSeries, rows, type Family } from './family';

/** Size and threads per inch: ASME B1.1 Table 1, columns UNC, UNF and UNEF (from memory of that table). */
const UNC = `no1:64 no2:56 no3:48 no4:40 no5:40 no6:32 no8:32 no10:24 no12:24 1/4:20 5/16:18 3/8:16 7/16:14 1/2:13 9/16:12
5/8:11 3/4:10 7/8:9 1:8 1-1/8:7 1-1/4:7 1-3/8:6 1-1/2:6 1-3/4:5 2:4.5 2-1/4:4.5 2-1/2:4 2-3/4:4 3:4 3-1/4:4 3-1/2:4
3-3/4:4 4:4`;
const UNF = `no0:80 no1:72 no2:64 no3:56 no4:48 no5:44 no6:40 no8:36 no10:32 no12:28 1/4:28 5/16:24 3/8:24 7/16:20 1/2:20
9/16:18 5/8:18 3/4:16 7/8:14 1:12 1-1/8:12 1-1/4:12 1-3/8:12 1-1/2:12`;
const UNEF = `no12:32 1/4:32 5/16:32 3/8:32 7/16:28 1/2:28 9/16:24 5/8:24 11/16:24 3/4:20 13/16:20 7/8:20 15/16:20 1:20
1-1/16:18 1-1/8:18 1-3/16:18 1-1/4:18 1-5/16:18 1-3/8:18 1-7/16:18 1-1/2:18 1-9/16:18 1-5/8:18 1-11/16:18`;

/** Selected special combinations, UNS (ASME B1.1, table of special threads; from memory, the commoner ones). */
const UNS = `no10:28,36,40,48,56 no12:36,40,48,56 1/4:24,27,36,40,48,56 5/16:27,36,40,48 3/8:18,27,36,40 7/16:18,24,27
1/2:12,14,18,24,27 9/16:14,27 5/8:14,27 3/4:14,18,24,27 7/8:10,18,24,27 1:10,14,18,24,27 1-1/8:10,14,24 1-1/4:10,14,24
1-3/8:10,14,24 1-1/2:10,14,24 1-5/8:10,14,24 1-3/4:10,14,18 1-7/8:10,14,18 2:10,14,18 2-1/4:10,14,18 2-1/2:10,14,18
2-3/4:10,14,18 3:10,14,18`;

/**
 * Constant-pitch series: threads per inch, and the first and last size in sixteenths (ASME B1.1 Table 1, from memory):
 * every sixteenth up to 2 in, every eighth above.
 */
const CONSTANT = '4:40-96 6:22-96 8:16-96 12:9-96 16:6-96 20:4-48 28:4-24 32:4-16';

/** So many sixteenths of an inch as a table writes a size: 19 is "1-3/16". */
const sixteenths = (n: number): string => {
  const whole = Math.floor(n / 16);
  let [top, bottom] = [n % 16, 16];
  if (top === 0) return String(whole);
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${whole ? `${whole}-` : ''}${top}/${bottom}`;
};

/** The constant-pitch pairs that don't already stand in the coarse, fine or extra-fine series under its name. */
const constantPitch = function* (): Generator<readonly [string, string]> {
  const named = new Set([UNC, UNF, UNEF].flatMap((t) => [...rows(t)].map(([s, p]) => `${s}:${p}`)));
  for (const [tpi, span] of rows(CONSTANT)) {
    const [from = 0, to = 0] = span.split('-').map(Number);
    for (let n = from; n <= to; n += n < 32 ? 1 : 2) {
      const size = sixteenths(n);
      if (!named.has(`${size}:${tpi}`)) yield [size, tpi];
    }
  }
};

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

export const unc: Family = { ...UNIFIED, id: 'unc', table: inchSeries(() => rows(UNC), 'UNC') };
export const unf: Family = { ...UNIFIED, id: 'unf', table: inchSeries(() => rows(UNF), 'UNF') };
export const unef: Family = {
  ...UNIFIED,
  ...NO_CLASS_1,
  id: 'unef',
  table: inchSeries(() => rows(UNEF), 'UNEF'),
};
export const un: Family = { ...UNIFIED, ...NO_CLASS_1, id: 'un', table: inchSeries(constantPitch, 'UN') };
export const uns: Family = {
  ...UNIFIED,
  ...NO_CLASS_1,
  id: 'uns',
  table: inchSeries(() => rows(UNS), 'UNS'),
};
/** ASME B1.15: the sizes of UNC, UNF and UNEF with a larger root radius. */
export const unj: Family = {
  ...UNIFIED,
  id: 'unj',
  standard: 'ASME B1.15',
  form: 'unj60',
  externalClasses: ['3A'],
  internalClasses: ['3B'],
  externalDefault: '3A',
  internalDefault: '3B',
  table: (family) =>
    [
      [UNC, 'UNJC'],
      [UNF, 'UNJF'],
      [UNEF, 'UNJEF'],
    ].flatMap(([table = '', suffix = '']) => inchSeries(() => rows(table), suffix)(family)),
};
