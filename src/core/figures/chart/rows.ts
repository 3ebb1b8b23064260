import type { Inputs } from '../../context';
import type { Lead, Ratio } from '../../quantity';
import type { LimitReading } from '../limit';
import { roomOf } from '../room-from';
import { ceilingOf, standingAt, type Ceiling } from '../verdict';
import { limitsAt, type At, type ChartThread, type Stops } from './at';
import { GROOVE_IDS, grooveOf, type GrooveId, type GrooveRoom } from './grooves';

/** What a groove or gap allows, all limits together: a number only where every one of them is known. */
export type RoomAnswer =
  | { readonly kind: 'no-groove' }
  | { readonly kind: 'nothing-left'; readonly room: GrooveRoom | null }
  | { readonly kind: 'not-known'; readonly unknown: readonly LimitReading[] }
  | {
      readonly kind: 'highest';
      readonly rpm: bigint;
      readonly binds: LimitReading | null;
      readonly room: GrooveRoom | null;
    };

/** The fastest of the spindle's own speeds within everything but the stopping room. */
export type OwnAnswer =
  | { readonly kind: 'no-speeds' }
  | { readonly kind: 'not-known' }
  | { readonly kind: 'none' }
  | { readonly kind: 'speed'; readonly rpm: Ratio };

export interface ChartRow {
  readonly key: string;
  readonly lead: Lead;
  readonly pitch: Lead;
  readonly starts: number;
  /** What the drive alone follows: not a threading speed. */
  readonly drive: Ceiling;
  readonly own: OwnAnswer;
  readonly grooves: Readonly<Record<GrooveId, RoomAnswer>>;
  /** The room entered for the job, taken as what is left for this thread too; null where none was entered. */
  readonly entered: RoomAnswer | null;
}

const answerOf = (limits: readonly LimitReading[], room: GrooveRoom | null): RoomAnswer => {
  const c = ceilingOf(limits);
  if (c.unknown.length > 0) return { kind: 'not-known', unknown: c.unknown };
  if (!c.highest) return { kind: 'nothing-left', room };
  return { kind: 'highest', rpm: c.highest, binds: c.binds, room };
};

const ownOf = (inputs: Inputs, limits: readonly LimitReading[]): OwnAnswer => {
  const { spindleDrive, spindleSpeeds } = inputs.machine;
  if (spindleDrive === 'range') return { kind: 'no-speeds' };
  if (spindleDrive !== 'speeds' || !spindleSpeeds?.length) return { kind: 'not-known' };
  if (ceilingOf(limits).unknown.length > 0) return { kind: 'not-known' };
  const fastest = spindleSpeeds.findLast((s) => standingAt(limits, s.value) === 'within');
  return fastest ? { kind: 'speed', rpm: fastest.value } : { kind: 'none' };
};

/** One line of the table, a step for each time the figures are asked; null for a thread without a pitch. */
export function* rowSteps(inputs: Inputs, of: ChartThread, stops: Stops): Generator<void, ChartRow | null> {
  const at = limitsAt(inputs, of);
  yield;
  return at && (yield* fromAt(inputs, of, at, stops));
}

function* fromAt(inputs: Inputs, of: ChartThread, at: At, stops: Stops): Generator<void, ChartRow> {
  const rest = at.limits.filter((l) => l.id !== 'stopping-room');
  const groove = (id: GrooveId): RoomAnswer => {
    const room = grooveOf(id, at.thread, at.pitch);
    if (!room) return { kind: 'no-groove' };
    if (!room.usable) return { kind: 'nothing-left', room };
    const stop = stops.at(of, at.lead, room.usable);
    return stop ? answerOf([...rest, stop], room) : { kind: 'no-groove' };
  };
  const grooves: Partial<Record<GrooveId, RoomAnswer>> = {};
  for (const id of GROOVE_IDS) {
    grooves[id] = groove(id);
    yield;
  }
  return {
    key: of.key,
    lead: at.lead,
    pitch: at.pitch,
    starts: of.starts,
    drive: ceilingOf(at.limits.filter((l) => l.side === 'drive')),
    own: ownOf(inputs, rest),
    grooves: grooves as Record<GrooveId, RoomAnswer>,
    entered: roomOf(inputs) ? answerOf(at.limits, null) : null,
  };
}
