import type { LimitsShape } from '../../elements/limits-drawing';
import { limitsShapeOf } from '../../elements/limits-shape';
import { toolOutline } from '../../elements/tool-outline';
import type { Job } from '../../core/job';
import { inBase, toNumber } from '../../core/quantity';
import { formOf, unitOf, type LimitsResult, type Thread } from '../../core/thread';
import { infeedFromCrest } from '../../core/thread/depth';
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
 * What the drawing of a thread between its limits needs, with a tool in it where one is known.
 * @param wire diameter of wires seated in it, mm @param job whose tool is drawn, if any
 */
export const limitsShape = (
  thread: Thread,
  l: Extract<LimitsResult, { ok: true }>,
  wire: number | null,
  job: Job | null = null,
): LimitsShape | null => {
  const shape = limitsShapeOf(thread, l, wire);
  return shape && { ...shape, tool: job && toolAt(thread, job, (shape.most.pitch + shape.least.pitch) / 4) };
};
