import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blankProfile,
  FIELD_NAMES,
  FIELDS,
  readProfile,
  storeProfile,
  withFields,
  type Field,
  type FieldName,
  type MachineProfile,
} from '../../../src/core/machine';
import { isAsked } from '../../../src/core/machine/asked';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { writeBox, writeTrain, writeWheels } from '../../../src/core/drive/trains';
import {
  fromBase,
  inBase,
  ratio,
  read,
  roundTo,
  stated,
  type Stated,
  type Unit,
} from '../../../src/core/quantity';

const exactly = (text: string) => {
  const r = read(text);
  if (!r.ok) throw new Error(text);
  return r.value;
};

/** Any value that a field may hold, built from the field's own range. */
const valueOf = (f: Field): fc.Arbitrary<unknown> => {
  if (f.kind === 'text')
    return fc
      .stringMatching(/^[a-z]{1,6}( [a-zé−"'<&]{1,6}){0,3}$/)
      .map((s) => s.slice(0, f.maxLength).trim());
  if (f.kind === 'choice') return fc.option(fc.constantFrom(...f.options));
  if (f.kind === 'speeds')
    return fc.option(
      fc
        .uniqueArray(fc.integer({ min: 5, max: 10_000 }), { maxLength: f.most })
        .map((list) => list.sort((a, b) => a - b).map((n) => stated(ratio(n), 'rpm'))),
    );
  if (f.kind === 'written') {
    const teeth = fc.integer({ min: 10, max: 200 });
    if (f.form === 'wheels')
      return fc.option(fc.array(teeth, { minLength: 1, maxLength: 20 }).map((w) => writeWheels(w)));
    if (f.form === 'train')
      return fc.option(
        fc
          .array(fc.array(teeth, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 3 })
          .map((stages) => writeTrain({ stages, box: 'A' })),
      );
    if (f.form === 'curve')
      return fc.option(
        fc.uniqueArray(fc.integer({ min: 0, max: 5000 }), { minLength: 2, maxLength: 8 }).map((speeds) =>
          speeds
            .sort((a, b) => a - b)
            .map((n, i) => `${n}=${9 - i}`)
            .join(' '),
        ),
      );
    const names = fc.uniqueArray(fc.stringMatching(/^[A-Z][0-9]?$/), { minLength: 1, maxLength: 6 });
    return fc.option(names.map((all) => writeBox(all.map((name, i) => ({ name, ratio: ratio(i + 1, 3) })))));
  }
  const first = f.units[0] as Unit;
  const [low, high] = [exactly(f.min), exactly(f.max)].map((x) => inBase(stated(x, first)));
  if (!low || !high) throw new Error('no range');
  const within = fc.tuple(fc.bigInt(0n, 1000n), fc.constantFrom(...f.units)).map(([k, unit]): Stated => {
    const base = ratio(low.n * high.d * (1000n - k) + high.n * low.d * k, low.d * high.d * 1000n);
    return f.whole ? stated(roundTo(base, 0, 'up'), first) : stated(fromBase(base, unit), unit);
  });
  return fc.option(within);
};
const profile = fc
  .record(Object.fromEntries(FIELD_NAMES.map((n) => [n, valueOf(FIELDS[n])])))
  .map((x) => x as unknown as MachineProfile);

describe('any profile that the fields allow', () => {
  it('comes back from the disk exactly as it went', () => {
    fc.assert(
      fc.property(profile, (m) => {
        const kept: unknown = JSON.parse(JSON.stringify(storeProfile(m)));
        expect(readProfile(kept)).toEqual({ profile: m, unreadable: [] });
        expect(readProfile(structuredClone(storeProfile(m)))).toEqual({ profile: m, unreadable: [] });
      }),
      { numRuns: 60 },
    );
  });

  it('read from rubbish is a whole profile of values that the fields allow, frozen', () => {
    const row = fc.dictionary(fc.constantFrom(...FIELD_NAMES, '__proto__', 'constructor'), fc.anything());
    fc.assert(
      fc.property(row, (x) => {
        const got = readProfile(x);
        expect(Object.keys(got?.profile ?? {}).sort()).toEqual([...FIELD_NAMES].sort());
        expect(Object.isFrozen(got?.profile)).toBe(true);
        // What was taken is stored and read again as itself: nothing half-checked came through.
        const again = got && readProfile(storeProfile(got.profile));
        if (got) for (const f of FIELD_NAMES) expect(again?.profile[f]).toEqual(got.profile[f]);
      }),
      { numRuns: 150 },
    );
    for (const x of [null, undefined, 3, 'x', [], () => 1]) expect(readProfile(x)).toBeNull();
  });
});

describe('what a file may try', () => {
  const planted = (over: Record<string, unknown>) =>
    readProfile({ ...storeProfile(EXAMPLES.heron()), ...over });

  it('inherited names are no values, and the prototype stays as it was', () => {
    const evil: unknown = JSON.parse(
      '{"__proto__": {"screwPitch": {"n": "3", "d": "1", "unit": "mm"}, "hacked": 1}}',
    );
    const got = readProfile(evil);
    expect(got?.profile.screwPitch).toBeNull();
    expect(({} as Record<string, unknown>).hacked).toBeUndefined();
    expect(planted({ motorKind: 'toString' })?.unreadable).toEqual(['motorKind']);
  });

  it('speeds out of range, too many, or not rpm are not known', () => {
    const speed = (n: string, unit = 'rpm') => ({ n, d: '1', unit });
    for (const list of [
      [speed('-500')],
      [speed('0')],
      [speed('100'), speed('1' + '0'.repeat(39))],
      [speed('100', 'Hz')],
      [speed('100'), null],
      Array.from({ length: 25 }, (_, i) => speed(`${100 + i}`)),
      'fast',
    ]) {
      const got = planted({ spindleSpeeds: list });
      expect([got?.profile.spindleSpeeds, got?.unreadable]).toEqual([null, ['spindleSpeeds']]);
    }
  });

  it('text that is too long, or a name of nothing, is not taken', () => {
    expect(planted({ notes: 'x'.repeat(2001) })?.unreadable).toEqual(['notes']);
    expect(planted({ name: ' ' })?.unreadable).toEqual(['name']);
    expect(planted({ workshop: 7 })?.unreadable).toEqual(['workshop']);
  });
});

describe('which fields are asked', () => {
  const blank = blankProfile('a', 'b');
  const asked = (over: Partial<MachineProfile>) =>
    FIELD_NAMES.filter((f) => !isAsked(f, { ...blank, ...over }));

  const rare: readonly FieldName[] = [
    'servoEncoder',
    'servoGearMax',
    'ratioDigits',
    'ratioBits',
    'enableOpen',
  ];
  const idle = (over: Partial<MachineProfile>) => asked(over).filter((f) => !rare.includes(f));

  it('all of them while nothing is known, but for what one rare form alone needs', () => {
    expect(asked({})).toEqual(rare);
  });
  it('none that the others have made idle', () => {
    expect(idle({ motorKind: 'servo' })).toEqual([
      'fullSteps',
      'microsteps',
      'torqueCurve',
      'motorSupply',
      'motorCurrent',
      'motorInductance',
    ]);
    expect(idle({ torqueCurve: '0=2 600=1' })).toEqual(['motorSupply', 'motorCurrent', 'motorInductance']);
    expect(idle({ edgesPerLine: stated(ratio(2), 'count') })).toEqual(['encoderPhaseError']);
    expect(idle({ screwEnds: 'held-held' })).toEqual([]);
    expect(idle({ motorKind: 'stepper' })).toEqual(['servoPulses', 'motorPeak']);
    expect(idle({ halfNut: 'always-closed' })).toEqual(['threadDial', 'dialTeeth', 'dialLines']);
    expect(idle({ threadDial: 'none' })).toEqual(['dialTeeth', 'dialLines']);
    expect(idle({ spindleDrive: 'range' })).toEqual(['spindleSpeeds']);
    expect(idle({ spindleDrive: 'speeds' })).toEqual(['spindleMin', 'spindleMax']);
    expect(idle({ ratioHeld: 'other' })).toEqual(['ratioTopMax', 'ratioBottomMax']);
    expect(idle({ quickBox: 'none' })).toEqual(['boxTable']);
    expect(idle({ stopCuts: 'power-both' })).toEqual(['stopSpindle']);
  });
  it('of the two kinds of drive only the machine’s own', () => {
    const gears = FIELD_NAMES.filter((f) => FIELDS[f].group === 'gears');
    expect(gears.length).toBe(13);
    expect(idle({ driveKind: 'electronic' })).toEqual(gears);
    const other = asked({ driveKind: 'change-gears' });
    expect(other.length).toBe(45);
    expect(other).toContain('encoderLines');
    expect(other).toContain('ratioBottomMax');
    expect(other.filter((f) => f === 'screwPitch' || f === 'overload' || f === 'dialTeeth')).toEqual([]);
  });
  it('what one rare form alone needs, once that form is chosen', () => {
    const shown = (over: Partial<MachineProfile>) => rare.filter((f) => isAsked(f, { ...blank, ...over }));
    expect(shown({ motorKind: 'servo' })).toEqual(['servoEncoder', 'servoGearMax']);
    expect(shown({ stopCuts: 'enable' })).toEqual(['enableOpen']);
    expect(shown({ ratioHeld: 'decimal' })).toEqual(['ratioDigits']);
    expect(shown({ ratioHeld: 'fixed-rounded' })).toEqual(['ratioBits']);
    expect(shown({ ratioHeld: 'fixed-truncated' })).toEqual(['ratioBits']);
    for (const ratioHeld of ['integers', 'float32', 'float32-sum', 'float64', 'rev-count', 'rate'] as const)
      expect(shown({ ratioHeld })).toEqual([]);
    expect(isAsked('ratioTopMax', { ...blank, ratioHeld: 'decimal' })).toBe(false);
    expect(isAsked('ratioTopMax', { ...blank, ratioHeld: 'integers' })).toBe(true);
  });
  it('changing one leaves the machine it came from alone', () => {
    const m = withFields(blank, { screwStarts: stated(ratio(2), 'count') });
    expect([blank.screwStarts, m.screwStarts?.value, Object.isFrozen(m)]).toEqual([null, ratio(2), true]);
  });
});
