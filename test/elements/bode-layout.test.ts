import { describe, expect, it } from 'vitest';
import { corner, gain, sweep, type LowPass } from '../../src/core/wiring';
import { layout, type BodeData } from '../../src/elements/bode-layout';

const part: LowPass = {
  inductance: 1e-3,
  capacitance: 1e-6,
  source: 0.1,
  coil: 0,
  load: 100,
  damping: null,
};
const f0 = corner(1e-3, 1e-6);
const data = (marks: readonly number[], named: BodeData['named'] = []): BodeData => ({
  ...sweep(f0, part, marks),
  named,
  marks,
  tick: (f) => `${f} Hz`,
});
const points = (path: string) =>
  [...path.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const);

describe('Bode plot', () => {
  it('goes a decade either side of the corner and as far as the marks, in whole decades', () => {
    expect(sweep(f0, part, [])).toMatchObject({ from: 100, to: 100_000 });
    expect(sweep(f0, part, [50, 2_000_000])).toMatchObject({ from: 10, to: 10_000_000 });
    expect(sweep(1000, part, [])).toMatchObject({ from: 100, to: 10_000 });
  });
  it('shows the whole peak, up to 60 dB', () => {
    expect(sweep(f0, part, []).high).toBe(20);
    expect(sweep(f0, { ...part, source: 0.001, load: 1e5 }, []).high).toBe(60);
  });
  it('has each point of the curve where a log scale puts it', () => {
    const p = layout(data([]), 358, 18);
    const { left, right, top, bottom } = p.frame;
    const drawn = points(p.real);
    expect(drawn.length).toBeGreaterThan(200);
    for (const [x, y] of drawn) {
      const f = 100 * 1000 ** ((x - left) / (right - left));
      const db = 20 - ((y - top) / (bottom - top)) * 100;
      expect(Math.abs(db - gain(f, part))).toBeLessThan(0.6);
    }
    expect(p.zero).toBeCloseTo(top + (bottom - top) / 5, 6);
    expect(p.decades.map((d) => d.text)).toEqual(['100 Hz', '1000 Hz', '10000 Hz', '100000 Hz']);
    expect(p.gains.map((g) => g.text)).toEqual(['20', '0', '−20', '−40', '−60', '−80']);
  });
  it.each([288, 358, 736])('keeps the names on a drawing %d wide, and no line through one below', (width) => {
    for (const carrier of [300, 2000, 4500, 8000, 16_000, 90_000]) {
      const named = [
        { f: f0, text: 'Corner 5.03 kHz' },
        { f: carrier, text: 'Carrier 90 kHz' },
      ];
      const p = layout(data([carrier], named), width, 18);
      // A bold letter of 18 px is about 10.5 px wide in the mean.
      const ends = p.named.map(({ x, text }) => [x, x + text.length * 10.5] as const);
      for (const [from, to] of ends) expect([from >= 0, to <= width]).toEqual([true, true]);
      const [first, second] = [p.named[0], ends[1]];
      if (first && second) {
        const through = first.at > second[0] && first.at < second[1];
        expect([carrier, through]).toEqual([carrier, false]);
      }
    }
  });
});
