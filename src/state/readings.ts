import { fromStored, isUnit, stated, toStored, type Stated } from '../core/quantity';
import type { Meta } from '../storage';
import { Emitter } from './emitter';

const NAME = 'readings';

const readAll = (kept: unknown): Map<string, Stated> => {
  const all = new Map<string, Stated>();
  if (typeof kept !== 'object' || kept === null) return all;
  for (const [key, x] of Object.entries(kept)) {
    const value = fromStored(x);
    const unit = (x as { unit?: unknown } | null)?.unit;
    if (value && isUnit(unit)) all.set(key, stated(value, unit));
  }
  return all;
};

type StoredReadings = Readonly<Record<string, unknown>>;

const storeAll = (all: ReadonlyMap<string, Stated>): StoredReadings =>
  Object.fromEntries([...all].map(([key, s]) => [key, { ...toStored(s.value), unit: s.unit }]));

/** What was last read off a caliper, wires or a gauge, by name: working figures that outlive the page, not records. */
export class Readings extends Emitter {
  private all = new Map<string, Stated>();

  constructor(private readonly meta: Meta) {
    super();
  }

  async load(): Promise<void> {
    this.all = readAll(await this.meta.get(NAME));
  }

  get(key: string): Stated | null {
    return this.all.get(key) ?? null;
  }

  /** Resolves when it is on the disk. @throws StorageError */
  set(key: string, value: Stated | null): Promise<void> {
    const next = new Map(this.all);
    if (value) next.set(key, value);
    else next.delete(key);
    return this.keep(next);
  }

  /** Forgets every reading whose name begins so; gives them as they are stored. */
  async clear(prefix: string): Promise<StoredReadings> {
    const gone = new Map([...this.all].filter(([key]) => key.startsWith(prefix)));
    await this.keep(new Map([...this.all].filter(([key]) => !gone.has(key))));
    return storeAll(gone);
  }

  /** Brings back what `clear` gave, except what was read anew since. */
  restore(stored: unknown): Promise<void> {
    return this.keep(new Map([...readAll(stored), ...this.all]));
  }

  private async keep(next: Map<string, Stated>): Promise<void> {
    this.all = next;
    this.tell();
    await this.meta.set(NAME, storeAll(next));
  }
}
