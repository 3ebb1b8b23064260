import type { Run } from '../core/run';
import type { Kept, Storage, Unreadable } from '../storage';
import { Emitter } from './emitter';
import { Live, type SaveState } from './live';
import { mergeFields } from './merge';

/** Runs read in one part, so that no touch waits for it. */
const PART = 200;
export const NOTES_LENGTH = 2000;

export interface EndedRun {
  readonly id: string;
  readonly run: Run;
}

const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** The runs that are over: thousands may be kept, so they are read in parts after the first paint. */
export class EndedRuns extends Emitter {
  private readonly kept = new Map<string, Kept<Run>>();
  /** Only what was changed on this page is held open. */
  private readonly open = new Map<string, Live<Run>>();
  private sorted: { readonly ended: readonly EndedRun[]; readonly away: readonly EndedRun[] } | null = null;
  unreadable: readonly Unreadable[] = [];
  /** Rises with every change, for what is reckoned from all of them. */
  version = 0;

  constructor(
    private readonly storage: Pick<Storage, 'runs'>,
    private readonly saved: (id: string) => void,
  ) {
    super();
  }

  async load(): Promise<void> {
    this.unreadable = [];
    for await (const { kept, unreadable } of this.storage.runs.pages(PART)) {
      for (const k of kept) if (k.value.ended !== null && !this.open.has(k.id)) this.kept.set(k.id, k);
      this.unreadable = [...this.unreadable, ...unreadable];
      this.changed();
      await breathe();
    }
  }

  private changed(): void {
    this.version += 1;
    this.sorted = null;
    this.tell();
  }

  private get lists() {
    const of = (deleted: boolean): EndedRun[] =>
      [...this.kept.values()]
        .filter((k) => k.deleted === deleted)
        .sort((a, b) => (b.value.ended ?? 0) - (a.value.ended ?? 0))
        .map((k) => ({ id: k.id, run: k.value }));
    return (this.sorted ??= { ended: of(false), away: of(true) });
  }

  /** Those not put away, the last one ended first. */
  get ended(): readonly EndedRun[] {
    return this.lists.ended;
  }
  get away(): readonly EndedRun[] {
    return this.lists.away;
  }

  /** Reads one anew from the disk: it has just ended, was reopened, or another tab wrote it. */
  async reload(id: string): Promise<void> {
    await this.open.get(id)?.reload();
    const kept = await this.storage.runs.get(id);
    if (kept && kept.value.ended !== null) this.kept.set(id, kept);
    else if (!this.kept.delete(id)) return;
    this.changed();
  }

  private liveOf(id: string): Live<Run> | null {
    const known = this.open.get(id);
    if (known) return known;
    const kept = this.kept.get(id);
    if (!kept) return null;
    const { value, rev, deleted } = kept;
    const live = new Live(this.storage.runs, id, value, rev, mergeFields, deleted, this.saved);
    live.subscribe(() => {
      this.kept.set(id, { ...kept, changedAt: Date.now(), deleted: live.deleted, value: live.value });
      this.changed();
    });
    this.open.set(id, live);
    return live;
  }

  /** Writes a change; resolves when it is on the disk (true) or has failed. What was entered stays either way. */
  async set(id: string, change: (run: Run) => Run, deleted?: boolean): Promise<boolean> {
    const live = this.liveOf(id);
    if (!live) return false;
    await live.set(change(live.value), deleted ?? live.deleted);
    return live.state.kind !== 'failed';
  }

  /** Lets go of one that goes on as an open run. */
  drop(id: string): void {
    this.open.delete(id);
    if (this.kept.delete(id)) this.changed();
  }

  get states(): readonly SaveState[] {
    return [...this.open.values()].map((live) => live.state);
  }

  conflictSeen(): void {
    for (const live of this.open.values()) live.conflictSeen();
  }

  async flush(): Promise<void> {
    await Promise.all([...this.open.values()].map((live) => live.flush()));
  }
}
