import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as drive from '../../../src/core/drive';
import { compare, div, lead, mul, ratio, toNumber } from '../../../src/core/quantity';

const inch8 = ratio(127, 40);

/** Own calculations, from the formulas of quadrature counting and belt drives: regression tests. */
describe('rates at a speed', () => {
  const at = (perRpm: ReturnType<typeof ratio>, rpm: number): number => toNumber(mul(perRpm, rpm));
  it('4096 counts at 1000 rpm: 68.27 thousand edges, 17.07 kHz a channel', () => {
    expect(at(drive.edgesPerRpm(ratio(4096)), 1000)).toBeCloseTo(68266.667, 2);
    const channel = drive.channelPerRpm({ lines: ratio(1024), spindle: ratio(1), encoder: ratio(1) });
    expect(at(channel, 1000)).toBeCloseTo(17066.667, 2);
  });
  it('1.5 mm on 8 tpi at 500 rpm: 25 197 steps/s, motor 472 rpm, carriage 12.5 mm/s', () => {
    const l = lead(ratio(3, 2));
    expect(at(drive.stepRatePerRpm(l, inch8, ratio(6400)), 500)).toBeCloseTo(25196.8504, 3);
    expect(at(drive.motorPerRpm(l, inch8, ratio(2)), 500)).toBeCloseTo(472.4409, 3);
    expect(at(drive.carriagePerRpm(l), 500)).toBe(12.5);
  });
  it('travel in the whole stopping time: 1.5 mm at 200 rpm in 0.5 s is 2.5 mm', () => {
    expect(at(drive.stoppingPerRpm(lead(ratio(3, 2)), ratio(1, 2), ratio(1)), 200)).toBe(2.5);
  });
  it('pulse times of 5 µs each allow 100 kHz', () => {
    expect(drive.pulseRate(ratio(5, 1_000_000), ratio(5, 1_000_000))).toEqual(ratio(100_000));
  });
});

describe('bursts', () => {
  it('2.36 steps a count at 1000 rpm: three pulses in one edge interval are 204.8 kHz, more than 200', () => {
    // Average 161 kHz would fit; the burst does not.
    const r = lead(ratio(236, 100));
    const burst = toNumber(mul(drive.burstPerRpm(r, ratio(4096)), 1000));
    expect(burst).toBeCloseTo(204_800, 6);
    expect(toNumber(mul(drive.edgesPerRpm(ratio(4096)), r.mm, 1000))).toBeCloseTo(161_109.3, 0);
  });

  /** Pulses one by one as the integer rule emits them: the closest two counts at which steps fall. */
  const closest = (num: number, den: number): { gap: number; most: number } => {
    let [acc, last, gap, most] = [0, -Infinity, Infinity, 0];
    for (let count = 0; count < 4 * den; count += 1) {
      acc += num;
      let emitted = 0;
      while (acc >= den) {
        acc -= den;
        emitted += 1;
      }
      if (emitted > 0) {
        gap = Math.min(gap, count - last);
        last = count;
      }
      most = Math.max(most, emitted);
    }
    return { gap, most };
  };
  it('agree with the pulses of the integer rule, counted one by one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 120 }), (num, den) => {
        const crowd = div(drive.burstPerRpm(lead(ratio(num, den)), ratio(60)), 1);
        const { gap, most } = closest(num, den);
        if (num > den) expect(crowd).toEqual(ratio(most));
        // The interval between pulses is never shorter than the model says.
        else expect(compare(crowd, ratio(1, gap))).not.toBe(-1);
      }),
    );
  });
});

describe('the highest speed within a limit', () => {
  it('really is within it, and one more is not', () => {
    const part = fc
      .tuple(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 1e4 }))
      .map(([n, d]) => ratio(n, d));
    fc.assert(
      fc.property(part, part, (perRpm, limit) => {
        const margin = ratio(4, 5);
        const rpm = drive.highestRpm(perRpm, limit, margin);
        expect(compare(mul(perRpm, rpm), mul(limit, margin))).not.toBe(1);
        expect(compare(mul(perRpm, rpm + 1n), mul(limit, margin))).toBe(1);
      }),
    );
  });
});
