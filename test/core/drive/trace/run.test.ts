import { describe, expect, it } from 'vitest';
import { runTrace, Trace, type TraceResult, type TraceSpec } from '../../../../src/core/drive/trace';
import { EVERYTHING, spec } from './support';

/** Closed forms of the chain: domain physics, each beside its test. Lengths in mm. */
const run = (s: TraceSpec): TraceResult => {
  const r = runTrace(s);
  if (!r.ok) throw new Error(`${r.refusal.code} ${r.refusal.field}`);
  return r.result;
};
const STEP = 3.175 / 6400;
/** Mean error over the last tenth of the drawing, and over a piece of it. */
const meanOver = (r: TraceResult, from: number, to: number): number => {
  const part = r.buckets.mean.slice(Math.floor(r.buckets.count * from), Math.floor(r.buckets.count * to));
  return part.reduce((a, b) => a + b, 0) / part.length;
};

describe('the exact controller', () => {
  it('has sent floor(counts × ratio) steps at every count', () => {
    const trace = new Trace(spec());
    // 375/508 in BigInt; the pieces are of all lengths, so every count of some turns is looked at.
    for (let more = 1; !trace.advance(more); more = 1 + ((more * 7) % 61)) {
      expect(BigInt(trace.steps)).toBe((BigInt(trace.done) * 375n) / 508n);
    }
    expect(trace.steps).toBe(Math.floor((20 * 4096 * 375) / 508));
  });

  it('is never off by more than a step, and by nothing that grows', () => {
    const r = run(spec());
    expect(Math.max(...r.buckets.max)).toBeLessThanOrEqual(1e-9);
    expect(Math.min(...r.buckets.min)).toBeGreaterThan(-STEP - 1e-9);
    expect(Math.abs(r.cumulative)).toBeLessThan(STEP / 100);
    expect(r.spread).toBeLessThan(STEP / 20);
  });

  it('runs the same in one piece and in many', () => {
    const s = spec(EVERYTHING);
    const pieces = new Trace(s);
    while (!pieces.advance(1000));
    const whole = run(s);
    // The hands are set anew for each piece: equal to rounding, not to the bit.
    expect(pieces.result().spread).toBeCloseTo(whole.spread, 7);
    expect(pieces.result().lost).toEqual(whole.lost);
  });
});

describe('number formats', () => {
  it('a float32 running sum loses 386 steps in 100 revs of 4096 counts', () => {
    const trace = new Trace(
      spec({ format: { kind: 'float32-sum', ratio: Math.fround(375 / 508) } }, { length: 150 }),
    );
    trace.advance(Infinity);
    // s = fround(s + fround(375/508)) 409600 times gives 301976.28125 against 302362.2047 (worked example G21).
    expect(trace.steps).toBe(301_976);
    const off = (trace.result().cumulative / (99 * 1.5)) * 1e6;
    // Grows with the binades: worse towards the end than on the mean (−1276 ppm).
    expect(off).toBeLessThan(-1200);
  });

  it('738/1000 instead of 375/508 is −256 ppm', () => {
    const r = run(spec({ format: { kind: 'fraction', top: 738, bottom: 1000 } }, { length: 150 }));
    // 0.738 × 508 ÷ 375 − 1.
    expect((r.cumulative / (r.between * 1.5)) * 1e6).toBeCloseTo(-256, 0);
  });

  it('a float32 product of few counts is as good as exact', () => {
    const r = run(spec({ format: { kind: 'float32-product', ratio: Math.fround(375 / 508) } }));
    expect(r.spread).toBeLessThan(STEP / 10);
  });

  it('whole steps a rev, set right at the index, swing once a rev and do not grow', () => {
    // 3023.622 steps a rev kept as 3024: 0.378 of a step too many by the end of a rev.
    const perRev = (4096 * 375) / 508;
    const r = run(spec({ format: { kind: 'rev-count', perRev, counts: 4096 } }, { length: 75 }));
    expect(r.drunkenness ?? 0).toBeGreaterThan(0.3 * STEP);
    expect(Math.abs(r.cumulative)).toBeLessThan(2 * STEP);
  });
});

describe('encoder', () => {
  it('eccentricity e on radius R gives ± L·e ÷ (2πR), once a turn, and nothing from turn to turn', () => {
    const r = run(spec({ eccentricity: { offset: 0.05, radius: 20, perRev: 1 } }));
    const half = (1.5 * 0.05) / (2 * Math.PI * 20);
    // A mean over a 32nd of a turn takes half a per cent off a swing: sin(x)/x at x = π/32.
    expect(r.drunkenness ?? 0).toBeGreaterThan(2 * half * 0.985);
    expect(r.drunkenness ?? 0).toBeLessThan(2 * half + STEP);
    expect(Math.abs(r.cumulative)).toBeLessThan(STEP / 10);
  });

  it('a wheel that turns twice a rev on the same radius gives half of it, twice a turn', () => {
    const r = run(spec({ eccentricity: { offset: 0.05, radius: 20, perRev: 2 } }));
    const half = (1.5 * 0.05) / (2 * Math.PI * 20) / 2;
    expect(r.drunkenness ?? 0).toBeGreaterThan(2 * half * 0.96);
    expect(r.drunkenness ?? 0).toBeLessThan(2 * half + STEP);
  });

  it('a phase error moves every second count by φ ÷ 90 of a count, and adds up to nothing', () => {
    const r = run(spec({ phase: { degrees: 45 } }));
    const count = 1.5 / 4096;
    const plain = run(spec());
    // Odd counts come half a count late: the tool is half a count's travel short there.
    expect(Math.min(...r.buckets.min)).toBeCloseTo(Math.min(...plain.buckets.min) - count / 2, 5);
    expect(Math.abs(r.cumulative)).toBeLessThan(STEP / 10);
  });

  it('each missed count is L ÷ C lost for good, each doubled one gained', () => {
    const missed = run(spec({ miscounts: { missed: 500, extra: 0 } }, { length: 150 }));
    // 409600 counts at 500 in a million: 205 ± 3 × √205.
    expect(missed.lost.missed).toBeGreaterThan(160);
    expect(missed.lost.missed).toBeLessThan(250);
    const count = 1.5 / 4096;
    expect(-missed.cumulative / count).toBeGreaterThan(missed.lost.missed * 0.97);
    expect(-missed.cumulative / count).toBeLessThan(missed.lost.missed + 1);
    const extra = run(spec({ miscounts: { missed: 0, extra: 500 } }, { length: 150 }));
    expect(extra.cumulative / count).toBeGreaterThan(extra.lost.extra * 0.97);
  });

  it('is the same for the same seed and another for another', () => {
    const on = { miscounts: { missed: 500, extra: 100 } };
    expect(run(spec(on)).lost).toEqual(run(spec(on)).lost);
    expect(run({ ...spec(on), seed: 2 }).lost).not.toEqual(run(spec(on)).lost);
  });
});

describe('lag', () => {
  const servo = { kind: 'servo', gain: 30, damping: 1, acceleration: null } as const;

  it('at constant speed is v ÷ K and no error of pitch', () => {
    const r = run(spec({ motor: servo }, { runIn: 6 }));
    // 200 rpm × 1.5 mm: 5 mm/s; over 30/s: 0.1667 mm.
    expect(r.lag).toBeCloseTo(5 / 30, 3);
    expect(Math.abs(r.cumulative)).toBeLessThan(STEP / 5);
  });

  it('at 200 rpm against 100 rpm shifts the groove by Δv ÷ K = 0.083 mm', () => {
    const at = (rpm: number) => run(spec({ motor: servo }, { rpm, runIn: 6 })).lag;
    expect(at(200) - at(100)).toBeCloseTo(0.083, 3);
  });

  it('when the speed falls within a thread shifts the groove by Δv ÷ K', () => {
    // From 400 rpm to 200 in 2 s, 15 mm; then steady.
    const r = run(spec({ motor: servo, ramp: { from: 2, seconds: 2 } }, { runIn: 0, length: 60 }));
    // Settled at 400 rpm it begins 10/30 behind.
    expect(meanOver(r, 0.9, 1)).toBeCloseTo(-5 / 30 - STEP / 2, 3);
    expect(r.buckets.mean[0]).toBeCloseTo(-10 / 30, 2);
  });

  it('run-in: a first-order lag of T leaves a part a of the pitch error after T·v·(ln(1/a) − 1)', () => {
    // Far from its swing a well damped follower is first order with T = 1/K. Domain R18: the constant for 1 % is 3.605
    // counted from where the lag is taken off; by time that is ln(100) × T = 4.605 T.
    const stiff = { kind: 'servo', gain: 30, damping: 8, acceleration: null } as const;
    const r = run(spec({ motor: stiff, ramp: { from: 0, seconds: 0.001 } }, { length: 9 }));
    const v = 5;
    const T = 1 / 30;
    const at = Math.floor(((4.605 * T * v) / 9) * r.buckets.count);
    const lag = -(r.buckets.mean[at] ?? 0);
    expect(lag / (v * T)).toBeGreaterThan(0.975);
    expect(lag / (v * T)).toBeLessThan(0.995);
  });

  it('a controller that acts τ late is v·τ behind and true to pitch', () => {
    const r = run(spec({ timing: { period: 0, latency: 0.01 } }, { runIn: 3 }));
    const plain = run(spec({}, { runIn: 3 }));
    expect(meanOver(r, 0.2, 1) - meanOver(plain, 0.2, 1)).toBeCloseTo(-5 * 0.01, 3);
    expect(Math.abs(r.cumulative)).toBeLessThan(STEP);
  });

  it('one that looks every T is half of T behind on the mean', () => {
    const r = run(spec({ timing: { period: 0.004, latency: 0 } }, { runIn: 3 }));
    const plain = run(spec({}, { runIn: 3 }));
    expect(meanOver(r, 0.2, 1) - meanOver(plain, 0.2, 1)).toBeCloseTo((-5 * 0.004) / 2, 3);
  });

  it('speed ripple alone, without a lag, is no error at all; with one it is', () => {
    const ripple = { amount: 0.1, perRev: 2 };
    expect(run(spec({ ripple })).spread).toBeLessThan(STEP / 10);
    const r = run(spec({ ripple, motor: servo }, { runIn: 6 }));
    // A swing of speed at w through 1/(1 + jw/2K)² of a critically damped follower: its lag swings by
    // v·a/w·|1 − H|. w = 2 × 20.94 = 41.9/s, H at w/60: |1 − 1/(1 + 0.698j)²| = 1.0500…
    const w = 2 * ((200 / 60) * 2 * Math.PI);
    const x = w / 60;
    const d = (1 + x * x) ** 2;
    const [re, im] = [1 - (1 - x * x) / d, (2 * x) / d];
    const swing = (2 * 0.1 * 5 * Math.hypot(re, im)) / w;
    expect((r.drunkenness ?? 0) / swing).toBeGreaterThan(0.96);
    expect((r.drunkenness ?? 0) / swing).toBeLessThan(1.04);
  });
});

describe('output', () => {
  const fast = { rpm: 1000, length: (59 / 25) * 20, lead: 59 / 25, screwLead: 4, steps: 4 * 4096 };
  const bunched = (rpm: number) =>
    run({
      ...spec({ output: { rate: 200_000, acceleration: null, full: 'lose' } }, { ...fast, rpm }),
      exact: { top: 59, bottom: 25 },
    });

  it('R12: three steps of 5 µs do not fit into 14.65 µs: one is lost of each three', () => {
    const r = bunched(1000);
    const counts = 20 * 4096;
    // 2.36 steps a count: 36 counts in a hundred ask for three.
    expect(r.lost.output).toBeGreaterThan(counts * 0.36 - 2);
    expect(r.lost.output).toBeLessThanOrEqual(Math.ceil(counts * 0.36));
    expect(r.cumulative / (r.between * fast.lead)).toBeCloseTo(-0.36 / 2.36, 2);
  });
  it('at 976 rpm they fit', () => {
    expect(bunched(976).lost.output).toBe(0);
  });
  it('steps that may wait are not lost while the mean rate has room', () => {
    const r = run({
      ...spec({ output: { rate: 200_000, acceleration: null, full: 'wait' } }, fast),
      exact: { top: 59, bottom: 25 },
    });
    // 161 thousand steps/s of 200 thousand.
    expect(r.lost.output).toBe(0);
    expect(Math.abs(r.cumulative)).toBeLessThan(0.001);
  });
  it('a rate below the mean falls behind by the difference, for ever', () => {
    const r = run(spec({ output: { rate: 9000, acceleration: null, full: 'wait' } }));
    // 3023.6 steps a rev at 200 rpm: 10 079 steps/s wanted, 9000 sent.
    expect(r.cumulative / (r.between * 1.5)).toBeCloseTo(9000 / 10_078.74 - 1, 3);
  });
  it('a limited acceleration loses nothing and catches up', () => {
    const r = run(spec({ output: { rate: 100_000, acceleration: 50_000, full: 'wait' } }, { runIn: 6 }));
    expect(r.lost.output).toBe(0);
    expect(Math.abs(r.cumulative)).toBeLessThan(3 * STEP);
  });
});

describe('stepper', () => {
  const motor = { kind: 'stepper', natural: 80, damping: 0.3, fullStep: 16, corner: null, load: 0 } as const;
  it('stands asin(load) behind under a load, and keeps its pitch', () => {
    const ramp = { from: 0, seconds: 0.3 };
    const lag = (load: number) => run(spec({ motor: { ...motor, load }, ramp }, { runIn: 6 })).lag;
    // A quarter of the electrical cycle is a full step of 16: asin(0.3) is 3.1 steps.
    expect((lag(0.3) - lag(0)) / STEP).toBeCloseTo((Math.asin(0.3) * 32) / Math.PI, 0);
    expect(run(spec({ motor: { ...motor, load: 0.3 }, ramp }, { runIn: 6 })).spread).toBeLessThan(2 * STEP);
  });
  it('pulled out it falls back by whole electrical cycles of four full steps', () => {
    const r = run(spec({ motor: { ...motor, corner: 3000, load: 0.5 }, ramp: { from: 0, seconds: 0.3 } }));
    // Torque is halved at 6000 steps/s, and 10 079 are asked.
    expect(r.lost.motor).toBeGreaterThan(0);
    expect(r.lost.motor % 64).toBe(0);
  });
  it('started at full speed without a ramp it can lose its steps, with one it does not', () => {
    const jump = run(
      spec({ motor: { ...motor, damping: 0.05 }, ramp: { from: 0, seconds: 0.001 } }, { rpm: 400 }),
    );
    const soft = run(spec({ motor, ramp: { from: 0, seconds: 0.5 } }, { rpm: 400, length: 60 }));
    expect(jump.lost.motor).toBeGreaterThan(0);
    expect(soft.lost.motor).toBe(0);
  });
});

describe('screw and nut', () => {
  it('a cyclic error shows in full, once a screw rev, and 0.03 mm in 300 as 100 ppm', () => {
    const r = run(spec({ screw: { cyclic: 0.01, per300: 0 } }));
    expect(r.spread).toBeGreaterThan(0.0195);
    expect(r.spread).toBeLessThan(0.02 + STEP);
    const long = run(spec({ screw: { cyclic: 0, per300: 0.03 } }, { length: 150 }));
    expect((long.cumulative / (long.between * 1.5)) * 1e6).toBeCloseTo(100, 0);
  });

  it('backlash shows only after a reversal, and only until it is taken up', () => {
    const with_ = (takenUp: boolean, runIn: number) =>
      run(spec({ backlash: { play: 0.12, takenUp } }, { runIn }));
    expect(with_(true, 0).spread).toBeLessThan(STEP / 10);
    // 0.12 mm at 1.5 mm is 28.8° (worked example C10): by 3 pitches it is long gone.
    expect(with_(false, 4.5).spread).toBeLessThan(STEP / 10);
    const short = with_(false, 0);
    expect(Math.max(...short.buckets.max)).toBeCloseTo(0.12 - 1.5 / 4096, 2);
    const gone = short.buckets.max.findIndex((e) => e < STEP);
    expect(gone * short.sector * short.buckets.width).toBeGreaterThan(0.1);
    expect(gone * short.sector * short.buckets.width).toBeLessThan(0.2);
  });
});

describe('what a nut feels', () => {
  it('of an even error of 1000 ppm over 12 mm: 12 µm', () => {
    const r = run(spec({ screw: { cyclic: 0, per300: 0.3 } }, { length: 60, engagement: 12 }));
    // Between the middles of the first and the last of 8 × 32 sectors.
    expect(r.nut).toBeCloseTo((0.012 * 255) / 256, 3);
    expect(r.over60).toBeCloseTo(0.06, 3);
  });
});

describe('bounds', () => {
  it.each([
    [spec({}, { rpm: 0 }), 'rpm'],
    [spec({}, { rpm: NaN }), 'rpm'],
    [spec({}, { length: 1e5, counts: 1e6 }), 'length'],
    [spec({}, { length: 1 }), 'length'],
    [spec({ ripple: { amount: 0.9, perRev: 1 } }), 'ripple.amount'],
    [spec({ eccentricity: { offset: 2, radius: 3, perRev: 1 } }), 'eccentricity.offset'],
    [{ ...spec(), exact: { top: 2 ** 52, bottom: 1 } }, 'exact.top'],
  ])('refuses what the model is not made for (%#)', (s, field) => {
    const r = runTrace(s);
    expect(r.ok ? '' : r.refusal.field).toBe(field);
  });

  it('keeps its memory however long it runs: 1024 points at most, and every extreme in them', () => {
    const long = run(spec({ screw: { cyclic: 0.01, per300: 0 } }, { length: 600 }));
    expect(long.buckets.count).toBeLessThanOrEqual(1024);
    expect(Math.max(...long.buckets.max)).toBeGreaterThan(0.0099 - STEP);
    expect(long.buckets.count * long.buckets.width).toBeGreaterThanOrEqual(400 * 32);
  });
});
