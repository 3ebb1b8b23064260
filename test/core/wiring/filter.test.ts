import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  amplifiesTo,
  corner,
  crossing,
  dampingFor,
  gain,
  harmonics,
  idealGain,
  insertionLoss,
  peak,
  response,
  STATED,
  type LowPass,
} from '../../../src/core/wiring';
import { size, solve, type Complex, type Part } from './nodal';

const decade = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((x) => 10 ** x);
const anyFilter: fc.Arbitrary<LowPass> = fc.record({
  inductance: decade(-6, -1),
  capacitance: decade(-9, -3),
  source: decade(-2, 3),
  coil: decade(-3, 1),
  load: decade(-1, 6),
  damping: fc.option(fc.record({ resistance: decade(-1, 3), capacitance: decade(-9, -2) })),
});

/** Node 1: the source; 2 after its resistance; 3 inside the coil; 4: the load; 5: within the damping. */
const circuit = (p: LowPass): Part[] => [
  ['R', 1, 2, p.source],
  ['R', 2, 3, p.coil],
  ['L', 3, 4, p.inductance],
  ['C', 4, 0, p.capacitance],
  ['R', 4, 0, p.load],
  ...(p.damping
    ? ([
        ['R', 4, 5, p.damping.resistance],
        ['C', 5, 0, p.damping.capacitance],
      ] as const)
    : []),
];
const without = (p: LowPass): Part[] => [
  ['R', 1, 2, p.source],
  ['R', 2, 0, p.load],
];
const at = (all: Complex[], node: number): Complex => all[node - 1] ?? { re: NaN, im: NaN };

describe('low-pass against the nodes of its circuit', () => {
  it('the same complex share at any frequency, for any parts', () => {
    fc.assert(
      fc.property(anyFilter, decade(0, 7), (p, f) => {
        const out = at(solve(circuit(p), p.damping ? 5 : 4, f), 4);
        const bare = at(solve(without(p), 2, f), 2).re;
        const [re, im] = response(f, p);
        const off = size({ re: re - out.re / bare, im: im - out.im / bare });
        expect(off).toBeLessThan(1e-6 * Math.max(size({ re, im }), 1e-9));
      }),
      { numRuns: 500 },
    );
  });

  it('its peak is the highest of ten thousand places, and above its crossing it never amplifies', () => {
    fc.assert(
      fc.property(anyFilter, (p) => {
        const f0 = corner(p.inductance, p.capacitance);
        const low = corner(p.inductance, p.capacitance + (p.damping?.capacitance ?? 0));
        const top = peak(p);
        const cross = crossing(p);
        for (let i = 0; i <= 10_000; i += 1) {
          const f = (low / 10) * ((f0 * 100) / low) ** (i / 10_000);
          const db = gain(f, p);
          expect(db).toBeLessThanOrEqual(top.db + 1e-6);
          if (cross !== null && f > cross) expect(db).toBeLessThanOrEqual(1e-6);
        }
        if (cross !== null) expect(Math.abs(gain(cross, p))).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('low-pass in its limits', () => {
  const light: LowPass = {
    inductance: 1e-3,
    capacitance: 1e-6,
    source: 0,
    coil: 0,
    load: 1e7,
    damping: null,
  };
  const f0 = corner(1e-3, 1e-6);

  it('without loss or load it is the ideal one', () => {
    for (const f of [100, 2000, 8000, 50_000, 1e6]) expect(gain(f, light)).toBeCloseTo(idealGain(f, f0), 4);
  });

  it('40 dB a decade far above its corner', () => {
    expect(idealGain(1e6, f0) - idealGain(1e7, f0)).toBeCloseTo(40, 2);
  });

  it('the ideal one neither gains nor loses at √2 times its corner', () => {
    expect(idealGain(amplifiesTo(f0), f0)).toBeCloseTo(0, 9);
    expect(idealGain(amplifiesTo(f0) * 0.99, f0)).toBeGreaterThan(0);
    expect(idealGain(amplifiesTo(f0) * 1.01, f0)).toBeLessThan(0);
    expect(crossing(light)).toBeCloseTo(amplifiesTo(f0), 1);
  });

  it('its peak by a load of R is Q/√(1 − 1/4Q²) with Q = R·√(C/L) (circuit theory)', () => {
    for (const q of [2, 5, 20]) {
      const top = peak({ ...light, load: q * Math.sqrt(1e-3 / 1e-6) });
      expect(top.db).toBeCloseTo(20 * Math.log10(q / Math.sqrt(1 - 1 / (4 * q * q))), 4);
      expect(top.f).toBeCloseTo(f0 * Math.sqrt(1 - 1 / (2 * q * q)), 0);
    }
  });

  it('a load below √(L/2C) leaves no peak above what arrives at 0 Hz', () => {
    const soft = { ...light, load: Math.sqrt(1e-3 / 2e-6) * 0.999 };
    expect(crossing(soft)).toBeNull();
    expect(peak(soft).db).toBeLessThan(0);
    expect(crossing({ ...soft, load: soft.load * 1.1 })).not.toBeNull();
  });

  it('between 0.1 and 100 Ω it amplifies where it attenuates between 50 and 50 Ω', () => {
    expect(insertionLoss(f0, light, 'even')).toBeGreaterThan(0);
    expect(insertionLoss(f0, light, 'low')).toBeLessThan(-5);
    expect(STATED.high).toEqual([...STATED.low].reverse());
  });

  it('damped as advised, a peak of 40 dB is left within 0.1 dB of the least that any resistor leaves', () => {
    // All resistors give the same at (f/f0)² = 2/(2 + n), n = Cd/C: there 1 − x = −(1 − (1 + n)x). That is (2 + n)/n, 5/3 for 3.
    const least = 20 * Math.log10(5 / 3);
    const bare = { ...light, coil: 0.1 };
    expect(peak(bare).db).toBeGreaterThan(40);
    const damping = dampingFor(1e-3, 1e-6);
    expect(damping.resistance).toBeCloseTo(31.623, 3);
    expect(damping.capacitance).toBeCloseTo(3e-6, 12);
    expect(Math.abs(peak({ ...bare, damping }).db - least)).toBeLessThan(0.1);
  });

  it('the multiples of a carrier', () => expect(harmonics(8000)).toEqual([8000, 16000, 24000, 32000, 40000]));
});
