import { bothAngles, radians } from '../groove';
import { overWires, pitchDiameterOverWires, wireProblem, type WireRefusal } from './over';
import { symmetricalHalf, type WireThread } from './seat';

/** From what was read to the pitch diameter, with its uncertainty. One unit of length throughout; u = standard uncertainty. */

export interface Measured {
  readonly value: number;
  /** Standard uncertainty, same unit; null when it is not known. */
  readonly u: number | null;
}

/**
 * `over`: across three wires, or two wires on a floating bench. `one-wire`: one wire against the crest opposite,
 * with the measured major diameter. `compared`: two wires, a cylinder of known size, and the difference of the
 * two readings (wires less cylinder), which gives the size under the wires.
 */
export type WireReading =
  | { readonly kind: 'over'; readonly over: Measured }
  | { readonly kind: 'one-wire'; readonly reading: Measured; readonly major: Measured }
  | { readonly kind: 'compared'; readonly cylinder: Measured; readonly difference: Measured };

export interface PitchDiameterFound {
  readonly ok: true;
  readonly pitchDiameter: number;
  /** Size over wires that the reading stands for. */
  readonly over: number;
  readonly leadTerm: number;
  readonly leadAngle: number;
  /** Standard uncertainty of the pitch diameter; null while any part that matters is not known. */
  readonly u: number | null;
  /** What each part adds, as |∂E/∂x| u(x). Null: not known. */
  readonly parts: Readonly<Record<'reading' | 'second' | 'wire' | 'pitch' | 'angle' | 'lean', number | null>>;
}
export type PitchDiameterResult = PitchDiameterFound | { readonly ok: false; readonly refusal: WireRefusal };

const times = (k: number, u: number | null): number | null => (u === null ? null : Math.abs(k) * u);

interface Folded {
  readonly over: number;
  readonly reading: number | null;
  readonly second: number | null;
  /** ∂M/∂W of the way M was got: 2 where the size under the wires was measured. */
  readonly wireInOver: number;
}

const fold = (r: WireReading, wire: number): Folded => {
  switch (r.kind) {
    case 'over':
      return { over: r.over.value, reading: r.over.u, second: 0, wireInOver: 0 };
    case 'one-wire':
      return {
        over: 2 * r.reading.value - r.major.value,
        reading: times(2, r.reading.u),
        second: r.major.u,
        wireInOver: 0,
      };
    case 'compared':
      return {
        over: r.cylinder.value + r.difference.value + 2 * wire,
        reading: r.difference.u,
        second: r.cylinder.u,
        wireInOver: 2,
      };
  }
};

/**
 * What the lean of the wires may do where the form is not symmetrical and no term is known: the H28 term for the
 * steeper flank, taken as the half-width of an even spread (own reckoning, on the safe side).
 */
const leanUnknown = (t: WireThread, wire: number, leadAngle: number): number => {
  const { leading, trailing } = bothAngles(t.half);
  const a = radians(Math.min(leading, trailing));
  if (!(a > 0)) return Number.NaN;
  return ((wire / 2) * Math.tan(radians(leadAngle)) ** 2 * Math.cos(a)) / Math.tan(a) / Math.sqrt(3);
};

/**
 * Pitch diameter from a reading, and its standard uncertainty:
 * u²(E) = u²(M) + (∂E/∂W)² u²(W) + (½ cot A)² u²(P) + (∂E/∂A)² u²(A), the wires being of one set and so in
 * error together (60°: 9 u²(W)). `uPitch` and `uHalf` (degrees) default to nought: form and pitch as designed.
 * Wires pressed into the flanks are not allowed for.
 */
export const pitchDiameterFromReading = (
  t: WireThread,
  reading: WireReading,
  wire: Measured,
  uPitch: number | null = 0,
  uHalf: number | null = 0,
): PitchDiameterResult => {
  const { over, reading: first, second, wireInOver } = fold(reading, wire.value);
  const problem = wireProblem(t, over, wire.value);
  if (problem) return { ok: false, refusal: problem };
  const e = pitchDiameterOverWires(t, over, wire.value);
  const at = e === null ? null : overWires(t, e, wire.value);
  if (e === null || !at?.ok) return { ok: false, refusal: 'no-seat' };

  const slope = (change: (x: number) => number | null, step: number): number => {
    const [a, b] = [change(-step), change(step)];
    return a === null || b === null ? Number.NaN : (b - a) / (2 * step);
  };
  const half = symmetricalHalf(t.half);
  const s = t.pitch * 1e-4;
  const perWire = slope((x) => pitchDiameterOverWires(t, over + wireInOver * x, wire.value + x), s);
  // Lead and pitch err together: starts are counted, not measured.
  const perPitch = slope(
    (x) =>
      pitchDiameterOverWires(
        { ...t, pitch: t.pitch + x, lead: (t.lead * (t.pitch + x)) / t.pitch },
        over,
        wire.value,
      ),
    s,
  );
  const perAngle =
    half === null
      ? Number.NaN
      : slope((x) => pitchDiameterOverWires({ ...t, half: half + x }, over, wire.value), 1e-3);
  const parts = {
    reading: first,
    second,
    wire: times(perWire, wire.u),
    pitch: times(perPitch, uPitch),
    angle: uHalf === 0 ? 0 : times(perAngle, uHalf),
    lean: half === null ? leanUnknown(t, wire.value, at.leadAngle) : 0,
  };
  const all = Object.values(parts);
  const u = all.every((x) => x !== null && Number.isFinite(x)) ? Math.hypot(...(all as number[])) : null;
  return { ok: true, pitchDiameter: e, over, leadTerm: at.leadTerm, leadAngle: at.leadAngle, u, parts };
};

/** Radial infeed still to go for a pitch diameter too large by so much, and along a top slide at α degrees. */
export const remainingInfeed = (
  excess: number,
  topSlide: number | null,
): { readonly radial: number; readonly along: number | null } => ({
  radial: excess / 2,
  along: topSlide === null ? null : excess / 2 / Math.cos(radians(topSlide)),
});
