import {
  readCheckBody,
  readEventKind,
  readHoursBody,
  readTest,
  storeCheck,
  storeTest,
  unreadCheck,
  unreadTest,
  type CheckRecord,
  type EventKind,
  type MachineEvent,
  type TestRecord,
} from '../core/context';
import { readMade, reviewId, type Recalls } from '../core/recall';
import type { EvidenceRow, Evidence, NewEvidence } from '../storage';
import { newId } from '../storage';
import { Emitter } from './emitter';
import { MADE, TABLE } from './release';

/** In the place of a machine: what was looked over of runs, which are read for all machines together. */
const RUNS = 'runs';

export interface LoggedEvent extends MachineEvent {
  readonly id: string;
}
export interface HoursEntry {
  readonly id: string;
  readonly at: number;
  readonly hours: number;
}

const readCheck = (row: EvidenceRow): CheckRecord | null => {
  const body = readCheckBody(row.body) ?? unreadCheck(row.body);
  return body && { ...body, id: row.id, at: row.at, ...readMade(row.made) };
};

/** Which record a person has looked over after which correction. */
const readReview = (row: EvidenceRow): string | null => {
  const { recall, of } = (row.body ?? {}) as { recall?: unknown; of?: unknown };
  return typeof recall === 'string' && typeof of === 'string' ? reviewId(recall, of) : null;
};

const readEvent = (row: EvidenceRow): LoggedEvent | null => {
  const kind = readEventKind(row.body);
  return kind && { id: row.id, kind, at: row.at };
};

const readHours = (row: EvidenceRow): HoursEntry | null => {
  const hours = readHoursBody(row.body);
  return hours === null ? null : { id: row.id, at: row.at, hours };
};

/** Oldest first: by the clock, but what one phone recorded in the order of its own count, however its clock was set. */
const inOrder = (rows: readonly EvidenceRow[]): EvidenceRow[] => {
  const byClock = [...rows].sort((a, b) => a.at - b.at);
  const counted = byClock.filter((row) => row.counter !== undefined);
  counted.sort((a, b) => (a.counter ?? 0) - (b.counter ?? 0));
  const devices = new Set(counted.map((row) => row.device));
  const left = new Map([...devices].map((d) => [d, counted.filter((r) => r.device === d).values()]));
  return byClock.map((row) => (row.counter !== undefined && left.get(row.device)?.next().value) || row);
};

/** What was recorded about the machine in use: checks, events, running hours. Add-only; taking back only marks. */
export class Records extends Emitter {
  checks: readonly CheckRecord[] = [];
  events: readonly LoggedEvent[] = [];
  hours: readonly HoursEntry[] = [];
  tests: readonly TestRecord[] = [];
  /** Test records that this version can't read: kept on the disk, counted as not done. */
  unreadableTests = 0;
  /** What was corrected, and what was looked over: of this machine, and of runs. */
  recalls: Recalls = { table: TABLE, reviewed: [] };
  private machine: string | null = null;

  constructor(
    private readonly evidence: Evidence,
    private readonly saved: () => void,
  ) {
    super();
  }

  async open(machine: string | null): Promise<void> {
    // Not for a moment is what was recorded of one machine another one's.
    if (this.machine !== machine) this.checks = this.events = this.hours = this.tests = [];
    this.machine = machine;
    const [rows, ofRuns] = await Promise.all([
      machine ? this.evidence.of(machine) : [],
      TABLE.length > 0 ? this.evidence.of(RUNS) : [],
    ]);
    if (this.machine !== machine) return;
    const sorted = inOrder(rows);
    const of = <T extends object>(kind: string, read: (row: EvidenceRow) => T | null): T[] =>
      sorted.flatMap((row, order) => {
        const one = row.kind === kind && read(row);
        return one ? { ...one, order } : [];
      });
    this.checks = of('check', readCheck);
    this.events = of('event', readEvent);
    this.hours = of('hours', readHours);
    this.unreadableTests = 0;
    this.tests = of('test', (r) => {
      const read = readTest(r.body, r.id, r.at);
      if (!read) this.unreadableTests += 1;
      return read ? { ...read, ...readMade(r.made) } : unreadTest(r.body, r.id, r.at);
    });
    const reviews = [...ofRuns, ...rows].filter((r) => r.kind === 'review');
    this.recalls = { table: TABLE, reviewed: reviews.flatMap((r) => readReview(r) ?? []) };
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
    await this.add({ id: record.id, kind: 'check', at: record.at, body: storeCheck(record) });
  }

  /** As `addCheck`. @throws StorageError, with nothing recorded */
  async addTest(record: TestRecord): Promise<void> {
    await this.add({ id: record.id, kind: 'test', at: record.at, body: storeTest(record) });
  }

  async addEvent(kind: EventKind, at: number): Promise<string> {
    return this.add({ id: newId(), kind: 'event', at, body: { kind } });
  }

  async addHours(hours: number, at: number): Promise<string> {
    return this.add({ id: newId(), kind: 'hours', at, body: { hours } });
  }

  /** A person has looked over a record of this machine, or a run, after a correction. @throws StorageError */
  addReview(recall: string, of: string, at: number, isRun: boolean): Promise<string> {
    const row = { id: newId(), kind: 'review', at, body: { recall, of } };
    return this.add(row, isRun ? RUNS : this.machine);
  }

  private async add(
    row: Pick<NewEvidence, 'id' | 'kind' | 'at' | 'body'>,
    machine = this.machine,
  ): Promise<string> {
    if (!machine) throw new Error('no machine is open');
    await this.evidence.add([{ ...row, schema: 1, machine, made: MADE }]);
    await this.reload();
    this.saved();
    return row.id;
  }

  async takeBack(id: string): Promise<void> {
    await this.evidence.takeBack(id);
    await this.reload();
    this.saved();
  }
}
