import { EVENT_KINDS, type CheckRecord, type EventKind, type MachineEvent } from '../core/context';
import { fromStored, toStored } from '../core/quantity';
import type { EvidenceRow, Evidence, NewEvidence } from '../storage';
import { newId } from '../storage';
import { Emitter } from './emitter';

export interface LoggedEvent extends MachineEvent {
  readonly id: string;
}
export interface HoursEntry {
  readonly id: string;
  readonly at: number;
  readonly hours: number;
}

const readCheck = (row: EvidenceRow): CheckRecord | null => {
  const b = row.body as Record<string, unknown> | null;
  if (!b || typeof b.item !== 'string' || (b.answer !== 'done' && b.answer !== 'not-ok')) return null;
  if (typeof b.day !== 'string' || typeof b.rule !== 'number' || typeof b.inputs !== 'object' || !b.inputs)
    return null;
  return {
    id: row.id,
    item: b.item,
    answer: b.answer,
    at: row.at,
    day: b.day,
    hours: typeof b.hours === 'number' ? b.hours : null,
    inputs: b.inputs as Record<string, string>,
    rule: b.rule,
    reading: fromStored(b.reading),
    cut: typeof b.cut === 'number' ? b.cut : null,
  };
};

const readEvent = (row: EvidenceRow): LoggedEvent | null => {
  const kind = (row.body as { kind?: unknown } | null)?.kind;
  return EVENT_KINDS.includes(kind as EventKind) ? { id: row.id, kind: kind as EventKind, at: row.at } : null;
};

const readHours = (row: EvidenceRow): HoursEntry | null => {
  const hours = (row.body as { hours?: unknown } | null)?.hours;
  return typeof hours === 'number' && hours >= 0 ? { id: row.id, at: row.at, hours } : null;
};

/** What was recorded about the machine in use: checks, events, running hours. Add-only; taking back only marks. */
export class Records extends Emitter {
  checks: readonly CheckRecord[] = [];
  events: readonly LoggedEvent[] = [];
  hours: readonly HoursEntry[] = [];
  private machine: string | null = null;

  constructor(
    private readonly evidence: Evidence,
    private readonly saved: () => void,
  ) {
    super();
  }

  async open(machine: string | null): Promise<void> {
    this.machine = machine;
    const rows = machine ? await this.evidence.of(machine) : [];
    if (this.machine !== machine) return;
    // Array order in the store is by id; what counts is the order in which things were recorded.
    const sorted = [...rows].sort((a, b) => a.at - b.at);
    const of = <T>(kind: string, read: (row: EvidenceRow) => T | null): T[] =>
      sorted.filter((r) => r.kind === kind).flatMap((r) => read(r) ?? []);
    this.checks = of('check', readCheck);
    this.events = of('event', readEvent);
    this.hours = of('hours', readHours);
    this.tell();
  }

  reload(): Promise<void> {
    return this.open(this.machine);
  }

  get newestHours(): number | null {
    return this.hours.at(-1)?.hours ?? null;
  }

  /** Resolves when the record is on the disk. @throws StorageError, with nothing recorded */
  async addCheck(record: CheckRecord): Promise<void> {
    const { id, at, reading, ...rest } = record;
    await this.add({ id, kind: 'check', at, body: { ...rest, reading: reading && toStored(reading) } });
  }

  async addEvent(kind: EventKind, at: number): Promise<string> {
    return this.add({ id: newId(), kind: 'event', at, body: { kind } });
  }

  async addHours(hours: number, at: number): Promise<string> {
    return this.add({ id: newId(), kind: 'hours', at, body: { hours } });
  }

  private async add(row: Pick<NewEvidence, 'id' | 'kind' | 'at' | 'body'>): Promise<string> {
    const machine = this.machine;
    if (!machine) throw new Error('no machine is open');
    await this.evidence.add([{ ...row, schema: 1, machine }]);
    await this.open(machine);
    this.saved();
    return row.id;
  }

  async takeBack(id: string): Promise<void> {
    await this.evidence.takeBack(id);
    await this.reload();
    this.saved();
  }
}
