import type { Inputs } from '../../context';
import type { ThreadChoice } from '../../job';
import { leadHigh, ratioText, stated, type Lead, type Ratio } from '../../quantity';
import type { Thread } from '../../thread';
import type { LimitReading } from '../limit';
import { figuresFor } from '../registry';
import { roomOf } from '../room-from';

/** A thread to be looked at on the machine, in place of the job's own. */
export interface ChartThread {
  readonly key: string;
  readonly thread: ThreadChoice;
  readonly starts: number;
}

/** What the figures say of one thread on the machine. */
export interface At {
  readonly lead: Lead;
  readonly pitch: Lead;
  readonly thread: Thread | null;
  readonly limits: readonly LimitReading[];
}

/**
 * Every limit for another thread than the job's: the same figures, asked again with the thread (and, where one is given,
 * the usable room, mm) changed. Null where the thread has no pitch.
 */
export const limitsAt = (
  inputs: Inputs,
  { thread, starts }: Omit<ChartThread, 'key'>,
  room?: Ratio,
): At | null => {
  // The job's room, if it holds for the job, is taken as what is left for this thread too.
  const left = room ? stated(room, 'mm') : roomOf(inputs);
  const job = { ...inputs.job, thread, starts, room: left, roomFrom: null };
  const sheet = figuresFor({ ...inputs, job });
  const lead = sheet.get('lead').value;
  const pitch = sheet.get('pitch').value;
  if (!lead || !pitch) return null;
  const limits = sheet.get('limits').value ?? [];
  return { lead, pitch, thread: sheet.get('chosen').value?.thread ?? null, limits };
};

/** What a usable room allows at a lead: asked of the figures once for each pair of them. */
export class Stops {
  private readonly known = new Map<string, LimitReading | null>();
  /** How many times the figures were asked. */
  asked = 0;
  constructor(private readonly inputs: Inputs) {}

  at(of: Omit<ChartThread, 'key'>, lead: Lead, room: Ratio): LimitReading | null {
    const key = `${ratioText(leadHigh(lead))} ${ratioText(room)}`;
    const kept = this.known.get(key);
    if (kept !== undefined) return kept;
    this.asked += 1;
    const found = limitsAt(this.inputs, of, room)?.limits.find((l) => l.id === 'stopping-room') ?? null;
    this.known.set(key, found);
    return found;
  }
}
