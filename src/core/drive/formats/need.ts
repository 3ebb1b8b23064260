/** What a thread is for decides how true its lead must be. */
export type Use = 'fastener' | 'leadscrew' | 'worm';

/** Travel deviation allowed in 300 mm by the finest grade of ball screw, µm: ISO 3408-3 grade 1 (from memory). */
export const FINEST_300 = 6;

/**
 * Pitch-diameter equivalent of an error of pitch: δP × 2 ÷ (tan a + tan b) for flank angles a and b, that is δP × cot a
 * where they are alike (1.732 for 60°). null for flanks that stand upright, which no diameter makes good.
 * Source: ISO 5408 and ASME B1.7, virtual pitch diameter. @param flanks degrees
 */
export const perDiameter = (flanks: readonly [number, number]): number | null => {
  const [a, b] = flanks.map((f) => Math.tan((f * Math.PI) / 180)) as [number, number];
  return a + b > 0 ? 2 / (a + b) : null;
};

/**
 * Error of pitch over the length of engagement that takes half the pitch-diameter tolerance, in the tolerance's unit.
 * Source: common practice; ISO 965-1 and ASME B1.1 have no tolerance of pitch itself.
 */
export const pitchErrorAllowed = (tolerance: number, flanks: readonly [number, number]): number | null => {
  const k = perDiameter(flanks);
  return k === null ? null : (0.5 * tolerance) / k;
};

/** Passes on a small manual lathe with a high-speed steel tool, the longer figure, by pitch in mm: common practice. */
const PASSES: readonly (readonly [mm: number, passes: number])[] = [
  [0.5, 8],
  [0.75, 9],
  [1, 10],
  [1.25, 12],
  [1.5, 14],
  [1.75, 16],
  [2, 18],
  [2.5, 20],
  [3, 24],
  [3.5, 28],
];
const MOST_PASSES = 30;

/** Passes that a thread may take: an estimate, on the long side. @param pitch mm */
export const passesFor = (pitch: number): number => PASSES.find(([mm]) => pitch <= mm)?.[1] ?? MOST_PASSES;

/** Revs of a cycle where the length isn't known, and those for levers and looking where it is: estimates. */
const REVS_UNKNOWN = 60;
const REVS_BESIDE = 20;

/** Spindle revs from one pass to the next, out and back: an estimate. @param length of thread, mm, or null */
export const revsPerCycle = (length: number | null, lead: number): number =>
  length === null ? REVS_UNKNOWN : Math.ceil((2 * length) / lead) + REVS_BESIDE;
