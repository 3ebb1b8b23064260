import { add, sub, type Ratio } from '../quantity';
import * as t from '../thread';
import type { Blank } from '../thread/blank';
import { FULL_FORM_STOCK } from '../thread/tool';
import { define, withheld, type Figure } from './define';
import type { Between } from './ids';
import { classOf, noDiameter, threadTerm } from './thread';
import { exact, type Term } from './why';

type Crest = Pick<Blank, 'kind' | 'unit' | 'min' | 'max'>;

/** The stock that an insert which cuts the crest needs: from the largest crest outwards, from the smallest bore inwards. */
const leftOver = ({ kind, unit, min, max }: Crest): Between => {
  const stock = FULL_FORM_STOCK[unit];
  return kind === 'external'
    ? { min: add(max, stock.min), max: add(max, stock.max), unit }
    : { min: sub(min, stock.max), max: sub(min, stock.min), unit };
};

/** Basic size of the crest where no limits are known: a size to aim at, which nothing is judged by. */
const basicCrest = (thread: t.Thread, kind: Crest['kind']): Crest | null => {
  const sizes = thread.taper ? null : t.basicSizes(thread);
  if (!sizes) return null;
  const crest: Ratio = kind === 'external' ? sizes.major : sizes.minor;
  return { kind, unit: sizes.unit, min: crest, max: crest };
};

/**
 * Diameter to turn, or bore to make, before threading: the class's own limits; larger (smaller) for an insert that
 * cuts the crest too; the basic size alone where no limits are known.
 */
export const blank = define({
  reads: ['job.classId', 'job.side', 'job.starts', 'job.noseKind'],
  uses: ['chosen'],
  rule: 2,
  compute: (ask): Figure<Between> => {
    const c = ask.figure('chosen');
    if (!c.value?.thread) return noDiameter('blank', c.value, c.missing);
    const thread = { ...c.value.thread, starts: ask.input('job.starts') };
    const side = ask.input('job.side');
    const classId = classOf(thread, ask.input('job.classId'), side);
    // Without a class the thread's own standard says why there are none.
    const answer = t.blank(thread, classId ?? '');
    const crest = answer.ok ? answer : basicCrest(thread, side);
    const refusals = answer.ok ? [] : [answer.refusal];
    if (!crest) {
      const why = thread.major ? refusals : ['no-major-diameter'];
      return withheld('blank', 'limits', [], threadTerm(c.value), why);
    }
    // A square tool leaves the crest as it was turned.
    const full = ask.input('job.noseKind') === 'full-form' && thread.form !== 'square';
    const value: Between = full ? leftOver(crest) : { ...crest, min: answer.ok ? crest.min : null };
    const { unit } = crest;
    const terms: Record<string, Term> = {
      ...threadTerm(c.value),
      ...(answer.ok
        ? { class: { amount: { kind: 'words', code: classId ?? '' }, from: 'job.classId' } }
        : {}),
      min: { amount: exact(crest.min, unit), from: 'table' },
      max: { amount: exact(crest.max, unit), from: 'table' },
      ...(full
        ? {
            least: { amount: exact(FULL_FORM_STOCK[unit].min, unit), from: 'constant' },
            most: { amount: exact(FULL_FORM_STOCK[unit].max, unit), from: 'constant' },
          }
        : {}),
    };
    return {
      value: { min: value.min, max: value.max, unit },
      standing: null,
      missing: [],
      why: {
        formula: full ? `blank-full-form-${side}` : answer.ok ? `blank-${side}` : `blank-basic-${side}`,
        terms,
        result: exact(value.max, unit),
        source: answer.ok ? answer.source : 'profile',
        notes: [...refusals, ...(full ? ['blank-left-over'] : []), ...(answer.ok ? [] : ['blank-basic'])],
      },
    };
  },
});
