import { hold, type Chain, type Format, type Holding } from '../drive/formats';
import type { InputPath } from '../context';
import { inBase, type Stated } from '../quantity';
import { define, withheld, type Ask } from './define';
import { heldByTrain } from './train';
import { heldStanding, judgeHeld, type HeldJudgement } from './held-judged';
import { approx, exact, type Term, type Why } from './why';

const READS = [
  'machine.driveKind',
  'machine.ratioHeld',
  'machine.ratioTopMax',
  'machine.ratioBottomMax',
  'machine.ratioDigits',
  'machine.ratioBits',
  'machine.halfNut',
  'job.use',
  'job.length',
  'job.classId',
  'job.side',
] as const satisfies readonly InputPath[];
const USES = ['stepsPerCount', 'chosen', 'pitch', 'lead', 'countsPerRev', 'stepOnCarriage', 'train'] as const;
type HeldAsk = Ask<(typeof READS)[number], (typeof USES)[number]>;

/** The format as entered, the terms that belong to it, and what of it isn't known. */
interface Entered {
  readonly format: Format | null;
  readonly formula: string;
  readonly terms: Record<string, Term>;
  readonly missing: readonly InputPath[];
}

type CountPath =
  'machine.ratioTopMax' | 'machine.ratioBottomMax' | 'machine.ratioDigits' | 'machine.ratioBits';

const entered = (ask: HeldAsk): Entered => {
  const kind = ask.input('machine.ratioHeld');
  if (!kind || kind === 'other')
    return { format: null, formula: 'ratioHeld', terms: {}, missing: ['machine.ratioHeld'] };
  const names: Record<string, CountPath> =
    kind === 'integers'
      ? { top: 'machine.ratioTopMax', bottom: 'machine.ratioBottomMax' }
      : kind === 'decimal'
        ? { digits: 'machine.ratioDigits' }
        : kind === 'fixed-rounded' || kind === 'fixed-truncated'
          ? { bits: 'machine.ratioBits' }
          : {};
  const values = Object.entries(names).map(([name, path]) => ({ name, path, at: ask.input(path) }));
  const terms = Object.fromEntries(
    values.map(({ name, path, at }): [string, Term] => [
      name,
      { amount: at && exact(at.value, 'count'), from: path },
    ]),
  );
  const missing = values.filter(({ at }) => !at).map(({ path }) => path);
  const all = values.flatMap(({ at }) => at ?? []);
  const format = missing.length > 0 ? null : formatOf(kind, all);
  return { format, formula: kind === 'integers' ? 'ratioHeld' : `held-${kind}`, terms, missing };
};

/** The format of a kind, with its numbers as entered: largest top and bottom, digits, or bits. */
export const formatOf = (kind: Format['kind'], values: readonly Stated[]): Format => {
  const [a = 0n, b = 0n] = values.map((s) => s.value.n);
  if (kind === 'integers') return { kind, topMax: a, bottomMax: b };
  if (kind === 'decimal') return { kind, digits: Number(a) };
  return kind === 'fixed-rounded' || kind === 'fixed-truncated' ? { kind, bits: Number(a) } : { kind };
};

const notesOf = (format: Format, h: Holding, j: HeldJudgement): string[] => {
  if (h.exact) return ['held-exact'];
  const how = {
    travel: 'held-near',
    counts: 'held-sum',
    rev: 'held-rev',
    nothing: 'held-near',
    time: 'held-rate',
  };
  return [
    how[h.grows],
    ...(format.kind === 'float32' ? ['held-float32-ends'] : []),
    ...(j.as === 'fastener' ? ['held-fastener'] : ['held-finest']),
    ...(Math.abs(j.shift) > j.allowed ? ['held-picking-up'] : []),
  ];
};

const judgedTerms = (h: Holding, j: HeldJudgement): Record<string, Term> =>
  h.exact
    ? {}
    : {
        over: { amount: approx(j.length, 'mm'), from: 'ratioHeld' },
        off: { amount: approx(j.um, 'um'), from: 'ratioHeld' },
        allowed: { amount: approx(j.allowed, 'um'), from: 'ratioHeld' },
        shift: { amount: approx(j.shift, 'um'), from: 'ratioHeld' },
      };

/** What the controller really holds, in whichever way it holds numbers, and whether that is true enough for the job. */
export const ratioHeld = define({
  reads: READS,
  uses: USES,
  rule: 2,
  compute: (ask) => {
    if (ask.input('machine.driveKind') === 'change-gears')
      return heldByTrain(ask.figure('lead'), ask.figure('train'));
    const { format, formula, terms: own, missing } = entered(ask);
    const r = ask.figure('stepsPerCount');
    const [lead, pitch] = [ask.figure('lead').value, ask.figure('pitch').value];
    const [counts, step] = [ask.figure('countsPerRev').value, ask.figure('stepOnCarriage').value];
    const terms: Record<string, Term> = {
      ratio: { amount: r.value && exact(r.value.mm, 'steps/count', r.value.pi), from: 'stepsPerCount' },
      ...own,
    };
    const source = format?.kind === 'integers' || formula === 'ratioHeld' ? 'bestFraction' : 'formats';
    if (!format || !r.value || !lead || !pitch || !counts || !step)
      return withheld(
        formula,
        source,
        [...r.missing, ...missing],
        terms,
        ask.input('machine.ratioHeld') === 'other' ? ['held-other'] : [],
      );
    const h = hold(format, r.value, counts);
    if (!h) {
      const note = format.kind === 'rate' ? 'held-rate' : 'held-nothing';
      return { ...withheld(formula, source, [], terms, [note]), standing: 'over' };
    }
    const chain: Chain = { ratio: r.value, lead, counts, step };
    const length = ask.input('job.length');
    const judged = judgeHeld(h, chain, {
      thread: ask.figure('chosen').value?.thread ?? null,
      pitch,
      job: { use: ask.input('job.use'), classId: ask.input('job.classId'), side: ask.input('job.side') },
      length: length && inBase(length),
    });
    // A running sum has no one error: what it comes to over the length judged.
    const ppm = h.grows === 'counts' ? (judged.um / judged.length) * 1000 : h.ppm;
    const why: Why = {
      formula,
      terms: {
        ...terms,
        error: { amount: approx(ppm, 'ppm'), from: 'stepsPerCount' },
        ...judgedTerms(h, judged),
      },
      result: exact(h.ratio, 'steps/count'),
      source,
      notes: notesOf(format, h, judged),
    };
    return {
      value: {
        exact: h.exact,
        held: { top: h.ratio.n, bottom: h.ratio.d, exact: h.exact },
        ppm,
        grows: h.grows,
        judged,
      },
      standing: heldStanding(h.exact, judged, ask.input('machine.halfNut') !== 'always-closed'),
      missing: [],
      why,
    };
  },
});
