import type { Candidate } from './candidate';
import { crestSpread } from './crest';
import type { ThreadReadings } from './readings';

/**
 * What could be measured to tell two threads apart. `pitch-over-length`: crests over as long a length as there is;
 * `over-wires`: pitch diameter; `starts`: ends of thread counted at the face; `taper`: diameter at two places.
 */
export type SeparatingKind = 'diameter' | 'pitch-over-length' | 'angle' | 'over-wires' | 'starts' | 'taper';

export interface Separation {
  readonly kind: SeparatingKind;
  /** Difference between the two, in standard deviations of what would be read; above 3 parts them. */
  readonly sigmas: number;
  /** Difference to look for: mm, or degrees, or starts, or mm per mm for a taper. */
  readonly difference: number;
  /** Pitches to count over for 3 standard deviations; null but for pitch-over-length. */
  readonly pitches: number | null;
}

/** How well each can be had with a vernier caliper, wires and a micrometer, and a gauge: standard uncertainties, common practice. */
const U = { diameter: 0.02, length: 0.1, angle: 1.5, overWires: 0.01, taper: 0.003 } as const;
/** Crests that fit on a usual length of thread: about one and a half diameters, at least ten. */
const LENGTHS = 1.5;
const COUNTABLE = 10;

const gap = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : Math.abs(a - b);

/** As-cut spread of the pitch diameter, mm: half of what the crest's tolerance is (ISO 965-1 grade 6, roughly). */
const pitchDiameterSpread = (c: Candidate): number => crestSpread(c.crests.external) / 2;

/** All that differs between two candidates, the surest first. Empty for two threads alike in everything measured. */
export const separate = (
  a: Candidate,
  b: Candidate,
  r: Pick<ThreadReadings, 'side' | 'diameter'>,
): readonly Separation[] => {
  const list: Separation[] = [];
  const put = (
    kind: SeparatingKind,
    difference: number | null,
    s: number,
    pitches: number | null = null,
  ): void => {
    if (difference !== null && difference > 1e-9)
      list.push({ kind, sigmas: difference / s, difference, pitches });
  };
  const spread = Math.max(crestSpread(a.crests[r.side]), crestSpread(b.crests[r.side]));
  const across = r.side === 'external' ? gap(a.major, b.major) : gap(a.minor, b.minor);
  put('diameter', across, Math.hypot(U.diameter, spread));

  const dp = Math.abs(a.pitch - b.pitch);
  const length = LENGTHS * (r.diameter?.value ?? a.major ?? b.major ?? 0);
  const countable = Math.max(COUNTABLE, Math.floor(length / Math.max(a.pitch, b.pitch)));
  put('pitch-over-length', dp, U.length / countable, Math.ceil((3 * U.length) / dp));
  put('angle', gap(a.angle, b.angle), U.angle);
  if (r.side === 'external') {
    const both = Math.max(pitchDiameterSpread(a), pitchDiameterSpread(b));
    put('over-wires', gap(a.pitchDiameter, b.pitchDiameter), Math.hypot(U.overWires, both));
  }
  // Counting is right or wrong; a person who looks sees it.
  if (a.starts !== b.starts)
    list.push({ kind: 'starts', sigmas: 10, difference: Math.abs(a.starts - b.starts), pitches: null });
  put('taper', Math.abs(a.taper - b.taper), U.taper);
  return list.sort((x, y) => y.sigmas - x.sigmas);
};
