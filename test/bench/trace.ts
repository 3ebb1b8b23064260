/** Lead error in time with every ingredient on, beside a bare integer counting loop run alternately in small pieces. */
import { Trace, type TraceSpec } from '../../src/core/drive/trace';

const PIECE = 102_400;
/** 16,384 counts a rev at 0.5 mm lead; ratio of a screw of 8 tpi with 6400 steps. */
const [TOP, BOTTOM, COUNTS, LEAD] = [125, 2032, 16_384, 0.5];

const spec = (counts: number): TraceSpec => ({
  job: {
    lead: LEAD,
    counts: COUNTS,
    steps: 6400,
    screwLead: 3.175,
    rpm: 200,
    length: Math.max(LEAD, (counts * LEAD) / COUNTS),
    runIn: 0,
    engagement: 8,
  },
  exact: { top: TOP, bottom: BOTTOM },
  with: {
    ripple: { amount: 0.02, perRev: 2 },
    ramp: { from: 0, seconds: 0.5 },
    dip: { drop: 0.05, seconds: 0.2 },
    eccentricity: { offset: 0.05, radius: 20, perRev: 1 },
    phase: { degrees: 10 },
    miscounts: { missed: 2, extra: 1 },
    format: { kind: 'fraction', top: TOP, bottom: BOTTOM },
    timing: { period: 0.0001, latency: 0.0002 },
    output: { rate: 100_000, acceleration: 500_000, full: 'wait' },
    motor: { kind: 'stepper', natural: 80, damping: 0.2, fullStep: 16, corner: 20_000, load: 0.1 },
    screw: { cyclic: 0.005, per300: 0.02 },
    backlash: { play: 0.05, takenUp: false },
  },
  seed: 1,
});

/** Counting alone: the integer rule and nothing else. The sum is given so that no engine leaves it out. */
function bare(counts: number): number {
  let [rest, steps] = [0, 0];
  for (let k = 0; k < counts; k += 1) {
    rest += TOP;
    if (rest >= BOTTOM) {
      rest -= BOTTOM;
      steps += 1;
    }
  }
  return steps;
}

export interface TraceTimes {
  readonly counts: number;
  /** Nanoseconds a count: of the whole run, and the median piece of the model and of the bare loop. */
  readonly whole: number;
  readonly median: number;
  readonly bare: number;
  readonly points: number;
}

const middle = (all: number[]): number => [...all].sort((a, b) => a - b)[all.length >> 1] ?? NaN;

/** Runs the model over about so many counts, a piece of it and a piece of the bare loop in turn. */
export function timeTrace(counts: number): TraceTimes {
  const trace = new Trace(spec(counts));
  const [model, loop]: [number[], number[]] = [[], []];
  let sum = 0;
  let total = 0;
  for (let done = false; !done;) {
    const [from, start] = [trace.done, performance.now()];
    done = trace.advance(PIECE);
    const between = performance.now();
    const ran = trace.done - from;
    sum += bare(ran);
    const end = performance.now();
    total += between - start;
    model.push(((between - start) / ran) * 1e6);
    loop.push(((end - between) / ran) * 1e6);
  }
  if (sum < 0) throw new Error('counted down');
  return {
    counts: trace.done,
    whole: (total / trace.done) * 1e6,
    median: middle(model),
    bare: middle(loop),
    points: trace.result().buckets.count,
  };
}
