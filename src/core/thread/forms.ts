import { add, div, inBase, mul, ratio, roundToStep, sub, type Ratio } from '../quantity';
import { nptSizes } from './npt';
import { formOf, type Form } from './profiles';
import type { Thread } from './thread';

export { formOf, H60, standardForm, type Form, type StandardForm } from './profiles';

/** Included angle between the flanks, degrees. */
export const includedAngle = (form: Form): Ratio => add(form.flanks[0], form.flanks[1]);

/** The unit in which the thread's own standard states its diameters. */
export const unitOf = (thread: Thread): 'mm' | 'in' =>
  (thread.major?.unit ?? thread.pitch.unit) === 'mm' || thread.pitch.unit === 'module' ? 'mm' : 'in';

/**
 * Pitch in the thread's own unit (mm or in), exact; null for worms by module or diametral pitch, whose pitch
 * carries π.
 */
export const pitchLength = (thread: Thread): Ratio | null => {
  const { unit } = thread.pitch;
  if (unit === 'module' || unit === 'dp') return null;
  const mm = inBase(thread.pitch);
  return unitOf(thread) === 'mm' ? mm : div(mm, ratio(127, 5));
};

/** Major diameter in the thread's own unit, or null. */
export const majorLength = (thread: Thread): Ratio | null => thread.major?.value ?? null;

/** Whitworth depths are printed to 0.0001 in (BS 84) or 0.001 mm (ISO 228-1, ISO 7-1) before diameters are taken. */
const depthStep = (form: Form, thread: Thread): Ratio | null => {
  if (form.id === 'whitworth55') return ratio(1, unitOf(thread) === 'mm' ? 1000 : 10_000);
  return form.depthStep ?? null;
};

export interface BasicSizes {
  readonly unit: 'mm' | 'in';
  readonly major: Ratio;
  readonly pitch: Ratio;
  readonly minor: Ratio;
}

/**
 * Basic major, pitch and minor diameter (of a taper thread, at its gauge plane), rounded only where the standard rounds its depth, in the thread's
 * own unit; null where it has no major.
 */
export const basicSizes = (thread: Thread): BasicSizes | null => {
  const p = pitchLength(thread);
  const major = majorLength(thread);
  if (!p || !major) return null;
  if (thread.form === 'npt60') return nptSizes(thread.size, major, p);
  const form = formOf(thread);
  const step = depthStep(form, thread);
  const lost = (times: Ratio): Ratio => (step ? roundToStep(mul(times, p), step) : mul(times, p));
  return {
    unit: unitOf(thread),
    major,
    pitch: sub(major, lost(form.majorToPitch)),
    // Both depths of a rounded profile must be the same, so the second is not rounded by itself.
    minor: step ? sub(major, mul(2, lost(form.majorToPitch))) : sub(major, lost(form.majorToMinor)),
  };
};
