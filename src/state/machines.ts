import {
  blankProfile,
  FIELDS,
  readProfile,
  storeProfile,
  withFields,
  type FieldName,
  type MachineProfile,
} from '../core/machine';
import { newId, type MachineBody, type Storage, type Unreadable } from '../storage';
import { Emitter } from './emitter';
import { Live } from './live';
import { mergeFields, type Merged } from './merge';

const mergeMachine = (base: MachineBody, ours: MachineBody, theirs: MachineBody): Merged<MachineBody> => {
  const profile = mergeFields(base.profile, ours.profile, theirs.profile);
  return { value: { ...theirs, profile: profile.value }, both: profile.both };
};

/** Every machine on this phone. */
export class Machines extends Emitter {
  private readonly byId = new Map<string, Live<MachineBody>>();
  unreadable: readonly Unreadable[] = [];

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

  async load(): Promise<void> {
    const { kept, unreadable } = await this.storage.machines.all();
    this.unreadable = unreadable;
    for (const k of kept) {
      const known = this.byId.get(k.id);
      if (known) await known.reload();
      else this.hold(k.id, k.value, k.rev, k.deleted);
    }
    this.tell();
  }

  /** Machines that were not put away, by workshop and name. */
  get list(): readonly Live<MachineBody>[] {
    const at = (m: Live<MachineBody>): string => `${m.value.profile.workshop}\n${m.value.profile.name}`;
    return [...this.byId.values()].filter((m) => !m.deleted).sort((a, b) => at(a).localeCompare(at(b)));
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

  addBlank(name: string, workshop: string): Promise<string> {
    return this.add(blankProfile(name, workshop), false);
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
}
