import { compare, MM_PER_INCH, mul, ratio, type Ratio } from '../quantity';

/** How a standard drill is called for. Metric drills in the steps drawers hold; see `drills`. */
export type DrillKind = 'metric' | 'number' | 'letter' | 'fraction';
export const DRILL_KINDS = ['metric', 'number', 'letter', 'fraction'] as const satisfies readonly DrillKind[];

/** One drill: its name as stamped ("8.5", "7", "F", "5/16") and its exact diameter in millimetres. */
export interface Drill {
  readonly kind: DrillKind;
  readonly name: string;
  readonly diameter: Ratio;
}

// ASME B94.11M twist drills, No. 1 to 80, in ten-thousandths of an inch.
const NUMBERS =
  '2280 2210 2130 2090 2055 2040 2010 1990 1960 1935 1910 1890 1850 1820 1800 1770 1730 1695 1660 1610 ' +
  '1590 1570 1540 1520 1495 1470 1440 1405 1360 1285 1200 1160 1130 1110 1100 1065 1040 1015 995 980 ' +
  '960 935 890 860 820 810 785 760 730 700 670 635 595 550 520 465 430 420 410 400 ' +
  '390 380 370 360 350 330 320 310 292 280 260 250 240 225 210 200 180 160 145 135';
// ASME B94.11M, A to Z, in thousandths of an inch.
const LETTERS =
  '234 238 242 246 250 257 261 266 272 277 281 290 295 302 316 323 332 339 348 358 368 377 386 397 404 413';
// From, to, step in hundredths of a millimetre: jobber drills as usually sold (ISO 235 preferred steps, from memory).
const METRIC: readonly (readonly [number, number, number])[] = [
  [30, 300, 5],
  [310, 1400, 10],
  [1425, 3200, 25],
  [3250, 10000, 50],
];
// Sixty-fourths to 1 3/4 in, then thirty-seconds to 2 in and sixteenths to 3 1/2 in (from memory of B94.11M).
const FRACTIONS: readonly (readonly [number, number, number])[] = [
  [1, 112, 1],
  [114, 128, 2],
  [132, 224, 4],
];

const inch = (n: number, d: number): Ratio => mul(ratio(n, d), MM_PER_INCH);
const words = (text: string): number[] => text.split(' ').map(Number);

const fractionName = (sixtyFourths: number): string => {
  const whole = Math.floor(sixtyFourths / 64);
  const rest = ratio(sixtyFourths % 64, 64);
  if (rest.n === 0n) return `${whole}`;
  return whole > 0 ? `${whole} ${rest.n}/${rest.d}` : `${rest.n}/${rest.d}`;
};
const metricName = (hundredths: number): string =>
  hundredths % 10 === 0 ? (hundredths / 100).toFixed(1) : (hundredths / 100).toFixed(2);

const steps = (rows: readonly (readonly [number, number, number])[]): number[] =>
  rows.flatMap(([from, to, by]) => Array.from({ length: (to - from) / by + 1 }, (_, i) => from + i * by));

const build = (): readonly Drill[] => {
  const all: Drill[] = [
    ...steps(METRIC).map((h): Drill => ({ kind: 'metric', name: metricName(h), diameter: ratio(h, 100) })),
    ...words(NUMBERS).map((t, i): Drill => ({ kind: 'number', name: `${i + 1}`, diameter: inch(t, 10_000) })),
    ...words(LETTERS).map((t, i): Drill => ({
      kind: 'letter',
      name: String.fromCharCode(65 + i),
      diameter: inch(t, 1000),
    })),
    ...steps(FRACTIONS).map((n): Drill => ({
      kind: 'fraction',
      name: fractionName(n),
      diameter: inch(n, 64),
    })),
  ];
  return Object.freeze(all.sort((a, b) => compare(a.diameter, b.diameter)));
};

let made: readonly Drill[] | null = null;
/** Every standard drill, smallest first. Made at first use. Where two kinds meet (E and 1/4) both stand. */
export const drills = (): readonly Drill[] => (made ??= build());

/** Drills of the kinds a person keeps. */
export const drillsOf = (kinds: readonly DrillKind[]): readonly Drill[] =>
  drills().filter((d) => kinds.includes(d.kind));

/** The drill with this name; number and letter drills as "7" or "F", fractions as "5/16". */
export const drillNamed = (kind: DrillKind, name: string): Drill | null =>
  drills().find((d) => d.kind === kind && d.name === name) ?? null;
