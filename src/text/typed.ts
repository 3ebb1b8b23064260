import type { Refusal } from '../core/machine';
import {
  dimensionOf,
  fromBase,
  inBase,
  isExactDecimal,
  type Ratio,
  type ReadError,
  type Stated,
  type Unit,
} from '../core/quantity';
import { byTheInchOr, decimal, isHandy, mark, reciprocal, showAmount, withUnit } from './numbers';
import { unitLabel } from './units';

const equals = (base: Ratio, unit: Unit, places: number): string => {
  const value = fromBase(base, unit);
  const is = reciprocal(unit) ? isHandy(value) : isExactDecimal(value, places);
  const text = reciprocal(unit) ? byTheInchOr(value) : decimal(value, places);
  return `${is ? '=' : '≈'} ${withUnit(text, unitLabel[unit])}`;
};

/** What else a value may be said as: the pairs in which a slip of the unit shows. */
const OTHERWISE: Partial<Record<Unit, readonly (readonly [Unit, number])[]>> = {
  mm: [
    ['tpi', 2],
    ['in', 5],
  ],
  in: [['mm', 4]],
  tpi: [['mm', 4]],
  kHz: [['Hz', 3]],
  MHz: [['kHz', 3]],
  Hz: [['kHz', 3]],
  ms: [['s', 6]],
  s: [['ms', 3]],
  uF: [['nF', 3]],
  'mm/s': [['mm/min', 2]],
  'mm/min': [['mm/s', 4]],
  'in/min': [['mm/s', 4]],
};

/**
 * The line under the pad: what was typed, said in the field's other units: "= 3.175 mm" for 8 tpi. Only units
 * the field knows, and mm for inches. Empty when there is nothing to add.
 */
export const understood = (s: Stated, units: readonly Unit[]): string => {
  if (s.value.n <= 0n) return '';
  if (s.unit === 'module' || s.unit === 'dp')
    return `= ${showAmount({ kind: 'exact', value: inBase(s), unit: 'mm', pi: true })}`;
  const base = inBase(s);
  return (OTHERWISE[s.unit] ?? [])
    .filter(([unit]) => units.includes(unit))
    .map(([unit, places]) => equals(base, unit, places))
    .join(', ');
};

const READ_ERRORS: Record<ReadError, string> = {
  empty: 'Nothing typed yet.',
  'not-a-number': 'That is not a number.',
  'two-marks': 'Only one decimal mark. Thousands take none.',
  'zero-below': 'Nothing can be divided by 0.',
  unfinished: 'The number is not finished.',
  'too-long': 'Too many digits.',
};
export const readErrorText = (code: ReadError): string => READ_ERRORS[code];

const bound = (text: string): string => text.replace('.', mark());
const UNIT_SLIPS: readonly string[] = [
  ...(['length', 'pi-length', 'frequency', 'time', 'speed'] as const),
  ...(['inductance', 'capacitance', 'resistance'] as const),
];

const writtenText = {
  'not-wheels': 'Numbers of teeth only, such as 20 25 30×2.',
  'teeth-out-of-range': 'A wheel has 10 to 200 teeth.',
  'too-many-wheels': 'No more than 40 wheels.',
  'not-a-train': 'A train is written as 40/60 20/80, with idlers between: 40/70/60.',
  'too-long-a-train': 'No more than three pairs, and no more than two idlers in one.',
  'not-a-box': 'A lever position is written as A=1/2, with a ratio above nothing.',
  'name-twice': 'Two lever positions have one name.',
  'too-many-rows': 'No more than 60 lever positions.',
  'not-a-curve': 'Two to twenty points of motor speed and torque, such as 0=2.2 300=2 600=1.4.',
  'curve-order': 'The speeds must rise from point to point.',
  'curve-torque': 'Torque never rises with speed, and only the last may be nothing.',
} as const;

/** Why a value was refused, and what to look at. */
export const refusalText = (r: Refusal): string => {
  switch (r.code) {
    case 'out-of-range': {
      const range = `Between ${bound(r.low)} and ${withUnit(bound(r.high), unitLabel[r.unit])}.`;
      return UNIT_SLIPS.includes(dimensionOf(r.unit)) ? `${range} Check the unit.` : range;
    }
    case 'not-whole':
      return 'This is a whole number.';
    case 'wrong-unit':
      return 'That unit does not belong here.';
    case 'not-an-option':
      return 'Choose one of those shown.';
    case 'low-above-high':
      return 'The lowest can’t be above the highest.';
    case 'needed':
      return 'This is needed.';
    case 'too-many':
      return `No more than ${r.most}.`;
    case 'text-too-long':
      return `No more than ${r.most} characters.`;
    case 'not-wheels':
    case 'teeth-out-of-range':
    case 'too-many-wheels':
    case 'not-a-train':
    case 'too-long-a-train':
    case 'not-a-box':
    case 'name-twice':
    case 'too-many-rows':
    case 'not-a-curve':
    case 'curve-order':
    case 'curve-torque':
      return writtenText[r.code];
    default:
      return readErrorText(r.code);
  }
};
