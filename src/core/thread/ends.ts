import { mul, ratio, type Ratio } from '../quantity';

/** The ends of a thread without an undercut, and the chamfer it starts from. Metric, mm. */

/** Thread run-out at a shoulder (GB/T 3-1997, equivalent to ISO 3508): 2.5 P normal, 1.25 P short. */
export const threadRunOut = (pitch: Ratio, length: 'normal' | 'short'): Ratio =>
  mul(pitch, length === 'normal' ? ratio(5, 2) : ratio(5, 4));

/** Last full thread to shoulder, no undercut (GB/T 3-1997): 3 P normal, 4 P long, 2 P short. */
export const shoulderDistance = (pitch: Ratio, length: 'normal' | 'long' | 'short'): Ratio =>
  mul(pitch, { normal: 3, long: 4, short: 2 }[length]);

export interface Chamfer {
  /** Angle from the axis of an external chamfer; included angle of a countersink. Degrees. */
  readonly angle: number;
  /** External: diameter at the end face, no larger than this. Internal: mouth diameter, least and greatest. */
  readonly endDiameter: number;
  readonly endDiameterMost: number;
  /** Length along the axis at `endDiameter`. */
  readonly length: number;
  readonly source: 'common-practice' | 'din-76-1-from-memory';
}

/**
 * Chamfer at the start of an external thread: 45° down to the root, so that the first turn grows from nothing.
 * Lengths in one unit; null unless the root is smaller than the major diameter and both are above 0.
 */
export const externalChamfer = (major: number, root: number, angle = 45): Chamfer | null => {
  if (!(root > 0 && major > root && angle > 0 && angle < 90)) return null;
  const length = (major - root) / 2 / Math.tan((angle * Math.PI) / 180);
  return { angle, endDiameter: root, endDiameterMost: root, length, source: 'common-practice' };
};

/** Countersink of a threaded hole: 120° included, mouth D to 1.05 D (DIN 76-1, from memory). Lengths in one unit. */
export const internalCountersink = (major: number, bore: number): Chamfer | null => {
  if (!(bore > 0 && major > bore)) return null;
  const length = (major - bore) / 2 / Math.tan((60 * Math.PI) / 180);
  return {
    angle: 120,
    endDiameter: major,
    endDiameterMost: 1.05 * major,
    length,
    source: 'din-76-1-from-memory',
  };
};
