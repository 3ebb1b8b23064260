import type { InputPath } from '../core/context';
import type { Amount, Figure, LimitReading, ShownUnit, Term } from '../core/figures';
import { fromBase, inBase, isUnit, mul, type Ratio } from '../core/quantity';
import { amountText, NOT_KNOWN, plain, rounded, showAmount, whole } from './numbers';
import { originText, pathLabel } from './paths';
import { unitLabel } from './units';
import { limitText } from './why-limits';
import { noteText, sourceText } from './why-notes';
import { formulaText, termName, type FormulaCode, type FormulaText } from './why-words';

export { figureName, jobText, originText, pathLabel } from './paths';
export { formulaText, termName, termText, type FormulaCode } from './why-words';
export { noteText, sourceText } from './why-notes';
export { limitText, type LimitText } from './why-limits';

/** A reckoning in lines that a person can check by hand. */
export interface Rendered {
  readonly title: string;
  /** The formula with the names of its terms, and once more with their values. */
  readonly formula: string;
  readonly numbers: string;
  /** Empty where the answer is no single number. */
  readonly result: string;
  readonly terms: readonly { readonly name: string; readonly value: string; readonly from: string }[];
  readonly source: string;
  readonly notes: readonly string[];
  readonly missing: readonly { readonly path: InputPath; readonly label: string }[];
}

/** A limit's reckoning, with the speeds that follow from it. */
export interface RenderedLimit extends Rendered {
  readonly why: string;
  /** What is asked at the speed set; empty while none is set. */
  readonly demand: string;
  readonly limit: string;
  readonly margin: string;
  readonly within: string;
  readonly bearable: string;
  /** A test record that answers for a limit that isn't known; empty where none does. */
  readonly answered: string;
}

type Terms = Readonly<Record<string, Term>>;

/** Lengths that a person states in another unit are written into the line as they become millimetres. */
const inLine = (a: Amount | null): string => {
  if (a?.kind !== 'exact') return amountText(a);
  const { unit, value } = a;
  if (unit === 'tpi') return `(25.4 mm ÷ ${amountText({ ...a, unit: 'none' })})`;
  if (unit === 'in') return `(${plain(value)} × 25.4 mm)`;
  if (unit === 'module') return `(π × ${plain(value)} mm)`;
  if (unit === 'dp') return `(π × 25.4 mm ÷ ${plain(value)})`;
  if (unit === 'ms' && isUnit(unit))
    return amountText({ kind: 'exact', value: inBase({ value, unit }), unit: 's' });
  const text = amountText(a);
  return /[/ ]/.test(plain(value)) || a.pi ? `(${text})` : text;
};

const fill = (template: string, put: (term: string) => string): string =>
  template.replace(/\{(\w+)\}/g, (_all, term: string) => put(term));

const missingText = (paths: readonly InputPath[]): Rendered['missing'] =>
  paths.map((path) => ({ path, label: pathLabel(path) }));

const termLines = (code: string, terms: Terms): Rendered['terms'] =>
  Object.entries(terms).map(([term, { amount, from }]) => ({
    name: termName(code, term),
    value: showAmount(amount),
    from: originText(from),
  }));

const lines = (
  code: string,
  text: FormulaText,
  terms: Terms,
): Pick<Rendered, 'formula' | 'numbers' | 'terms'> => ({
  formula: fill(text.formula, (term) => termName(code, term)),
  numbers: fill(text.formula, (term) => inLine(terms[term]?.amount ?? null)),
  terms: termLines(code, terms),
});

const words = (record: Readonly<Record<string, string>>, code: string): string => record[code] ?? code;

/** The grounds of a figure in words: formula, values, result, source, notes, and what is missing. */
export const renderWhy = (figure: Figure<unknown>): Rendered => {
  const { formula: code, terms, result, source, notes } = figure.why;
  const text = formulaText[code as FormulaCode];
  return {
    title: text.title,
    ...lines(code, text, terms),
    result: result ? showAmount(result) : figure.value === null ? NOT_KNOWN : '',
    source: words(sourceText, source),
    notes: [...(text.signs ? [text.signs] : []), ...notes.map((n) => words(noteText, n))],
    missing: missingText(figure.missing),
  };
};

const inUnit = (value: Ratio, unit: ShownUnit, rule: 'up' | 'down'): string =>
  [rounded(value, rule), unitLabel[unit]].filter((s) => s !== '').join('\u00a0');

const answeredText = (l: LimitReading): string =>
  l.answeredTo
    ? `Not known. Answered by your ramp test, up to ${whole(l.answeredTo.n / l.answeredTo.d)} rpm.`
    : '';

const rpmText = (n: bigint | null): string => (n === null ? NOT_KNOWN : `${whole(n)}\u00a0rpm`);

/** One limit in words: what is asked of it at a speed (null: none set), what it bears, and the speeds that follow. */
export const renderLimit = (l: LimitReading, rpm: Ratio | null): RenderedLimit => {
  const text = limitText[l.id];
  const terms: Terms = {
    ...l.terms,
    rpm: { amount: rpm && { kind: 'exact', value: rpm, unit: 'rpm' }, from: 'job.rpm' },
  };
  const demand = l.perRpm && rpm ? inUnit(mul(l.perRpm, rpm), l.unit, 'up') : '';
  const percent = plain(fromBase(l.margin, 'percent'));
  return {
    title: text.name,
    ...lines(l.id, { title: text.name, formula: text.formula }, terms),
    result: demand || NOT_KNOWN,
    source: words(sourceText, l.source),
    notes: [text.why],
    missing: missingText(l.missing),
    why: text.why,
    demand,
    limit: l.limit ? inUnit(l.limit, l.unit, 'down') : NOT_KNOWN,
    margin:
      l.margin.n === l.margin.d
        ? 'Close is not marked for this limit'
        : `Close from ${percent}\u00a0% of the limit`,
    within: rpmText(l.within),
    bearable: rpmText(l.bearable),
    answered: answeredText(l),
  };
};
