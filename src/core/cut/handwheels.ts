import type { Infeed, Job } from '../job';
import type { MachineProfile } from '../machine';
import { equal, inBase, leadFrom, leadNumber, mul, ratio, stated, toNumber, type Stated } from '../quantity';
import type { Thread } from '../thread';
import { radians, type HalfAngles } from '../thread/groove';
import { toolForm } from '../thread/tool';
import { dialOf, type Dial } from './dial';
import { hasFlank, onScale, usualAngle, usualInfeed } from './infeed';
import type { DialSetting, PlannedPass } from './pass';

/** One slide's handwheel. */
export interface Handwheel extends Dial {
  /** Depth into the work for one division, mm, at right angles to the axis. */
  readonly radial: number;
}

export interface Slides {
  readonly half: HalfAngles;
  readonly cross: Handwheel | null;
  readonly top: Handwheel | null;
  /** The slide that goes deeper at each pass. */
  readonly feeds: 'cross' | 'top';
}

/** The infeed of the job, or the one usual for its thread. */
const infeedOf = (job: Job, thread: Thread, half: HalfAngles): Infeed => {
  if (!hasFlank(half)) return 'radial';
  const pitch = leadNumber(leadFrom(thread.pitch));
  return job.infeed ?? usualInfeed({ pitch, half, material: job.material, nose: job.noseKind });
};

/** Angle of the top slide from square to the axis, degrees, by its scale; null while either isn't known. */
export const topAngle = (m: Pick<MachineProfile, 'topScale'>, job: Pick<Job, 'topSlide'>): number | null =>
  job.topSlide && m.topScale && onScale(toNumber(inBase(job.topSlide)), m.topScale);

/** Angle of the top slide from square: as its scale is set, or as is usual for a flank; null where that isn't known. */
const angleOf = (m: MachineProfile, job: Job, infeed: Infeed, half: HalfAngles): number | null => {
  if (infeed === 'alternate-flank') return null;
  if (!job.topSlide) return infeed === 'radial' ? null : usualAngle(infeed, half);
  return topAngle(m, job);
};

/**
 * Both handwheels as they are for a job; null where a dial or the top slide's angle isn't known, and for a top slide that
 * lies along the axis.
 */
export const slidesOf = (m: MachineProfile, job: Job, thread: Thread): Slides => {
  const { half } = toolForm(thread, job.side);
  const infeed = infeedOf(job, thread, half);
  const cross = m.crossDivision && m.crossReads && dialOf(m.crossDivision, m.crossDivisions, m.crossReads);
  const top = m.topDivision && dialOf(m.topDivision, m.topDivisions, 'radius');
  const angle = angleOf(m, job, infeed, half);
  const into = angle !== null && angle >= 0 && angle < 80;
  return {
    half,
    cross: cross && { ...cross, radial: cross.travel },
    top: top && into ? { ...top, radial: top.travel * Math.cos(radians(angle)) } : null,
    feeds: infeed === 'flank' || infeed === 'modified-flank' ? 'top' : 'cross',
  };
};

/** The slide that a pass of a plan was set deeper by; of two moved the cross-slide, the top slide being shifted. */
export const slideOf = ({ cross, top }: Pick<PlannedPass, 'cross' | 'top'>): 'cross' | 'top' =>
  top && (!cross || cross.divisions === 0) ? 'top' : 'cross';

/** Whether a setting was counted in this dial's divisions: a dial entered anew makes an old plan another's. */
export const countedBy = ({ division }: Dial, { divisions, reading }: DialSetting): boolean =>
  reading.unit === division.unit && equal(reading.value, mul(division.value, divisions));

/** So many divisions as a length in the dial's own unit, exact. */
export const divisionsLength = ({ division }: Dial, divisions: number): Stated =>
  stated(mul(division.value, ratio(divisions)), division.unit);
