import { toNumber } from '../quantity';
import { unitOf } from './forms';
import { opening } from './groove';
import { formOf } from './profiles';
import { toolForm } from './tool';
import type { Thread } from './thread';

/** What stands at the end of a ridge or groove: a flat of a width, or a radius. */
export interface End {
  readonly kind: 'flat' | 'radius';
  readonly size: number;
}

/**
 * The profile that a thread's standard draws, in the thread's own unit, lengths square to the axis unless said; a
 * worm's carry π. Each right to a micrometre; whoever shows it rounds.
 */
export interface ProfileFigures {
  readonly unit: 'mm' | 'in';
  readonly pitch: number;
  /** Height of the sharp V; null for parallel flanks. */
  readonly sharpHeight: number | null;
  /** How far the ridges of screw and nut overlap: the height that bears. */
  readonly engaged: number;
  readonly screw: Member;
  /** Null for a worm, whose wheel is not cut on the lathe. */
  readonly nut: Member | null;
  /** Standard, handbook or custom that the form comes from, as forms name it. */
  readonly source: string;
}

export interface Member {
  /** Crest to pitch line. */
  readonly addendum: number;
  /** Crest to the bottom of the groove. */
  readonly depth: number;
  readonly crest: End;
  readonly root: End;
}

const member = (thread: Thread, side: 'external' | 'internal', unit: number): Member => {
  const t = toolForm(thread, side);
  const end = (radius: number, reach: number): End =>
    radius > 0
      ? { kind: 'radius', size: radius / unit }
      : { kind: 'flat', size: Math.max(0, t.pitch / 2 - reach * opening(t.half)) / unit };
  return {
    addendum: t.addendum / unit,
    depth: (t.addendum + t.tip) / unit,
    crest: end(t.crestRadius, t.addendum),
    root: end(t.radius, t.tip),
  };
};

/** The basic profile in figures, for every thread: also one without a diameter. */
export const profileFigures = (thread: Thread): ProfileFigures => {
  const form = formOf(thread);
  const unit = unitOf(thread);
  const mm = unit === 'in' ? 25.4 : 1;
  const { pitch, addendum, reach } = toolForm(thread, 'external');
  const worm = form.id === 'worm29' || form.id === 'worm40';
  return {
    unit,
    pitch: pitch / mm,
    sharpHeight: form.sharpHeight && (toNumber(form.sharpHeight) * pitch) / mm,
    engaged: (addendum + reach) / mm,
    screw: member(thread, 'external', mm),
    nut: worm ? null : member(thread, 'internal', mm),
    source: form.source,
  };
};
