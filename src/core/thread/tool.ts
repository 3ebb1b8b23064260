import { leadFrom, leadNumber, ratio, toNumber } from '../quantity';
import { apexBelowPitchLine, tipAboveApexRadius, type HalfAngles } from './groove';
import { rootClearance } from './limits/iso2903';
import type { Nose } from './depth';
import { formOf } from './profiles';
import type { FormId, Thread } from './thread';

/**
 * What a full-form insert needs left on the diameter, mm or inch, since it cuts the crest too: 0.03 to 0.07 mm,
 * 0.001 to 0.003 in. Common practice with such inserts (from memory).
 */
export const FULL_FORM_STOCK = {
  mm: { min: ratio(3, 100), aim: ratio(5, 100), max: ratio(7, 100) },
  in: { min: ratio(1, 1000), aim: ratio(2, 1000), max: ratio(3, 1000) },
} as const;

/** The groove that a thread's standard wants cut in one member, mm, each length square to the axis. */
export interface ToolForm {
  readonly half: HalfAngles;
  readonly pitch: number;
  /** Crest to pitch line. */
  readonly addendum: number;
  /** Pitch line to the mating crest: a root that stands nearer would touch it. */
  readonly reach: number;
  /** Pitch line to the bottom of the groove: where the tip of a full-form insert stands. */
  readonly tip: number;
  /** Radius of the root, 0 where it is flat. */
  readonly radius: number;
  /** Radius of the crest, 0 where it is flat. */
  readonly crestRadius: number;
}

/** Forms whose nut has the screw's own rounded root. */
const BOTH_ROOTS: readonly FormId[] = ['whitworth55', 'ba47', 'cycle60', 'buttress7x45'];
/** Forms whose crests are rounded like their roots. */
const ROUND_CRESTS: readonly FormId[] = ['whitworth55', 'ba47', 'cycle60', 'round30'];
/** Radii of a round nut's root and crest, × P: DIN 405-1, from memory; both agree with its clearance of 0.05 P. */
const ROUND_NUT = { root: 0.221047, crest: 0.255967 };

/** Clearance at the root, one side, mm: ISO 2901; ASME B1.5 and B1.8 (0.010 in, finer than 10 tpi 0.005 in). */
const clearanceOf = (form: FormId, pitch: number): number => {
  if (form === 'trapezoidal30') return toNumber(rootClearance(pitch));
  if (form !== 'acme29' && form !== 'stubAcme29') return 0;
  return pitch < 2.54 ? 0.127 : 0.254;
};

/**
 * The groove of a thread by its standard's form. A flat root stands where the basic profile has it, or deeper by the
 * clearance that the standard gives. The nut of a 60° thread is cut to its basic major diameter.
 */
export const toolForm = (thread: Thread, side: 'external' | 'internal'): ToolForm => {
  const form = formOf(thread);
  const pitch = leadNumber(leadFrom(thread.pitch));
  const half = { leading: toNumber(form.flanks[0]), trailing: toNumber(form.flanks[1]) };
  const above = (toNumber(form.majorToPitch) / 2) * pitch;
  const below = (toNumber(form.majorToMinor) / 2) * pitch - above;
  const screw = side === 'external';
  const [addendum, dedendum] = screw ? [above, below] : [below, above];
  const roundNut = form.id === 'round30' && !screw;
  const own = form.rootRadius ? toNumber(form.rootRadius.max) * pitch : 0;
  const radius = roundNut ? ROUND_NUT.root * pitch : screw || BOTH_ROOTS.includes(form.id) ? own : 0;
  return {
    half,
    pitch,
    addendum,
    // A worm's wheel has the addendum of the worm; the rest of the worm's depth is clearance.
    reach: form.id === 'worm29' || form.id === 'worm40' ? above : dedendum,
    tip:
      radius > 0
        ? apexBelowPitchLine(half, pitch) - tipAboveApexRadius(half, radius)
        : dedendum + clearanceOf(form.id, pitch),
    radius,
    crestRadius: roundNut ? ROUND_NUT.crest * pitch : ROUND_CRESTS.includes(form.id) ? own : 0,
  };
};

/** The nose as depth takes it; an insert's own where it cuts the full form. @param size mm, null for a sharp or full one */
export const noseFor = (kind: Nose['kind'], size: number | null, form: ToolForm): Nose => {
  if (kind === 'full-form') return { kind, size: form.tip };
  return kind === 'sharp' || size === null ? { kind: 'sharp' } : { kind, size };
};
