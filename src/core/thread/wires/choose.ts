import {
  anglesUsable,
  apexBelowPitchLine,
  bothAngles,
  opening,
  radians,
  tangentAboveApex,
  tipAboveApexRadius,
  type HalfAngles,
} from '../groove';
import { symmetricalHalf } from './seat';

/** Which wire suits a thread. Lengths in one unit, angles in degrees. */

/**
 * Wire that touches at the pitch line: P ÷ (2 cos A). For a form that is not symmetrical, the wire whose two
 * contacts lie evenly above and below it (own geometry). Null for parallel flanks or bad input.
 */
export const bestWire = (half: HalfAngles, pitch: number): number | null => {
  const { leading, trailing } = bothAngles(half);
  const [a, b] = [radians(leading), radians(trailing)];
  if (!(pitch > 0) || !(a + b > 0)) return null;
  const mean = (Math.cos(a) + Math.cos(b)) / 2;
  return (2 * apexBelowPitchLine(half, pitch) * Math.tan((a + b) / 2)) / mean;
};

export interface WireRange {
  readonly least: number;
  readonly most: number;
}

/**
 * Wires that can work at all, lead left aside: thick enough that the top stands above the crest and the bottom
 * clear of the root, thin enough to touch both flanks below the crest. `crest`: pitch line to crest; `root`: pitch
 * line to root; `rounding`: the crest's radius where it is round (Whitworth, BA). Null for bad input.
 */
export const wireRange = (
  half: HalfAngles,
  pitch: number,
  crest: number,
  root: number,
  rounding = 0,
): WireRange | null => {
  if (!(pitch > 0 && crest > 0 && root > 0 && rounding >= 0) || !anglesUsable(half)) return null;
  if (opening(half) === 0) return null;
  const { leading, trailing } = bothAngles(half);
  const apex = apexBelowPitchLine(half, pitch);
  // Heights above the flanks' meeting point, for a wire of radius 1.
  const bottom = tipAboveApexRadius(half, 1);
  const contact = tangentAboveApex(half, 1);
  const flankEnds = crest - rounding * (1 - Math.sin(radians(Math.min(leading, trailing))));
  const least = 2 * Math.max((apex + crest) / (bottom + 2), (apex - root) / bottom);
  const most = (2 * (apex + flankEnds)) / contact;
  return most > least ? { least, most } : null;
};

/** Handbook range for 60° wires, about 0.56 P to 0.90 P (Machinery's Handbook 31, measuring over wires). */
export const customaryRange60 = (pitch: number): WireRange => ({ least: 0.56 * pitch, most: 0.9 * pitch });

/**
 * What an error of one degree in each half angle does to the pitch diameter found:
 * dE/dA = (W cos A − P/2) ÷ sin²A, per degree. Nought only for the best wire. Null unless symmetrical.
 */
export const errorPerDegree = (half: HalfAngles, pitch: number, wire: number): number | null => {
  const A = symmetricalHalf(half);
  if (A === null) return null;
  const a = radians(A);
  return ((wire * Math.cos(a) - pitch / 2) / Math.sin(a) ** 2) * radians(1);
};

/** A wire, pin or drill shank that a person owns. */
export interface OwnedWire {
  readonly id: string;
  readonly diameter: number;
  /** Measured, not taken from the name: a drill shank is often well under its size. */
  readonly measured: boolean;
  /** How many alike: three for a micrometer, two for a bench. */
  readonly count: number;
}

export interface WireChoice {
  readonly wire: OwnedWire;
  readonly fit: 'suits' | 'too-thin' | 'too-thick';
  /** ÷ best wire. */
  readonly ofBest: number;
  /** Change of the pitch diameter found per degree of half angle. */
  readonly perDegree: number;
  readonly enough: boolean;
}

/**
 * Everything owned, best first: wires that suit and are enough in number, then by how little they care for the
 * flank angle. Empty for a form without wires.
 */
export const chooseWires = (
  half: HalfAngles,
  pitch: number,
  range: WireRange,
  owned: readonly OwnedWire[],
  needed = 3,
): readonly WireChoice[] => {
  const best = bestWire(half, pitch);
  if (best === null) return [];
  const choices = owned.map((wire): WireChoice => {
    const thin = wire.diameter < range.least;
    return {
      wire,
      fit: thin ? 'too-thin' : wire.diameter > range.most ? 'too-thick' : 'suits',
      ofBest: wire.diameter / best,
      perDegree: Math.abs(errorPerDegree(half, pitch, wire.diameter) ?? wire.diameter - best),
      enough: wire.count >= needed,
    };
  });
  const rank = (c: WireChoice): number => (c.fit === 'suits' ? 0 : 2) + (c.enough ? 0 : 1);
  return choices.sort((x, y) => rank(x) - rank(y) || x.perDegree - y.perDegree);
};
