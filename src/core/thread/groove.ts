/**
 * The V (or truncated V) of a thread groove in its axial section. All lengths in one unit of the caller's
 * choice (mm or in), angles in degrees. Floats: everything here holds a tangent.
 */

/** Angle of each flank from a line square to the axis, degrees. One number for a symmetrical form. */
export type HalfAngles = number | { readonly leading: number; readonly trailing: number };

const RAD = Math.PI / 180;

export const radians = (degrees: number): number => degrees * RAD;
export const degrees = (rad: number): number => rad / RAD;

export const bothAngles = (half: HalfAngles): { leading: number; trailing: number } =>
  typeof half === 'number' ? { leading: half, trailing: half } : half;

/** True for angles a tool can be ground to: each 0 ≤ A < 80°, a negative flank (undercut) refused. */
export const anglesUsable = (half: HalfAngles): boolean => {
  const { leading, trailing } = bothAngles(half);
  return [leading, trailing].every((a) => a >= 0 && a < 80);
};

/** How much wider the groove gets for each unit of height: tan A₁ + tan A₂. Zero for a square thread. */
export const opening = (half: HalfAngles): number => {
  const { leading, trailing } = bothAngles(half);
  return Math.tan(radians(leading)) + Math.tan(radians(trailing));
};

/** From the pitch line, where groove and ridge are each P/2 wide, down to where the flanks would meet. */
export const apexBelowPitchLine = (half: HalfAngles, pitch: number): number => pitch / 2 / opening(half);

/** From where the flanks would meet up to the lowest point of a round nose of radius r touching both. */
export const tipAboveApexRadius = (half: HalfAngles, r: number): number => {
  const { leading, trailing } = bothAngles(half);
  const [a, b] = [radians(leading), radians(trailing)];
  return r * ((Math.cos(a) + Math.cos(b)) / Math.sin(a + b) - 1);
};

/** From where the flanks would meet up to the higher of the two points where that nose leaves a flank. */
export const tangentAboveApex = (half: HalfAngles, r: number): number => {
  const { leading, trailing } = bothAngles(half);
  const [a, b] = [radians(leading), radians(trailing)];
  // Both tangent points lie at the same distance along their flank; the steeper flank's stands higher.
  return (r / Math.tan((a + b) / 2)) * Math.max(Math.cos(a), Math.cos(b));
};

/** From where the flanks would meet up to where the groove is as wide as a flat nose. */
export const tipAboveApexFlat = (half: HalfAngles, flat: number): number => flat / opening(half);
