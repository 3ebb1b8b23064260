import type { LimitsShape, Outline } from '../../elements/limits-drawing';
import { toolOutline } from '../../elements/tool-outline';
import type { Job } from '../../core/job';
import { inBase, toNumber } from '../../core/quantity';
import { formOf, unitOf, type LimitsResult, type Thread } from '../../core/thread';
import { pitchLength } from '../../core/thread/forms';
import { infeedFromCrest } from '../../core/thread/depth';
import { drawnBand, type Diameters } from '../../core/thread/outline';
import { noseFor, toolForm } from '../../core/thread/tool';
import { noseShape } from './nose';

/**
 * The tool's point in a groove, at the middle of the limits of pitch diameter; null where the nose isn't known or makes
 * no such groove. @param middle radius of that pitch line, in the thread's own unit
 */
const toolAt = (thread: Thread, job: Job, middle: number): NonNullable<LimitsShape['tool']> | null => {
  const form = toolForm(thread, job.side);
  const nose = noseShape(job, form);
  if (!job.noseKind || !nose || (nose.sized && !job.noseSize)) return null;
  const { half, pitch, addendum } = form;
  const size = job.noseSize && toNumber(inBase(job.noseSize));
  const cut = infeedFromCrest({ half, pitch, addendum, nose: noseFor(job.noseKind, size, form) });
  if (!cut.ok) return null;
  const unit = unitOf(thread) === 'in' ? 25.4 : 1;
  const flanks = formOf(thread).flanks.map(toNumber) as [number, number];
  const screw = job.side === 'external';
  const [left, right] = screw ? flanks : [flanks[1], flanks[0]];
  const height = cut.radial + pitch / 8;
  const points = toolOutline({ left, right, radius: 0, flat: 0, ...nose, below: cut.below, height }, pitch);
  const place = (x: number): number => (screw ? x + pitch : x + pitch / 2);
  return points.map(([x, h]) => [place(x) / unit, middle + ((screw ? 1 : -1) * (h - cut.below)) / unit]);
};

/**
 * What the drawing of a thread between its limits needs, in the thread's own unit; null where the drawing needs a limit
 * that is left open. @param wire diameter of wires seated in it, mm @param job whose tool is drawn, if any
 */
export const limitsShape = (
  thread: Thread,
  l: Extract<LimitsResult, { ok: true }>,
  wire: number | null,
  job: Job | null = null,
): LimitsShape | null => {
  const outlines = drawnBand(thread, l);
  const pitch = pitchLength(thread);
  if (!outlines || !pitch) return null;
  const { flanks } = formOf(thread);
  const numbers = (o: Diameters): Outline => ({
    major: toNumber(o.major),
    pitch: toNumber(o.pitch),
    minor: toNumber(o.minor),
  });
  return {
    kind: l.kind,
    pitch: toNumber(pitch),
    flanks: [toNumber(flanks[0]), toNumber(flanks[1])],
    most: numbers(outlines.most),
    least: numbers(outlines.least),
    tool: job && toolAt(thread, job, (toNumber(outlines.most.pitch) + toNumber(outlines.least.pitch)) / 4),
    wire: wire === null ? null : unitOf(thread) === 'in' ? wire / 25.4 : wire,
  };
};
