import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkNumber,
  checkSpeeds,
  checkText,
  FIELD_NAMES,
  FIELDS,
  readNumber,
  readSpeed,
  type Field,
  type FieldName,
  type NumberField,
} from '../../../src/core/machine';
import { FEED_FIELD, JOB_FIELDS, PITCH_FIELD } from '../../../src/core/job';
import {
  add,
  fromBase,
  inBase,
  mul,
  ratio,
  read,
  stated,
  sub,
  UNITS,
  type Ratio,
  type Unit,
} from '../../../src/core/quantity';

const exactly = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new Error(text);
  return r.value;
};

const isNumber = (f: Field): f is NumberField => f.kind === 'number';
const numbers: [string, NumberField][] = [
  ...FIELD_NAMES.map((n): [FieldName, Field] => [n, FIELDS[n]]).filter((e): e is [FieldName, NumberField] =>
    isNumber(e[1]),
  ),
  ...Object.entries(JOB_FIELDS),
  ['bare pitch', PITCH_FIELD],
  ['feed', FEED_FIELD],
];

/** The field's bounds in base units, from its own text. */
const bounds = (f: NumberField): [Ratio, Ratio] => {
  const first = f.units[0];
  if (!first) throw new Error('no unit');
  return [inBase(stated(exactly(f.min), first)), inBase(stated(exactly(f.max), first))];
};
const taken = (f: NumberField, base: Ratio, unit: Unit): boolean =>
  checkNumber(f, stated(fromBase(base, unit), unit)).ok;
const HAIR = ratio(1, 10n ** 12n);

describe.each(numbers)('%s', (_name, field) => {
  const [low, high] = bounds(field);
  // Bounds are inclusive in every unit; a hair beyond either is out. Whole fields step by one instead.
  const step = field.whole ? ratio(1) : HAIR;

  it('takes its bounds and nothing beyond, in each of its units', () => {
    for (const unit of field.units) {
      if ('reciprocal' in UNITS[unit] && low.n === 0n)
        throw new Error('a reciprocal unit needs a low bound above 0');
      expect([unit, taken(field, low, unit), taken(field, high, unit)]).toEqual([unit, true, true]);
      expect([unit, taken(field, add(high, step), unit)]).toEqual([unit, false]);
      const under = sub(low, step);
      if (under.n !== 0n || !('reciprocal' in UNITS[unit]))
        expect([unit, taken(field, under, unit)]).toEqual([unit, false]);
    }
  });

  it('refuses the units of others, halves where only wholes are, 0 and less in a reciprocal unit', () => {
    const inside = field.whole ? low : mul(add(low, high), ratio(1, 2));
    for (const unit of Object.keys(UNITS) as Unit[]) {
      if (field.units.includes(unit)) continue;
      expect(checkNumber(field, stated(inside, unit))).toEqual({
        ok: false,
        refusal: { code: 'wrong-unit' },
      });
    }
    const first = field.units[0] as Unit;
    if (field.whole)
      expect(checkNumber(field, stated(add(low, ratio(1, 2)), first))).toEqual({
        ok: false,
        refusal: { code: 'not-whole' },
      });
    for (const unit of field.units.filter((u) => 'reciprocal' in UNITS[u]))
      for (const n of [0, -8]) expect(checkNumber(field, stated(ratio(n), unit)).ok).toBe(false);
  });

  it('offers only what it takes', () => {
    for (const text of field.suggest ?? [])
      expect(readNumber(field, text, field.units[0] as Unit).ok, text).toBe(true);
  });

  it('says the range in its first unit', () => {
    const out = checkNumber(field, stated(add(exactly(field.max), 1), field.units[0] as Unit));
    expect(out).toEqual({
      ok: false,
      refusal: { code: 'out-of-range', low: field.min, high: field.max, unit: field.units[0] },
    });
  });
});

describe('spindle speeds', () => {
  const field = FIELDS.spindleSpeeds;
  const rpms = (...list: number[]) => list.map((n) => stated(ratio(n), 'rpm'));

  it('rise and stand once each, whatever order they were typed in', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 5, max: 10_000 }), { maxLength: 24 }), (list) => {
        const expected = [...new Set(list)].sort((a, b) => a - b);
        expect(checkSpeeds(field, rpms(...list))).toEqual({ ok: true, value: rpms(...expected) });
      }),
    );
  });

  it('are no more than 24, doubles not counted', () => {
    const many = Array.from({ length: 25 }, (_, i) => 100 + i);
    expect(checkSpeeds(field, rpms(...many))).toEqual({ ok: false, refusal: { code: 'too-many', most: 24 } });
    expect(checkSpeeds(field, rpms(...many.slice(1), 101)).ok).toBe(true);
  });

  it('each lie within range and are in rpm', () => {
    for (const bad of [-500, 0, 4, 10_001]) {
      const out = checkSpeeds(field, rpms(100, bad));
      expect(out.ok ? 'ok' : out.refusal.code, `${bad}`).toBe('out-of-range');
    }
    expect(checkSpeeds(field, [stated(ratio(100), 'Hz')]).ok).toBe(false);
  });

  it.each([
    ['5', 'ok'],
    ['10000', 'ok'],
    ['4.9', 'out-of-range'],
    ['10000.1', 'out-of-range'],
    ['', 'empty'],
    ['fast', 'not-a-number'],
  ])('typed %j: %s', (typed, what) => {
    const out = readSpeed(field, typed);
    expect(out.ok ? 'ok' : out.refusal.code).toBe(what);
  });
});

describe('text', () => {
  it('is trimmed, and refused where it is needed or too long', () => {
    expect(checkText(FIELDS.name, '  Old   Faithful ')).toEqual({ ok: true, value: 'Old Faithful' });
    expect(checkText(FIELDS.name, '   ')).toEqual({ ok: false, refusal: { code: 'needed' } });
    expect(checkText(FIELDS.gearboxLever, '')).toEqual({ ok: true, value: '' });
    expect(checkText(FIELDS.name, 'x'.repeat(30)).ok).toBe(true);
    expect(checkText(FIELDS.name, 'x'.repeat(31))).toEqual({
      ok: false,
      refusal: { code: 'text-too-long', most: 30 },
    });
  });
});
