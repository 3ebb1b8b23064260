import type { ShownUnit } from '../core/figures';
import type { FieldName } from '../core/machine';
import type { Stated } from '../core/quantity';

/** How each unit stands behind a number. Empty where the number speaks for itself. */
export const unitLabel: Record<ShownUnit, string> = {
  mm: 'mm',
  in: 'in',
  um: 'µm',
  m: 'm',
  ft: 'ft',
  tpi: 'tpi',
  module: 'module',
  dp: 'DP',
  rpm: 'rpm',
  teeth: 'teeth',
  lines: 'lines',
  count: '',
  steps: 'steps',
  turns: 'turns',
  times: '',
  percent: '%',
  Hz: 'Hz',
  kHz: 'kHz',
  MHz: 'MHz',
  us: 'µs',
  ms: 'ms',
  s: 's',
  h: 'h',
  'mm/s': 'mm/s',
  'mm/min': 'mm/min',
  'in/min': 'in/min',
  mm2: 'mm²',
  deg: '°',
  N: 'N',
  kg: 'kg',
  Nm: 'N m',
  V: 'V',
  A: 'A',
  mA: 'mA',
  mH: 'mH',
  uH: 'µH',
  uF: 'µF',
  nF: 'nF',
  pF: 'pF',
  'pF/m': 'pF/m',
  ohm: 'Ω',
  kohm: 'kΩ',
  'ohm/km': 'Ω/km',
  'kV/us': 'kV/µs',
  kgcm2: 'kg cm²',
  'counts/rev': 'counts/rev',
  'steps/rev': 'steps/rev',
  'steps/count': 'steps/count',
  'steps/s': 'steps/s',
  'edges/s': 'edges/s',
  'mm/rev': 'mm/rev',
  ppm: 'ppm',
  none: '',
};

const EDGES: Partial<Record<ShownUnit, string>> = {
  Hz: 'edges/s',
  kHz: 'thousand edges/s',
  MHz: 'million edges/s',
};

const OWN: { readonly [F in FieldName]?: Partial<Record<ShownUnit, string>> } = {
  screwStarts: { count: 'starts' },
  edgesPerLine: { count: 'edges/line' },
  counterMaxEdges: EDGES,
  fullSteps: { steps: 'steps/rev' },
  microsteps: { times: 'per full step' },
  servoPulses: { steps: 'pulses/rev' },
  servoEncoder: { count: 'counts/rev' },
  ratioDigits: { count: 'digits' },
  ratioBits: { count: 'bits' },
  gearboxRatio: { times: 'to 1' },
  safetyFactor: { times: 'times' },
};

/** The unit as it stands beside one field: counters are rated in edges, encoders in hertz, and so on. */
export const fieldUnitLabel = (field: FieldName, unit: ShownUnit): string =>
  OWN[field]?.[unit] ?? unitLabel[unit];

const ONE: Readonly<Record<string, string>> = {
  teeth: 'tooth',
  lines: 'line',
  starts: 'start',
  steps: 'step',
  turns: 'turn',
  'edges/line': 'edge/line',
  digits: 'digit',
  bits: 'bit',
};

/** The unit behind one value of a field: "1 tooth", "24 teeth". */
export const fieldUnitFor = (field: FieldName, { value, unit }: Stated): string => {
  const label = fieldUnitLabel(field, unit);
  return value.n === value.d ? (ONE[label] ?? label) : label;
};
