import { describe, expect, it } from 'vitest';
import { threadById, type Thread } from '../../src/core/thread';
import { chooseWires, helixOf, overWiresWindow, wireSizes } from '../../src/core/thread/wires';

const known = (id: string): Thread => {
  const t = threadById(id);
  if (!t) throw new Error(id);
  return t;
};

describe('window over wires for a class', () => {
  it('1/4-20 UNC 2A, E 0.2127 to 0.2164 in (ASME B1.1): 0.2561 to 0.2598 over 0.0289, lead term on top', () => {
    const w = overWiresWindow(known('unc:1/4-20'), '2A', 0.0289 * 25.4);
    if (!w.ok) throw new Error(w.refusal);
    // H28 lead term, ½ W tan²B cos A cot A with tan B = 0.05/(π 0.2164): 0.0001 in.
    const term = 0.5 * 0.0289 * (0.05 / (Math.PI * 0.2164)) ** 2 * 1.5;
    expect((w.min ?? 0) / 25.4).toBeCloseTo(0.2561 + term, 4);
    expect((w.max ?? 0) / 25.4).toBeCloseTo(0.2598 + term, 4);
    expect(w.clear).toBe(true);
  });

  it('M10×1.5 6g, E 8.862 to 8.994 (ISO 965-2), over 0.866', () => {
    const w = overWiresWindow(known('iso-coarse:M10'), '6g', 0.866);
    if (!w.ok) throw new Error(w.refusal);
    // M = E + 3 W − 0.866025 P by H28, plus its lead term of 0.0018.
    expect(w.min).toBeCloseTo(8.862 + 2.598 - 1.2990381 + 0.0018, 3);
    expect(w.max).toBeCloseTo(8.994 + 2.598 - 1.2990381 + 0.0018, 3);
    expect(overWiresWindow(known('iso-coarse:M10'), '6g', 0.6)).toMatchObject({ ok: true, clear: false });
  });

  it('refuses what wires can’t do, with the reason', () => {
    const m10 = known('iso-coarse:M10');
    expect(overWiresWindow(m10, '6H', 0.866)).toEqual({ ok: false, refusal: 'internal-thread' });
    expect(overWiresWindow(m10, '6z', 0.866).ok).toBe(false);
    expect(overWiresWindow(m10, '6g', 0)).toEqual({ ok: false, refusal: 'not-positive' });
    const taper = { ...m10, taper: { value: m10.pitch.value, unit: 'times' } } as const;
    expect(overWiresWindow(taper, '6g', 0.866)).toEqual({ ok: false, refusal: 'taper-thread' });
  });
});

describe('wires for a thread', () => {
  it.each([
    // Best wires: 0.57735 P (ISO), 0.56369 P (BS 84), 0.54626 P (BS 93), as handbooks give the constants.
    ['iso-coarse:M10', 0.57735 * 1.5],
    ['bsw:1/2-12', (0.56369 * 25.4) / 12],
    ['ba:2', 0.54626 * 0.81],
  ])('%s', (id, best) => {
    expect(wireSizes(known(id))?.best).toBeCloseTo(best, 4);
  });

  it('drill shanks that a shop has: for M10 a 0.9 drill, for 1/2 Whitworth a 1.2', () => {
    const shanks = [0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.5].map((diameter) => ({
      id: `${diameter}`,
      diameter,
      measured: true,
      count: 3,
    }));
    const first = (id: string): string | undefined => {
      const thread = known(id);
      const sizes = wireSizes(thread);
      if (!sizes?.range) throw new Error('no range');
      const half = id.startsWith('bsw') ? 27.5 : 30;
      const pitch = id.startsWith('bsw') ? 25.4 / 12 : 1.5;
      return chooseWires(half, pitch, sizes.range, shanks)[0]?.wire.id;
    };
    expect(first('iso-coarse:M10')).toBe('0.9');
    expect(first('bsw:1/2-12')).toBe('1.2');
  });
});

describe('lead angle of a thread', () => {
  it.each([
    // M10×1.5 at d2 9.026: 3.03° (worked from tan λ = P/(π d2)); 1/4-20: 4°11′, 1/2-13: 3°7′ (ASME B1.1 tables, from memory).
    ['iso-coarse:M10', 3.028],
    ['unc:1/4-20', 4 + 11 / 60],
    ['unc:1/2-13', 3 + 7 / 60],
  ])('%s: %s°', (id, angle) => {
    expect(Math.abs((helixOf(known(id))?.pitch ?? 0) - angle)).toBeLessThan(0.51 / 60);
  });

  it('two starts double the tangent', () => {
    const one = known('iso-coarse:M10');
    const tan = (t: Thread): number => Math.tan(((helixOf(t)?.pitch ?? 0) * Math.PI) / 180);
    expect(tan({ ...one, starts: 2 }) / tan(one)).toBeCloseTo(2, 12);
  });
});
