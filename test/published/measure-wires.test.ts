import { describe, expect, it } from 'vitest';
import {
  bestWire,
  overWires,
  pitchDiameterFromReading,
  pitchDiameterOverWires,
  wireRange,
  wireStandsOff,
  type WireThread,
} from '../../src/core/thread/wires';

/** A single-start inch thread of the given half angle. */
const inch = (half: number, tpi: number, starts = 1): WireThread => ({
  half,
  pitch: 1 / tpi,
  lead: starts / tpi,
});
const H60 = Math.sqrt(3) / 2;

describe('best wire', () => {
  it('29°, 5 tpi: 0.10329 (technical college sheet for 1 1/4-5 Acme)', () => {
    expect(bestWire(14.5, 0.2)).toBeCloseTo(0.10329, 5);
  });

  it('55°: 0.563692 P (gauge maker’s table, 2015)', () => {
    // The exact figure is 0.56369097; the table's last digit is one high.
    expect(Math.abs((bestWire(27.5, 1) ?? 0) - 0.563692)).toBeLessThan(0.0000015);
  });
});

describe('range of wires', () => {
  it('55°: least 0.50568 P (gauge maker’s table, 2015): the wire level with the crest', () => {
    expect(wireRange(27.5, 1, 0.640327 / 2, 0.640327 / 2, 0.137329)?.least).toBeCloseTo(0.50568, 5);
  });
});

describe('constants without lead', () => {
  // W and P factors of BS 93 (47.5°), ISO 2901 (30°) and ASME B1.5 (29°) as handbooks print them.
  it.each([
    [23.75, 3.48295, 1.136336],
    [15, 4.8637, 1.866025],
    [14.5, 4.99393, 1.933357],
  ])('half angle %s°: %s W − %s P', (half, w, p) => {
    const none = wireStandsOff({ half, pitch: 1, lead: 1 }, 0.5);
    const more = wireStandsOff({ half, pitch: 1, lead: 1 }, 0.6);
    expect((more - none) / 0.1).toBeCloseTo(w, 4);
    expect(0.5 * w - none).toBeCloseTo(p, 4);
  });
});

describe('size over wires, lead left out as the tables do', () => {
  const without = (t: WireThread, e: number, w: number): number => {
    const m = overWires(t, e, w, 'series');
    if (!m.ok) throw new Error(m.refusal);
    return m.withoutLead;
  };
  it('1 1/2-6 over 0.140: 1.6674 (F. D. Jones, Turning and Boring, 1914)', () => {
    expect(without(inch(30, 6), 1.5 - (0.75 * H60) / 6, 0.14)).toBeCloseTo(1.6674, 4);
  });
  it('Whitworth 1-8 over 0.090: 1.0848 (Machinery’s Handbook 31, p. 2131)', () => {
    expect(without(inch(27.5, 8), 1 - 0.640327 / 8, 0.09)).toBeCloseTo(1.0848, 4);
  });
  it('Whitworth 1/2-12 over 0.050: 0.5249 (Machinery’s Handbook 31, p. 2131)', () => {
    expect(without(inch(27.5, 12), 0.5 - 0.640327 / 12, 0.05)).toBeCloseTo(0.5249, 4);
  });
  it('7/16-14 over 0.045: 0.464 (a model engineering society’s sheet)', () => {
    expect(without(inch(30, 14), 7 / 16 - (0.75 * H60) / 14, 0.045)).toBeCloseTo(0.464, 3);
  });
  it('1/4-20 UNC 2A, E 0.2127 to 0.2164 (ASME B1.1), over 0.0289: 0.2561 to 0.2598', () => {
    expect(without(inch(30, 20), 0.2127, 0.0289)).toBeCloseTo(0.2561, 4);
    expect(without(inch(30, 20), 0.2164, 0.0289)).toBeCloseTo(0.2598, 4);
  });
});

describe('large lead angles', () => {
  // Machinery's Handbook 31, p. 2136, Acme with lead angles above 5°: for an axial pitch of 1 in, the wire and
  // the amount added to the pitch diameter. Printed wires are rounded to five places, which moves the amount
  // by up to 0.000025; the largest difference left, at 7°, is 0.00008.
  const cases = [
    [5, 1, 0.5145, 0.64311],
    [5, 2, 0.51443, 0.6429],
    [5.5, 1, 0.51411, 0.64261],
    [5.5, 2, 0.51401, 0.64233],
    [6, 1, 0.51368, 0.64207],
    [6.5, 1, 0.5132, 0.64147],
    [7, 1, 0.5127, 0.64085],
    [11, 2, 0.50707, 0.63313],
    [11.5, 2, 0.50623, 0.63206],
    [11.5, 3, 0.50597, 0.63126],
    [12, 3, 0.50507, 0.63006],
  ] as const;
  const ask = (b: number, starts: number, wire: number, how?: 'series'): number => {
    const e = starts / Math.PI / Math.tan((b * Math.PI) / 180);
    const m = overWires(inch(14.5, 1, starts), e, wire, how);
    if (!m.ok) throw new Error(m.refusal);
    return m.over - e;
  };
  it.each(cases)('B %s°, %s starts, wire %s: E + %s', (b, starts, wire, printed) => {
    expect(Math.abs(ask(b, starts, wire) - printed)).toBeLessThan(0.00009);
  });
  it('the series would be out by more than ten times that at 11.5°, three starts', () => {
    expect(ask(11.5, 3, 0.50597, 'series') - 0.63126).toBeGreaterThan(0.001);
  });
});

describe('from a reading', () => {
  it('M10×1.5 read 10.520 over 0.8660 wires: pitch diameter 9.2191, 0.2914 above the 6g middle (worked by H28)', () => {
    const r = pitchDiameterFromReading(
      { half: 30, pitch: 1.5, lead: 1.5 },
      { kind: 'over', over: { value: 10.52, u: 0.003 } },
      { value: 0.866, u: 0.001 },
    );
    if (!r.ok) throw new Error(r.refusal);
    expect(r.pitchDiameter).toBeCloseTo(9.2193, 3);
    // u² = u²(M) + 9 u²(W): the textbook propagation for 60° wires of one set.
    expect(r.u).toBeCloseTo(Math.hypot(0.003, 3 * 0.001), 5);
  });

  it('M10×1.5 at basic pitch diameter over best wires: lead term 1.7 to 1.8 µm (H28 term 1.82)', () => {
    const m = overWires({ half: 30, pitch: 1.5, lead: 1.5 }, 9.0257, 1.5 / (2 * Math.cos(Math.PI / 6)));
    expect(m.ok && m.seriesTerm).toBeCloseTo(0.001818, 6);
    expect(m.ok && m.over).toBeCloseTo(10.3265, 4);
  });

  it('the printed 1/2-13 size over 0.050 wires gives back its pitch diameter, lead term and all', () => {
    const e = pitchDiameterOverWires(inch(30, 13), 0.5334, 0.05);
    expect(e).toBeCloseTo(0.45 - 0.0001, 4); // basic 0.4500 (ASME B1.1) less a lead term of 0.0001
  });
});
