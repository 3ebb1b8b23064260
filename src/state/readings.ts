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

  /** Forgets every reading whose name begins so. */
  clear(prefix: string): Promise<void> {
    return this.keep(new Map([...this.all].filter(([key]) => !key.startsWith(prefix))));
  }

  private async keep(next: Map<string, Stated>): Promise<void> {
    this.all = next;
    this.tell();
    await this.meta.set(
      NAME,
      Object.fromEntries([...next].map(([key, s]) => [key, { ...toStored(s.value), unit: s.unit }])),
    );
  }
}
