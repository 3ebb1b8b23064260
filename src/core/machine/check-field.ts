import {
  compare,
  inBase,
  isPositive,
  isWhole,
  read,
  stated,
  toNumber,
  UNITS,
  type Ratio,
  type ReadError,
  type Stated,
  type Unit,
} from '../quantity';
import {
  readBox,
  readTrain,
  readWheels,
  writeBox,
  writeTrain,
  writeWheels,
  type WrittenError,
} from '../drive/trains/written';
import { readCurve, type CurveRefusal } from '../drive/curve';
import type { Field, NumberField, SpeedsField, WrittenField } from './field';
import type { FieldName, MachineProfile } from './fields';

/** Why a value was refused. `low` and `high` are the plausible range in the field's first unit. */
export type Refusal =
  | { code: ReadError }
  | { code: 'out-of-range'; low: string; high: string; unit: Unit }
  | { code: 'not-whole' }
  | { code: 'wrong-unit' }
  | { code: 'not-an-option' }
  | { code: 'needed' }
  | { code: 'low-above-high' }
  | { code: 'too-many'; most: number }
  | { code: 'text-too-long'; most: number }
  | { code: WrittenError | CurveRefusal };

export type Checked<T> = { ok: true; value: T } | { ok: false; refusal: Refusal };

const exactly = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new RangeError(`range bound is not a number: ${text}`);
  return r.value;
};

/** Many times what a double is off by. */
const FAR = 1e-9;

/**
 * Whether a number lies so far inside a field's range that doubles are enough to tell; most do. Else the exact way decides: also
 * for a bound that is a fraction, or another unit than the bounds have.
 */
const isWellInside = ({ units, min, max }: NumberField, { value, unit }: Stated): boolean => {
  const [x, low, high] = [toNumber(value), Number(min), Number(max)];
  return (
    unit === units[0] &&
    !('reciprocal' in UNITS[unit]) &&
    x - low > FAR * (Math.abs(x) + Math.abs(low)) &&
    high - x > FAR * (Math.abs(x) + Math.abs(high))
  );
};

/** Checks a stated number against a field's units, wholeness and plausible range. */
export const checkNumber = (field: NumberField, value: Stated): Checked<Stated> => {
  if (!field.units.includes(value.unit)) return { ok: false, refusal: { code: 'wrong-unit' } };
  if (field.whole && !isWhole(value.value)) return { ok: false, refusal: { code: 'not-whole' } };
  if (isWellInside(field, value)) return { ok: true, value };
  const first = field.units[0] ?? value.unit;
  const range = {
    ok: false,
    refusal: { code: 'out-of-range', low: field.min, high: field.max, unit: first },
  } as const;
  const reciprocal = 'reciprocal' in UNITS[value.unit];
  if (reciprocal && !isPositive(value.value)) return range;
  const base = inBase(value);
  const low = inBase(stated(exactly(field.min), first));
  const high = inBase(stated(exactly(field.max), first));
  return compare(base, low) < 0 || compare(base, high) > 0 ? range : { ok: true, value };
};

/** Reads typed text into a field's number. An empty text is refused: "not known" is said by its own key. */
export const readNumber = (field: NumberField, typed: string, unit: Unit): Checked<Stated> => {
  const number = read(typed);
  if (!number.ok) return { ok: false, refusal: { code: number.error } };
  return checkNumber(field, stated(number.value, unit));
};

const oneSpeed = ({ group, min, max }: SpeedsField): NumberField => ({
  kind: 'number',
  group,
  units: ['rpm'],
  min,
  max,
});

/** Reads one spindle speed, rpm. */
export const readSpeed = (field: SpeedsField, typed: string): Checked<Stated> =>
  readNumber(oneSpeed(field), typed, 'rpm');

/** A list of speeds: each within range, rising, no doubles, not too many. */
export const checkSpeeds = (field: SpeedsField, list: readonly Stated[]): Checked<readonly Stated[]> => {
  for (const speed of list) {
    const checked = checkNumber(oneSpeed(field), speed);
    if (!checked.ok) return checked;
  }
  const sorted = [...list].sort((a, b) => compare(a.value, b.value));
  const once = sorted.filter((s, i) => i === 0 || compare(s.value, sorted[i - 1]?.value ?? 0) !== 0);
  if (once.length > field.most) return { ok: false, refusal: { code: 'too-many', most: field.most } };
  return { ok: true, value: once };
};

/** Longest text that is one line. */
const ONE_LINE = 100;

/** Checks any typed text against a text field. */
export const checkText = (field: Extract<Field, { kind: 'text' }>, typed: string): Checked<string> => {
  // Notes keep their lines; a name is one line.
  const spaces = field.maxLength > ONE_LINE ? /[^\S\n]+/g : /\s+/g;
  const text = typed.replace(spaces, ' ').trim();
  if (field.required && text === '') return { ok: false, refusal: { code: 'needed' } };
  if (text.length > field.maxLength)
    return { ok: false, refusal: { code: 'text-too-long', most: field.maxLength } };
  return { ok: true, value: text };
};

const WRITTEN: Record<WrittenField['form'], (text: string) => Checked<string>> = {
  wheels: (text) => {
    const r = readWheels(text);
    return r.ok ? { ok: true, value: writeWheels(r.value) } : { ok: false, refusal: { code: r.error } };
  },
  train: (text) => {
    const r = readTrain(text);
    return r.ok ? { ok: true, value: writeTrain(r.value) } : { ok: false, refusal: { code: r.error } };
  },
  curve: (text) => {
    const r = readCurve(text);
    return r.ok
      ? { ok: true, value: r.value.map((p) => `${p.rpm}=${p.torque}`).join(' ') }
      : { ok: false, refusal: { code: r.code } };
  },
  box: (text) => {
    const r = readBox(text);
    return r.ok ? { ok: true, value: writeBox(r.value) } : { ok: false, refusal: { code: r.error } };
  },
};

/** Reads change gears in writing; what is taken stands in its one written form. */
export const checkWritten = (field: WrittenField, typed: string): Checked<string> => {
  const checked = WRITTEN[field.form](typed);
  return checked.ok && checked.value.length > field.maxLength
    ? { ok: false, refusal: { code: 'text-too-long', most: field.maxLength } }
    : checked;
};

/**
 * What one field by itself can't show: the slowest spindle speed above the fastest. null when the two agree or
 * one isn't known.
 */
export const crossRefusal = (m: MachineProfile, field: FieldName, value: Stated): Refusal | null => {
  const low = field === 'spindleMin' ? value : m.spindleMin;
  const high = field === 'spindleMax' ? value : m.spindleMax;
  if ((field !== 'spindleMin' && field !== 'spindleMax') || !low || !high) return null;
  return compare(inBase(low), inBase(high)) > 0 ? { code: 'low-above-high' } : null;
};
