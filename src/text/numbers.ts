import type { Amount, ShownUnit } from '../core/figures';
import {
  abs,
  decimalText,
  div,
  fractionText,
  isExactDecimal,
  isWhole,
  leadNumber,
  MM_PER_INCH,
  ratio,
  ratioText,
  toNumber,
  type Lead,
  type Ratio,
  type Rounding,
  type Stated,
} from '../core/quantity';
import type { Thread } from '../core/thread';
import { unitLabel } from './units';

type Mark = '.' | ',';
let current: Mark = '.';

/** Chooses the decimal mark for everything written from now on. */
export const setMark = (to: Mark): void => {
  current = to;
};
export const mark = (): Mark => current;

/**
 * What is written with points, in the mark chosen: "M10×1.5" as "M10×1,5". Numbers of standards, sections and versions
 * ("B1.5", "0.1.0") stay as they are.
 */
export const marked = (text: string): string =>
  current === '.' ? text : text.replace(/(^|[^B.\d])(\d+)\.(?=\d+(?!\.?\d))/g, '$1$2,');

/** Keeps a number and its unit on one line. */
const NBSP = '\u00a0';
/** A unit of more letters may stand on the next line, rather than be torn where the letters are large. */
const LONG_UNIT = 7;
export const NOT_KNOWN = 'not known';

/** Decimal text with trailing zeros trimmed. @example decimal(ratio(127, 40), 3) // "3.175" */
export const decimal = (r: Ratio, places: number, rule: Rounding = 'nearest'): string =>
  decimalText(r, { places, rule, mark: current });

/** The number itself: an exact decimal of up to 6 places, else "11 1/3", else a plain ratio. Never rounded. */
export const plain = (r: Ratio): string => {
  if (isExactDecimal(r, 6)) return decimal(r, 6);
  return r.d <= 128n ? fractionText(r) : ratioText(r);
};

const SINGLE: Readonly<Record<string, string>> = {
  teeth: 'tooth',
  lines: 'line',
  steps: 'step',
  turns: 'turn',
};

export const withUnit = (value: string, unit: string): string => {
  if (unit === '') return value;
  if (unit === '°') return value + unit;
  return value + (unit.length > LONG_UNIT ? ' ' : NBSP) + (value === '1' ? (SINGLE[unit] ?? unit) : unit);
};

/** Threads per inch and the like are said in halves and quarters where they are such. */
const byTheInch = (r: Ratio): string =>
  !isWhole(r) && r.d <= 128n && (r.d & (r.d - 1n)) === 0n ? fractionText(r) : plain(r);

export const reciprocal = (unit: ShownUnit): boolean => unit === 'tpi' || unit === 'dp';

/** A stated value as it was said, and its unit in words: "11 1/2", "tpi". */
export const showStated = (s: Stated): { value: string; unit: string } => ({
  value: reciprocal(s.unit) ? byTheInch(s.value) : plain(s.value),
  unit: unitLabel[s.unit],
});

export const statedText = (s: Stated): string => {
  const { value, unit } = showStated(s);
  return withUnit(value, unit);
};

/** What a thread is called where it is kept: with points, whatever mark is shown. */
export const keptName = (t: { readonly thread: Thread | null; readonly pitch: Stated }): string =>
  t.thread?.designation ?? statedText(t.pitch).replace(',', '.');
/** A thread's designation for reading, or the pitch where it has none. */
export const threadName = (t: Parameters<typeof keptName>[0]): string => marked(keptName(t));

/** A float to so many significant digits, for approximate figures and as the decimal beside a long ratio. */
export const significant = (x: number, digits = 4): string => {
  if (!Number.isFinite(x)) return NOT_KNOWN;
  if (x === 0) return '0';
  const places = Math.min(9, Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(x)))));
  const text = x.toFixed(places).replace('-', '−');
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed.replace('.', current);
};

/** Units of which fewer digits are true than a float carries. */
const APPROX_DIGITS: Partial<Record<ShownUnit, number>> = { percent: 3, ppm: 2, deg: 3 };

/** A ratio longer than a person would copy by hand. */
const isLong = (r: Ratio): boolean => !isExactDecimal(r, 6) && `${r.n}${r.d}`.length > 14;

const exactValue = (r: Ratio, unit: ShownUnit): string => {
  if (reciprocal(unit)) return byTheInch(r);
  return isLong(r) ? `≈ ${significant(toNumber(r), 6)}` : plain(r);
};

/** An amount as short as it stays true, for a line of reckoning: "375/508", "π × 2 mm". null: not known. */
export const amountText = (a: Amount | null): string => {
  if (a === null) return NOT_KNOWN;
  if (a.kind === 'words') return a.code;
  if (a.kind === 'approx') return withUnit(significant(a.value, APPROX_DIGITS[a.unit]), unitLabel[a.unit]);
  const text = withUnit(exactValue(a.value, a.unit), unitLabel[a.unit]);
  return a.pi ? `π × ${text}` : text;
};

/**
 * An amount for reading: exact as it is, with its decimal beside it where it is a ratio or carries π:
 * "375/508 ≈ 0.73819 steps/count", "π × 2 mm ≈ 6.2832 mm". null: "not known".
 */
export const showAmount = (a: Amount | null): string => {
  if (a?.kind !== 'exact') return amountText(a);
  const unit = unitLabel[a.unit];
  const near = (x: number, digits: number): string => withUnit(significant(x, digits), unit);
  if (a.pi) return `${amountText(a)} = ${near(toNumber(a.value) * Math.PI, 5)}`;
  if (isLong(a.value) || isExactDecimal(a.value, 6) || reciprocal(a.unit)) return amountText(a);
  return `${exactValue(a.value, a.unit)} ≈ ${near(toNumber(a.value), 5)}`;
};

const trimmedNumber = (x: number, places: number): string => {
  const text = x.toFixed(places);
  return text.replace(/\.?0+$/, '').replace('.', current);
};

/**
 * A lead or pitch three ways: mm to 4 places, threads per inch to 2, inches to 5, zeros trimmed. The flags say
 * which of them is the value itself and which is a rounding of it.
 */
export const showLead = (
  l: Lead,
): { mm: string; tpi: string; in: string; exact: { mm: boolean; tpi: boolean; in: boolean } } => {
  if (l.pi) {
    const mm = leadNumber(l);
    const no = { mm: false, tpi: false, in: false };
    return {
      mm: trimmedNumber(mm, 4),
      tpi: trimmedNumber(25.4 / mm, 2),
      in: trimmedNumber(mm / 25.4, 5),
      exact: no,
    };
  }
  const tpi = div(MM_PER_INCH, l.mm);
  const inch = div(l.mm, MM_PER_INCH);
  return {
    mm: decimal(l.mm, 4),
    tpi: byTheInchOr(tpi),
    in: decimal(inch, 5),
    exact: { mm: isExactDecimal(l.mm, 4), tpi: isHandy(tpi), in: isExactDecimal(inch, 5) },
  };
};

/** Threads per inch that a person would say: whole, in halves and so on, or two decimals. */
export const isHandy = (r: Ratio): boolean =>
  isExactDecimal(r, 2) || (r.d <= 16n && (r.d & (r.d - 1n)) === 0n);
export const byTheInchOr = (r: Ratio): string => (isHandy(r) ? byTheInch(r) : decimal(r, 2));

/** A demand or limit that need not be exact on screen: whole from 100 up, else to 4 digits; rounded as told. */
export const rounded = (r: Ratio, rule: Rounding): string => {
  const size = toNumber(abs(r));
  const places =
    size >= 100 ? 0 : size === 0 ? 0 : Math.min(6, Math.max(0, 3 - Math.floor(Math.log10(size))));
  return isExactDecimal(r, 3) ? decimal(r, 3) : decimal(r, places, rule);
};

/** Speeds and other whole numbers: "677". */
export const whole = (n: bigint | number): string => decimal(ratio(n), 0);
