import { NOTHING, type Ingredients, type TraceSpec } from '../../../../src/core/drive/trace';

/** The worked machine: 8 tpi screw, 6400 steps per screw rev, 4096 counts, 1.5 mm: 375/508 steps a count. */
export const spec = (on: Partial<Ingredients> = {}, job: Partial<TraceSpec['job']> = {}): TraceSpec => ({
  job: {
    lead: 1.5,
    counts: 4096,
    steps: 6400,
    screwLead: 3.175,
    rpm: 200,
    length: 30,
    runIn: 0,
    engagement: 12,
    ...job,
  },
  exact: { top: 375, bottom: 508 },
  with: { ...NOTHING, ...on },
  seed: 1,
});

/** Every ingredient on, at figures of a middling home-built drive. */
export const EVERYTHING: Ingredients = {
  ripple: { amount: 0.02, perRev: 2 },
  ramp: { from: 0, seconds: 0.5 },
  dip: { drop: 0.05, seconds: 0.2 },
  eccentricity: { offset: 0.05, radius: 20, perRev: 1 },
  phase: { degrees: 10 },
  miscounts: { missed: 2, extra: 1 },
  format: { kind: 'fraction', top: 738, bottom: 1000 },
  timing: { period: 0.0001, latency: 0.0002 },
  output: { rate: 100_000, acceleration: 500_000, full: 'wait' },
  motor: { kind: 'stepper', natural: 80, damping: 0.2, fullStep: 16, corner: 20_000, load: 0.1 },
  screw: { cyclic: 0.005, per300: 0.02 },
  backlash: { play: 0.05, takenUp: false },
};
