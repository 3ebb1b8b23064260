import { toNumber } from '../core/quantity';
import { formOf, unitOf, type LimitsResult, type Thread } from '../core/thread';
import { pitchLength } from '../core/thread/forms';
import { drawnBand, type Diameters } from '../core/thread/outline';
import type { LimitsShape, Outline } from './limits-drawing';

const numbers = (o: Diameters): Outline => ({
  major: toNumber(o.major),
  pitch: toNumber(o.pitch),
  minor: toNumber(o.minor),
});

/**
 * What the drawing of a thread between its limits needs, in the thread's own unit; null where the drawing needs a limit
 * that is left open. @param wire diameter of wires seated in it, mm
 */
export const limitsShapeOf = (
  thread: Thread,
  l: Extract<LimitsResult, { ok: true }>,
  wire: number | null = null,
): LimitsShape | null => {
  const outlines = drawnBand(thread, l);
  const pitch = pitchLength(thread);
  if (!outlines || !pitch) return null;
  const { flanks } = formOf(thread);
  return {
    kind: l.kind,
    pitch: toNumber(pitch),
    flanks: [toNumber(flanks[0]), toNumber(flanks[1])],
    most: numbers(outlines.most),
    least: numbers(outlines.least),
    wire: wire === null ? null : unitOf(thread) === 'in' ? wire / 25.4 : wire,
  };
};
