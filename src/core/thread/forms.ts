import { add, div, equal, inBase, mul, ratio, roundToStep, sub, type Ratio } from '../quantity';
import type { FormId, Thread } from './thread';

/**
 * A basic profile, all lengths as multiples of the pitch. Diameters lose twice the depth on one side.
 * Irrational constants are carried to 18 decimals; whoever uses them rounds to the standard's last digit.
 */
export interface Form {
  readonly id: FormId;
  /** Flank angles from the plane square to the axis, degrees: the flank that carries load, and the other. */
  readonly flanks: readonly [Ratio, Ratio];
  /** Height of the sharp triangle; null for a square thread. */
  readonly sharpHeight: Ratio | null;
  /** Basic major minus basic pitch diameter. */
  readonly majorToPitch: Ratio;
  /** Basic major minus basic minor diameter. */
  readonly majorToMinor: Ratio;
  /** Radius of the rounded root of the external basic or design profile, where the standard fixes one. */
  readonly rootRadius: Ratio | null;
  /** Where the standard itself rounds the depth of thread, mm, before it states any diameter. */
  readonly depthStep?: Ratio;
  readonly source: string;
}

/** √3 to 19 decimals. */
export const SQRT3 = ratio(17320508075688772935n, 10n ** 19n);
/** H of a 60° thread: √3/2 · P (ISO 68-1). */
export const H60 = div(SQRT3, 2);
/** H of a 55° thread: cot 27.5° / 2 · P (BS 84; 0.960491 P). */
export const H55 = ratio(960491063485583n, 10n ** 15n);

const of60 = (eighths: number): Ratio => mul(H60, ratio(eighths, 8));
const same = (deg: Ratio): readonly [Ratio, Ratio] => [deg, deg];
const half60 = same(ratio(30));

const FORMS: Partial<Record<FormId, Omit<Form, 'id'>>> = {
  iso60: {
    flanks: half60,
    sharpHeight: H60,
    majorToPitch: of60(6),
    majorToMinor: of60(10),
    rootRadius: div(H60, 6),
    source: 'ISO 68-1',
  },
  whitworth55: {
    flanks: same(ratio(55, 2)),
    sharpHeight: H55,
    majorToPitch: mul(H55, ratio(2, 3)),
    majorToMinor: mul(H55, ratio(4, 3)),
    rootRadius: ratio(137329, 1_000_000),
    source: 'BS 84',
  },
  ba47: {
    flanks: same(ratio(95, 4)),
    sharpHeight: ratio(113634, 100_000),
    majorToPitch: ratio(6, 10),
    majorToMinor: ratio(12, 10),
    rootRadius: ratio(1808346, 10_000_000),
    depthStep: ratio(5, 1000),
    source: 'BS 93',
  },
};

/** The form's basic profile. @throws RangeError for a form without one */
export const formOf = (id: FormId): Form => {
  const f = FORMS[id];
  if (!f) throw new RangeError(`no profile for ${id}`);
  return { id, ...f };
};

/** Included angle between the flanks, degrees. */
export const includedAngle = (form: Form): Ratio => add(form.flanks[0], form.flanks[1]);
export const isSymmetric = (form: Form): boolean => equal(form.flanks[0], form.flanks[1]);

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

export interface BasicSizes {
  readonly unit: 'mm' | 'in';
  readonly major: Ratio;
  readonly pitch: Ratio;
  readonly minor: Ratio;
}

/** Basic major, pitch and minor diameter, rounded only where Form.depthStep says so, in the thread's own unit; null where it has no major. */
export const basicSizes = (thread: Thread): BasicSizes | null => {
  const p = pitchLength(thread);
  const major = majorLength(thread);
  if (!p || !major) return null;
  const form = formOf(thread.form);
  const step = form.depthStep;
  const lost = (times: Ratio): Ratio => (step ? roundToStep(mul(times, p), step) : mul(times, p));
  return {
    unit: unitOf(thread),
    major,
    pitch: sub(major, lost(form.majorToPitch)),
    // Both depths of a rounded profile must be the same, so the second is not rounded by itself.
    minor: step ? sub(major, mul(2, lost(form.majorToPitch))) : sub(major, lost(form.majorToMinor)),
  };
};
