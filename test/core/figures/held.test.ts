import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankJob, type Job } from '../../../src/core/job';
import { ratio, stated } from '../../../src/core/quantity';
import { is, pitchJob, sheet } from './support';

const count = (n: bigint) => stated(ratio(n), 'count');
const held = (top: bigint, bottom: bigint, job: Job) =>
  sheet({ ratioTopMax: count(top), ratioBottomMax: count(bottom) }, job).get('ratioHeld');

describe('what the controller holds', () => {
  it('is exact, close up to 20 ppm, or too much: told in whole numbers', () => {
    fc.assert(
      fc.property(fc.bigInt(60n, 999n), fc.bigInt(40n, 4000n), (hundredths, most) => {
        const job: Job = {
          ...blankJob(),
          thread: { kind: 'pitch', pitch: stated(ratio(hundredths, 100n), 'mm') },
        };
        const f = held(most, most, job);
        const fraction = f.value?.held;
        if (!fraction) throw new Error('nothing held');
        // r = (hundredths/100 ÷ 127/40) × 6400/4096 = hundredths × 40 × 25 ÷ (100 × 127 × 16).
        const [n, d] = [hundredths * 1000n, 203_200n];
        const off = fraction.top * d - fraction.bottom * n;
        const size = (off < 0n ? -off : off) * 1_000_000n;
        const expected = off === 0n ? 'within' : size <= 20n * fraction.bottom * n ? 'near' : 'over';
        expect([f.standing, f.value?.exact]).toEqual([expected, off === 0n]);
        expect(Math.sign(f.value?.ppm ?? 0)).toBe(off < 0n ? -1 : off > 0n ? 1 : 0);
      }),
    );
  });

  it('a worm with little room is too much: 22/7 for π is 402 ppm off', () => {
    // Module 1 on 8 tpi: π × 40/127 × 25/16 = π × 125/254 = 1.5461; up to 13 below, 17/11 (own calculation).
    const worm: Job = { ...blankJob(), thread: { kind: 'pitch', pitch: is('1', 'module') } };
    const f = held(99n, 12n, worm);
    expect([f.value?.held.top, f.value?.held.bottom, f.standing]).toEqual([17n, 11n, 'over']);
    expect(f.value?.ppm).toBeCloseTo((17 / 11 / (Math.PI * (125 / 254)) - 1) * 1e6, 3);
  });

  it('the nut rule follows: open it by the dial only on an exact ratio', () => {
    const rule = (top: bigint) =>
      sheet(
        { ratioTopMax: count(top), ratioBottomMax: count(99_999n) },
        {
          ...pitchJob('1'),
          thread: { kind: 'pitch', pitch: is('10', 'tpi') },
        },
      ).get('nutRule').value;
    // 10 tpi on 8 tpi: 4/5 × 25/16 = 5/4, held exactly by a top of 5 and no less.
    expect(rule(5n)).toMatchObject({ kind: 'lines', b: 4n });
    expect(rule(4n)).toMatchObject({ kind: 'keep-closed', reason: 'inexact-ratio' });
  });
});
