import type { DialSetting, PlannedPass } from '../../../src/core/cut/pass';
import { blankJob } from '../../../src/core/job';
import { ratio, stated } from '../../../src/core/quantity';
import type { Run } from '../../../src/core/run';

/** A dial of 50 divisions of 0.02 mm, read as diameter. */
export const dial = (divisions: number): DialSetting => ({
  divisions,
  reading: stated(ratio(divisions, 50), 'mm'),
  turns: Math.floor(divisions / 50),
  past: divisions % 50,
});

/** Cuts at these settings of the cross-slide, and so many spring passes at the last. */
export const planOf = (divisions: readonly number[], springs = 0): PlannedPass[] => {
  const last = divisions.at(-1) ?? 0;
  return [...divisions, ...Array<number>(springs).fill(last)].map((d, i) => ({
    n: i + 1,
    kind: i < divisions.length ? 'cut' : 'spring',
    cross: dial(d),
    top: null,
    depth: d / 100,
    step: i < divisions.length ? (d - (divisions[i - 1] ?? 0)) / 100 : 0,
    chip: 0.02,
  }));
};

export const runOf = (plan: readonly PlannedPass[], part: Partial<Run> = {}): Run => ({
  machine: 'm',
  machineName: 'Heron',
  workshop: 'Shed',
  threadName: 'M10×1.5',
  job: blankJob(),
  plans: [plan],
  begun: 1000,
  ended: null,
  taken: [],
  readings: [],
  paused: false,
  outcome: null,
  notes: '',
  ...part,
});
