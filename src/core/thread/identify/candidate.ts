import { leadFrom, leadNumber, MM_PER_INCH, mul, toNumber } from '../../quantity';
import { basicSizes, formOf, includedAngle } from '../forms';
import type { Thread } from '../thread';
import { crestParts, type CrestPart } from './crest';

/** A thread in the numbers a measurement is held against. Millimetres and degrees. */
export interface Candidate {
  readonly thread: Thread;
  /** Nominal major diameter; null for a thread that has none of its own. */
  readonly major: number | null;
  readonly pitchDiameter: number | null;
  /** Basic minor diameter. */
  readonly minor: number | null;
  /** Axial pitch, π worked out for worms. */
  readonly pitch: number;
  /** Included angle of the flanks. */
  readonly angle: number;
  /** Taper on diameter, 0 for a parallel thread. */
  readonly taper: number;
  readonly starts: number;
  /** How the crests of such a screw and such a hole come out. */
  readonly crests: Readonly<Record<'external' | 'internal', readonly CrestPart[]>>;
}

/** Candidates of a list of threads, to be made once and kept: it is the slow part of a search. */
export const candidatesFrom = (threads: readonly Thread[]): readonly Candidate[] =>
  threads.map((thread): Candidate => {
    const sizes = basicSizes(thread);
    const mm = (x: NonNullable<typeof sizes>['major']): number =>
      toNumber(sizes?.unit === 'in' ? mul(x, MM_PER_INCH) : x);
    const pitch = leadNumber(leadFrom(thread.pitch));
    const taper = thread.taper ? toNumber(thread.taper.value) : 0;
    return {
      thread,
      major: sizes ? mm(sizes.major) : null,
      pitchDiameter: sizes ? mm(sizes.pitch) : null,
      minor: sizes ? mm(sizes.minor) : null,
      pitch,
      angle: toNumber(includedAngle(formOf(thread))),
      taper,
      starts: thread.starts,
      crests: {
        external: crestParts(pitch, taper, 'external'),
        internal: crestParts(pitch, taper, 'internal'),
      },
    };
  });
