import {
  isRowOf,
  takeTheirs,
  type CarriedRow,
  type CarryDocument,
  type CarryKind,
  type Content,
  type FieldConflict,
  type ReadResult,
  type VersionRow,
} from '../core/carry';
import { StorageError, type StorageCode } from '../storage';
import { Carry, nameOf, type BackedUp, type Incoming, type Plan } from '../storage/carry';
import { App } from './app';
import { Emitter } from './emitter';
import { WIRING } from './wiring';

export type { BackedUp, Incoming, LeftOut, Outcome, Plan } from '../storage/carry';

export type Side = 'ours' | 'theirs';

/** One thing to choose: a field of a machine, or another record as a whole. */
export interface Choice {
  readonly key: string;
  readonly incoming: Incoming;
  readonly conflicts: readonly FieldConflict[];
  readonly chosen: Side | null;
}

/** Where an opened file stands. */
export type Stage =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'refused'; readonly name: string; readonly result: ReadResult & { ok: false } }
  | { readonly kind: 'opened'; readonly name: string; readonly document: CarryDocument; readonly plan: Plan }
  | { readonly kind: 'writing' }
  | { readonly kind: 'done'; readonly document: CarryDocument; readonly plan: Plan };

/** What stood in the way of writing; `changed`: something here changed since the file was looked at. */
export type CarryTrouble = StorageCode | 'changed';

/** So many changes since the last back-up are worth a word. */
const MANY_CHANGES = 200;

const troubleOf = (e: unknown): CarryTrouble => (e instanceof StorageError ? e.code : 'failed');

/** Files out and in: what is shared, what is opened, and what a person chose about it. */
export class CarryState extends Emitter {
  stage: Stage = { kind: 'none' };
  trouble: CarryTrouble | null = null;
  /** null until it was read from the disk. */
  backedUp: BackedUp | null = null;
  private readonly sides = new Map<string, Side>();
  private readonly files: Carry;

  constructor(private readonly app: App) {
    super();
    const { rows, later } = app.storage;
    const wiring = later('wiring', WIRING);
    this.files = new Carry({
      ...rows,
      reads: (store, row) => (store === 'wiring' ? wiring.reads(row) : rows.reads(store, row)),
    });
  }

  private to(stage: Stage): void {
    this.stage = stage;
    this.tell();
  }

  async look(): Promise<void> {
    // Where the storage can't be read that is said above every screen; this line stays out.
    this.backedUp = await this.files.backedUp().catch(() => null);
    this.tell();
  }

  /** Whether enough has changed since the last back-up for a word. */
  get due(): boolean {
    return (this.backedUp?.changes ?? 0) >= MANY_CHANGES;
  }

  async noteBackUp(): Promise<void> {
    await this.files.noteBackUp(Date.now());
    await this.look();
  }

  /** What goes into a file, as it is on the disk; `unreadable`: how many rows of it this version can't read. */
  async content(kind: CarryKind, version: string): Promise<Content & { readonly unreadable: number }> {
    await this.app.saveAgain();
    const machine = kind === 'machine' ? (this.app.machine?.id ?? '') : null;
    const rows = await this.files.collect(machine);
    const { machines, runs, own } = this.app;
    // Those that are rows all the same, but hold what can't be read.
    const held = [machines, runs, own].flatMap((s) => s.unreadable).filter((u) => isRowOf('', u.raw));
    const unreadable = kind === 'everything' ? rows.raw + held.length : 0;
    return { kind, made: new Date().toISOString(), app: version, unreadable, ...rows };
  }

  /** Opens a file that is read elsewhere, and reckons what it would change. */
  async open(name: string, reading: Promise<ReadResult>): Promise<void> {
    this.sides.clear();
    this.trouble = null;
    this.to({ kind: 'reading', name });
    const result = await reading;
    if (!result.ok) return this.to({ kind: 'refused', name, result });
    await this.reckon(name, result.document);
  }

  private async reckon(name: string, document: CarryDocument): Promise<void> {
    try {
      await this.app.saveAgain();
      const plan = await this.files.plan(document);
      this.to({ kind: 'opened', name, document, plan });
    } catch (e) {
      this.trouble = troubleOf(e);
      this.to({ kind: 'none' });
    }
  }

  /** Leaves the file as it is. */
  close(): void {
    this.trouble = null;
    this.to({ kind: 'none' });
  }

  get choices(): readonly Choice[] {
    const { stage } = this;
    if (stage.kind !== 'opened') return [];
    return stage.plan.rows.flatMap((incoming) => {
      const { store, row, conflicts } = incoming;
      const of = (name: string, some: readonly FieldConflict[]): Choice => {
        const key = `${store}/${row.id}/${name}`;
        return { key, incoming, conflicts: some, chosen: this.sides.get(key) ?? null };
      };
      if (conflicts.length === 0) return [];
      return store === 'machines' ? conflicts.map((c) => of(c.field, [c])) : [of('', conflicts)];
    });
  }

  /** What a row is called by: a machine's own rows by the machine. */
  nameOf(row: CarriedRow): string {
    const name = nameOf(row);
    return name === row.id ? (this.app.machines.find(row.id)?.value.profile.name ?? name) : name;
  }

  choose(keys: readonly string[], side: Side): void {
    for (const key of keys) this.sides.set(key, side);
    this.tell();
  }

  /** Writes it, all or nothing, once everything is chosen. */
  async bringIn(): Promise<void> {
    const { stage, choices, app } = this;
    if (stage.kind !== 'opened' || choices.some((c) => c.chosen === null)) return;
    const theirs = new Map<Incoming, FieldConflict[]>();
    for (const { incoming, conflicts, chosen } of choices)
      if (chosen === 'theirs') theirs.set(incoming, [...(theirs.get(incoming) ?? []), ...conflicts]);
    const rows = stage.plan.rows.map((r): Incoming => {
      const taken = theirs.get(r);
      return taken ? { ...r, row: takeTheirs(r.row as VersionRow, taken) } : r;
    });
    this.to({ kind: 'writing' });
    try {
      await app.saveAgain();
      const id = await this.files.apply(rows, app.undo.imports);
      if (id === null) {
        await this.reckon(stage.name, stage.document);
        this.trouble = 'changed';
        return this.tell();
      }
      this.trouble = null;
      app.undo.push({ code: 'import', id });
      await refresh(
        app,
        rows.some((r) => r.store === 'threads'),
      );
      this.to({ kind: 'done', document: stage.document, plan: stage.plan });
    } catch (e) {
      this.trouble = troubleOf(e);
      this.to(stage);
    }
  }
}

const states = new WeakMap<App, CarryState>();

/** The one of this page. */
export const carryOf = (app: App): CarryState => {
  const known = states.get(app) ?? new CarryState(app);
  states.set(app, known);
  return known;
};

/** Takes over what is on the disk now, here and in other tabs. @param threads whether own threads may have changed */
const refresh = async (app: App, threads: boolean): Promise<void> => {
  app.tellAll(threads);
  await app.refresh();
  await Promise.all([threads && app.own.reloadAll(), app.runs.load(), app.readings.load()]);
};

/** Takes an import back; what was changed since stays. @throws StorageError */
App.takeBackImport = async (app, id) => {
  await app.saveAgain();
  const { written } = await new Carry(app.storage.rows).takeBack(id);
  await refresh(
    app,
    written.some(([store]) => store === 'threads'),
  );
  carryOf(app).close();
};
