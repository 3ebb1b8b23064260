import type { Infeed } from '../job';
import { bothAngles, radians, type HalfAngles } from '../thread/groove';

/** How far short of the flank's own angle a modified flank infeed stands, degrees: 29.5 for 60°. Common practice. */
export const SHORT_OF_FLANK = 0.5;
/** Pitch up to which a thread is cut straight in, mm. Common practice. */
export const STRAIGHT_UP_TO = 1.5;
/** Half angles under which there is no flank to feed along (square threads), degrees. */
const NO_FLANK = 2;

/** The way the carriage goes while it cuts, which is the way the top slide brings the tool along. */
export type Travel = 'headstock' | 'tailstock';
export const travelOf = (hand: 'right' | 'left', outwards: boolean): Travel =>
  (hand === 'right') !== outwards ? 'headstock' : 'tailstock';

/**
 * To which end of the lathe the top slide's handle is swung from square, so that its feed goes into the work and along
 * with the carriage. Right-hand external: towards the tailstock; internal the other way, and left-hand the other way.
 */
export const handleTo = (side: 'external' | 'internal', travel: Travel): Travel =>
  (side === 'external') === (travel === 'headstock') ? 'tailstock' : 'headstock';

/** The flank that trails in the cut, degrees from square to the axis: the one a flank infeed goes along. */
export const trailingFlank = (half: HalfAngles): number => bothAngles(half).trailing;
export const hasFlank = (half: HalfAngles): boolean => trailingFlank(half) >= NO_FLANK;

/** The usual angle of the top slide from square to the axis, degrees. Common practice. */
export const usualAngle = (infeed: Infeed, half: HalfAngles): number => {
  if (infeed === 'radial') return 0;
  if (infeed === 'alternate-flank') return 90;
  return trailingFlank(half) - (infeed === 'modified-flank' ? SHORT_OF_FLANK : 0);
};

/** Between the two ways in which top slides are graduated: from square to the axis, and from the axis. */
export const onScale = (angle: number, scale: 'from-cross-slide' | 'from-axis'): number =>
  scale === 'from-axis' ? 90 - angle : angle;

/**
 * The infeed usual for a thread: straight in for fine pitches, brass and inserts of the full form, and where there is
 * no flank to go along; else along the flank, a little steep. Common practice.
 * @param pitch mm
 */
export const usualInfeed = (q: {
  readonly pitch: number;
  readonly half: HalfAngles;
  readonly material: string | null;
  readonly nose: string | null;
}): Infeed =>
  !hasFlank(q.half) || q.pitch <= STRAIGHT_UP_TO || q.material === 'brass' || q.nose === 'full-form'
    ? 'radial'
    : 'modified-flank';

/** What a radial depth asks of the top slide at an angle, mm: its own advance, how far it brings the tool along, and
 * what is shaved off the flank that trails, measured along the axis. */
export const alongFlank = (
  radial: number,
  angle: number,
  half: HalfAngles,
): { readonly advance: number; readonly creep: number; readonly shaved: number } => {
  const a = radians(angle);
  const creep = radial * Math.tan(a);
  return {
    advance: radial / Math.cos(a),
    creep,
    shaved: radial * Math.tan(radians(trailingFlank(half))) - creep,
  };
};

/** How far along the axis a tool may stand off the middle at a depth without breaking the finished groove, mm. */
export const shiftBound = (
  half: HalfAngles,
  depth: number,
  at: number,
): { readonly ahead: number; readonly back: number } => {
  const { leading, trailing } = bothAngles(half);
  const left = Math.max(0, depth - at);
  return { ahead: left * Math.tan(radians(leading)), back: left * Math.tan(radians(trailing)) };
};

/**
 * Where the tool stands along the axis at each depth of an alternate flank infeed, mm ahead of where it ends: by turns
 * it goes along one flank of the groove so far and along the other, so that one side cuts at a time. Never behind where
 * it began, never past shiftBound; the last pass stands in the middle. Own derivation.
 * @param depths cumulative radial depths, mm, rising; the last is the finished one
 */
export const shifts = (half: HalfAngles, depths: readonly number[]): readonly number[] => {
  const { leading, trailing } = bothAngles(half);
  const end = depths.at(-1) ?? 0;
  let at = 0;
  return depths.map((x, i) => {
    if (i > 0) {
      const step = x - (depths[i - 1] ?? 0);
      // Ahead: the wall behind stays where it is, half the groove's growth is the shift; then the wall in front.
      at += i % 2 === 1 ? step * Math.tan(radians(trailing)) : -step * Math.tan(radians(leading));
    }
    at = Math.min(shiftBound(half, end, x).ahead, Math.max(0, at));
    return at;
  });
};

/** True where feeding at this angle would cut the trailing flank into steps: steeper than the flank itself. */
export const pastFlank = (angle: number, half: HalfAngles): boolean => angle > trailingFlank(half) + 1e-9;
