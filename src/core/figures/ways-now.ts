import { waysFor, type Way, type WayQuestion } from '../cut/ways';
import { inBase, leadNumber, mul, MM_PER_INCH, toNumber, type Ratio, type Stated } from '../quantity';
import { basicSizes, type Thread } from '../thread';
import { leadAngle } from '../thread/helix';
import { toolForm, type ToolForm } from '../thread/tool';
import { internalUndercut, isoUndercut } from '../thread/undercut';
import { pitchLength, majorLength, unitOf } from '../thread/forms';
import type { Sheet } from './define';
import { roomOf } from './room-from';

/** Run-out of an internal thread where no groove is known, in pitches: GB/T 3-1997, normal (the table's 4 P). */
const INTERNAL_RUN_OUT = 4;

const mm = (s: Stated | null): number | null => s && toNumber(inBase(s));

/** Basic minor diameter, mm; of a worm, which has none of its own, the blank less the depth on both sides. */
const minorOf = (thread: Thread, form: ToolForm, blank: number | null): number | null => {
  const sizes = basicSizes(thread);
  if (sizes) return toNumber(sizes.unit === 'in' ? mul(sizes.minor, MM_PER_INCH) : sizes.minor);
  return blank === null ? null : blank - 2 * (form.addendum + form.tip);
};

/** The undercut that the standard of a metric thread gives: ISO 4755 outside, GB/T 3 inside, whole groove. */
const undercutOf = (thread: Thread, side: 'external' | 'internal'): WayQuestion['undercut'] => {
  const [major, pitch] = [majorLength(thread), pitchLength(thread)];
  if (thread.form !== 'iso60' || unitOf(thread) !== 'mm' || !major || !pitch) return null;
  const plain = (floor: Ratio, diameter: Ratio) => ({ floor: toNumber(floor), diameter: toNumber(diameter) });
  if (side === 'external') {
    const u = isoUndercut(major, pitch);
    return u.ok ? plain(u.undercut.floor, u.undercut.diameter) : null;
  }
  const u = internalUndercut(major, pitch, 'normal');
  return u.ok ? plain(u.undercut.length, u.undercut.diameter) : null;
};

/** The other work, for the job and machine as they are. */
export const waysNow = (sheet: Sheet): readonly Way[] => {
  const { job, machine } = sheet.inputs;
  const thread = sheet.get('chosen').value?.thread ?? null;
  const [lead, pitch] = [sheet.get('lead').value, sheet.get('pitch').value];
  const form = thread && toolForm(thread, job.side);
  const blank = mm(job.blank);
  const minor = thread && form ? minorOf(thread, form, job.side === 'external' ? blank : null) : null;
  const leadMm = lead && leadNumber(lead);
  const pitchMm = pitch && leadNumber(pitch);
  const screw = sheet.get('screwLead').value;
  const { wholeStopTime: time, safetyFactor: factor } = machine;
  return waysFor({
    job,
    lead: leadMm,
    pitch: pitchMm,
    pi: pitch?.pi ?? false,
    form,
    formId: thread?.form ?? null,
    taper: thread?.taper?.value ?? null,
    steepest: leadMm === null || minor === null ? null : leadAngle(leadMm, minor),
    depth: sheet.get('depth').value,
    bar: {
      bore: job.side === 'internal' ? (blank ?? minor) : null,
      length: mm(job.length),
      gap: mm(job.gap),
      runOut: mm(job.ending === 'groove' ? job.groove : null) ?? (pitchMm && INTERNAL_RUN_OUT * pitchMm),
    },
    room: mm(roomOf(sheet.inputs)),
    rpm: job.rpm && toNumber(job.rpm),
    stopTime: time && factor && toNumber(mul(inBase(time), inBase(factor))),
    screwLead: screw && toNumber(screw),
    chuck: machine.chuckMount,
    undercut: thread && undercutOf(thread, job.side),
  });
};
