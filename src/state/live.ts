import { StorageError, type Kept, type StorageCode, type Versioned } from '../storage';
import { Emitter } from './emitter';
import type { Merged } from './merge';

export type SaveState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** What was typed is still here, in memory; it is not on the disk. */
  | { readonly kind: 'failed'; readonly code: StorageCode }
  | { readonly kind: 'conflict'; readonly fields: readonly string[] };

/**
 * One record held in memory and on disk. A change shows at once and is written at once; changes made while a
 * write is under way go out together with the next. If another tab wrote meanwhile, the two are merged by field.
 */
export class Live<T> extends Emitter {
  private base: T;
  private baseDeleted: boolean;
  private writing: Promise<void> | null = null;
  state: SaveState = { kind: 'saved' };

  constructor(
    private readonly store: Versioned<T>,
    readonly id: string,
    private current: T,
    private rev: string | null,
    private readonly merge: (base: T, ours: T, theirs: T) => Merged<T>,
    public deleted = false,
    private readonly saved: (id: string) => void = () => undefined,
  ) {
    super();
    this.base = current;
    this.baseDeleted = deleted;
  }

  get value(): T {
    return this.current;
  }

  private dirty = false;

  /** Changes the record and writes it; resolves when it is on the disk or has failed (see `state`). */
  set(value: T, deleted = this.deleted): Promise<void> {
    this.current = value;
    this.deleted = deleted;
    this.dirty = true;
    // A conflict found by the write that is under way hasn't been told yet: it stays until that write is over.
    if (!this.writing || this.state.kind !== 'conflict') this.state = { kind: 'saving' };
    this.tell();
    return this.flush();
  }

  conflictSeen(): void {
    if (this.state.kind !== 'conflict') return;
    this.state = { kind: 'saved' };
    this.tell();
  }

  /** Writes again what a full disk or a lost connection kept from being written. */
  flush(): Promise<void> {
    this.writing ??= this.write().then(() => {
      this.writing = null;
      // Whoever was told that the write is over may have changed the record again.
      return this.dirty && this.state.kind !== 'failed' ? this.flush() : undefined;
    });
    return this.writing;
  }

  private async write(): Promise<void> {
    while (this.dirty) {
      const [value, deleted] = [this.current, this.deleted];
      try {
        const result = await this.store.put(this.id, this.rev, value, deleted);
        if (result.ok) {
          this.rev = result.kept.rev;
          this.base = value;
          this.baseDeleted = deleted;
          if (this.current === value && this.deleted === deleted) this.dirty = false;
          if (this.state.kind !== 'conflict') this.state = { kind: 'saved' };
          this.saved(this.id);
        } else if (!this.adopt(result.current)) return;
      } catch (e) {
        this.state = { kind: 'failed', code: e instanceof StorageError ? e.code : 'failed' };
        this.tell();
        return;
      }
    }
    this.tell();
  }

  /** Merges what another tab wrote under what is in memory here. */
  private adopt(theirs: { rev: string; value: T; deleted: boolean } | null): boolean {
    if (!theirs) {
      this.state = { kind: 'failed', code: 'failed' };
      this.tell();
      return false;
    }
    const merged = this.merge(this.base, this.current, theirs.value);
    this.rev = theirs.rev;
    this.base = theirs.value;
    this.current = merged.value;
    // Who only changed a figure here doesn't bring back what was put away there.
    if (this.deleted === this.baseDeleted) this.deleted = theirs.deleted;
    this.baseDeleted = theirs.deleted;
    if (merged.both.length > 0) this.state = { kind: 'conflict', fields: merged.both };
    return true;
  }

  /** Takes over what another tab wrote, unless something here is still unwritten. */
  async reload(): Promise<void> {
    const kept = this.dirty ? null : await this.store.get(this.id);
    if (kept) this.take(kept);
  }

  /** The same with what was read from the disk already. */
  take(kept: Kept<T>): void {
    if (kept.rev === this.rev || this.dirty) return;
    this.rev = kept.rev;
    this.base = this.current = kept.value;
    this.deleted = this.baseDeleted = kept.deleted;
    this.tell();
  }
}
