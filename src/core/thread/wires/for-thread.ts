import { inBase, leadFrom, leadNumber, MM_PER_INCH, mul, toNumber, type Ratio } from '../../quantity';
import { basicSizes, formOf, unitOf } from '../forms';
import { helixAngles, type HelixAngles } from '../helix';
import { limits, type LimitRefusal, type LimitSource } from '../limits';
import type { Thread } from '../thread';
import { bestWire, customaryRange60, wireRange, type WireRange } from './choose';
import { overWires, type WireRefusal } from './over';
import type { WireThread } from './seat';

/** Wires and lead angles of a catalogued thread. Everything in millimetres and degrees. */

/** Round-crested forms: the crest carries the same radius as the root. */
const ROUND_CREST = ['whitworth55', 'ba47'] as const satisfies readonly Thread['form'][];

export const wireThreadOf = (thread: Thread): WireThread => {
  const [load, other] = formOf(thread).flanks;
  const pitch = leadNumber(leadFrom(thread.pitch));
  return {
    half: { leading: toNumber(load), trailing: toNumber(other) },
    pitch,
    lead: pitch * thread.starts,
  };
};

const inMm = (x: Ratio, unit: 'mm' | 'in'): number => toNumber(unit === 'in' ? mul(x, MM_PER_INCH) : x);

export interface WireSizes {
  readonly best: number;
  /** What the groove's shape allows; null where the crest or root is not known. */
  readonly range: WireRange | null;
  /** Narrower range of the handbooks; 60° only. */
  readonly customary: WireRange | null;
}

/** Best wire and usable range; null for a square thread. */
export const wireSizes = (thread: Thread): WireSizes | null => {
  const t = wireThreadOf(thread);
  const best = bestWire(t.half, t.pitch);
  if (best === null) return null;
  const form = formOf(thread);
  const crest = (toNumber(form.majorToPitch) / 2) * t.pitch;
  const root = (toNumber(form.majorToMinor) / 2) * t.pitch - crest;
  const rounded = (ROUND_CREST as readonly string[]).includes(thread.form);
  const rounding = rounded && form.rootRadius ? toNumber(form.rootRadius.max) * t.pitch : 0;
  const is60 = toNumber(form.flanks[0]) === 30 && toNumber(form.flanks[1]) === 30;
  return {
    best,
    range: wireRange(t.half, t.pitch, crest, root, rounding),
    customary: is60 ? customaryRange60(t.pitch) : null,
  };
};

export type OverWiresWindow =
  | {
      readonly ok: true;
      /** Sizes over the wires for the least and greatest pitch diameter; null where the class leaves it open. */
      readonly min: number | null;
      readonly max: number | null;
      readonly pitchDiameterMin: number | null;
      readonly pitchDiameterMax: number | null;
      /** Whether the wires stand above the largest crest, so that the anvils meet wire and not thread. */
      readonly clear: boolean | null;
      readonly source: LimitSource;
    }
  | { readonly ok: false; readonly refusal: LimitRefusal | WireRefusal | 'internal-thread' | 'taper-thread' };

/**
 * Window over three wires for a class of an external thread. A taper thread is refused: its wires lie askew and
 * are measured another way.
 */
export const overWiresWindow = (thread: Thread, classId: string, wire: number): OverWiresWindow => {
  if (thread.taper) return { ok: false, refusal: 'taper-thread' };
  const l = limits(thread, classId);
  if (!l.ok) return l;
  if (l.kind === 'internal') return { ok: false, refusal: 'internal-thread' };
  const t = wireThreadOf(thread);
  const [low, high] = [l.pitch.min, l.pitch.max].map((e) => e && inMm(e, l.unit)) as [
    number | null,
    number | null,
  ];
  const at = (e: number | null): ReturnType<typeof overWires> | null =>
    e === null ? null : overWires(t, e, wire);
  const [min, max] = [at(low), at(high)];
  for (const m of [min, max]) if (m && !m.ok) return { ok: false, refusal: m.refusal };
  const over = (m: typeof min): number | null => (m?.ok ? m.over : null);
  const crest = l.major.max && inMm(l.major.max, l.unit);
  const least = over(min) ?? over(max);
  return {
    ok: true,
    min: over(min),
    max: over(max),
    pitchDiameterMin: low,
    pitchDiameterMax: high,
    clear: crest === null || least === null ? null : least > crest,
    source: l.source,
  };
};

/** Lead angles at basic major, pitch and minor diameter; null for a thread with no major diameter of its own. */
export const helixOf = (thread: Thread): HelixAngles | null => {
  const sizes = basicSizes(thread);
  if (!sizes || !thread.major) return null;
  const unit = unitOf(thread);
  return helixAngles(leadNumber(leadFrom(thread.pitch)) * thread.starts, {
    major: toNumber(inBase(thread.major)),
    pitch: inMm(sizes.pitch, unit),
    minor: inMm(sizes.minor, unit),
  });
};
