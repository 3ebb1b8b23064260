import { div, mul, roundWhole, sub, toNumber, leadNumber, type Lead, type Ratio } from '../quantity';

/** Finding the groove again, one step at a time. Source: workshop manuals and common practice. */
export const PICK_STEPS = [
  'isolate',
  'tool',
  'drive',
  'forward',
  'groove',
  'again',
  'marker',
  'zero',
] as const;
export type PickStep = (typeof PICK_STEPS)[number];

/** What takes spindle and screw out of step, so that the thread has to be picked up. Common practice. */
export const LOSSES = ['power', 'ratio', 'slip', 'counts', 'work', 'tool'] as const;
export type Loss = (typeof LOSSES)[number];

export interface Offset {
  /** Spindle counts, exact; with π, the nearest whole alone is known. */
  readonly exact: Ratio | null;
  readonly nearest: bigint;
  /** What the rounding leaves along the work, µm, with its sign. */
  readonly off: number;
}

/**
 * An offset along the work as spindle counts: C·Δz/L. Own derivation.
 * @param counts per spindle rev, above 0 @param dz mm, with its sign
 */
export const offsetCounts = (dz: Ratio, lead: Lead, counts: Ratio): Offset => {
  const perMm = leadNumber(lead) / toNumber(counts);
  if (lead.pi) {
    const counted = toNumber(dz) / perMm;
    const nearest = BigInt(Math.round(counted));
    return { exact: null, nearest, off: (Number(nearest) - counted) * perMm * 1000 };
  }
  const exact = div(mul(counts, dz), lead.mm);
  const nearest = roundWhole(exact, 'nearest');
  return { exact, nearest, off: toNumber(sub(nearest, exact)) * perMm * 1000 };
};

/**
 * What an inexact ratio moves the groove by at one picking-up through the half-nut, µm: its error times the way of the
 * screw under the open nut and the way of the carriage back by hand. Own derivation; over a cycle both ways together
 * are all the revs of it × lead. @param ppm of the ratio @param open way of the screw while open, mm @param back mm
 */
export const errorAtClosing = (ppm: number, open: number, back: number): number =>
  (Math.abs(ppm) * (open + back)) / 1000;

/** The same added up by the last of so many passes, µm: each but the first begins with a picking-up. */
export const errorByPass = (perClosing: number, passes: number): number =>
  perClosing * Math.max(0, passes - 1);

/** Run-in before the cut, in pitches. Common practice. */
const RUN_IN_PITCHES = 3;

export interface RunIn {
  /** How far behind the start of the thread a pass has to begin, mm. */
  readonly mm: number;
  /** The backlash as an angle of the spindle, degrees; null where it isn't known. */
  readonly degrees: number | null;
}

/**
 * Where a pass begins so that the backlash is taken up before the cut: B and three pitches behind the start; the
 * spindle turns 360·B/L before the carriage moves. @param backlash mm, at least 0, or null @param pitch, lead mm
 */
export const runIn = (backlash: number | null, pitch: number, lead: number): RunIn | null =>
  !(pitch > 0 && lead > 0) || (backlash !== null && !(backlash >= 0))
    ? null
    : {
        mm: (backlash ?? 0) + RUN_IN_PITCHES * pitch,
        degrees: backlash === null ? null : (360 * backlash) / lead,
      };
