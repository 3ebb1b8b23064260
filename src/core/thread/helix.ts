import { degrees, radians } from './groove';

/** Lead angles and what clearance they ask of the tool. Lengths in one unit, angles in degrees. */

/** tan λ = L ÷ (π d). Null unless the diameter is above 0 and the lead is a positive number. */
export const leadAngle = (lead: number, diameter: number): number | null =>
  lead > 0 && diameter > 0 ? degrees(Math.atan(lead / (Math.PI * diameter))) : null;

export interface HelixAngles {
  readonly major: number | null;
  readonly pitch: number | null;
  /** The steepest: the flank near the root is what rubs first. */
  readonly minor: number | null;
}

/** Lead angle at each diameter of the thread; null where a diameter is not known. */
export const helixAngles = (
  lead: number,
  at: { readonly major: number | null; readonly pitch: number | null; readonly minor: number | null },
): HelixAngles => {
  const of = (d: number | null): number | null => (d === null ? null : leadAngle(lead, d));
  return { major: of(at.major), pitch: of(at.pitch), minor: of(at.minor) };
};

export interface SideClearance {
  /**
   * Relief to grind on each side of the tool, from upright, along the axis: leading c + λ, trailing c − λ.
   * Positive: the tool gets narrower below its edge on that side. Negative: that side may lean outward.
   */
  readonly leading: number;
  readonly trailing: number;
  /** True clearance left at each flank by a tool with the same relief ground on both sides; below 0 it rubs. */
  readonly leftLeading: number | null;
  readonly leftTrailing: number | null;
}

/**
 * Side clearance asked at the diameter where the helix is steepest, with `working` degrees of true clearance
 * on each flank (2–3° is common practice). `ground`: the relief of both sides, if they are alike.
 * Own geometry of a tool at centre height, square to the axis, no top rake. Null for bad input.
 */
export const sideClearance = (
  steepest: number,
  working = 2,
  ground: number | null = null,
): SideClearance | null => {
  if (!(steepest >= 0 && steepest < 90 && working >= 0 && working < 45)) return null;
  return {
    leading: steepest + working,
    trailing: working - steepest,
    leftLeading: ground === null ? null : ground - steepest,
    leftTrailing: ground === null ? null : ground + steepest,
  };
};

/**
 * Clearance seen square to the flank of a V tool when its side is relieved by `side` degrees measured in the
 * plane along the axis: tan c = tan(side) × cos A. What a protractor held against the flank shows.
 */
export const normalToFlank = (side: number, half: number): number =>
  degrees(Math.atan(Math.tan(radians(side)) * Math.cos(radians(half))));
