import { describe, expect, it } from 'vitest';
import { feedForRoughness, feedPerMinute, finish, meanRoughness } from '../../../src/core/drive/feeds';
import { ratio, toNumber } from '../../../src/core/quantity';

describe('turning feeds', () => {
  it('per minute is per rev times rpm', () => {
    expect(feedPerMinute(ratio(1, 10), ratio(450))).toEqual(ratio(45));
  });
});

describe('theoretical finish', () => {
  it('0.2 mm/rev with a nose of 0.4 mm: 0.04 ÷ 3.2 = 12.5 µm, Ra about 3.1 µm', () => {
    const f = finish(ratio(1, 5), ratio(2, 5));
    expect(f).toEqual({ ok: true, rt: ratio(1, 80) });
    expect(meanRoughness(ratio(1, 80))).toEqual(ratio(1, 320));
  });
  it('is the height of the arc the nose leaves, to 2 % up to half the radius and 7 % at all of it', () => {
    for (const [feed, most] of [
      [0.1, 0.001],
      [0.5, 0.02],
      [1, 0.07],
    ] as const) {
      const arc = 1 - Math.sqrt(1 - (feed * feed) / 4);
      const f = finish(ratio(feed * 10, 10), ratio(1));
      if (!f.ok) throw new Error('refused');
      expect(Math.abs(toNumber(f.rt) / arc - 1)).toBeLessThan(most);
    }
  });
  it('a quarter is near the mean deviation of such arcs, integrated', () => {
    // Parabola y = x² on −1…1: height 1, mean 1/3; the mean of |y − 1/3| by the midpoint rule.
    const n = 20_000;
    let sum = 0;
    for (let i = 0; i < n; i += 1) sum += Math.abs(((i + 0.5) / n) ** 2 - 1 / 3);
    expect(sum / n).toBeCloseTo(4 / (9 * Math.sqrt(3)), 6);
    expect(Math.abs(sum / n / 0.25 - 1)).toBeLessThan(0.03);
  });
  it('refuses a feed beyond the nose radius', () => {
    expect(finish(ratio(41, 100), ratio(2, 5))).toEqual({ ok: false, refusal: 'feed-past-nose' });
    expect(finish(ratio(2, 5), ratio(2, 5)).ok).toBe(true);
  });
  it('the feed for a roughness gives that roughness back', () => {
    // Ra 3.2 µm, nose 0.8 mm: √(32 · 0.8 · 0.0032) = 0.28622 mm.
    const feed = feedForRoughness(ratio(32, 10_000), ratio(4, 5));
    expect(feed).toBeCloseTo(0.28622, 5);
    expect((feed * feed) / (8 * 0.8) / 4).toBeCloseTo(0.0032, 12);
    expect(feedForRoughness(ratio(1, 10), ratio(1, 5))).toBe(0.2);
  });
});
