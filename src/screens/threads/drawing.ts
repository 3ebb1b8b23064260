import { html, nothing } from 'lit';
import '../../elements/thread-profile';
import type { ProfileNose } from '../../elements/thread-profile';
import type { ProfileShape } from '../../elements/profile-path';
import type { Job } from '../../core/job';
import { inBase, toNumber } from '../../core/quantity';
import { formOf, type Thread } from '../../core/thread';
import { statedText } from '../../text/numbers';
import { profileWords } from '../../text/threads';

/** Forms whose crest is rounded like their root. */
const ROUNDED: readonly string[] = ['whitworth55', 'ba47', 'round30'];

const shapeOf = (thread: Thread): ProfileShape | null => {
  if (thread.pitch.unit === 'module' || thread.pitch.unit === 'dp') return null;
  const form = formOf(thread);
  const pitch = toNumber(inBase(thread.pitch));
  const root = form.rootRadius ? toNumber(form.rootRadius.min) * pitch : 0;
  return {
    pitch,
    flanks: [toNumber(form.flanks[0]), toNumber(form.flanks[1])],
    depth: (toNumber(form.majorToMinor) / 2) * pitch,
    pitchDepth: (toNumber(form.majorToPitch) / 2) * pitch,
    crestRadius: ROUNDED.includes(thread.form) ? root : 0,
    rootRadius: ROUNDED.includes(thread.form) ? root : 0,
  };
};

const noseOf = (job: Job, depth: number | null): ProfileNose | null => {
  if (depth === null || !job.noseKind) return null;
  const size = job.noseSize ? toNumber(inBase(job.noseSize)) : 0;
  if (job.noseKind === 'radius') return { radius: size, depth };
  return { flat: job.noseKind === 'flat' ? size : 0, depth };
};

/** The basic profile to scale, with the tool's nose at its depth where that is known. Nothing for worms yet. */
export const drawing = (thread: Thread, job: Job, depth: number | null) => {
  const shape = shapeOf(thread);
  if (!shape) return nothing;
  return html`<ls-profile
    .shape=${shape}
    .nose=${noseOf(job, depth)}
    .pitchText=${statedText(thread.pitch)}
    .text=${profileWords(thread.designation, statedText(thread.pitch), shape.flanks[0] + shape.flanks[1])}
  ></ls-profile>`;
};
