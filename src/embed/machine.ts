import {
  blankProfile,
  checkSpeeds,
  FIELD_NAMES,
  FIELDS,
  readNumber,
  readProfile,
  readSpeed,
  storeProfile,
  storeStated,
  type FieldName,
  type MachineProfile,
  type Refusal,
} from '../core/machine';
import type { Stated } from '../core/quantity';
import { unitLabel } from '../text/units';

/**
 * A machine as a page describes it, by the names that the fields have in a machine's file: numbers in writing, with their
 * unit ("3 mm", "8 tpi", "100 kHz"; without one, the field's first), choices by their id, spindle speeds in a row. A body
 * from such a file will do as well. What isn't named isn't known.
 */
export type EmbedMachine = Readonly<Record<string, unknown>>;

/** A machine's field that couldn't be read, and why. */
export interface Misread {
  readonly field: string;
  readonly refusal: Refusal;
}

export interface MachineRead {
  readonly profile: MachineProfile;
  readonly misread: readonly Misread[];
}

type Part =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly refusal: Refusal };

const numberOf = (field: Extract<(typeof FIELDS)[FieldName], { kind: 'number' }>, text: string): Part => {
  const [, number = '', word = ''] = /^([\d\s.,/+-]*)(.*)$/s.exec(text.trim()) ?? [];
  const units: readonly Stated['unit'][] = field.units;
  const unit = word === '' ? units[0] : units.find((u) => u === word.trim() || unitLabel[u] === word.trim());
  if (!unit) return { ok: false, refusal: { code: 'wrong-unit' } };
  const read = readNumber(field, number, unit);
  return read.ok ? { ok: true, value: storeStated(read.value) } : read;
};

const speedsOf = (field: (typeof FIELDS)['spindleSpeeds'], text: string): Part => {
  const all: Stated[] = [];
  for (const one of text.split(/[\s;]+/).filter(Boolean)) {
    const read = readSpeed(field, one);
    if (!read.ok) return read;
    all.push(read.value);
  }
  const checked = checkSpeeds(field, all);
  return checked.ok ? { ok: true, value: checked.value.map(storeStated) } : checked;
};

const written = (name: FieldName, said: unknown): Part => {
  const field = FIELDS[name];
  const text = typeof said === 'number' ? String(said) : said;
  if (typeof text !== 'string') return { ok: true, value: said };
  if (field.kind === 'number') return numberOf(field, text);
  return field.kind === 'speeds' ? speedsOf(field, text) : { ok: true, value: text };
};

/** The profile that a page's words give. @param name what it is called where the words don't say */
export const readMachine = (said: EmbedMachine, name: string): MachineRead => {
  const raw: Record<string, unknown> = { ...storeProfile(blankProfile(name, '')), driveKind: 'electronic' };
  const misread: Misread[] = [];
  for (const [key, value] of Object.entries(said)) {
    if (value === null || value === undefined || value === '') continue;
    const known = FIELD_NAMES.find((f) => f === key);
    const part = known
      ? written(known, value)
      : { ok: false as const, refusal: { code: 'not-an-option' as const } };
    if (part.ok) raw[key] = part.value;
    else misread.push({ field: key, refusal: part.refusal });
  }
  // Who lists the spindle's speeds has said that it has such, and who gives full steps that it is a stepper.
  if (raw.spindleSpeeds && !raw.spindleDrive) raw.spindleDrive = 'speeds';
  if (raw.fullSteps && !raw.motorKind) raw.motorKind = 'stepper';
  const read = readProfile(raw);
  const unreadable = read?.unreadable ?? [];
  return {
    profile: read?.profile ?? blankProfile(name, ''),
    misread: [
      ...misread,
      ...unreadable.map((field): Misread => ({ field, refusal: { code: 'not-an-option' } })),
    ],
  };
};
