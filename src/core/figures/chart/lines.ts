import type { Inputs } from '../../context';
import { ratio, stated, toNumber, type Ratio } from '../../quantity';
import { UNDERCUT_PITCHES } from '../../thread/undercut';
import type { LimitId, LimitReading } from '../limit';
import { roomOf } from '../room-from';
import { ceilingOf } from '../verdict';
import { limitsAt, type Stops } from './at';
import { GROOVE_IDS, grooveRoom, type GrooveId } from './grooves';

/** A point to be drawn: lead in mm, highest rpm. */
export interface ChartPoint {
  readonly lead: number;
  readonly rpm: number;
}
export interface LimitLine {
  readonly id: LimitId;
  readonly side: 'drive' | 'work';
  readonly points: readonly ChartPoint[];
}
export interface GrooveLine {
  readonly id: GrooveId;
  /** At the standard's own pitches, one start; where nothing is left there is no point. */
  readonly points: readonly ChartPoint[];
}
/** A stretch of leads over which one limit is the lowest of the drive's. */
export interface Span {
  readonly id: LimitId;
  readonly points: readonly ChartPoint[];
}
/** Where another limit becomes the lowest: between two leads close together, mm. */
export interface Crossing {
  readonly after: Ratio;
  readonly before: Ratio;
  readonly from: LimitId;
  readonly to: LimitId;
  readonly rpm: bigint;
}

interface Sample {
  readonly lead: Ratio;
  readonly limits: readonly LimitReading[];
  readonly binds: LimitId | null;
  readonly highest: bigint | null;
}

const SAMPLES = 24;
/** Halvings of a stretch in which something happens: 24 samples over 1:24 are 14 % apart, 0.2 % after six. */
const HALVINGS = 6;
/** A line that falls faster than speed × lead = constant has a step in it. */
const STEEPER = 1.03;

const um = (mm: number): Ratio => ratio(BigInt(Math.round(mm * 1000)), 1000n);

const drivesOf = (limits: readonly LimitReading[]): LimitReading[] =>
  limits.filter((l) => l.side === 'drive');

const sampleAt = (inputs: Inputs, lead: Ratio): Sample => {
  const at = limitsAt(inputs, { thread: { kind: 'pitch', pitch: stated(lead, 'mm') }, starts: 1 });
  const limits = at?.limits ?? [];
  const c = ceilingOf(drivesOf(limits));
  return { lead, limits, binds: c.binds?.id ?? null, highest: c.highest };
};

const withinOf = (s: Sample, id: LimitId): number | null => {
  const within = s.limits.find((l) => l.id === id)?.within ?? null;
  return within === null ? null : Number(within);
};

/** Whether something happens between two samples that a straight line between them would hide. */
const eventful = (a: Sample, b: Sample): boolean => {
  if (a.binds !== b.binds) return true;
  const stretch = toNumber(b.lead) / toNumber(a.lead);
  return a.limits.some(({ id }) => {
    const [high, low] = [withinOf(a, id), withinOf(b, id)];
    return high !== null && low !== null && high > (low + 1) * stretch * STEEPER;
  });
};

/** Samples from one lead to another, mm, closer together where a limit steps or another begins to bind. */
export function* samples(inputs: Inputs, from: number, to: number): Generator<void, readonly Sample[]> {
  const first: Sample[] = [];
  for (let i = 0; i <= SAMPLES; i += 1) {
    first.push(sampleAt(inputs, um(from * (to / from) ** (i / SAMPLES))));
    yield;
  }
  const all: Sample[] = [];
  const pending = first.reverse().map((s) => ({ s, depth: HALVINGS }));
  for (let next = pending.pop(); next; next = pending.pop()) {
    const before = all.at(-1);
    const mid = before && um(Math.sqrt(toNumber(before.lead) * toNumber(next.s.lead)));
    const between =
      before &&
      mid &&
      mid.n * before.lead.d > before.lead.n * mid.d &&
      mid.n * next.s.lead.d < next.s.lead.n * mid.d;
    if (before && mid && between && next.depth > 0 && eventful(before, next.s)) {
      const depth = next.depth - 1;
      pending.push({ s: next.s, depth }, { s: sampleAt(inputs, mid), depth });
      yield;
    } else all.push(next.s);
  }
  return all;
}

/** Every limit that is known, as a line; the spindle's own top speed is drawn as its rule, and the room by grooves. */
export const limitLines = (all: readonly Sample[]): LimitLine[] =>
  (all[0]?.limits ?? []).flatMap(({ id, side, within }) => {
    if (within === null || id === 'spindle-range' || id === 'stopping-room') return [];
    const points = all.flatMap((s) => {
      const rpm = withinOf(s, id);
      return rpm === null || rpm < 1 ? [] : [{ lead: toNumber(s.lead), rpm }];
    });
    return [{ id, side, points }];
  });

/**
 * The lowest of the drive's limits over lead, in stretches by what binds. Broken off where one of them isn't known, or no
 * longer answered for by a test record: what is left would be an upper bound, no answer.
 */
export const ceilingSpans = (all: readonly Sample[]): Span[] => {
  const spans: { id: LimitId; points: ChartPoint[] }[] = [];
  all.forEach((s, i) => {
    if (s.highest === null || s.binds === null) return;
    const point = { lead: toNumber(s.lead), rpm: Number(s.highest) };
    const last = all[i - 1]?.highest == null ? undefined : spans.at(-1);
    last?.points.push(point);
    if (last?.id !== s.binds) spans.push({ id: s.binds, points: [point] });
  });
  return spans;
};

/** Where another of the drive's limits becomes the lowest; none while one of them isn't known. */
export const crossings = (all: readonly Sample[]): Crossing[] =>
  all.flatMap((b, i) => {
    const a = all[i - 1];
    if (!a?.binds || !b.binds || a.binds === b.binds || a.highest === null || b.highest === null) return [];
    return [{ after: a.lead, before: b.lead, from: a.binds, to: b.binds, rpm: b.highest }];
  });

/** What each standard's groove allows by the stopping room alone, at that standard's own pitches. */
export function* grooveLines(stops: Stops, from: number, to: number): Generator<void, readonly GrooveLine[]> {
  const lines: GrooveLine[] = [];
  for (const id of GROOVE_IDS) {
    const points: ChartPoint[] = [];
    for (const pitch of UNDERCUT_PITCHES) {
      const mm = toNumber(pitch);
      const room = mm < from || mm > to ? null : grooveRoom(id, pitch);
      if (!room?.usable) continue;
      const thread = { kind: 'pitch', pitch: stated(pitch, 'mm') } as const;
      const within = stops.at({ thread, starts: 1 }, { mm: pitch, pi: false }, room.usable)?.within;
      if (within) points.push({ lead: mm, rpm: Number(within) });
      yield;
    }
    if (points.length > 0) lines.push({ id, points });
  }
  return lines;
}

/** What the room entered for the job allows, were it left for every lead; null where it or the stopping time isn't known. */
export const enteredLine = (inputs: Inputs, all: readonly Sample[]): readonly ChartPoint[] | null => {
  if (!roomOf(inputs)) return null;
  const points = all.flatMap((s) => {
    const rpm = withinOf(s, 'stopping-room');
    return rpm === null || rpm < 1 ? [] : [{ lead: toNumber(s.lead), rpm }];
  });
  return points.length > 0 ? points : null;
};

export type { Sample };
