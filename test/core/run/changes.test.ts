import { describe, expect, it } from 'vitest';
import { blankJob } from '../../../src/core/job';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio, stated } from '../../../src/core/quantity';
import type { Inputs } from '../../../src/core/context';
import { changesSince, machineNow } from '../../../src/core/run';
import { planOf, runOf } from './support';

const CONTEXT = {
  now: 0,
  day: '2026-01-01',
  hours: null,
  records: [],
  events: [],
  cuttingSince: null,
  cuttingDay: null,
} as const;
const job = {
  ...blankJob(),
  thread: { kind: 'pitch', pitch: stated(ratio(3, 2), 'mm') } as const,
  rpm: ratio(200),
};
const machine = { ...EXAMPLES.heron(), motorKind: 'servo' as const };
const inputs: Inputs = { machine, job, context: CONTEXT };
const run = runOf(planOf([30]), { job, machineThen: machineNow(inputs) });
const NONE = { lead: null, lag: null, fullStep: null };

describe('what changed since a run began', () => {
  it('is nothing while nothing did', () => {
    expect(changesSince(run, inputs, NONE)).toEqual([]);
  });

  // A servo of gain 30 per second at a lead of 1.5 mm, from 200 to 100 rpm: 2.5 mm/s ÷ 30 = 0.083 mm.
  it('moves the groove by the change of speed ÷ gain, with a servo', () => {
    const slower = { ...inputs, job: { ...job, rpm: ratio(100) } };
    const [change] = changesSince(run, slower, { lead: 1.5, lag: 1 / 30, fullStep: null });
    expect(change).toMatchObject({ code: 'rpm', from: ratio(200), to: ratio(100), speed: -2.5 });
    expect(change?.code === 'rpm' && change.shift.kind === 'servo' ? change.shift.mm : null).toBeCloseTo(
      0.0833,
      4,
    );
    for (const unknown of [NONE, { ...NONE, lead: 1.5 }, { ...NONE, lag: 0.1 }])
      expect(changesSince(run, slower, unknown)).toMatchObject([{ shift: { kind: 'servo', mm: null } }]);
  });

  it('says what other drives do: two full steps, nothing, or not known', () => {
    const shift = (
      part: Partial<typeof machine> | { motorKind: 'stepper' | null },
      fullStep: number | null,
    ) => {
      const other = { ...inputs, machine: { ...machine, ...part }, job: { ...job, rpm: ratio(100) } };
      return changesSince({ ...run, machineThen: machineNow(other) }, other, { ...NONE, fullStep });
    };
    expect(shift({ motorKind: 'stepper' }, 0.01)).toMatchObject([{ shift: { kind: 'stepper', mm: 0.02 } }]);
    expect(shift({ motorKind: 'stepper' }, null)).toMatchObject([{ shift: { kind: 'stepper', mm: null } }]);
    expect(shift({ motorKind: null }, 0.01)).toMatchObject([{ shift: { kind: 'unknown' } }]);
    expect(shift({ driveKind: 'change-gears' }, 0.01)).toMatchObject([{ shift: { kind: 'none' } }]);
  });

  it('names what the plan, the drive, the nut and the dials rest on', () => {
    const other = {
      ...inputs,
      machine: {
        ...machine,
        microsteps: stated(ratio(32), 'times'),
        dialTeeth: stated(ratio(21), 'teeth'),
        crossReads: 'radius' as const,
        notes: 'oiled',
      },
      job: { ...job, starts: 2, material: 'brass' as const },
    };
    expect(changesSince(run, other, NONE)).toEqual([
      { code: 'thread', paths: ['job.starts'] },
      { code: 'drive', paths: ['machine.microsteps'] },
      { code: 'nut', paths: ['machine.dialTeeth'] },
      { code: 'dials', paths: ['machine.crossReads'] },
    ]);
  });

  it('of a machine that the run kept nothing of is not guessed', () => {
    const { machineThen: _, ...without } = run;
    const other = { ...inputs, machine: { ...machine, microsteps: stated(ratio(32), 'times') } };
    expect(changesSince(without, other, NONE)).toEqual([]);
  });
});
