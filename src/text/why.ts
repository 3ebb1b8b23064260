import type { InputPath } from '../core/context';
import {
  isOfNoSpeed,
  type Amount,
  type Figure,
  type LimitReading,
  type ShownUnit,
  type Term,
} from '../core/figures';
import { div, fromBase, isExactDecimal, mul, ratioText, toNumber, type Ratio } from '../core/quantity';
import type { Between } from '../core/figures';
import type { NutRule } from '../core/cut';
import { amountText, NOT_KNOWN, plain, rounded, showAmount, significant, whole } from './numbers';
import { originText, pathLabel } from './paths';
import { classText, nutText } from './threads';
import { unitLabel } from './units';
import { limitText } from './why-limits';
import { noteText, sourceText, type NoteCode, type SourceCode } from './why-notes';
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
  readonly result: string;
  readonly terms: readonly { readonly name: string; readonly value: string; readonly from: string }[];
  readonly source: string;
  readonly notes: readonly string[];
  readonly missing: readonly { readonly path: InputPath; readonly label: string }[];
}

/** A limit's reckoning, with the speeds that follow from it. */
export interface RenderedLimit extends Rendered {
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

/** An amount in the unit it was stated in; the only amounts in words are classes. */
const asStated = (a: Amount | null): string => (a?.kind === 'words' ? classText(a.code) : amountText(a));

/** A number for a line of reckoning: a decimal or a plain fraction, never a mixed one, which reads as two numbers. */
const factor = (r: Ratio): string => {
  if (isExactDecimal(r, 6)) return plain(r);
  return `${r.n}${r.d}`.length > 14 ? significant(toNumber(r), 7) : ratioText(r);
};

/** Lengths that a person states in another unit are written into the line as they become millimetres. */
const inLine = (a: Amount | null): string => {
  if (a?.kind !== 'exact') return asStated(a);
  if (a.unit === 'ms') return inLine({ ...a, value: div(a.value, 1000), unit: 's' });
  const { unit, value } = a;
  const number = factor(value);
  if (unit === 'tpi') return `(25.4 mm ÷ ${number})`;
  if (unit === 'in') return `(${number} × 25.4 mm)`;
  if (unit === 'module') return `(π × ${number} mm)`;
  if (unit === 'dp') return `(π × 25.4 mm ÷ ${number})`;
  const label = unitLabel[unit];
  const text = `${a.pi ? 'π × ' : ''}${number}${label === '' ? '' : `\u00a0${label}`}`;
  return a.pi || number.includes('/') ? `(${text})` : text;
};

const fill = (template: string, put: (term: string) => string): string =>
  template.replace(/\{(\w+)\}/g, (_all, term: string) => put(term));

const missingText = (paths: readonly InputPath[]): Rendered['missing'] =>
  paths.map((path) => ({ path, label: pathLabel(path) }));

const termLines = (code: string, terms: Terms): Rendered['terms'] =>
  Object.entries(terms).map(([term, { amount, from }]) => ({
    name: termName(code, term),
    value: amount?.kind === 'words' ? classText(amount.code) : showAmount(amount),
    from: originText(from),
  }));

const lines = (
  code: string,
  text: FormulaText,
  terms: Terms,
): Pick<Rendered, 'formula' | 'numbers' | 'terms'> => ({
  formula: fill(text.formula, (term) => termName(code, term)),
  numbers: fill(text.formula, (term) => (text.asStated ? asStated : inLine)(terms[term]?.amount ?? null)),
  terms: termLines(code, terms),
});

/** Core gives its codes as plain text; a test holds that every one of them has words. */
const sourceOf = (code: string): string => sourceText[code as SourceCode] ?? code;
const noteOf = (code: string): string => noteText[code as NoteCode] ?? code;

const betweenText = ({ min, max, unit }: Between): string =>
  `${min ? `${plain(min)} – ` : ''}${plain(max)}\u00a0${unit}`;

/** The answer itself, where it is known but no single amount. */
const answerOf = ({ value, why }: Figure<unknown>): string => {
  if (value === null) return NOT_KNOWN;
  if (why.formula === 'nutRule') return nutText(value as NutRule, why.terms.teeth !== undefined).head;
  if (why.formula.startsWith('blank-')) return betweenText(value as Between);
  if (why.formula === 'no-train') return formulaText['no-train'].formula;
  if (why.formula === 'chosen') return amountText(why.terms.pitch?.amount ?? null);
  if (why.formula === 'limits') return limitsText((value as readonly LimitReading[]).length);
  return why.result ? showAmount(why.result) : NOT_KNOWN;
};
const limitsText = (n: number): string => `${n} limits`;

/** The grounds of a figure in words: formula, values, result, source, notes, and what is missing. */
export const renderWhy = (figure: Figure<unknown>): Rendered => {
  const { formula: code, terms, source, notes } = figure.why;
  const text = formulaText[code as FormulaCode];
  return {
    title: text.title,
    ...lines(code, text, terms),
    result: answerOf(figure),
    source: sourceOf(source),
    notes: [...(text.signs ? [text.signs] : []), ...notes.map(noteOf)],
    missing: missingText(figure.missing),
  };
};

const inUnit = (value: Ratio, unit: ShownUnit, rule: 'up' | 'down'): string =>
  [rounded(value, rule), unitLabel[unit]].filter((s) => s !== '').join('\u00a0');

const float = (x: number, unit: ShownUnit): string => `${significant(x, 3)}\u00a0${unitLabel[unit]}`;

/** What is asked at the speed set; empty while none is set. */
const demandText = (l: LimitReading, rpm: Ratio | null): string => {
  if (!rpm) return '';
  if (l.course) return float(l.course.demand(toNumber(rpm)), l.unit);
  return l.perRpm ? inUnit(mul(l.perRpm, rpm), l.unit, 'up') : '';
};

/** What is borne at the speed set, or at rest while none is. */
const borneText = (l: LimitReading, rpm: Ratio | null): string => {
  if (l.course) return float(l.course.bears(rpm ? toNumber(rpm) : 0), l.unit);
  return l.limit ? inUnit(l.limit, l.unit, 'down') : NOT_KNOWN;
};

const answeredText = (l: LimitReading): string =>
  l.answeredTo
    ? `Not known. Answered by your ramp test, up to ${whole(l.answeredTo.n / l.answeredTo.d)} rpm.`
    : '';

/** Stands in the line of values while no speed is set. */
const SET = termName('speed', 'rpm');

const rpmText = (n: bigint | null): string => (n === null ? NOT_KNOWN : `${whole(n)}\u00a0rpm`);

const marginText = (margin: Ratio): string =>
  margin.n === margin.d
    ? 'It is used up to the limit itself.'
    : `Close from ${plain(fromBase(margin, 'percent'))}\u00a0% of the limit.`;

const speedsText = (l: LimitReading): string =>
  l.within === null
    ? ''
    : isOfNoSpeed(l)
      ? 'At any speed.'
      : `OK up to ${rpmText(l.within)}; too much above ${rpmText(l.bearable)}.`;

/** One limit in words: what is asked of it at a speed (null: none set), what it bears, and the speeds that follow. */
export const renderLimit = (l: LimitReading, rpm: Ratio | null): RenderedLimit => {
  const text = limitText[l.id];
  const setSpeed: Term = { amount: rpm && { kind: 'exact', value: rpm, unit: 'rpm' }, from: 'job.rpm' };
  const terms: Terms = { ...l.terms, rpm: setSpeed };
  const demand = demandText(l, rpm);
  const limit = borneText(l, rpm);
  const said = lines(
    l.id,
    { title: text.name, formula: rpm ? text.formula : text.formula.replace('{rpm}', SET) },
    terms,
  );
  const [margin, answered, speeds] = [marginText(l.margin), answeredText(l), speedsText(l)];
  const known = l.within === null ? '' : demand ? `${demand} of ${limit}` : `up to ${rpmText(l.within)}`;
  return {
    title: text.name,
    ...said,
    result: known || NOT_KNOWN,
    source: sourceOf(l.source),
    notes: [text.why, `Limit: ${limit}. ${margin}`, speeds, answered].filter((note) => note !== ''),
    missing: missingText(l.missing),
    demand,
    limit,
    margin,
    within: rpmText(l.within),
    bearable: rpmText(l.bearable),
    answered,
  };
};
