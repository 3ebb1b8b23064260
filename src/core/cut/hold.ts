import type { Holding, Job } from '../job';

/** Rules of thumb are notes, not limits: each names the times it goes by, and none makes a speed or a plan. */
export const HOLD_RULES = {
  /** Diameters that work held at one end alone may stand out. Common practice. */
  alone: 3,
  /** Diameters between supports beyond which a steady is set. Common practice. */
  supported: 12,
  /** Diameters of the bar that a bar of steel, of solid carbide may stand out. Common practice. */
  steelBar: 4,
  carbideBar: 6,
} as const;

/** Kept free on each side of a bar in its bore, and past the end of the thread, mm. Own choice after common practice. */
export const BAR_CLEARANCE = 0.5;
/** How far the point stands beyond the bar past full depth, mm. Own choice. */
const POINT_PAST = 0.3;
/** In front of the bore's mouth, so that the tool clears it before the carriage goes back, mm. Own choice. */
const MOUTH = 2;

export interface HoldQuestion {
  readonly holding: Holding | null;
  /** Smallest diameter of what stands out, mm; null where not known. */
  readonly diameter: number | null;
  /** What stands out at the least, mm: the thread and what is beside it. */
  readonly out: number | null;
}

export type HoldNote =
  | { readonly code: 'holding-unknown' | 'overhang-unknown' }
  | {
      readonly code: 'overhang' | 'span';
      readonly out: number;
      readonly times: number;
      readonly most: number;
      readonly beyond: boolean;
    }
  /** What each way of holding asks besides. */
  | { readonly code: Holding };

const alone = (h: Holding): boolean => h === 'chuck' || h === 'collet' || h === 'faceplate';

/**
 * What is to be borne in mind about the holding: how many diameters stand out against the rule of thumb, and what that
 * way of holding asks. `out` is a least: jaws and centre take more, so what is beyond the rule is so for certain.
 */
export const holdNotes = ({ holding, diameter, out }: HoldQuestion): readonly HoldNote[] => {
  if (!holding) return [{ code: 'holding-unknown' }];
  const most = alone(holding) ? HOLD_RULES.alone : HOLD_RULES.supported;
  const known = diameter !== null && diameter > 0 && out !== null && out > 0;
  const times = known ? out / diameter : 0;
  return [
    known
      ? { code: alone(holding) ? 'overhang' : 'span', out, times, most, beyond: times > most }
      : { code: 'overhang-unknown' },
    { code: holding },
  ];
};

export interface BarQuestion {
  /** Diameter of the bore before threading, mm. */
  readonly bore: number | null;
  /** Radial depth of the thread, mm. */
  readonly depth: number | null;
  /** Length of the thread, mm. */
  readonly length: number | null;
  /** From the thread's end to the bottom of the hole or whatever is in the way, mm. */
  readonly gap: number | null;
  /** What the tool needs beyond the thread's end: groove or run-out, mm. */
  readonly runOut: number | null;
  readonly ending: Job['ending'];
}

/** A bar for an internal thread, mm; each null while something it needs isn't known. */
export interface BarFigures {
  /** From the holder to the tool's point, at the least: thread, run-out and what stands free of the mouth. */
  readonly reach: number | null;
  /** Depth of a blind hole, at the least; null for one right through. */
  readonly hole: number | null;
  /** The hole as measured is too shallow for it. */
  readonly tooShallow: boolean | null;
  /** From the tool's point to the bar's back, at the most: wider, it can't be drawn back clear of the thread. */
  readonly widest: number | null;
  /** Thickest bar that leaves room for the point. */
  readonly bar: number | null;
  /** Reach in diameters of that bar. */
  readonly times: number | null;
}

/**
 * The bar for an internal thread. Drawn back clear, the point stands BAR_CLEARANCE inside the bore and the bar's back no
 * nearer the far wall, so point to back is at most bore − 2·clearance whatever the depth; the point stands beyond the
 * bar by the depth and a little, and the rest is bar. Own geometry; clearances as named above.
 */
export const barFor = ({ bore, depth, length, gap, runOut, ending }: BarQuestion): BarFigures => {
  const beyond = ending === 'through' ? BAR_CLEARANCE : runOut;
  const reach = length === null || beyond === null ? null : length + beyond + MOUTH;
  const hole =
    length === null || runOut === null || ending === 'through' ? null : length + runOut + BAR_CLEARANCE;
  const widest = bore === null ? null : bore - 2 * BAR_CLEARANCE;
  const bar = widest === null || depth === null ? null : widest - depth - POINT_PAST;
  const fits = bar !== null && bar > 0 ? bar : null;
  return {
    reach,
    hole,
    tooShallow: hole === null || gap === null || length === null ? null : length + gap < hole,
    widest: widest !== null && widest > 0 ? widest : null,
    bar: fits,
    times: reach === null || fits === null ? null : reach / fits,
  };
};
