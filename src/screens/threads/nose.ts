import type { Job } from '../../core/job';
import { inBase, toNumber } from '../../core/quantity';
import { opening } from '../../core/thread/groove';
import type { ToolForm } from '../../core/thread/tool';

/** A nose to be drawn, mm. */
export interface NoseShape {
  readonly radius?: number;
  readonly flat?: number;
  /** It is drawn by the size that the person entered. */
  readonly sized: boolean;
}

/** The nose as it cuts; a full-form insert's is the form's own root. Null where none is chosen. */
export const noseShape = (job: Job, form: ToolForm): NoseShape | null => {
  const { noseKind: kind } = job;
  const size = job.noseSize ? toNumber(inBase(job.noseSize)) : 0;
  if (kind === 'radius') return { radius: size, sized: true };
  if (kind === 'flat') return { flat: size, sized: true };
  if (kind !== 'full-form') return kind && { sized: false };
  return form.radius > 0
    ? { radius: form.radius, sized: false }
    : { flat: form.pitch / 2 - form.tip * opening(form.half), sized: false };
};
