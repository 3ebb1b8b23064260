import { ratio, toNumber, type Ratio } from '../quantity';
import { anglesUsable, bothAngles, radians, type HalfAngles } from '../thread/groove';

/** Kept free between tool and shoulder, mm. Common practice. */
export const ROOM_MARGIN = 0.5;
/** Angle of the top slide from square to the axis for a 60° thread, degrees: the default in the trade. */
export const FLANK_INFEED = 29.5;

export interface GrooveCut {
  /** Parallel floor of the groove, mm. */
  readonly groove: Ratio;
  /** Radial depth of the finished thread, mm. */
  readonly depth: number;
  readonly half: HalfAngles;
  /** Angle of the top slide, degrees; 0 for straight in. */
  readonly infeed: number;
}

/** What a groove leaves to stop in, and what was taken off it. Millimetres. */
export interface UsableRoom {
  /** Half the tool's width at the work's surface: depth × tan of the flank that leads. */
  readonly tool: number;
  /** How far the top slide has brought the tool along by full depth: depth × tan of its angle. */
  readonly creep: number;
  readonly margin: number;
  /** Cut down to whole micrometres; null where nothing is left. */
  readonly usable: Ratio | null;
}

/**
 * Usable stopping room in a groove: the thread is full only up to the tool's middle, so half its width comes off; so
 * does the axial creep of flank infeed, and a margin. Null for a depth or angle that can't be. Own derivation, margin
 * and infeed angle by common practice.
 */
export const usableRoom = ({ groove, depth, half, infeed }: GrooveCut): UsableRoom | null => {
  if (!(depth > 0) || !anglesUsable(half) || !(infeed >= 0 && infeed < 80)) return null;
  const tool = depth * Math.tan(radians(bothAngles(half).leading));
  const creep = depth * Math.tan(radians(infeed));
  const um = Math.floor((toNumber(groove) - tool - creep - ROOM_MARGIN) * 1000);
  return { tool, creep, margin: ROOM_MARGIN, usable: um > 0 ? ratio(BigInt(um), 1000n) : null };
};
