import * as drive from '../drive';
import { div, lead, leadFrom, mul, timesStarts, type Lead } from '../quantity';
import type { InputPath } from '../context';
import type { ThreadChoice } from '../job';
import { threadById, threadOfOwn, type Thread } from '../thread';
import { define, formula, withheld, type FigureDef } from './define';
import type { Chosen, FigureId } from './ids';
import { exact, type Term } from './why';

const threadOf = (choice: ThreadChoice | null): Thread | null => {
  if (choice?.kind === 'catalogue') return threadById(choice.id) ?? null;
  return choice?.kind === 'own' ? threadOfOwn(choice.id, choice.own) : null;
};

const bare = (choice: ThreadChoice) => {
  if (choice.kind === 'pitch') return choice.pitch;
  if (choice.kind === 'feed') return choice.perRev;
  // A thread of one's own whose profile isn't known yet still has its pitch.
  return choice.kind === 'own' ? choice.own.pitch : null;
};

/** What is being cut, looked up in the catalogue or made from a person's own figures. */
export const chosen = define({
  reads: ['job.thread'],
  uses: [],
  rule: 1,
  compute: (ask) => {
    const choice = ask.input('job.thread');
    const thread = threadOf(choice);
    const pitch = thread?.pitch ?? (choice && bare(choice));
    if (!choice || !pitch) return withheld('chosen', 'entered', ['job.thread']);
    const value: Chosen = { kind: choice.kind, thread, pitch };
    const term: Term = { amount: exact(pitch.value, pitch.unit), from: 'job.thread' };
    const why = {
      formula: 'chosen',
      terms: { pitch: term },
      result: null,
      source: choice.kind === 'catalogue' ? 'catalogue' : 'entered',
      notes: [],
    };
    return { value, standing: null, missing: [], why };
  },
});

const leadAmount = (l: Lead, unit: 'mm' | 'mm/rev' = 'mm') => exact(l.mm, unit, l.pi);

export const pitch = define({
  reads: [],
  uses: ['chosen'],
  rule: 1,
  compute: (ask) => {
    const c = ask.figure('chosen');
    if (!c.value) return withheld('pitch', 'chain', c.missing);
    const value = leadFrom(c.value.pitch);
    const term: Term = { amount: exact(c.value.pitch.value, c.value.pitch.unit), from: 'job.thread' };
    const why = {
      formula: 'pitch',
      terms: { stated: term },
      result: leadAmount(value),
      source: 'inch',
      notes: [],
    };
    return { value, standing: null, missing: [], why };
  },
});

/** Lead = starts × pitch: travel per spindle rev. */
export const leadFigure = define({
  reads: ['job.starts'],
  uses: ['pitch'],
  rule: 1,
  compute: (ask) => {
    const p = ask.figure('pitch');
    if (!p.value) return withheld('lead', 'chain', p.missing);
    const starts = ask.input('job.starts');
    const value = timesStarts(p.value, starts);
    const terms = {
      starts: { amount: exact(mul(starts), 'count'), from: 'job.starts' },
      pitch: { amount: leadAmount(p.value), from: 'pitch' },
    } as const;
    return {
      value,
      standing: null,
      missing: [],
      why: { formula: 'lead', terms, result: leadAmount(value), source: 'iso5408', notes: [] },
    };
  },
});

export const screwLead = formula({
  formula: 'screwLead',
  source: 'chain',
  unit: 'mm',
  terms: { pitch: 'machine.screwPitch', starts: 'machine.screwStarts' },
  compute: (v) => mul(v.pitch, v.starts),
});

/** A figure of an electronic drive: withheld on a machine with change gears, which has no such thing. */
const electronic = <V, R extends InputPath, U extends FigureId>(
  code: string,
  def: FigureDef<V, R, U>,
): FigureDef<V, R | 'machine.driveKind', U> => ({
  ...def,
  reads: [...def.reads, 'machine.driveKind'],
  compute: (ask) => {
    const kind = ask.input('machine.driveKind');
    if (kind === 'electronic') return def.compute(ask);
    return withheld(code, 'chain', kind ? [] : ['machine.driveKind'], {}, kind ? ['change-gears'] : []);
  },
});

export const countsPerRev = electronic(
  'countsPerRev',
  formula({
    formula: 'countsPerRev',
    source: 'chain',
    unit: 'counts/rev',
    terms: {
      lines: 'machine.encoderLines',
      edges: 'machine.edgesPerLine',
      spindle: 'machine.spindlePulley',
      encoder: 'machine.encoderPulley',
    },
    compute: drive.countsPerRev,
  }),
);

export const motorPerScrew = electronic(
  'motorPerScrew',
  formula({
    formula: 'motorPerScrew',
    source: 'chain',
    unit: 'times',
    terms: { motor: 'machine.motorPulley', screw: 'machine.screwPulley', gearbox: 'machine.gearboxRatio' },
    compute: drive.motorPerScrew,
  }),
);

/** Steps per motor rev: full steps × microsteps of a stepper, or the pulses per rev set in a servo drive. */
export const stepsPerMotorRev = electronic(
  'stepsPerMotorRev',
  define({
    reads: ['machine.motorKind', 'machine.fullSteps', 'machine.microsteps', 'machine.servoPulses'],
    uses: [],
    rule: 1,
    compute: (ask) => {
      const kind = ask.input('machine.motorKind');
      if (!kind) return withheld('stepsPerMotorRev', 'chain', ['machine.motorKind']);
      const names =
        kind === 'servo'
          ? (['machine.servoPulses'] as const)
          : (['machine.fullSteps', 'machine.microsteps'] as const);
      const parts = names.map((path) => ({ path, value: ask.input(path) }));
      const terms = Object.fromEntries(
        parts.map((p) => [
          p.path.slice(8),
          { amount: p.value && exact(p.value.value, p.value.unit), from: p.path },
        ]),
      );
      const missing = parts.filter((p) => !p.value).map((p) => p.path);
      const code = kind === 'servo' ? 'servoPulses' : 'stepsPerMotorRev';
      if (missing.length > 0) return withheld(code, 'chain', missing, terms);
      const value = mul(...parts.flatMap((p) => (p.value ? [p.value.value] : [])));
      return {
        value,
        standing: null,
        missing: [],
        why: { formula: code, terms, result: exact(value, 'steps/rev'), source: 'chain', notes: [] },
      };
    },
  }),
);

export const stepsPerScrewRev = formula({
  formula: 'stepsPerScrewRev',
  source: 'chain',
  unit: 'steps/rev',
  terms: { steps: 'stepsPerMotorRev', revs: 'motorPerScrew' },
  compute: (v) => drive.stepsPerScrewRev(v.steps, v.revs),
});

/** r = (L ÷ Ls)·(S ÷ C): the exact gear ratio of the drive for this job. */
export const stepsPerCount = define({
  reads: [],
  uses: ['lead', 'screwLead', 'stepsPerScrewRev', 'countsPerRev'],
  rule: 1,
  compute: (ask) => {
    const l = ask.figure('lead');
    const screw = ask.figure('screwLead');
    const steps = ask.figure('stepsPerScrewRev');
    const counts = ask.figure('countsPerRev');
    const terms = {
      lead: { amount: l.value && leadAmount(l.value), from: 'lead' },
      screw: { amount: screw.value && exact(screw.value, 'mm'), from: 'screwLead' },
      steps: { amount: steps.value && exact(steps.value, 'steps/rev'), from: 'stepsPerScrewRev' },
      counts: { amount: counts.value && exact(counts.value, 'counts/rev'), from: 'countsPerRev' },
    } as const;
    if (!l.value || !screw.value || !steps.value || !counts.value)
      return withheld(
        'stepsPerCount',
        'chain',
        [l, screw, steps, counts].flatMap((f) => f.missing),
        terms,
      );
    const value = drive.stepsPerCount(l.value, screw.value, steps.value, counts.value);
    const result = exact(value.mm, 'steps/count', value.pi);
    return {
      value,
      standing: null,
      missing: [],
      why: { formula: 'stepsPerCount', terms, result, source: 'chain', notes: [] },
    };
  },
});

/** Size of one step on the carriage, mm. Not the accuracy: microsteps are not true to size under load. */
export const stepOnCarriage = formula({
  formula: 'stepOnCarriage',
  source: 'chain',
  unit: 'mm',
  terms: { screw: 'screwLead', steps: 'stepsPerScrewRev' },
  compute: (v) => div(v.screw, v.steps),
});

/** Travel of one encoder count, mm: how finely the spindle's angle is known along the thread. */
export const countOnCarriage = define({
  reads: [],
  uses: ['lead', 'countsPerRev'],
  rule: 1,
  compute: (ask) => {
    const l = ask.figure('lead');
    const counts = ask.figure('countsPerRev');
    if (!l.value || !counts.value)
      return withheld('countOnCarriage', 'chain', [...l.missing, ...counts.missing]);
    const value = lead(div(l.value.mm, counts.value), l.value.pi);
    const terms = {
      lead: { amount: leadAmount(l.value), from: 'lead' },
      counts: { amount: exact(counts.value, 'counts/rev'), from: 'countsPerRev' },
    } as const;
    const why = { formula: 'countOnCarriage', terms, result: leadAmount(value), source: 'chain', notes: [] };
    return { value, standing: null, missing: [], why };
  },
});
