import {
  anglesUsable,
  apexBelowPitchLine,
  bothAngles,
  opening,
  radians,
  tipAboveApexRadius,
} from '../groove';
import { leadAngle } from '../helix';
import { symmetricalHalf, wireSeat, type WireThread } from './seat';

/** Measurement over wires. Lengths in one unit (mm or in), angles in degrees. */

/**
 * How the lean of the wires was counted: `solved` in space; `series`, the term ½ W tan²B cos A cot A of NBS
 * Handbook H28; `root`, W (√(csc²A + cot²A tan²B) − csc A), of which the series is the first term; `none`, for
 * a form that is not symmetrical, where no term is known here.
 */
export type LeadMethod = 'solved' | 'series' | 'root' | 'none';

export interface OverWires {
  readonly ok: true;
  /** Size over three wires (or one wire each side), lead term in. */
  readonly over: number;
  /** E − (P/2) cot A + W (1 + csc A): what it would be with no lead. */
  readonly withoutLead: number;
  readonly leadTerm: number;
  readonly method: LeadMethod;
  /** The H28 term, to check by hand; null for a form that is not symmetrical. */
  readonly seriesTerm: number | null;
  /** Lead angle at the pitch diameter, degrees. */
  readonly leadAngle: number;
  /** Diameter at which the wires touch the flanks. */
  readonly contactDiameter: number;
}
export type WireRefusal =
  | 'not-positive'
  | 'angle-out-of-range'
  | 'parallel-flanks'
  /** Solved in space was asked for and no seat was found: the wire is far from this thread. */
  | 'no-seat';
export type OverWiresResult = OverWires | { readonly ok: false; readonly refusal: WireRefusal };

/** E to M with no lead term, any form: twice the centre of the wire above the pitch line, and one wire. */
export const wireStandsOff = (t: WireThread, wire: number): number => {
  const centreAboveApex = tipAboveApexRadius(t.half, wire / 2) + wire / 2;
  return 2 * (centreAboveApex - apexBelowPitchLine(t.half, t.pitch)) + wire;
};

const flankContact = (t: WireThread, pitchDiameter: number, wire: number): number => {
  const { leading, trailing } = bothAngles(t.half);
  const [a, b] = [radians(leading), radians(trailing)];
  const along = wire / 2 / Math.tan((a + b) / 2);
  const height = (along * (Math.cos(a) + Math.cos(b))) / 2;
  return pitchDiameter + 2 * (height - apexBelowPitchLine(t.half, t.pitch));
};

const handTerms = (half: number, wire: number, tanB: number): { series: number; root: number } => {
  const A = radians(half);
  const csc = 1 / Math.sin(A);
  const cot = 1 / Math.tan(A);
  return {
    series: 0.5 * wire * tanB ** 2 * Math.cos(A) * cot,
    root: wire * (Math.sqrt(csc ** 2 + (cot * tanB) ** 2) - csc),
  };
};

/** Why nothing can be said of this thread and wire, or null. */
export const wireProblem = (t: WireThread, diameter: number, wire: number): WireRefusal | null => {
  if (!(t.pitch > 0 && t.lead > 0 && diameter > 0 && wire > 0)) return 'not-positive';
  if (!anglesUsable(t.half)) return 'angle-out-of-range';
  return opening(t.half) === 0 ? 'parallel-flanks' : null;
};

/**
 * Size over the wires for a pitch diameter E: M = E − (P/2) cot A + W (1 + csc A) + lead term.
 * Left to itself the lead term is solved in space, and none is counted for a form that is not symmetrical.
 */
export const overWires = (
  t: WireThread,
  pitchDiameter: number,
  wire: number,
  how?: 'solved' | 'series' | 'root',
): OverWiresResult => {
  const problem = wireProblem(t, pitchDiameter, wire);
  if (problem) return { ok: false, refusal: problem };
  const withoutLead = pitchDiameter + wireStandsOff(t, wire);
  const angle = leadAngle(t.lead, pitchDiameter) ?? 0;
  const half = symmetricalHalf(t.half);
  const contact = flankContact(t, pitchDiameter, wire);
  if (half === null) {
    return {
      ok: true,
      over: withoutLead,
      withoutLead,
      leadTerm: 0,
      method: 'none',
      seriesTerm: null,
      leadAngle: angle,
      contactDiameter: contact,
    };
  }
  const hand = handTerms(half, wire, Math.tan(radians(angle)));
  const seat = how === 'series' || how === 'root' ? null : wireSeat(t, pitchDiameter, wire);
  if (!seat && how !== 'series' && how !== 'root') return { ok: false, refusal: 'no-seat' };
  const over = seat ? 2 * seat.centreRadius + wire : withoutLead + (how === 'root' ? hand.root : hand.series);
  return {
    ok: true,
    over,
    withoutLead,
    leadTerm: over - withoutLead,
    method: how ?? 'solved',
    seriesTerm: hand.series,
    leadAngle: angle,
    contactDiameter: seat ? 2 * seat.contactRadius : contact,
  };
};

/**
 * Pitch diameter for a size over the wires: `overWires` undone, to 1e-12 of the pitch. Null where no pitch
 * diameter gives this size (or the wire suits no such thread).
 */
export const pitchDiameterOverWires = (
  t: WireThread,
  over: number,
  wire: number,
  how?: 'solved' | 'series' | 'root',
): number | null => {
  if (wireProblem(t, over, wire)) return null;
  let e = over - wireStandsOff(t, wire);
  for (let i = 0; i < 60; i += 1) {
    if (!(e > 0)) return null;
    const m = overWires(t, e, wire, how);
    if (!m.ok) return null;
    const miss = m.over - over;
    e -= miss;
    if (Math.abs(miss) < 1e-12 * Math.max(t.pitch, over)) return e;
  }
  return null;
};
