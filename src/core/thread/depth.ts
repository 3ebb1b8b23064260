import {
  anglesUsable,
  apexBelowPitchLine,
  opening,
  tangentAboveApex,
  tipAboveApexFlat,
  tipAboveApexRadius,
  type HalfAngles,
} from './groove';

/**
 * Depth of infeed for the tool really in use. Lengths in one unit throughout (mm or in); the result is
 * radial (half of what a diameter dial shows). Geometry of the groove; see each function.
 */

/**
 * The point of the tool. `full-form`: an insert that finishes root and crest; `size` is the distance from its
 * pitch line to its tip (ISO 60° external: H/3 = 0.288675 P).
 */
export type Nose =
  { readonly kind: 'sharp' } | { readonly kind: 'radius' | 'flat' | 'full-form'; readonly size: number };

export interface InfeedQuestion {
  readonly side: 'external' | 'internal';
  /** Half angle of the form, degrees (two for a form that is not symmetrical). */
  readonly half: HalfAngles;
  /** Pitch, never the lead. */
  readonly pitch: number;
  readonly nose: Nose;
  /** Diameter the tool starts from: measured blank or bore, or the nominal one. */
  readonly from: number;
  /** Pitch diameter wanted. */
  readonly targetPitchDiameter: number;
  /** Diameter the root must at least reach: largest external minor or least internal major diameter, if known. */
  readonly rootMustReach?: number;
}

export type InfeedRefusal =
  | 'not-positive'
  | 'angle-out-of-range'
  | 'parallel-flanks'
  | 'nose-too-big'
  | 'nothing-to-cut'
  | 'crest-vanishes'
  | 'root-past-centre';

interface Refusal {
  readonly ok: false;
  readonly refusal: InfeedRefusal;
  readonly limit?: number;
}

interface CrestAnswer {
  readonly ok: true;
  /** Radial infeed from first touch to the target, same unit as asked. */
  readonly radial: number;
  /** Width left at the crest when the target is reached; a full-form insert makes its own. */
  readonly crestWidth: number;
  /** Pitch line to tool tip. */
  readonly below: number;
  /**
   * How much further out (in) the root stands than it must, radially: above 0 the mating crest would touch, though
   * the pitch diameter is right. Null where no limit was given.
   */
  readonly rootShort: number | null;
}
export type CrestInfeed = CrestAnswer | Refusal;

export type Infeed =
  | (CrestAnswer & {
      /** Diameter at the bottom of the groove when the pitch diameter is reached. */
      readonly rootDiameter: number;
    })
  | Refusal;

const refuse = (refusal: InfeedRefusal, limit?: number): Refusal =>
  limit === undefined ? { ok: false, refusal } : { ok: false, refusal, limit };

/** Largest flat or radius with which the flanks still reach down past the pitch line. */
export const largestNose = (kind: 'radius' | 'flat', half: HalfAngles, pitch: number): number =>
  kind === 'flat' ? pitch / 2 : apexBelowPitchLine(half, pitch) / tangentAboveApex(half, 1);

const tipBelowPitchLine = (nose: Nose, half: HalfAngles, pitch: number): number => {
  const apex = apexBelowPitchLine(half, pitch);
  switch (nose.kind) {
    case 'sharp':
      return apex;
    case 'radius':
      return apex - tipAboveApexRadius(half, nose.size);
    case 'flat':
      return apex - tipAboveApexFlat(half, nose.size);
    case 'full-form':
      return nose.size;
  }
};

const checkNose = (nose: Nose, half: HalfAngles, pitch: number): Refusal | null => {
  if (nose.kind === 'sharp') return null;
  if (!(nose.size >= 0)) return refuse('not-positive');
  if (nose.kind === 'full-form') {
    // A tip further below the pitch line than the flanks' meeting point is not this form's insert.
    const deepest = apexBelowPitchLine(half, pitch);
    return nose.size > 0 && nose.size <= deepest ? null : refuse('nose-too-big', deepest);
  }
  const largest = largestNose(nose.kind, half, pitch);
  return nose.size < largest ? null : refuse('nose-too-big', largest);
};

/** The same question where only the crest's height over the pitch line is known: a worm has no diameter of its own. */
export interface CrestQuestion {
  readonly half: HalfAngles;
  readonly pitch: number;
  readonly nose: Nose;
  /** From the diameter the tool starts at down to the pitch line wanted, radially. */
  readonly addendum: number;
  /** From the pitch line down to where the root must at least stand, if known. */
  readonly reach?: number;
}

/**
 * Radial infeed from the crest: addendum + b, where b, pitch line to tool tip, is (P/4) cot A − r (csc A − 1) for a
 * round nose, (P/4) cot A − (f/2) cot A for a flat one (symmetrical form; of two different flanks both are reckoned
 * with). Own geometry; gives 17/24 H for r = H/6 and 5/8 H for f = P/4 from the nominal diameter (ISO 68-1).
 * A square thread is refused (`parallel-flanks`): its width comes from the tool, not from the depth.
 */
export const infeedFromCrest = (q: CrestQuestion): CrestInfeed => {
  const { half, pitch, nose, addendum } = q;
  if (!(pitch > 0)) return refuse('not-positive');
  if (!anglesUsable(half)) return refuse('angle-out-of-range');
  if (opening(half) === 0) return refuse('parallel-flanks');
  const bad = checkNose(nose, half, pitch);
  if (bad) return bad;
  if (!(addendum > 0)) return refuse('nothing-to-cut');
  const crestWidth = pitch / 2 - addendum * opening(half);
  // A full-form insert makes the crest itself, out of what was left over.
  if (crestWidth <= 0 && nose.kind !== 'full-form') return refuse('crest-vanishes');
  const below = tipBelowPitchLine(nose, half, pitch);
  const rootShort = q.reach === undefined ? null : q.reach - below;
  return { ok: true, radial: addendum + below, crestWidth, below, rootShort };
};

/**
 * Radial infeed that brings the pitch diameter to the target: external t = (from − d₂)/2 + b, internal
 * t = (D₂ − from)/2 + b, with the b of infeedFromCrest.
 */
export const infeedDepth = (q: InfeedQuestion): Infeed => {
  const { half, pitch, nose, from, targetPitchDiameter: target, rootMustReach: root } = q;
  if (!(from > 0 && target > 0)) return refuse('not-positive');
  const outward = q.side === 'external' ? 1 : -1;
  const answer = infeedFromCrest({
    half,
    pitch,
    nose,
    addendum: (outward * (from - target)) / 2,
    ...(root === undefined ? {} : { reach: (outward * (target - root)) / 2 }),
  });
  if (!answer.ok) return answer;
  const rootDiameter = target - 2 * outward * answer.below;
  return rootDiameter > 0 ? { ...answer, rootDiameter } : refuse('root-past-centre');
};

/**
 * Largest round or flat nose whose tip, with the flanks at the right width, still stands `reach` below the pitch line;
 * null where even a sharp one doesn't.
 */
export const largestReaching = (
  kind: 'radius' | 'flat',
  half: HalfAngles,
  pitch: number,
  reach: number,
): number | null => {
  const left = apexBelowPitchLine(half, pitch) - reach;
  if (!(left > 0)) return null;
  const size = kind === 'flat' ? left * opening(half) : left / tipAboveApexRadius(half, 1);
  return Math.min(size, largestNose(kind, half, pitch));
};

/**
 * The pitch diameter a radial infeed has made, from the same diameter and nose: what `infeedDepth` inverts.
 * Null where the nose does not suit the form or the flanks have not yet reached the pitch line.
 */
export const pitchDiameterAtInfeed = (
  q: Omit<InfeedQuestion, 'targetPitchDiameter' | 'rootMustReach'>,
  radial: number,
): number | null => {
  if (!(q.pitch > 0) || !anglesUsable(q.half) || opening(q.half) === 0) return null;
  if (checkNose(q.nose, q.half, q.pitch)) return null;
  const addendum = radial - tipBelowPitchLine(q.nose, q.half, q.pitch);
  if (!(addendum > 0)) return null;
  return q.from - (q.side === 'external' ? 2 : -2) * addendum;
};
