import { fromBase, inBase, mul, MM_PER_INCH, toNumber, type Ratio } from '../quantity';
import * as t from '../thread';
import type { InputPath } from '../context';
import type { Job } from '../job';
import { define, withheld } from './define';
import type { Chosen } from './ids';
import { approx, exact, type Term } from './why';

/** The class asked for, or the family's usual one for this side. */
export const classOf = (thread: t.Thread, classId: string | null, side: Job['side']): string | null => {
  const classes = t.classesOf(thread);
  const offered = side === 'external' ? classes.external : classes.internal;
  if (classId && offered.includes(classId)) return classId;
  return side === 'external' ? classes.externalDefault : classes.internalDefault;
};

export const inMm = (x: Ratio, unit: 'mm' | 'in'): Ratio => (unit === 'in' ? mul(x, MM_PER_INCH) : x);

export const threadTerm = (c: Chosen | null): Record<string, Term> => ({
  pitch: { amount: c && exact(c.pitch.value, c.pitch.unit), from: 'job.thread' },
});

/** A bare pitch or a feed has no diameter: what needs one is withheld, and the note says so. */
export const noDiameter = (formula: string, c: Chosen | null, missing: readonly InputPath[]) =>
  withheld(formula, 'catalogue', c ? [] : missing, threadTerm(c), c ? ['no-diameter'] : []);

/** Height of the full thread on one side ÷ pitch, for the percentage of thread a hole leaves. */
const height = (thread: t.Thread): number => toNumber(t.formOf(thread).majorToPitch);

/** The tapping drill to use, with the percentage of thread it leaves. */
export const drill = define({
  reads: [],
  uses: ['chosen'],
  rule: 1,
  compute: (ask) => {
    const c = ask.figure('chosen');
    const thread = c.value?.thread;
    if (!thread?.major) return noDiameter('drill', c.value, c.missing);
    const metric = t.unitOf(thread) === 'mm';
    const classId = classOf(thread, null, 'internal');
    const bounds = classId ? t.limits(thread, classId) : null;
    const unit = t.unitOf(thread);
    const bore = bounds?.ok
      ? {
          min: bounds.minor.min && inMm(bounds.minor.min, unit),
          max: bounds.minor.max && inMm(bounds.minor.max, unit),
        }
      : undefined;
    const answer = t.tappingDrill({
      major: inBase(thread.major),
      pitch: inBase(thread.pitch),
      height: height(thread),
      aim: metric ? { kind: 'major-less-pitch' } : { kind: 'percent', percent: 75 },
      ...(bore ? { bore } : {}),
    });
    if (!answer.ok) return withheld('drill', 'drill', [], threadTerm(c.value), [answer.refusal]);
    const { drill: found, percent } = answer.recommended;
    const terms: Record<string, Term> = {
      major: { amount: exact(thread.major.value, thread.major.unit), from: 'table' },
      pitch: { amount: exact(thread.pitch.value, thread.pitch.unit), from: 'job.thread' },
      drill: { amount: exact(fromBase(found.diameter, unit), unit), from: 'table' },
      percent: { amount: approx(percent, 'percent'), from: 'drill' },
    };
    return {
      value: { name: found.name, kind: found.kind, mm: found.diameter, percent },
      standing: null,
      missing: [],
      why: {
        formula: metric ? 'drill-metric' : 'drill-inch',
        terms,
        result: exact(found.diameter, 'mm'),
        source: 'drill',
        notes: [],
      },
    };
  },
});
