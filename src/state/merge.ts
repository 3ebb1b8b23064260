import { fingerprint } from '../core/context';

type Flat = Readonly<Record<string, unknown>>;

const same = (a: unknown, b: unknown): boolean => fingerprint(a) === fingerprint(b);

export interface Merged<T> {
  readonly value: T;
  /** Fields that both sides changed, to different values: ours was kept, and a person must be told. */
  readonly both: readonly string[];
}

/**
 * Field-by-field merge of two changes to the same record. What only one side changed is taken from that side.
 */
export const mergeFields = <T extends object>(base: T, ours: T, theirs: T): Merged<T> => {
  const [b, o, t] = [base as Flat, ours as Flat, theirs as Flat];
  const both: string[] = [];
  const entries = Object.keys({ ...t, ...o }).map((key) => {
    if (same(o[key], b[key])) return [key, t[key]];
    if (!same(t[key], b[key]) && !same(t[key], o[key])) both.push(key);
    return [key, o[key]];
  });
  return { value: Object.fromEntries(entries) as T, both };
};
