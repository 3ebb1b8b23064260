import { add, inBase, ratio, sub, toNumber, type Ratio, type Stated } from '../quantity';
import type { Job, NoseKind } from '../job';
import * as t from '../thread';
import { infeedFromCrest, largestReaching, type CrestInfeed } from '../thread/depth';
import { printedTo } from '../thread/limits/rounded';
import { FULL_FORM_STOCK, noseFor, toolForm, type ToolForm } from '../thread/tool';
import { define, withheld, type Figure } from './define';
import { inMm, noDiameter } from './thread';
import { approx, exact, type Term } from './why';

/** Half a micrometre: a root nearer than that to where it must be is there. */
const REACHED = 0.0005;

type Side = Job['side'];

/** A length of the form's own, mm, to the digits that a line of reckoning is written in. */
const inForm = (mm: number): Term => ({ amount: exact(printedTo(mm, 5), 'mm'), from: 'table' });

/** The diameter the tool starts at and the basic pitch diameter; null for a thread without a diameter. */
const diameters = (thread: t.Thread, side: Side, kind: NoseKind | null) => {
  const sizes = t.basicSizes(thread);
  if (!sizes) return null;
  const { unit, pitch } = sizes;
  const crest = side === 'external' ? sizes.major : sizes.minor;
  const stock = kind === 'full-form' ? FULL_FORM_STOCK[unit].aim : ratio(0);
  const start = side === 'external' ? add(crest, stock) : sub(crest, stock);
  const gap: Ratio = side === 'external' ? sub(start, pitch) : sub(pitch, start);
  return { start, pitch, unit, addendum: toNumber(inMm(gap, unit)) / 2 };
};

/** A square thread's depth is half the pitch for every tool; the tool's width makes its width. Common practice. */
const square = (
  { pitch, addendum, tip }: ToolForm,
  kind: NoseKind,
  size: Stated | null,
  terms: Record<string, Term>,
): Figure<number> => {
  const no = (note: string): Figure<number> => ({
    ...withheld('depth', 'groove', [], terms, [note]),
    standing: 'over',
  });
  if (kind === 'radius' || kind === 'sharp') return no('depth-parallel-flanks');
  const width = kind === 'flat' && size ? toNumber(inBase(size)) : pitch / 2;
  if (width > pitch / 2 + REACHED) return no('depth-nose-too-big');
  const value = addendum + tip;
  const notes = width < pitch / 2 - REACHED ? ['depth-square-narrow'] : [];
  const why = {
    formula: 'depth-square',
    terms: { ...terms, width: { amount: approx(pitch / 2, 'mm'), from: 'table' } as const },
    result: approx(value, 'mm'),
    source: 'square',
    notes,
  };
  return { value, standing: null, missing: [], why };
};

/** What is said beside the depth, and the largest nose that reaches the root where this one doesn't. */
const shortcomings = (answer: Extract<CrestInfeed, { ok: true }>, kind: NoseKind, form: ToolForm) => {
  if ((answer.rootShort ?? 0) <= REACHED) return null;
  const largest =
    kind === 'radius' || kind === 'flat' ? largestReaching(kind, form.half, form.pitch, form.reach) : null;
  return {
    short: { amount: approx(answer.rootShort ?? 0, 'mm'), from: 'depth' },
    ...(largest ? { largest: { amount: approx(largest, 'mm'), from: 'depth' } } : {}),
  } satisfies Record<string, Term>;
};

/**
 * Radial depth of infeed, mm, for the nose in use: from the nominal diameter (or a full-form insert's oversize blank)
 * to the basic pitch diameter; of a thread without diameter, from its crest. Over where the nose can't reach the root.
 */
export const depth = define({
  reads: ['job.noseKind', 'job.noseSize', 'job.side'],
  uses: ['chosen'],
  rule: 2,
  compute: (ask) => {
    const c = ask.figure('chosen');
    const thread = c.value?.thread;
    if (!thread) return noDiameter('depth', c.value, c.missing);
    const kind = ask.input('job.noseKind');
    const size = ask.input('job.noseSize');
    const side = ask.input('job.side');
    const form = toolForm(thread, side);
    const known = diameters(thread, side, kind);
    const sized = kind === 'radius' || kind === 'flat';
    const terms: Record<string, Term> = {
      ...(known
        ? {
            start: { amount: exact(known.start, known.unit), from: 'table' },
            pitchDiameter: { amount: exact(known.pitch, known.unit), from: 'table' },
          }
        : { addendum: inForm(form.addendum) }),
      pitch: { amount: exact(thread.pitch.value, thread.pitch.unit), from: 'job.thread' },
      ...(kind === 'full-form'
        ? { tip: inForm(form.tip) }
        : { nose: { amount: size && exact(size.value, size.unit), from: 'job.noseSize' } }),
    };
    if (!kind || (sized && !size))
      return withheld('depth', 'groove', [kind ? 'job.noseSize' : 'job.noseKind'], terms);
    if (thread.form === 'square') return square(form, kind, size, terms);
    const answer = infeedFromCrest({
      half: form.half,
      pitch: form.pitch,
      nose: noseFor(kind, size && toNumber(inBase(size)), form),
      addendum: known?.addendum ?? form.addendum,
      reach: form.reach,
    });
    if (!answer.ok)
      return { ...withheld('depth', 'groove', [], terms, [`depth-${answer.refusal}`]), standing: 'over' };
    const short = shortcomings(answer, kind, form);
    return {
      value: answer.radial,
      standing: short ? 'over' : null,
      missing: [],
      why: {
        formula: `${known ? 'depth' : 'crest'}-${kind}`,
        terms: { ...terms, ...short },
        result: approx(answer.radial, 'mm'),
        source: 'groove',
        notes: [
          ...(short ? ['depth-root-short'] : []),
          ...(kind === 'full-form' ? ['depth-left-over'] : []),
          known ? 'depth-stop-on-diameter' : 'depth-from-crest',
        ],
      },
    };
  },
});
