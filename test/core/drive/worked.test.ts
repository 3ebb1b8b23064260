import { describe, expect, it } from 'vitest';
import * as drive from '../../../src/core/drive';
import {
  fromBase,
  inBase,
  lead,
  leadFrom,
  leadNumber,
  mul,
  ONE,
  ratio,
  stated,
  toNumber,
  type Ratio,
} from '../../../src/core/quantity';

/** Worked examples by their numbers; all own calculations, so regression tests, not counted as published. */
const inch8 = inBase(stated(ratio(8), 'tpi'));
const at = (perRpm: Ratio, rpm: number): number => toNumber(mul(perRpm, rpm));

describe('rate limits', () => {
  const l = lead(ratio(3, 2));

  it('R04: 1.5 mm at 500 rpm moves the carriage 12.5 mm/s', () => {
    expect(at(drive.carriagePerRpm(l), 500)).toBe(12.5);
  });
  it('R05: 100 kHz at 6 mm on 8 tpi allows 496.09 rpm', () => {
    const per = drive.stepRatePerRpm(lead(ratio(6)), inch8, ratio(6400));
    expect(drive.highestRpm(per, ratio(100_000), ONE)).toBe(496n);
  });
  it('R06: 200 thousand edges/s at 4096 counts allow 2929.69 rpm', () => {
    expect(drive.highestRpm(drive.edgesPerRpm(ratio(4096)), ratio(200_000), ONE)).toBe(2929n);
  });
  it('R08: of 496.09, 2929.69 and 211.67 rpm the motor binds; with a margin of 0.8, 169.33', () => {
    const six = lead(ratio(6));
    const margin = ratio(4, 5);
    const step = drive.highestRpm(drive.stepRatePerRpm(six, inch8, ratio(6400)), ratio(100_000), margin);
    const motor = drive.highestRpm(drive.motorPerRpm(six, inch8, ratio(2)), ratio(800), margin);
    const edge = drive.highestRpm(drive.edgesPerRpm(ratio(4096)), ratio(200_000), margin);
    expect([step, motor, edge]).toEqual([396n, 169n, 2343n]);
  });
  it('R12: 2.36 steps a count at 1000 rpm bunch three pulses of 5 µs into 14.65 µs: 15 µs are needed', () => {
    const burst = drive.burstPerRpm(lead(ratio(59, 25)), ratio(4096));
    const pulse = ratio(5, 1_000_000);
    // Over when three pulses take longer than the interval: demand × pulse > 1.
    expect(at(mul(burst, pulse), 1000)).toBeCloseTo(15 / 14.6484375, 9);
    expect(drive.highestRpm(burst, ratio(200_000), ONE)).toBe(976n);
  });
  it('R21: which of step rate and motor speed binds does not depend on pitch', () => {
    // Usable motor rpm min(800, 60 × 100 000 ÷ 3200 = 1875) = 800: the motor binds for every lead.
    for (const mm of [ratio(1, 5), ratio(1), ratio(3, 2), ratio(12)]) {
      const motor = drive.highestRpm(drive.motorPerRpm(lead(mm), inch8, ratio(2)), ratio(800), ONE);
      const step = drive.highestRpm(drive.stepRatePerRpm(lead(mm), inch8, ratio(6400)), ratio(100_000), ONE);
      expect(motor < step).toBe(true);
    }
  });
  it('a channel is lines × pulleys, a quarter of the edges only where four are counted', () => {
    const encoder = { lines: ratio(600), spindle: ratio(60), encoder: ratio(30) };
    expect(at(drive.channelPerRpm(encoder), 1000)).toBe(20_000);
    const edges = (n: number) =>
      at(drive.edgesPerRpm(drive.countsPerRev({ ...encoder, edges: ratio(n) })), 1000);
    expect([edges(4), edges(2), edges(1)]).toEqual([80_000, 40_000, 20_000]);
  });
});

describe('stopping', () => {
  const l = lead(ratio(3, 2));
  it('S01: 1.5 mm at 500 rpm for 0.25 s is 3.125 mm; S02: at 300 rpm for 0.52 s, 3.9 mm', () => {
    expect(at(drive.stoppingPerRpm(l, ratio(1, 4), ONE), 500)).toBe(3.125);
    expect(at(drive.stoppingPerRpm(l, ratio(52, 100), ONE), 300)).toBeCloseTo(3.9, 12);
  });
  it('S04, S05: 2.5 mm of room at 0.5 s allow 200 rpm, with a safety factor of 1.5 133.33', () => {
    const highest = (sf: Ratio) =>
      drive.highestRpm(drive.stoppingPerRpm(l, ratio(1, 2), sf), ratio(5, 2), ONE);
    expect([highest(ONE), highest(ratio(3, 2))]).toEqual([200n, 133n]);
  });
});

describe('gearing', () => {
  it('G09: a step on 8 tpi with 6400 steps is 0.49609375 µm', () => {
    expect(toNumber(mul(inch8, ratio(1000, 6400)))).toBe(0.49609375);
  });
  it('G11: module 1 on 3 mm is 1.30899694 steps a count', () => {
    const worm = leadFrom(stated(ONE, 'module'));
    expect(leadNumber(drive.stepsPerCount(worm, ratio(3), ratio(6000), ratio(4800)))).toBeCloseTo(
      1.3089969389957472,
      12,
    );
  });
  it('O09: 1.5 mm on 8 tpi needs 60 to 127 between spindle and screw', () => {
    expect(drive.stepsPerSpindleRev(ratio(3, 2), inch8, ONE)).toEqual(ratio(60, 127));
  });
  it('11 1/2 tpi comes back from its lead as 11 1/2', () => {
    expect(fromBase(leadFrom(stated(ratio(23, 2), 'tpi')).mm, 'tpi')).toEqual(ratio(23, 2));
  });
});

describe('the integer rule with the exact fraction loses nothing', () => {
  it('375/508 over 1000 revs of 4096 counts: the whole steps of the exact product', () => {
    let [acc, steps] = [0, 0];
    const r = drive.stepsPerCount(lead(ratio(3, 2)), inch8, ratio(6400), ratio(4096)).mm;
    const [num, den] = [Number(r.n), Number(r.d)];
    for (let count = 0; count < 4096 * 1000; count += 1) {
      acc += num;
      if (acc >= den) {
        acc -= den;
        steps += 1;
      }
    }
    // 1000 revs of 1.5 mm on 3.175 mm and 6400 steps: 3 023 622.05 steps.
    expect(steps).toBe(Math.floor((1000 * 1.5 * 6400) / 3.175));
  });
});
