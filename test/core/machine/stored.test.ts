import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beforeItExisted,
  blankProfile,
  checkNumber,
  checkText,
  crossRefusal,
  FIELD_NAMES,
  FIELDS,
  readNumber,
  readProfile,
  storeProfile,
  withFields,
  type FieldName,
} from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio, stated } from '../../../src/core/quantity';

describe('a profile on the disk', () => {
  it.each(Object.entries(EXAMPLES))('%s comes back as it was', (_id, make) => {
    const kept: unknown = JSON.parse(JSON.stringify(storeProfile(make())));
    expect(readProfile(kept)).toEqual({ profile: make(), unreadable: [] });
  });
  it('so does one of which nothing is known', () => {
    const blank = blankProfile('Lathe', 'Shed');
    expect(readProfile(storeProfile(blank))).toEqual({ profile: blank, unreadable: [] });
  });
  it('never throws on rubbish', () => {
    fc.assert(fc.property(fc.anything(), (x) => void readProfile(x)));
    const field = fc.constantFrom(...FIELD_NAMES);
    fc.assert(
      fc.property(field, fc.anything(), (f, x) => {
        const read = readProfile({ ...storeProfile(EXAMPLES.heron()), [f]: x });
        expect(read).not.toBeNull();
        // Either it was taken as a value of that field, or it is named as unreadable and not known.
        if (read?.unreadable.includes(f) && FIELDS[f].kind !== 'text') expect(read.profile[f]).toBeNull();
      }),
    );
  });
  it.each([
    ['a zero denominator', { n: '3', d: '0', unit: 'mm' }],
    ['a unit of another field', { n: '3', d: '1', unit: 'rpm' }],
    ['no unit', { n: '3', d: '1' }],
    ['out of range', { n: '3000', d: '1', unit: 'mm' }],
    ['a number', 3],
    ['a huge numerator', { n: '9'.repeat(60), d: '1', unit: 'mm' }],
    ['a prototype key for a unit', { n: '3', d: '1', unit: '__proto__' }],
  ])('%s is not known, and said to be unreadable', (_what, x) => {
    const read = readProfile({ ...storeProfile(EXAMPLES.heron()), screwPitch: x });
    expect(read?.profile.screwPitch).toBeNull();
    expect(read?.unreadable).toEqual(['screwPitch']);
  });
  it('a missing field is not known', () => {
    const { screwPitch: _, ...rest } = storeProfile(EXAMPLES.heron());
    expect(readProfile(rest)?.unreadable).toEqual(['screwPitch']);
  });
  it('a machine kept before there were change gears and torque has an electronic drive, and nothing of it is unreadable', () => {
    const old = Object.fromEntries(
      Object.entries(storeProfile(EXAMPLES.heron())).filter(
        ([k]) => beforeItExisted(k as FieldName) === undefined,
      ),
    );
    expect(Object.keys(old).length).toBe(FIELD_NAMES.length - 51);
    const read = readProfile(JSON.parse(JSON.stringify(old)));
    expect(read?.unreadable).toEqual([]);
    const later = FIELD_NAMES.filter((f) => beforeItExisted(f) === null);
    expect(read?.profile).toEqual({
      ...EXAMPLES.heron(),
      ...Object.fromEntries(later.map((f) => [f, null])),
    });
    expect(read?.profile.driveKind).toBe('electronic');
  });
  it.each([
    ['gearWheels', '20 banana'],
    ['gearWheels', '5'],
    ['gearMounted', '40'],
    ['boxTable', 'A=0'],
    ['gearWheels', 7],
  ])('%s of %j is not known, and said to be unreadable', (field, x) => {
    const read = readProfile({ ...storeProfile(EXAMPLES.dunlin()), [field]: x });
    expect([read?.profile[field as 'gearWheels'], read?.unreadable]).toEqual([null, [field]]);
  });
  it('only the safety factor starts with a value', () => {
    const blank = blankProfile('a', 'b');
    const known = FIELD_NAMES.filter((f) => blank[f] !== null && FIELDS[f].kind !== 'text');
    expect(known).toEqual(['colour', 'safetyFactor']);
  });
});

describe('what is typed into a field', () => {
  it.each([
    ['3', 'mm', 'ok'],
    ['8', 'tpi', 'ok'],
    ['11 1/2', 'tpi', 'ok'],
    ['0.25', 'mm', 'ok'],
    ['25.4', 'mm', 'ok'],
    ['25.41', 'mm', 'out-of-range'],
    ['0.24', 'mm', 'out-of-range'],
    ['0', 'tpi', 'out-of-range'],
    ['-3', 'mm', 'out-of-range'],
    ['200', 'tpi', 'out-of-range'],
    ['3', 'rpm', 'wrong-unit'],
    ['three', 'mm', 'not-a-number'],
  ] as const)('leadscrew pitch %s %s: %s', (typed, unit, what) => {
    const read = readNumber(FIELDS.screwPitch, typed, unit);
    expect(read.ok ? 'ok' : read.refusal.code).toBe(what);
  });
  it('teeth are whole', () => {
    const read = readNumber(FIELDS.dialTeeth, '16.5', 'teeth');
    expect(read.ok ? '' : read.refusal.code).toBe('not-whole');
  });
  it('a backlash of nothing is allowed: it was measured', () => {
    expect(checkNumber(FIELDS.backlash, stated(ratio(0), 'mm')).ok).toBe(true);
  });
  it('the slowest speed is not above the fastest', () => {
    const m = withFields(blankProfile('a', 'b'), { spindleMax: stated(ratio(1000), 'rpm') });
    expect(crossRefusal(m, 'spindleMin', stated(ratio(1001), 'rpm'))).toEqual({ code: 'low-above-high' });
    expect(crossRefusal(m, 'spindleMin', stated(ratio(1000), 'rpm'))).toBeNull();
    expect(crossRefusal(m, 'chuckMaxRpm', stated(ratio(1), 'rpm'))).toBeNull();
  });
});

describe('texts', () => {
  it('notes keep their lines, a name is one line', () => {
    const notes = checkText(FIELDS.notes, ' lever B \n  belt 3 ');
    expect(notes.ok && notes.value).toBe('lever B \n belt 3');
    const name = checkText(FIELDS.name, ' Old \n Faithful ');
    expect(name.ok && name.value).toBe('Old Faithful');
  });
});
