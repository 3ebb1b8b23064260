const of = (family: string, keys: string): string[] => keys.split(' ').map((key) => `${family}:${key}`);
/** Sizes met most often, the commonest first: they fill the page where fewer threads are in use. Own choice. */
const METRIC = [
  ...of('iso-coarse', 'M6 M8 M10 M12 M16 M20 M5 M4 M24 M3 M14 M18 M30 M36'),
  ...of('iso-fine', 'M8x1 M10x1.25 M12x1.5 M16x1.5 M20x1.5'),
  ...of('tr', 'Tr16x4 Tr20x4 Tr30x6'),
];
const INCH = [
  ...of('unc', '1/4-20 3/8-16 1/2-13 5/16-18 5/8-11 3/4-10 7/16-14 7/8-9 1-8'),
  ...of('unf', '1/4-28 3/8-24 1/2-20 5/16-24 5/8-18 3/4-16'),
  ...of('g', '1/8 1/4 1/2 1'),
];

/** Ids of the sizes met most often, those of one's own unit first. */
export const usualThreads = (unit: 'mm' | 'in'): readonly string[] =>
  unit === 'in' ? [...INCH, ...METRIC] : [...METRIC, ...INCH];
