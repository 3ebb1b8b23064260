import type { MachineProfile } from '../machine';
import { compare, ratio, toNumber, type Lead, type Ratio } from '../quantity';
import { pitchLength, majorLength, unitOf } from '../thread/forms';
import type { Thread } from '../thread';
import { formOf } from '../thread/profiles';
import { dinUndercut, internalUndercut, isoUndercut } from '../thread/undercut';
import { highestIn, stopRoom, travelAt, type StopPlace, type StopRoom } from './stop';

/** Grooves of the standards, each by its own; floors outside, whole lengths inside. */
export type StandardGroove = 'iso-4755' | 'din-76-a' | 'din-76-b' | 'gbt-3' | 'gbt-3-short';

/** A groove of a standard for the job's pitch, by its name there. */
export interface NamedGroove {
  readonly id: StandardGroove;
  /** Least width of its floor, mm; inside, its length. */
  readonly floor: Ratio;
}

/** One change that would let the tool be stopped in time, everything else being as it is. */
export type Fit =
  /** No more than so many rpm; `own`: the fastest of the spindle's own that is, null where none is so slow. */
  | {
      readonly kind: 'slower';
      readonly rpm: bigint;
      readonly own: Ratio | null;
      readonly ownKnown: boolean;
    }
  /** A groove at least so wide for the speed set, mm up to a tenth; the standards' for this pitch that are, and their widest. */
  | {
      readonly kind: 'groove';
      readonly floor: Ratio;
      readonly named: readonly NamedGroove[];
      readonly widest: NamedGroove | null;
    }
  /** A gap at least so long for the speed set, mm up to a tenth. */
  | { readonly kind: 'gap'; readonly gap: Ratio }
  /** Straight in: the creep falls away; the room then, and the speed it bears. */
  | { readonly kind: 'straight-in'; readonly room: Ratio; readonly rpm: bigint }
  /** From the shoulder outwards, if the chuck can't unscrew. */
  | { readonly kind: 'outwards'; readonly chuck: 'locked' | 'screw-on' | null }
  | { readonly kind: 'by-hand' };

export interface FitQuestion {
  readonly place: StopPlace;
  readonly lead: Lead;
  /** The speed set; null: none is, and widths are asked for none. */
  readonly rpm: Ratio | null;
  /** Whole time, s, and its factor. */
  readonly time: Ratio;
  readonly factor: Ratio;
  /** The spindle's own speeds; null where it has a range, or they aren't known. */
  readonly speeds: readonly Ratio[] | null;
  readonly chuck: MachineProfile['chuckMount'];
  readonly grooves: readonly NamedGroove[];
}

const upToTenths = (mm: number): Ratio => ratio(BigInt(Math.ceil(mm * 10 - 1e-6)), 10n);

const slower = (x: FitQuestion, room: StopRoom): readonly Fit[] => {
  const rpm = highestIn(room.usable, x.lead, x.time, x.factor);
  if (rpm < 1n || (x.rpm && compare(x.rpm, ratio(rpm)) <= 0)) return [];
  const own = (x.speeds ?? []).filter((s) => compare(s, ratio(rpm)) <= 0);
  const fastest = own.reduce<Ratio | null>((a, b) => (a && compare(a, b) > 0 ? a : b), null);
  return [{ kind: 'slower', rpm, own: fastest, ownKnown: x.speeds !== null }];
};

const wider = (x: FitQuestion, room: StopRoom): readonly Fit[] => {
  if (!x.rpm) return [];
  const needed = toNumber(travelAt(x.lead, x.rpm, x.time, x.factor)) + room.tool + room.creep + room.margin;
  if (room.from === 'gap') return [{ kind: 'gap', gap: upToTenths(needed) }];
  // A fading thread can be given a groove instead: then its tool meets the shoulder, with a margin.
  const answer = stopRoom({ ...x.place, ending: 'groove', groove: x.place.groove ?? ratio(1) });
  if (!answer.ok) return [];
  const { tool, creep, margin } = answer.room;
  const floor = upToTenths(toNumber(travelAt(x.lead, x.rpm, x.time, x.factor)) + tool + creep + margin);
  const rising = [...x.grooves].sort((a, b) => compare(a.floor, b.floor));
  const named = rising.filter((g) => compare(g.floor, floor) >= 0);
  return [{ kind: 'groove', floor, named, widest: rising.at(-1) ?? null }];
};

const straightIn = (x: FitQuestion, room: StopRoom): readonly Fit[] => {
  if (x.place.infeed === 0) return [];
  const answer = stopRoom({ ...x.place, infeed: 0 });
  const usable = answer.ok ? answer.room.usable : null;
  if (!usable) return [];
  const rpm = highestIn(usable, x.lead, x.time, x.factor);
  return rpm > highestIn(room.usable, x.lead, x.time, x.factor)
    ? [{ kind: 'straight-in', room: usable, rpm }]
    : [];
};

/**
 * What would let the tool be stopped in time, each tried by itself on the job's own figures; empty where it stops in time
 * as it is. Cutting from the shoulder outwards and turning by hand need no room before a shoulder.
 */
export const fitsFor = (x: FitQuestion): readonly Fit[] => {
  const answer = stopRoom(x.place);
  if (!answer.ok) return [];
  const { room } = answer;
  const highest = highestIn(room.usable, x.lead, x.time, x.factor);
  if (highest > 0n && (!x.rpm || compare(x.rpm, ratio(highest)) <= 0)) return [];
  const atShoulder = !x.place.outwards && x.place.ending !== 'through';
  return [
    ...slower(x, room),
    ...wider(x, room),
    ...straightIn(x, room),
    ...(atShoulder ? ([{ kind: 'outwards', chuck: x.chuck }] as const) : []),
    { kind: 'by-hand' },
  ];
};

/** The standards' grooves for a thread: ISO metric alone has them; empty for any other, or a pitch without a row. */
export const namedGrooves = (thread: Thread, side: 'external' | 'internal'): readonly NamedGroove[] => {
  const [major, pitch] = [majorLength(thread), pitchLength(thread)];
  if (!major || !pitch || unitOf(thread) !== 'mm' || thread.taper) return [];
  if (thread.form !== 'iso60' || formOf(thread).id !== 'iso60') return [];
  if (side === 'internal') {
    const inside = (['normal', 'short'] as const).map((form) => internalUndercut(major, pitch, form));
    return inside.flatMap((u, i) =>
      u.ok ? [{ id: i === 0 ? ('gbt-3' as const) : ('gbt-3-short' as const), floor: u.undercut.length }] : [],
    );
  }
  const outside = [isoUndercut(major, pitch), dinUndercut(major, pitch, 'A'), dinUndercut(major, pitch, 'B')];
  const ids = ['iso-4755', 'din-76-a', 'din-76-b'] as const;
  return outside.flatMap((u, i) => (u.ok ? [{ id: ids[i] ?? 'iso-4755', floor: u.undercut.floor }] : []));
};
