import type { InputPath, Inputs } from '../../context';
import { leadNumber, type Ratio } from '../../quantity';
import type { LimitReading } from '../limit';
import { Stops, type ChartThread } from './at';
import { ceilingSpans, crossings, enteredLine, grooveLines, limitLines, samples } from './lines';
import type { ChartPoint, Crossing, GrooveLine, LimitLine, Span } from './lines';
import { rowSteps, type ChartRow } from './rows';

export type { ChartThread } from './at';
export { usualThreads } from './usual';
export { GROOVE_IDS, grooveRoom, type GrooveId, type GrooveRoom } from './grooves';
export type { ChartPoint, Crossing, GrooveLine, LimitLine, Span } from './lines';
export type { ChartRow, OwnAnswer, RoomAnswer } from './rows';

/** The spindle's own speeds, or the ends of its range; empty where they aren't known. */
export interface OwnSpeeds {
  readonly kind: 'speeds' | 'range' | 'unknown';
  readonly rpm: readonly Ratio[];
}

/** Pitch against highest spindle speed for one machine. */
export interface Chart {
  /** Ends of the axis of leads, mm. */
  readonly from: number;
  readonly to: number;
  readonly lines: readonly LimitLine[];
  readonly ceiling: readonly Span[];
  readonly crossings: readonly Crossing[];
  readonly grooves: readonly GrooveLine[];
  readonly entered: readonly ChartPoint[] | null;
  readonly own: OwnSpeeds;
  /** Limits that aren't known, and so aren't drawn; the job's stopping room is not among them. */
  readonly unknown: readonly LimitReading[];
  /** Those of them that a test record answers for. */
  readonly byRecord: readonly LimitReading[];
  /** What a stopping room's speed needs and isn't known: stopping time or safety factor. Without them no line. */
  readonly stopMissing: readonly InputPath[];
  readonly rows: readonly ChartRow[];
}

/** Least and largest lead that every chart shows, mm: the ends of ISO 4755. */
const FROM = 0.25;
const TO = 6;

const ownSpeeds = ({ machine }: Inputs): OwnSpeeds => {
  if (machine.spindleDrive === 'speeds' && machine.spindleSpeeds?.length)
    return { kind: 'speeds', rpm: machine.spindleSpeeds.map((s) => s.value) };
  const ends = machine.spindleDrive === 'range' ? [machine.spindleMin, machine.spindleMax] : [];
  const rpm = ends.flatMap((s) => (s ? [s.value] : []));
  return { kind: rpm.length > 0 ? 'range' : 'unknown', rpm };
};

/**
 * The wall chart, a piece at a time: each step asks the figures once, so that whoever runs it can let the screen breathe
 * in between. Every number is the limits' own for that thread, rounded down.
 */
export function* chartSteps(inputs: Inputs, threads: readonly ChartThread[]): Generator<void, Chart> {
  const stops = new Stops(inputs);
  const rows: ChartRow[] = [];
  for (const thread of threads) {
    const row = yield* rowSteps(inputs, thread, stops);
    if (row) rows.push(row);
  }
  const leads = rows.map((r) => leadNumber(r.lead));
  const from = Math.min(FROM, ...leads);
  const to = Math.max(TO, ...leads);
  const all = yield* samples(inputs, from, to);
  const grooves = yield* grooveLines(stops, from, to);
  const limits = all[0]?.limits ?? [];
  const stop = limits.find((l) => l.id === 'stopping-room');
  const notKnown = limits.filter((l) => l.within === null && l.id !== 'stopping-room');
  return {
    from,
    to,
    lines: limitLines(all),
    ceiling: ceilingSpans(all),
    crossings: crossings(all),
    grooves,
    entered: enteredLine(inputs, all),
    own: ownSpeeds(inputs),
    unknown: notKnown.filter((l) => !(l.need === 'supporting' && l.answeredTo)),
    byRecord: notKnown.filter((l) => l.need === 'supporting' && l.answeredTo),
    stopMissing: (stop?.missing ?? []).filter((p) => p !== 'job.room'),
    rows,
  };
}

/** The whole chart at once. */
export const chart = (inputs: Inputs, threads: readonly ChartThread[]): Chart => {
  const steps = chartSteps(inputs, threads);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
};
