import { bothAngles, radians, type HalfAngles } from '../thread/groove';
import type { Nose } from '../thread/depth';

/** The point of the tool as the area of a chip depends on it: flanks, and a flat or a radius between them. */
export interface Point {
  readonly half: HalfAngles;
  readonly flat: number;
  readonly radius: number;
}

/** @param tipWidth width of a full-form insert's flat tip, where it has no radius; mm */
export const pointOf = (half: HalfAngles, nose: Nose, tipWidth: number, tipRadius: number): Point => {
  if (nose.kind === 'full-form') return { half, flat: tipRadius > 0 ? 0 : tipWidth, radius: tipRadius };
  return {
    half,
    flat: nose.kind === 'flat' ? nose.size : 0,
    radius: nose.kind === 'radius' ? nose.size : 0,
  };
};

/** Half of the groove, on the side of one flank, from the tip's middle line. */
const side = (angle: number, radius: number, depth: number): number => {
  const a = radians(angle);
  const straight = (from: number, width: number): number =>
    width * (depth - from) + (Math.tan(a) / 2) * (depth - from) ** 2;
  if (radius === 0) return straight(0, 0);
  // The arc leaves off where it touches the flank.
  const tangent = radius * (1 - Math.sin(a));
  const h = Math.min(depth, tangent);
  const arc = (radius ** 2 * Math.acos(1 - h / radius) - (radius - h) * Math.sqrt(h * (2 * radius - h))) / 2;
  return depth <= tangent ? arc : arc + straight(tangent, radius * Math.cos(a));
};

/**
 * Area that a tool has taken out of a groove at a depth, mm²: tan A · x² for a sharp one. Own geometry.
 * @param depth radial, from where the tool touched, mm
 */
export const grooveArea = ({ half, flat, radius }: Point, depth: number): number => {
  if (!(depth > 0)) return 0;
  const { leading, trailing } = bothAngles(half);
  return flat * depth + side(leading, radius, depth) + side(trailing, radius, depth);
};
