import {
  blankProfile,
  FIELDS,
  readProfile,
  storeProfile,
  withFields,
  type FieldName,
  type MachineProfile,
} from '../core/machine';
import { newId, type Kept, type MachineBody, type Storage, type Unreadable } from '../storage';
import { Emitter } from './emitter';
import { Live, type SaveState } from './live';
import { mergeFields, type Merged } from './merge';

const mergeMachine = (base: MachineBody, ours: MachineBody, theirs: MachineBody): Merged<MachineBody> => {
  const profile = mergeFields(base.profile, ours.profile, theirs.profile);
  return { value: { ...theirs, profile: profile.value }, both: profile.both };
};

/** Machines read in one go: a profile has a hundred fields, and no touch waits for more than a few of them. */
const PART = 10;
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

let collator: Intl.Collator | null = null;
/** Names in a person's order, "Lathe 2" before "Lathe 10"; what knows it is made when it's first asked, not at the start. */
export const byName = (a: string, b: string): number =>
  (collator ??= new Intl.Collator(undefined, { numeric: true })).compare(a, b);

/** Every machine on this phone. The one in use is read first; all others follow in parts. */
export class Machines extends Emitter {
  private readonly byId = new Map<string, Live<MachineBody>>();
  private sorted: readonly Live<MachineBody>[] | null = null;
  /** Many are being changed as one: that is told once. */
  private quiet = false;
  unreadable: readonly Unreadable[] = [];
  /** Whether all of them have been read. */
  loaded = false;

  constructor(
    private readonly storage: Storage,
    private readonly saved: (id: string) => void,
  ) {
    super();
  }

  private hold(id: string, body: MachineBody, rev: string | null, deleted = false): Live<MachineBody> {
    const live = new Live(this.storage.machines, id, body, rev, mergeMachine, deleted, this.saved);
    live.subscribe(() => this.tell());
    this.byId.set(id, live);
    return live;
  }

  private take(kept: Kept<MachineBody>): void {
    const known = this.byId.get(kept.id);
    if (known) known.take(kept);
    else this.hold(kept.id, kept.value, kept.rev, kept.deleted);
  }

  protected override tell(): void {
    this.sorted = null;
    if (!this.quiet) super.tell();
  }

  /** Reads one anew: it is the one in use, or another tab wrote it. */
  async read(id: string): Promise<void> {
    const kept = await this.storage.machines.get(id);
    if (!kept) return;
    this.take(kept);
    this.tell();
  }

  /** Reads all of them. */
  async load(): Promise<void> {
    const unreadable: Unreadable[] = [];
    for await (const rows of this.storage.machines.pages(PART)) {
      this.quiet = true;
      rows.kept.forEach((k) => this.take(k));
      this.quiet = false;
      unreadable.push(...rows.unreadable);
      if (rows.kept.length === PART) await breathe();
    }
    this.unreadable = unreadable;
    this.loaded = true;
    this.tell();
  }

  /** Machines that were not put away, by name. */
  get list(): readonly Live<MachineBody>[] {
    return (this.sorted ??= [...this.byId.values()]
      .filter((m) => !m.deleted)
      .sort((a, b) => byName(a.value.profile.name, b.value.profile.name)));
  }

  /** Machines that were put away: they can be brought back at any time. */
  get away(): readonly Live<MachineBody>[] {
    return [...this.byId.values()].filter((m) => m.deleted);
  }

  find(id: string | null): Live<MachineBody> | null {
    const live = id === null ? undefined : this.byId.get(id);
    return live && !live.deleted ? live : null;
  }

  async add(profile: MachineProfile, example: boolean): Promise<string> {
    const id = newId();
    const live = this.hold(id, { profile, example, unreadable: [] }, null);
    await live.set(live.value);
    return id;
  }

  addBlank(name: string, workshop: string, colour: MachineProfile['colour']): Promise<string> {
    return this.add(withFields(blankProfile(name, workshop), { colour }), false);
  }

  setField<K extends FieldName>(id: string, field: K, value: MachineProfile[K]): Promise<void> {
    return this.setFields(id, { [field]: value });
  }

  /** Changes several fields in one revision. */
  setFields(id: string, fields: Partial<MachineProfile>): Promise<void> {
    const live = this.byId.get(id);
    if (!live) return Promise.resolve();
    const { profile, unreadable, example } = live.value;
    return live.set({
      example,
      profile: withFields(profile, fields),
      unreadable: unreadable.filter((f) => !Object.hasOwn(fields, f)),
    });
  }

  /** Puts fields back to values as they were stored; one that can't be read any more becomes not known. */
  restoreFields(id: string, before: Readonly<Partial<Record<FieldName, unknown>>>): Promise<void> {
    const live = this.byId.get(id);
    const read = live && readProfile({ ...storeProfile(live.value.profile), ...before });
    const fields = Object.keys(before).filter((f): f is FieldName => Object.hasOwn(FIELDS, f));
    return read
      ? this.setFields(id, Object.fromEntries(fields.map((f) => [f, read.profile[f]])))
      : Promise.resolve();
  }

  setDeleted(id: string, deleted: boolean): Promise<void> {
    const live = this.byId.get(id);
    return live ? live.set(live.value, deleted) : Promise.resolve();
  }

  /** Sets a text of many machines as one change. */
  async setEach(field: 'workshop', values: ReadonlyMap<string, string>): Promise<void> {
    this.quiet = true;
    const writing = [...values].map(([id, value]) => this.setField(id, field, value));
    await Promise.all(writing);
    this.quiet = false;
    this.tell();
  }

  get states(): readonly SaveState[] {
    return [...this.byId.values()].map((m) => m.state);
  }
  conflictSeen(): void {
    for (const m of this.byId.values()) m.conflictSeen();
  }
  /** Writes again what could not be written. */
  async flush(): Promise<void> {
    const waiting = [...this.byId.values()].filter((m) => m.state.kind !== 'saved');
    await Promise.all(waiting.map((m) => m.flush()));
  }
}
