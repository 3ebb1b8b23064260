import { fingerprint } from '../core/context';
import { blankWiring, type Part, type WiringRecord } from '../core/wiring/record';
import { readWiring, storeWiring } from '../core/wiring/record/stored';
import type { Storage, Versioned } from '../storage';
import type { App } from './app';
import { Emitter } from './emitter';
import { Live, type SaveState } from './live';
import { mergeFields, type Merged } from './merge';

const PARTS = ['connectors', 'cables', 'wires', 'ticks'] as const satisfies readonly Part[];
type Things = Readonly<Record<string, object>>;

const same = (a: unknown, b: unknown): boolean => fingerprint(a) === fingerprint(b);

/** What a person calls a thing; a tick is of no name and is no conflict. */
const nameOf = (thing: object): string => {
  const { name, signal } = thing as { name?: string; signal?: string };
  return name ?? signal ?? '';
};

const mergeThings = (base: Things, ours: Things, theirs: Things): Merged<Things> => {
  const both: string[] = [];
  const merged = Object.keys({ ...theirs, ...ours }).flatMap((id) => {
    const [b, o, t] = [base[id], ours[id], theirs[id]];
    if (o && t) {
      const one = mergeFields(b ?? {}, o, t);
      if (one.both.length > 0) both.push(nameOf(o));
      return [[id, one.value] as const];
    }
    const there = o ?? t;
    if (!there || same(there, b)) return [];
    // New on one side; or taken out there and changed here, in which case the change is what stays.
    if (b) both.push(nameOf(there));
    return [[id, there] as const];
  });
  return { value: Object.fromEntries(merged), both: both.filter((name) => name !== '') };
};

/** Merges two changes of one record thing by thing and field by field. No wire is left without the cable it lies in. */
export const mergeWiring = (
  base: WiringRecord,
  ours: WiringRecord,
  theirs: WiringRecord,
): Merged<WiringRecord> => {
  const parts = PARTS.map((part) => [part, mergeThings(base[part], ours[part], theirs[part])] as const);
  const value = Object.fromEntries(parts.map(([part, m]) => [part, m.value])) as unknown as WiringRecord;
  const lost = Object.values(value.wires).flatMap(({ cable }) => {
    const kept = value.cables[cable] ?? ours.cables[cable] ?? theirs.cables[cable];
    return kept ? [[cable, kept] as const] : [];
  });
  return {
    value: { ...value, cables: { ...value.cables, ...Object.fromEntries(lost) } },
    both: [...new Set(parts.flatMap(([, m]) => m.both))],
  };
};

/** Things as stored before a change, by part and id; null for one that was not there. */
type Before = Readonly<Record<string, unknown>>;
type Stored = Readonly<Record<Part, Readonly<Record<string, unknown>>>>;
const stored = (r: WiringRecord): Stored => storeWiring(r) as Stored;

const differences = (before: WiringRecord, after: WiringRecord): Before => {
  const [b, a] = [stored(before), stored(after)];
  const changed = PARTS.flatMap((part) =>
    Object.keys({ ...b[part], ...a[part] })
      .filter((id) => !same(b[part][id], a[part][id]))
      .map((id) => [`${part}/${id}`, b[part][id] ?? null]),
  );
  return Object.fromEntries(changed) as Before;
};

/** A record with those things as they were; null where what was kept can't be read. */
const withBefore = (r: WiringRecord, before: unknown): WiringRecord | null => {
  const parts = stored(r);
  const entries = Object.entries((before ?? {}) as Before);
  const back = PARTS.map((part) => {
    const of = entries.flatMap(([key, was]) =>
      key.startsWith(`${part}/`) ? [[key.slice(part.length + 1), was] as const] : [],
    );
    const all = Object.entries({ ...parts[part], ...Object.fromEntries(of) });
    return [part, Object.fromEntries(all.filter(([, thing]) => thing !== null))];
  });
  return readWiring(Object.fromEntries(back));
};

/** How a wiring record is kept. */
export const WIRING = { schema: 1, encode: storeWiring, decode: readWiring };

/** How the machine in use is wired. */
export class Wiring extends Emitter {
  private readonly store: Versioned<WiringRecord>;
  private live: Live<WiringRecord> | null = null;
  private asked: string | null = null;
  private stop: () => void = () => undefined;
  /** The record of this machine can't be read by this version: it stays as it is. */
  unreadable = false;

  constructor(
    storage: Pick<Storage, 'later'>,
    private readonly saved: () => void,
  ) {
    super();
    this.store = storage.later('wiring', WIRING);
  }

  async open(machine: string | null): Promise<void> {
    this.stop();
    this.live = null;
    this.unreadable = false;
    this.asked = machine;
    if (machine) {
      const { kept, unreadable } = await this.store.one(machine);
      // Meanwhile another one was asked for.
      if (this.asked !== machine) return;
      const [mine] = kept;
      this.unreadable = unreadable.length > 0;
      const [value, rev] = mine ? [mine.value, mine.rev] : [blankWiring(), null];
      const live = new Live(this.store, machine, value, rev, mergeWiring, false, this.saved);
      this.live = this.unreadable ? null : live;
      this.stop = live.subscribe(() => this.tell());
    }
    this.tell();
  }

  /** Nothing can be shown or changed before it is loaded, nor where it can't be read. */
  get current(): Live<WiringRecord> | null {
    return this.live;
  }
  get value(): WiringRecord {
    return this.live?.value ?? blankWiring();
  }
  get state(): SaveState | undefined {
    return this.live?.state;
  }

  async set(record: WiringRecord): Promise<void> {
    await this.live?.set(record);
  }

  /** Puts things back as they were before a change. */
  async restore(before: unknown): Promise<void> {
    const record = withBefore(this.value, before);
    if (record) await this.set(record);
  }

  async reload(): Promise<void> {
    await this.live?.reload();
  }
  conflictSeen(): void {
    this.live?.conflictSeen();
  }
  async flush(): Promise<void> {
    await this.live?.flush();
  }
}

/** Changes the record, with a way back. @param gone name of what the change takes out; empty where it takes nothing out */
export const changeWiring = async (app: App, record: WiringRecord, gone = ''): Promise<void> => {
  const { wiring, machine } = app;
  if (!wiring?.current || !machine) return;
  const before = differences(wiring.value, record);
  await wiring.set(record);
  app.undo.push({ code: 'wiring', machine: machine.id, name: gone, before });
};
