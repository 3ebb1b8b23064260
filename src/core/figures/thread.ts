import { fromBase, inBase, mul, MM_PER_INCH, toNumber, type Ratio } from '../quantity';
import * as t from '../thread';
import type { InputPath } from '../context';
import type { Job } from '../job';
import { define, withheld } from './define';
import type { Between, Chosen } from './ids';
import { approx, exact, type Term } from './why';

/** The class asked for, or the family's usual one for this side. */
export const classOf = (thread: t.Thread, classId: string | null, side: Job['side']): string | null => {
  const classes = t.classesOf(thread);
  const offered = side === 'external' ? classes.external : classes.internal;
  if (classId && offered.includes(classId)) return classId;
  return side === 'external' ? classes.externalDefault : classes.internalDefault;
};

const inMm = (x: Ratio, unit: 'mm' | 'in'): Ratio => (unit === 'in' ? mul(x, MM_PER_INCH) : x);

const threadTerm = (c: Chosen | null): Record<string, Term> => ({
  pitch: { amount: c && exact(c.pitch.value, c.pitch.unit), from: 'job.thread' },
});

/** A bare pitch or a feed has no diameter: what needs one is withheld, and the note says so. */
const noDiameter = (formula: string, c: Chosen | null, missing: readonly InputPath[]) =>
  withheld(formula, 'catalogue', c ? [] : missing, threadTerm(c), c ? ['no-diameter'] : []);

/** Radial depth of infeed, mm, from the nominal diameter to the basic pitch diameter, for the nose in use. */
export const depth = define({
  reads: ['job.noseKind', 'job.noseSize', 'job.side'],
  uses: ['chosen'],
  rule: 1,
  compute: (ask) => {
    const c = ask.figure('chosen');
    const thread = c.value?.thread;
    const sizes = thread && t.basicSizes(thread);
    if (!thread || !sizes) return noDiameter('depth', c.value, c.missing);
    const kind = ask.input('job.noseKind');
    const size = ask.input('job.noseSize');
    const side = ask.input('job.side');
    const unit = t.unitOf(thread);
    const form = t.formOf(thread);
    const start = side === 'external' ? sizes.major : sizes.minor;
    const terms: Record<string, Term> = {
      start: { amount: exact(start, unit), from: 'table' },
      pitchDiameter: { amount: exact(sizes.pitch, unit), from: 'table' },
      pitch: { amount: exact(thread.pitch.value, thread.pitch.unit), from: 'job.thread' },
      nose: { amount: size && exact(size.value, size.unit), from: 'job.noseSize' },
    };
    if (!kind || (kind !== 'sharp' && !size))
      return withheld('depth', 'groove', [kind ? 'job.noseSize' : 'job.noseKind'], terms);
    const nose: t.Nose =
      kind === 'sharp' || !size ? { kind: 'sharp' } : { kind, size: toNumber(inBase(size)) };
    const pitch = toNumber(inBase(thread.pitch));
    const answer = t.infeedDepth({
      side,
      half: { leading: toNumber(form.flanks[0]), trailing: toNumber(form.flanks[1]) },
      pitch,
      nose,
      from: toNumber(inMm(start, unit)),
      targetPitchDiameter: toNumber(inMm(sizes.pitch, unit)),
    });
    if (!answer.ok)
      return { ...withheld('depth', 'groove', [], terms, [`depth-${answer.refusal}`]), standing: 'over' };
    const code = kind === 'flat' ? 'depth-flat' : kind === 'radius' ? 'depth-radius' : 'depth-sharp';
    return {
      value: answer.radial,
      standing: null,
      missing: [],
      why: {
        formula: code,
        terms,
        result: approx(answer.radial, 'mm'),
        source: 'groove',
        notes: ['depth-stop-on-diameter'],
      },
    };
  },
});

/** Diameter to turn, or bore to make, before threading: the class's own limits. */
export const blank = define({
  reads: ['job.classId', 'job.side'],
  uses: ['chosen'],
  rule: 1,
  compute: (ask) => {
    const c = ask.figure('chosen');
    const thread = c.value?.thread;
    if (!thread) return noDiameter('blank', c.value, c.missing);
    const classId = classOf(thread, ask.input('job.classId'), ask.input('job.side'));
    const answer = classId ? t.blank(thread, classId) : null;
    if (!answer?.ok)
      return withheld('blank', 'limits', [], threadTerm(c.value), [
        answer ? answer.refusal : 'no-limits-known',
      ]);
    const value: Between = { min: answer.min, max: answer.max, unit: answer.unit };
    const terms: Record<string, Term> = {
      ...threadTerm(c.value),
      class: { amount: { kind: 'words', code: classId ?? '' }, from: 'job.classId' },
      min: { amount: exact(answer.min, answer.unit), from: 'table' },
      max: { amount: exact(answer.max, answer.unit), from: 'table' },
    };
    return {
      value,
      standing: null,
      missing: [],
      why: {
        formula: `blank-${answer.kind}`,
        terms,
        result: exact(answer.max, answer.unit),
        source: answer.source,
        notes: [],
      },
    };
  },
});

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
