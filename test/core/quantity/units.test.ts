import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dimensionOf,
  fromBase,
  inBase,
  isUnit,
  MM_PER_INCH,
  NotExactError,
  ratio,
  stated,
  UNITS,
  ZERO,
  type Unit,
} from '../../../src/core/quantity';
import { anyRatio, is } from './arbitrary';

const names = Object.keys(UNITS) as Unit[];
const base = (n: number, d: number, unit: Unit) => inBase(stated(ratio(n, d), unit));

describe('units', () => {
  it('an inch is 25.4 mm exactly (international yard and pound agreement of 1959)', () => {
    expect(is(MM_PER_INCH, 254n, 10n)).toBe(true);
    expect(is(base(1, 1, 'in'), 127n, 5n)).toBe(true);
  });

  it('each unit in its dimension’s base, by its definition', () => {
    const one: Partial<Record<Unit, [bigint, bigint]>> = {
      mm: [1n, 1n],
      in: [254n, 10n],
      um: [1n, 1000n],
      m: [1000n, 1n],
      // 0.3048 m exactly, by the same agreement.
      ft: [3048n, 10n],
      mA: [1n, 1000n],
      tpi: [254n, 10n],
      module: [1n, 1n],
      dp: [254n, 10n],
      kHz: [1000n, 1n],
      MHz: [1000000n, 1n],
      mH: [1n, 1000n],
      kgcm2: [1n, 10_000n],
      uH: [1n, 10n ** 6n],
      uF: [1n, 10n ** 6n],
      nF: [1n, 10n ** 9n],
      pF: [1n, 10n ** 12n],
      'pF/m': [1n, 10n ** 12n],
      kohm: [1000n, 1n],
      'ohm/km': [1n, 1000n],
      'kV/us': [10n ** 9n, 1n],
      us: [1n, 1000000n],
      ms: [1n, 1000n],
      percent: [1n, 100n],
      'mm/min': [1n, 60n],
      'in/min': [254n, 600n],
    };
    for (const unit of names) {
      const [n, d] = one[unit] ?? [1n, 1n];
      expect(is(base(1, 1, unit), n, d), unit).toBe(true);
    }
    expect(is(base(8, 1, 'tpi'), 127n, 40n)).toBe(true);
    expect(is(base(23, 2, 'tpi'), 254n, 115n)).toBe(true);
  });

  it('to the base and back is the value itself', () => {
    fc.assert(
      fc.property(anyRatio, fc.constantFrom(...names), (value, unit) => {
        if (value.n === 0n && 'reciprocal' in UNITS[unit]) return;
        expect(fromBase(inBase(stated(value, unit)), unit)).toEqual(value);
      }),
    );
  });

  it('refuses 0 threads per inch and 0 DP', () => {
    for (const unit of ['tpi', 'dp'] as const) {
      expect(() => inBase(stated(ZERO, unit))).toThrow(NotExactError);
      expect(() => fromBase(ZERO, unit)).toThrow(NotExactError);
    }
  });

  it('knows its names and no inherited ones', () => {
    for (const unit of names) expect(isUnit(unit)).toBe(true);
    for (const x of ['', 'cm', 'toString', '__proto__', 'constructor', 3, null, undefined])
      expect(isUnit(x)).toBe(false);
    expect(dimensionOf('tpi')).toBe('length');
    expect(dimensionOf('dp')).toBe('pi-length');
    expect(Object.isFrozen(stated(ratio(1), 'mm'))).toBe(true);
  });
});
