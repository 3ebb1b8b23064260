import { describe, expect, it } from 'vitest';
import { figuresFor, REGISTRY, type FigureId, type Sheet } from '../../../src/core/figures';
import type { Context, InputPath } from '../../../src/core/context';
import { blankJob, type Job } from '../../../src/core/job';
import { FIELD_NAMES, type FieldName, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES, type ExampleId } from '../../../src/core/machine/examples';
import { is, QUIET, rpm } from './support';

/** A thread on each example that leaves nothing unknown there, and lets the nut be opened where there is a dial. */
/** @param topSlide 29.5° from square, as the machine's own scale says it */
const job = (thread: string, topSlide = '29.5'): Job => ({
  ...blankJob(),
  thread: { kind: 'catalogue', id: thread },
  rpm: rpm(100),
  room: is('4', 'mm'),
  noseKind: 'radius',
  noseSize: is('0.1', 'mm'),
  ending: 'groove',
  groove: is('6', 'mm'),
  shoulder: is('1', 'mm'),
  infeed: 'modified-flank',
  topSlide: is(topSlide, 'deg'),
});
/** Of the examples those with an electronic drive; change gears have a test of their own. */
type Electronic = Exclude<ExampleId, 'dunlin'>;
const JOBS: Record<Electronic, Job> = {
  heron: job('iso-coarse:M16'),
  bittern: job('unc:1/2-13', '60.5'),
  plover: job('iso-coarse:M10'),
};

/** Everything a figure rests on, its own inputs and those of the figures it uses. */
const reads = (id: FigureId): Set<InputPath> => {
  const def = REGISTRY[id] as { reads: readonly InputPath[]; uses: readonly FigureId[] };
  return new Set([...def.reads, ...def.uses.flatMap((u) => [...reads(u)])]);
};

/** Whether a figure is an answer: for the limits that each of them is known, for the speed that there is one. */
const answered = (s: Sheet, id: FigureId): boolean => {
  if (id === 'limits') return (s.get('limits').value ?? []).every((l) => l.missing.length === 0);
  if (id === 'speed') return s.get('speed').value?.job.highest !== null;
  return s.get(id).value !== null;
};

/** Fields that a figure looks at and may do without, on the examples for which that is so, and why. */
const MAY_DO_WITHOUT: readonly (readonly [FieldName, readonly FigureId[], readonly Electronic[], string])[] =
  [
    ['stepInputMax', ['limits', 'speed'], ['bittern'], 'the pulse times say what the step input bears'],
    ['pulseHigh', ['limits', 'speed'], ['bittern'], 'so does the step frequency'],
    ['pulseLow', ['limits', 'speed'], ['bittern'], 'so does the step frequency'],
    [
      'pulseTiming',
      ['limits', 'speed'],
      ['heron', 'bittern', 'plover'],
      'not known counts as pulses on each edge',
    ],
    ['screwPitch', ['train'], ['heron', 'bittern', 'plover'], 'an electronic drive has no train'],
    ['screwStarts', ['train'], ['heron', 'bittern', 'plover'], 'an electronic drive has no train'],
    ['crossReads', ['plan'], ['heron', 'bittern', 'plover'], 'along the flank the top slide alone is set'],
    ['crossDivision', ['plan'], ['heron', 'bittern', 'plover'], 'along the flank the top slide alone is set'],
    [
      'crossDivisions',
      ['plan'],
      ['heron', 'bittern', 'plover'],
      'divisions alone do where turns aren’t known',
    ],
    ['topDivisions', ['plan'], ['heron', 'bittern', 'plover'], 'divisions alone do where turns aren’t known'],
    ['topScale', ['limits', 'speed'], ['heron', 'bittern', 'plover'], 'a room that a person typed holds'],
    ['halfNut', ['ratioHeld'], ['heron', 'bittern', 'plover'], 'not known counts as a nut that opens'],
  ];
const excused = (field: FieldName, figure: FigureId, on: Electronic): boolean =>
  MAY_DO_WITHOUT.some(
    ([f, figures, examples]) => f === field && figures.includes(figure) && examples.includes(on),
  );

/** What would do as well as the field itself, and is named beside it: a frequency in place of two pulse times. */
const HOLDING: readonly InputPath[] = [
  'machine.motorTorque',
  'machine.motorSupply',
  'machine.motorCurrent',
  'machine.motorInductance',
];
const insteadOf = (field: FieldName): readonly InputPath[] =>
  field === 'pulseHigh' || field === 'pulseLow'
    ? ['machine.stepInputMax']
    : field === 'torqueCurve'
      ? HOLDING
      : [];

const machines = Object.keys(JOBS) as Electronic[];
const ids = Object.keys(REGISTRY) as FigureId[];
const sheet = (
  on: Electronic,
  machine: Partial<MachineProfile> = {},
  context: Partial<Context> = {},
): Sheet =>
  figuresFor({ machine: { ...whole(on), ...machine }, job: JOBS[on], context: { ...QUIET, ...context } });
/** Plover's maker gives no channel frequency; here one is known, so that nothing is missing to begin with. */
const whole = (on: Electronic): MachineProfile => ({
  ...EXAMPLES[on](),
  encoderMaxChannel: is('100', 'kHz'),
});

describe.each(machines)('on %s', (on) => {
  it('every figure is known to begin with', () => {
    const s = sheet(on);
    expect(ids.filter((id) => !answered(s, id))).toEqual([]);
  });

  it('a field not known leaves no figure known that needs it, and is named by each', () => {
    const wrong: string[] = [];
    for (const field of FIELD_NAMES) {
      if (whole(on)[field] === null || whole(on)[field] === '') continue;
      const path = `machine.${field}` as const;
      const s = sheet(on, { [field]: null });
      for (const id of ids) {
        if (!reads(id).has(path)) {
          if (!answered(s, id)) wrong.push(`${id} is lost without ${field}, which it doesn't declare`);
        } else if (excused(field, id, on)) {
          if (!answered(s, id)) wrong.push(`${id} is excused from ${field} and needs it`);
        } else if (answered(s, id)) wrong.push(`${id} is known without ${field}`);
        else {
          const missing =
            id === 'limits' ? (s.get('limits').value ?? []).flatMap((l) => l.missing) : s.get(id).missing;
          if (!missing.includes(path) || missing.some((m) => m !== path && !insteadOf(field).includes(m)))
            wrong.push(`${id} without ${field} names ${missing.join()}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it('and no standing becomes better by knowing less', () => {
    const rank = ['within', 'near', 'unknown', 'over'];
    const before = sheet(on).get('speed').standing ?? '';
    for (const field of FIELD_NAMES) {
      if (field === 'colour') continue;
      const after = sheet(on, { [field]: null }).get('speed').standing ?? '';
      expect([field, rank.indexOf(after) >= rank.indexOf(before)]).toEqual([field, true]);
    }
  });
});

describe('a job of which something isn’t chosen', () => {
  const without = (over: Partial<Job>): Sheet =>
    figuresFor({ machine: whole('heron'), job: { ...JOBS.heron, ...over }, context: QUIET });
  const lost = (over: Partial<Job>) => ids.filter((id) => !answered(without(over), id));

  it('no thread: nothing that rests on a lead', () => {
    expect(lost({ thread: null })).toEqual([
      'chosen',
      'pitch',
      'lead',
      'stepsPerCount',
      'countOnCarriage',
      'limits',
      'speed',
      'ratioHeld',
      'nutRule',
      'depth',
      'blank',
      'drill',
      'plan',
      'stopRoom',
      'stopSpeed',
      'coasting',
    ]);
    expect(without({ thread: null }).get('nutRule').missing).toEqual(['job.thread']);
  });
  it('no stopping room: no speed for the job', () => {
    expect(lost({ room: null })).toEqual(['limits', 'speed']);
    expect(without({ room: null }).get('speed').missing).toEqual(['job.room']);
  });
  it('no nose: no depth', () => {
    expect(lost({ noseKind: null })).toEqual(['depth', 'plan', 'stopRoom', 'stopSpeed']);
    expect(lost({ noseSize: null })).toEqual(['depth', 'plan', 'stopRoom', 'stopSpeed']);
    expect(lost({ noseKind: 'sharp', noseSize: null })).toEqual([]);
  });
  it('no speed set: what is allowed is known, how the set speed stands is not asked', () => {
    const s = without({ rpm: null }).get('speed');
    expect([s.value?.standing, s.value?.atSet, s.missing]).toEqual([null, null, ['job.rpm']]);
    expect(s.value?.job.highest).not.toBeNull();
  });
});
