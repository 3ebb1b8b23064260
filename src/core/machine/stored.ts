import { fromStored, isUnit, stated, toStored, type Stated, type StoredRatio } from '../quantity';
import { checkNumber, checkSpeeds, checkText, checkWritten } from './check-field';
import type { Field } from './field';
import { beforeItExisted, FIELD_NAMES, FIELDS, type FieldName, type MachineProfile } from './fields';
import { emptyValue } from './profile';

export interface StoredStated extends StoredRatio {
  readonly unit: string;
}
export type StoredProfile = Record<string, unknown>;

/** A stated value as kept on disk: two whole numbers as text, and the unit. */
export const storeStated = (s: Stated): StoredStated => ({ ...toStored(s.value), unit: s.unit });

/** Reads a stated value; null for anything that isn't one. */
export const readStored = (x: unknown): Stated | null => {
  const value = fromStored(x);
  const unit = (x as { unit?: unknown } | null)?.unit;
  return value && isUnit(unit) ? stated(value, unit) : null;
};

const storeValue = (field: Field, value: unknown): unknown => {
  if (value === null) return null;
  if (field.kind === 'number') return storeStated(value as Stated);
  if (field.kind === 'speeds') return (value as readonly Stated[]).map(storeStated);
  return value;
};

export const storeProfile = (m: MachineProfile): StoredProfile =>
  Object.fromEntries(FIELD_NAMES.map((f) => [f, storeValue(FIELDS[f], m[f])]));

/** undefined means: not readable. */
const readValue = (field: Field, x: unknown): unknown => {
  if (field.kind === 'text') {
    const checked = typeof x === 'string' ? checkText({ ...field }, x) : null;
    return checked?.ok ? checked.value : undefined;
  }
  if (x === null) return null;
  if (field.kind === 'written') {
    const checked = typeof x === 'string' ? checkWritten(field, x) : null;
    return checked?.ok ? checked.value : undefined;
  }
  if (field.kind === 'choice') return field.options.includes(x as string) ? x : undefined;
  if (field.kind === 'number') {
    const value = readStored(x);
    return value && checkNumber(field, value).ok ? value : undefined;
  }
  if (!Array.isArray(x) || x.length > field.most) return undefined;
  const list = x.map(readStored);
  if (list.includes(null)) return undefined;
  const checked = checkSpeeds(field, list as Stated[]);
  return checked.ok ? checked.value : undefined;
};

/**
 * Reads a profile from disk or a file. A field that is missing or can't be read becomes "not known" and is
 * named in `unreadable`, so that the screen can say so; the caller keeps the raw record. Never throws.
 */
export const readProfile = (x: unknown): { profile: MachineProfile; unreadable: FieldName[] } | null => {
  if (typeof x !== 'object' || x === null || Array.isArray(x)) return null;
  const raw = x as Record<string, unknown>;
  const unreadable: FieldName[] = [];
  const values: Record<string, unknown> = {};
  for (const name of FIELD_NAMES) {
    const value = Object.hasOwn(raw, name) ? readValue(FIELDS[name], raw[name]) : beforeItExisted(name);
    if (value === undefined) {
      unreadable.push(name);
      values[name] = emptyValue(FIELDS[name]);
    } else values[name] = value;
  }
  return { profile: Object.freeze(values) as unknown as MachineProfile, unreadable };
};
