import { FLANK_INFEED, usableRoom, type UsableRoom } from '../../cut/room';
import { inBase, leadHigh, mul, toNumber, type Lead, type Ratio } from '../../quantity';
import type { Thread } from '../../thread';
import { formOf } from '../../thread/profiles';
import { dinUndercut, isoUndercut } from '../../thread/undercut';

/** Undercuts of the two standards, narrow floors all: they are never mixed. */
export const GROOVE_IDS = ['iso-4755', 'din-76-a', 'din-76-b'] as const;
export type GrooveId = (typeof GROOVE_IDS)[number];

/** Full depth of an ISO metric external thread: 17/24 of its sharp height, × P. ISO 68-1. */
const FULL_DEPTH = (17 / 24) * (Math.sqrt(3) / 2);
const ISO_HALF = 30;

const ofStandard = (id: GrooveId, major: Ratio, pitch: Ratio) => {
  if (id === 'iso-4755') return isoUndercut(major, pitch);
  return dinUndercut(major, pitch, id === 'din-76-a' ? 'A' : 'B');
};

export interface GrooveRoom extends UsableRoom {
  /** Least floor of the standard's groove, mm. */
  readonly floor: Ratio;
  readonly depth: number;
}

/** What the standard's groove for that pitch leaves at full depth; null where the standard has no groove for it. */
export const grooveRoom = (id: GrooveId, pitch: Ratio, major?: Ratio): GrooveRoom | null => {
  // The floor follows the pitch alone; ten pitches is a diameter that every row bears.
  const found = ofStandard(id, major ?? mul(pitch, 10), pitch);
  if (!found.ok) return null;
  const { floor } = found.undercut;
  const depth = FULL_DEPTH * toNumber(pitch);
  const room = usableRoom({ groove: floor, depth, half: ISO_HALF, infeed: FLANK_INFEED });
  return room && { ...room, floor, depth };
};

/** The same for a thread: only ISO metric threads have these grooves. */
export const grooveOf = (id: GrooveId, thread: Thread | null, pitch: Lead): GrooveRoom | null => {
  if (!thread?.major || thread.form !== 'iso60' || formOf(thread).id !== 'iso60') return null;
  if (thread.pitch.unit !== 'mm' || thread.major.unit !== 'mm' || thread.taper) return null;
  return grooveRoom(id, leadHigh(pitch), inBase(thread.major));
};
