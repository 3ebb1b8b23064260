import { add, less, max, min, mul, ratio, roundTo, sub, toNumber, ZERO, type Ratio } from '../../quantity';
import { basicSizes, formOf, H60, pitchLength } from '../forms';
import type { Thread } from '../thread';
import { inch4, printedTo } from './rounded';
import { band, refused, type LimitsResult } from './types';

/** Factor on the class 2A pitch diameter tolerance (ASME B1.1, table of formulas; from memory, checked). */
const FACTOR: Readonly<Record<string, Ratio>> = {
  '1A': ratio(150, 100),
  '2A': ratio(100, 100),
  '3A': ratio(75, 100),
  '1B': ratio(195, 100),
  '2B': ratio(130, 100),
  '3B': ratio(975, 1000),
};

/** Printed pitch diameter tolerances that the formula misses by one, 0.0001 in: ASME B1.1 table of limits. */
const PRINTED: Readonly<Record<string, number>> = {
  'un:9/16-20 2A': 42,
  'unef:9/16-24 2A': 39,
  'unef:9/16-24 3A': 29,
  'unc:no6-32 3B': 27,
};
/** The same for printed allowances of classes 1A and 2A, 0.0001 in. */
const PRINTED_ALLOWANCE: Readonly<Record<string, number>> = { 'unc:5/8-11': 16, 'un:9/16-32': 10 };

/** Allowance of an external thread, inch: 0.3 of the class 2A tolerance, none for class 3A. */
const allowanceOf = (thread: Thread, classId: string, t2A: Ratio): Ratio => {
  if (classId === '3A') return ZERO;
  const printed = PRINTED_ALLOWANCE[thread.id];
  return printed === undefined ? inch4(mul(ratio(3, 10), t2A)) : ratio(printed, 10_000);
};

/** True for the series whose length of engagement is the diameter; all others take nine pitches. */
const isDiameterLong = (t: Thread): boolean =>
  t.family === 'unc' ||
  t.family === 'unf' ||
  / UNJ[CF]$/.test(t.designation) ||
  (t.family === 'un' && !less(8, t.pitch.value));

/** Class 2A pitch diameter tolerance, inch, to six decimals: 0.0015 (D^⅓ + √LE) + 0.015 P^⅔. */
const tolerance2A = (d: number, p: number, engagement: number): Ratio =>
  printedTo(0.0015 * Math.cbrt(d) + 0.0015 * Math.sqrt(engagement) + 0.015 * Math.cbrt(p * p), 6);

/** Minor diameter tolerance of internal threads, inch to four decimals; classes 1B and 2B. */
const minorTolerance12B = (d: number, P: Ratio): Ratio => {
  const p = toNumber(P);
  const plain = sub(mul(ratio(1, 4), P), mul(ratio(2, 5), P, P));
  if (d >= 0.25) return inch4(less(ratio(1, 4), P) ? mul(ratio(3, 20), P) : plain);
  return inch4(max(min(small(d, p), mul(ratio(394, 1000), P)), plain));
};
/** The same, class 3B. */
const minorTolerance3B = (d: number, P: Ratio): Ratio => {
  const p = toNumber(P);
  // 13 tpi and finer take the first floor, 12 tpi and coarser the second.
  const fine = less(P, ratio(1, 12));
  const floor = fine ? sub(mul(ratio(23, 100), P), mul(ratio(3, 2), P, P)) : mul(ratio(3, 25), P);
  return inch4(max(min(small(d, p), mul(ratio(394, 1000), P)), floor));
};
const small = (d: number, p: number): Ratio => printedTo(0.05 * Math.cbrt(p * p) + (0.03 * p) / d - 0.002, 6);

/**
 * Limits of size of unified inch threads by the formulas of ASME B1.1, inch to 0.0001 (internal minor diameters of
 * 0.138 in and over to 0.001 as the standard prints them). The external minor diameter is that of the rounded root.
 */
export const asmeB11 = (thread: Thread, classId: string): LimitsResult => {
  const factor = FACTOR[classId];
  if (!factor) return refused('class-not-in-standard');
  const basic = basicSizes(thread);
  const P = pitchLength(thread);
  if (!basic || !P) return refused('no-major-diameter');
  const d = toNumber(basic.major);
  const p = toNumber(P);
  const t2A = tolerance2A(d, p, isDiameterLong(thread) ? d : 9 * p);
  const exception = PRINTED[`${thread.id} ${classId}`];
  const pitchTol = exception === undefined ? inch4(mul(factor, t2A)) : ratio(exception, 10_000);
  const j = thread.form === 'unj60';
  const source = j ? 'asmeB1.15-formula-from-memory' : 'asmeB1.1-formula';
  const common = { ok: true, unit: 'in', source } as const;

  if (classId.endsWith('A')) {
    const allowance = allowanceOf(thread, classId, t2A);
    const majorTol = printedTo((classId === '1A' ? 0.09 : 0.06) * Math.cbrt(p * p), 4);
    const majorMax = sub(inch4(basic.major), allowance);
    const pitchMax = sub(inch4(basic.pitch), allowance);
    const pitchMin = sub(pitchMax, pitchTol);
    const root = formOf(thread).rootRadius;
    const fromPitch = (r: Ratio): Ratio => mul(sub(H60, mul(2, r)), P);
    return {
      ...common,
      kind: 'external',
      major: band(sub(majorMax, majorTol), majorMax),
      pitch: band(pitchMin, pitchMax),
      // UNR stops 11H/16 below the crest; UNJ at its largest and smallest root radius.
      minor:
        j && root
          ? band(
              inch4(sub(pitchMin, fromPitch(root.min))),
              inch4(sub(sub(basic.pitch, allowance), fromPitch(root.max))),
            )
          : band(null, inch4(sub(sub(basic.major, allowance), mul(H60, ratio(11, 8), P)))),
      minorFlat: j ? null : inch4(sub(basic.minor, allowance)),
    };
  }
  const pitchMin = inch4(basic.pitch);
  const minor4 = inch4(basic.minor);
  const third = classId === '3B';
  const minorMax = add(minor4, third ? minorTolerance3B(d, P) : minorTolerance12B(d, P));
  // UNJ keeps four decimals.
  const coarse = d >= 0.138 && !j;
  return {
    ...common,
    kind: 'internal',
    major: band(inch4(basic.major), null),
    pitch: band(pitchMin, add(pitchMin, pitchTol)),
    minor: band(coarse ? roundTo(minor4, 3) : minor4, coarse && !third ? roundTo(minorMax, 3) : minorMax),
    minorFlat: null,
  };
};
