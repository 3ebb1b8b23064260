import { html } from 'lit';
import '../../elements/thread-profile';
import type { ProfileShape } from '../../elements/profile-path';
import type { Job } from '../../core/job';
import type { Thread } from '../../core/thread';
import { bothAngles } from '../../core/thread/groove';
import { toolForm, type ToolForm } from '../../core/thread/tool';
import { marked, statedText } from '../../text/numbers';
import { profileWords } from '../../text/threads';
import { noseShape } from './nose';

/** The groove that is cut: the screw's outside, the nut's inside, mm. */
const shapeOf = (form: ToolForm): ProfileShape => {
  const { leading, trailing } = bothAngles(form.half);
  return {
    pitch: form.pitch,
    flanks: [leading, trailing],
    depth: form.addendum + form.tip,
    pitchDepth: form.addendum,
    crestRadius: form.crestRadius,
    rootRadius: form.radius,
  };
};

/** The profile to scale, with the tool's nose at its depth where that is known. @param depth from the crest, mm */
export const drawing = (thread: Thread, job: Job, depth: number | null) => {
  const form = toolForm(thread, job.side);
  const shape = shapeOf(form);
  const nose = depth === null ? null : noseShape(job, form);
  // A full-form insert starts in an oversize blank, but ends where the form does.
  const tip = job.noseKind === 'full-form' ? shape.depth : depth;
  return html`<ls-profile
    .shape=${shape}
    .nose=${nose && tip !== null ? { ...nose, depth: tip } : null}
    .pitchText=${statedText(thread.pitch)}
    .text=${profileWords(marked(thread.designation), statedText(thread.pitch), shape.flanks, job.noseKind)}
  ></ls-profile>`;
};
