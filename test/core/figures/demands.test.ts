import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitStanding, type LimitId, type LimitReading, type Standing } from '../../../src/core/figures';
import { blankJob, type Job } from '../../../src/core/job';
import type { MachineProfile } from '../../../src/core/machine';
import { ratio, stated, type Unit } from '../../../src/core/quantity';
import { PROFILE_A, rpm, sheet } from './support';

const whole = (n: bigint, unit: Unit) => stated(ratio(n), unit);
const int = (low: bigint, high: bigint) => fc.bigInt(low, high);

/** A machine and a thread as plain integers, each in its own unit. */
const drawn = fc.record({
  screw: int(5n, 250n), // tenths of a mm
  pitch: int(3n, 120n), // twentieths of a mm
  starts: int(1n, 4n),
  lines: int(100n, 3000n),
  edges: fc.constantFrom(1n, 2n, 4n),
  spindle: int(10n, 60n),
  encoder: int(10n, 60n),
  micro: int(1n, 32n),
  motor: int(10n, 60n),
  screwTeeth: int(10n, 60n),
  controller: int(10n, 400n), // kHz
  input: int(10n, 400n), // kHz
  counter: int(20n, 900n), // kHz
  channel: int(10n, 300n), // kHz
  encoderRpm: int(500n, 9000n),
  motorRpm: int(200n, 3000n),
  carriage: int(5n, 200n), // mm/s
  chuck: int(300n, 4000n),
  top: int(200n, 3000n),
  time: int(2n, 20n), // tenths of a s
  factor: int(2n, 6n), // halves
  room: int(1n, 80n), // quarters of a mm
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const machine = (x: Drawn): Partial<MachineProfile> => ({
  ...PROFILE_A,
  screwPitch: stated(ratio(x.screw, 10n), 'mm'),
  encoderLines: whole(x.lines, 'lines'),
  edgesPerLine: whole(x.edges, 'count'),
  spindlePulley: whole(x.spindle, 'teeth'),
  encoderPulley: whole(x.encoder, 'teeth'),
  microsteps: whole(x.micro, 'times'),
  motorPulley: whole(x.motor, 'teeth'),
  screwPulley: whole(x.screwTeeth, 'teeth'),
  controllerMaxSteps: whole(x.controller, 'kHz'),
  stepInputMax: whole(x.input, 'kHz'),
  pulseHigh: null,
  pulseLow: null,
  counterMaxEdges: whole(x.counter, 'kHz'),
  encoderMaxChannel: whole(x.channel, 'kHz'),
  encoderMaxRpm: whole(x.encoderRpm, 'rpm'),
  motorMaxRpm: whole(x.motorRpm, 'rpm'),
  carriageMax: whole(x.carriage, 'mm/s'),
  chuckMaxRpm: whole(x.chuck, 'rpm'),
  spindleDrive: 'range',
  spindleMax: whole(x.top, 'rpm'),
  wholeStopTime: stated(ratio(x.time, 10n), 's'),
  safetyFactor: stated(ratio(x.factor, 2n), 'times'),
  encoderPhaseError: whole(10n, 'deg'),
});
const job = (x: Drawn): Job => ({
  ...blankJob(),
  thread: { kind: 'pitch', pitch: stated(ratio(x.pitch, 20n), 'mm') },
  starts: Number(x.starts),
  room: stated(ratio(x.room, 4n), 'mm'),
});

type Demand = readonly [demand: bigint, limit: bigint];
/** Reckoned in floats, or of no speed: held against their formulas in load.test.ts. */
const APART: readonly LimitId[] = ['torque', 'whip', 'direction'];

/**
 * Demand and limit of each at n rpm, both as whole numbers over the same denominator: written from the formulas of the
 * trade (counts = lines × edges × pulleys; steps = 200 × microsteps × belt; L·n/60), in plain BigInts.
 */
const demands = (x: Drawn, n: bigint): Partial<Record<LimitId, Demand>> => {
  // Lead ÷ screw lead = (pitch·starts/20) ÷ (screw/10).
  const [leadN, leadD] = [x.pitch * x.starts, 20n];
  const [gearN, gearD] = [leadN * 10n, leadD * x.screw];
  const [stepsN, stepsD] = [200n * x.micro * x.screwTeeth, x.motor];
  const [countsN, countsD] = [x.lines * x.edges * x.spindle, x.encoder];
  // Steps per count, and how they crowd: up to ⌈r⌉ in one edge interval, or one in ⌊1/r⌋ intervals.
  const [rN, rD] = [gearN * stepsN * countsD, gearD * stepsD * countsN];
  const crowded = rN > rD;
  const crowd = crowded ? (rN + rD - 1n) / rD : rD / rN;
  const burst = crowded
    ? ([countsN * crowd * n, countsD] as const)
    : ([countsN * n, countsD * crowd] as const);
  // The shorter gap of channels 10° out of their 90° is 8/9 of the average.
  const [gapN, gapD] = x.edges === 4n ? [9n, 8n] : [1n, 1n];
  return {
    'step-rate': [gearN * stepsN * n, x.controller * 1000n * 60n * gearD * stepsD],
    'step-input': [gearN * stepsN * n, x.input * 1000n * 60n * gearD * stepsD],
    burst: [burst[0] * gapN, x.input * 1000n * 60n * burst[1] * gapD],
    counter: [countsN * n, x.counter * 1000n * 60n * countsD],
    'encoder-channel': [x.lines * x.spindle * n, x.channel * 1000n * 60n * x.encoder],
    'encoder-speed': [x.spindle * n, x.encoderRpm * x.encoder],
    // Channels 10° out of their 90°; of a counter that takes every edge alone.
    ...(x.edges === 4n
      ? { 'edge-gap': [x.lines * x.spindle * 360n * n, x.counter * 1000n * 60n * x.encoder * 80n] as const }
      : {}),
    'motor-speed': [gearN * x.screwTeeth * n, x.motorRpm * gearD * x.motor],
    carriage: [leadN * n, x.carriage * 60n * leadD],
    chuck: [n, x.chuck],
    'spindle-range': [n, x.top],
    'stopping-room': [leadN * x.time * x.factor * n * 4n, x.room * 60n * leadD * 10n * 2n],
  };
};

/** Limits with the margin of 0.8; the others are kept up to the limit itself. */
const WITH_MARGIN: readonly LimitId[] = [
  'step-rate',
  'step-input',
  'burst',
  'counter',
  'encoder-channel',
  'encoder-speed',
  'edge-gap',
  'motor-speed',
];
const judged = (id: LimitId, asked: Demand | undefined): Standing => {
  if (!asked) throw new Error(`no formula for ${id}`);
  const [demand, limit] = asked;
  if (demand > limit) return 'over';
  return WITH_MARGIN.includes(id) && demand * 5n > limit * 4n ? 'near' : 'within';
};

const limitsOf = (x: Drawn): readonly LimitReading[] =>
  (sheet(machine(x), job(x)).get('limits').value ?? []).filter((l) => !APART.includes(l.id));

describe('every limit against its formula in plain whole numbers, on random machines', () => {
  it('all of them stand there, known', () => {
    fc.assert(
      fc.property(drawn, (x) => {
        const all = limitsOf(x);
        expect(all.map((l) => l.id).sort()).toEqual(Object.keys(demands(x, 1n)).sort());
        expect(all.filter((l) => l.within === null || l.missing.length > 0)).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it('the highest speed within really is within, one more is not; likewise the highest that is not over', () => {
    fc.assert(
      fc.property(drawn, (x) => {
        for (const l of limitsOf(x)) {
          const within = l.within ?? -1n;
          const bearable = l.bearable ?? -1n;
          const at = (n: bigint) => judged(l.id, demands(x, n)[l.id]);
          if (within > 0n) expect([l.id, at(within)]).toEqual([l.id, 'within']);
          expect([l.id, at(within + 1n)]).not.toEqual([l.id, 'within']);
          if (bearable > 0n) expect([l.id, at(bearable)]).not.toEqual([l.id, 'over']);
          expect([l.id, at(bearable + 1n)]).toEqual([l.id, 'over']);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('the standing at any speed is the one the formula gives', () => {
    fc.assert(
      fc.property(drawn, int(1n, 4000n), (x, n) => {
        for (const l of limitsOf(x))
          expect([l.id, limitStanding(l, ratio(n))]).toEqual([l.id, judged(l.id, demands(x, n)[l.id])]);
      }),
      { numRuns: 100 },
    );
  });

  it('the highest speed for the job is the least of them, and what binds is the limit that gives it', () => {
    fc.assert(
      fc.property(drawn, (x) => {
        const all = (sheet(machine(x), job(x)).get('limits').value ?? []).filter((l) => l.id !== 'direction');
        const v = sheet(machine(x), job(x)).get('speed').value;
        const least = all.map((l) => l.within ?? 0n).reduce((m, n) => (n < m ? n : m));
        expect(v?.job.highest).toBe(least);
        expect(v?.job.binds?.within).toBe(least);
        const order = all.map((l) => l.within ?? 0n).sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
        expect(v?.job.next?.within).toBe(order[1]);
        if (least > 0n)
          expect(sheet(machine(x), { ...job(x), rpm: rpm(Number(least)) }).get('speed').standing).toBe(
            'within',
          );
        const more = sheet(machine(x), { ...job(x), rpm: rpm(Number(least) + 1) }).get('speed').standing;
        expect(['near', 'over']).toContain(more);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a lead with π', () => {
  it('is never rounded the wrong way: the highest speed keeps its limit with π taken larger, too', () => {
    // 355/113 is larger than π.
    fc.assert(
      fc.property(int(1n, 60n), int(1n, 400n), (tenths, carriage) => {
        const worm: Job = {
          ...blankJob(),
          thread: { kind: 'pitch', pitch: stated(ratio(tenths, 10n), 'module') },
        };
        const s = sheet({ carriageMax: whole(carriage, 'mm/s') }, worm);
        const n = s.get('limits').value?.find((l) => l.id === 'carriage')?.within ?? -1n;
        const speed = (rpmOf: bigint, p: bigint, q: bigint) =>
          [rpmOf * tenths * p, carriage * 60n * 10n * q] as const;
        // π between 3.14159265 and 3.14159266.
        const [up, room] = speed(n, 314159266n, 100_000_000n);
        const [down, over] = speed(n + 1n, 314159265n, 100_000_000n);
        expect([up <= room, down > over]).toEqual([true, true]);
      }),
    );
  });
});
