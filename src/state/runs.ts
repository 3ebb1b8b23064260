import type { Inputs } from '../core/context';
import type { PlannedPass } from '../core/cut/pass';
import type { Outcome, Run, RunReading } from '../core/run';
import { machineNow } from '../core/run/changes';
import { backOne, endRun, nextPass, reopenRun, takePass, withReading } from '../core/run/progress';
import { newId, type Storage, type StorageCode, type Unreadable } from '../storage';
import { Emitter } from './emitter';
import { EndedRuns, NOTES_LENGTH, type EndedRun } from './ended-runs';
import { Live, type SaveState } from './live';
import { mergeFields } from './merge';
import { MADE } from './release';

/**
 * Who takes the passes of the open run: this tab (`held`), another one (`elsewhere`), not known yet (`asking`);
 * `missing`: this browser can't tell, and only one tab may be used.
 */
export type RunHold = 'asking' | 'held' | 'elsewhere' | 'missing';

/** A run that has begun and not ended, as it stands on the disk. */
export interface OpenRun {
  readonly id: string;
  readonly run: Run;
}

/** Names as they are now, so that the record reads the same when either is changed. */
export interface RunNames {
  readonly machineName: string;
  readonly workshop: string;
  readonly threadName: string;
}

export type Begun =
  | { readonly ok: true; readonly id: string }
  /** `run-open`: this machine has a run that hasn't ended; `no-machine`, `no-passes`: there is nothing to begin. */
  | { readonly ok: false; readonly code: StorageCode | 'run-open' | 'no-machine' | 'no-passes' };

/** What a run needs of the app. */
export interface RunHost {
  machine(): string | null;
  inputs(): Inputs;
  cutting(): boolean;
  startCut(): Promise<void>;
  endCut(): Promise<void>;
}

interface Held {
  readonly live: Live<Run>;
  /** What the disk has acknowledged: the screen moves on by this, not by what was pressed. */
  shown: Run;
}

/** The open runs, the one of the machine in use among them, and those that are over. */
export class Runs extends Emitter {
  private readonly held = new Map<string, Held>();
  private readonly history: EndedRuns;
  /** Runs whose place is certain, since this page began them or was told: gone when the page is. */
  private readonly known = new Set<string>();
  private lock: { readonly id: string; readonly hold: RunHold } | null = null;
  /** Open runs that can't be read: kept as they are. */
  openUnreadable: readonly Unreadable[] = [];
  /** Makes this tab the one that takes passes; put here by whoever holds the lock. */
  takeOver: () => void = () => undefined;

  constructor(
    private readonly storage: Pick<Storage, 'runs'>,
    private readonly host: RunHost,
    private readonly saved: (id: string) => void,
  ) {
    super();
    this.history = new EndedRuns(storage, saved);
    this.history.subscribe(() => this.tell());
  }

  private hold(id: string, run: Run, rev: string | null): Held {
    const live = new Live(this.storage.runs, id, run, rev, mergeFields, false, this.saved);
    const held: Held = { live, shown: run };
    live.subscribe(() => {
      if (live.state.kind === 'saved' || live.state.kind === 'conflict') held.shown = live.value;
      this.tell();
    });
    this.held.set(id, held);
    return held;
  }

  /** Reads the open runs of all machines, and what another tab wrote. */
  async open(): Promise<void> {
    const { kept, unreadable } = await this.storage.runs.by('open', null);
    this.openUnreadable = unreadable;
    for (const k of kept) {
      if (k.deleted) continue;
      const known = this.held.get(k.id);
      if (known) await known.live.reload();
      else this.hold(k.id, k.value, k.rev);
    }
    const open = new Set(kept.map((k) => k.id));
    for (const [id, { live }] of this.held)
      if (!open.has(id)) {
        await live.reload();
        if (live.value.ended !== null) await this.over(id);
      }
    this.tell();
  }

  private get mine(): Held | null {
    const machine = this.host.machine();
    return [...this.held.values()]
      .filter((h) => h.shown.machine === machine && h.shown.ended === null)
      .reduce<Held | null>((newest, h) => (newest && newest.shown.begun > h.shown.begun ? newest : h), null);
  }

  /** The open run of the machine in use. */
  get current(): OpenRun | null {
    const { mine } = this;
    return mine && { id: mine.live.id, run: mine.shown };
  }

  /** Open runs of other machines. */
  get others(): readonly OpenRun[] {
    const machine = this.host.machine();
    return [...this.held.values()]
      .filter((h) => h.shown.machine !== machine)
      .map((h) => ({ id: h.live.id, run: h.shown }));
  }

  get holds(): RunHold {
    return this.lock && this.lock.id === this.mine?.live.id ? this.lock.hold : 'asking';
  }

  /** Told by whoever holds the lock. Once another tab took over, this one no longer knows where the run stands. */
  holding(id: string, hold: RunHold): void {
    this.lock = { id, hold };
    if (hold === 'elsewhere') this.known.delete(id);
    this.tell();
  }

  private get mayWrite(): boolean {
    return this.holds === 'held' || this.holds === 'missing';
  }

  /** How the last step of the open run stands with the disk. */
  get saving(): SaveState {
    return this.mine?.live.state ?? { kind: 'saved' };
  }

  /** Whether it has to be asked if the next pass was taken: the page was gone meanwhile, and nothing is assumed. */
  get asks(): boolean {
    const { mine } = this;
    return (
      mine !== null && !mine.shown.paused && !this.known.has(mine.live.id) && nextPass(mine.shown) !== null
    );
  }

  /** Begins a run of the machine in use, and its cut. Resolves when it is on the disk, or isn't begun. */
  async begin(plan: readonly PlannedPass[], names: RunNames): Promise<Begun> {
    const machine = this.host.machine();
    if (machine === null) return { ok: false, code: 'no-machine' };
    if (plan.length === 0) return { ok: false, code: 'no-passes' };
    if (this.mine) return { ok: false, code: 'run-open' };
    const id = newId();
    const inputs = this.host.inputs();
    const run: Run = {
      machine,
      ...names,
      job: inputs.job,
      plans: [plan],
      begun: Date.now(),
      ended: null,
      taken: [],
      readings: [],
      paused: false,
      outcome: null,
      notes: '',
      machineThen: machineNow(inputs),
      made: MADE,
    };
    this.known.add(id);
    const { live } = this.hold(id, run, null);
    await live.set(run);
    if (live.state.kind === 'failed') {
      this.held.delete(id);
      this.tell();
      return { ok: false, code: live.state.code };
    }
    await this.host.startCut();
    return { ok: true, id };
  }

  /** One step of the open run; true when it is on the disk. Nothing while an earlier step isn't there yet. */
  private async step(change: (run: Run) => Run | null): Promise<boolean> {
    const { mine } = this;
    if (!mine || !this.mayWrite || mine.live.state.kind === 'saving' || mine.live.state.kind === 'failed')
      return false;
    const next = change(mine.live.value);
    if (!next) return false;
    await mine.live.set(next);
    return this.saving.kind !== 'failed';
  }

  /** Cut `n` counts as taken, if it is the next one. */
  take(n: number): Promise<boolean> {
    return this.step((run) => takePass(run, n, Date.now()));
  }

  back(): Promise<boolean> {
    return this.step(backOne);
  }

  /** What a person said to "was cut n taken?". */
  async answer(taken: boolean, n: number): Promise<boolean> {
    const { mine } = this;
    if (!mine || !this.mayWrite) return false;
    this.known.add(mine.live.id);
    this.tell();
    if (!this.host.cutting()) await this.host.startCut();
    return taken ? this.take(n) : true;
  }

  /** Ends the cut, not the run: what was checked for this start has to be checked for the next. */
  async pause(): Promise<boolean> {
    if (!(await this.step((run) => ({ ...run, paused: true })))) return false;
    await this.host.endCut();
    return true;
  }

  async resume(): Promise<boolean> {
    const { mine } = this;
    if (!mine || !(await this.step((run) => ({ ...run, paused: false })))) return false;
    this.known.add(mine.live.id);
    await this.host.startCut();
    return true;
  }

  /** Adds a reading; with `plan` the passes left are those of the new plan. */
  addReading(reading: RunReading, plan?: readonly PlannedPass[]): Promise<boolean> {
    return this.step((run) => withReading(run, reading, plan));
  }

  /** The passes left are those of a new plan. */
  replan(plan: readonly PlannedPass[]): Promise<boolean> {
    return this.step((run) => withReading(run, null, plan));
  }

  async end(outcome: Outcome, notes: string): Promise<boolean> {
    const id = this.mine?.live.id;
    const text = notes.slice(0, NOTES_LENGTH);
    if (id === undefined || !(await this.step((run) => endRun(run, outcome, text, Date.now())))) return false;
    await this.over(id);
    if (this.host.cutting()) await this.host.endCut();
    return true;
  }

  private async over(id: string): Promise<void> {
    this.held.delete(id);
    await this.history.reload(id);
  }

  /** An ended run goes on, paused; not while another one of its machine is open. */
  async reopen(id: string): Promise<boolean> {
    const ended = this.history.ended.find((e) => e.id === id);
    const open = [...this.held.values()].some((h) => h.shown.machine === ended?.run.machine);
    if (!ended || open || !(await this.history.set(id, reopenRun))) return false;
    this.history.drop(id);
    await this.open();
    return true;
  }

  /** Ended runs not put away, the last one ended first. */
  get ended(): readonly EndedRun[] {
    return this.history.ended;
  }
  get away(): readonly EndedRun[] {
    return this.history.away;
  }
  /** Runs that can't be read, open ones included. */
  get unreadable(): readonly Unreadable[] {
    return this.history.unreadable;
  }
  /** Rises with every change of the ended runs. */
  get version(): number {
    return this.history.version;
  }

  /** Loads the ended runs, in parts. */
  load(): Promise<void> {
    return this.history.load();
  }
  putAway(id: string): Promise<boolean> {
    return this.history.set(id, (run) => run, true);
  }
  bringBack(id: string): Promise<boolean> {
    return this.history.set(id, (run) => run, false);
  }
  updateNotes(id: string, notes: string): Promise<boolean> {
    return this.history.set(id, (run) => ({ ...run, notes: notes.slice(0, NOTES_LENGTH) }));
  }

  get states(): readonly SaveState[] {
    return [this.saving, ...this.history.states];
  }
  conflictSeen(): void {
    this.mine?.live.conflictSeen();
    this.history.conflictSeen();
  }
  async flush(): Promise<void> {
    await Promise.all([...[...this.held.values()].map((h) => h.live.flush()), this.history.flush()]);
  }
}
