import type { Inputs } from '../context';
import { checkNumber, FIELDS, type FieldName, type MachineProfile } from '../machine';
import { compare, mul, ratio, stated, type Ratio, type Stated } from '../quantity';
import type { LimitReading } from './limit';
import { figuresFor } from './registry';
import type { Ceiling } from './verdict';

/** One change of the machine, and what the drive then follows. */
export interface Raise {
  readonly field: FieldName;
  readonly from: Stated | null;
  /** The new value; null for pulses spread evenly, which is a choice. */
  readonly to: Stated | null;
  /** Highest rpm that the drive then follows by what is known. */
  readonly highest: bigint;
  readonly binds: LimitReading | null;
  /** One step on the carriage, mm, where the change makes it another; null where it stays. */
  readonly step: Ratio | null;
}

export interface Raises {
  readonly now: Ceiling;
  /** Changes that raise the ceiling, most first. */
  readonly raises: readonly Raise[];
}

const HALF = ratio(1, 2);
const TWICE = ratio(2);

/** What is usually changed, and by what: half as fine, geared by two, an input or a motor twice as fast. */
const FACTORS: readonly (readonly [fields: readonly FieldName[], factor: Ratio])[] = [
  [['microsteps'], HALF],
  [['servoPulses'], HALF],
  [['motorPulley'], TWICE],
  [['screwPulley'], TWICE],
  [['edgesPerLine'], HALF],
  [['encoderLines'], HALF],
  [['encoderPulley'], TWICE],
  [['controllerMaxSteps'], TWICE],
  [['counterMaxEdges'], TWICE],
  [['stepInputMax'], TWICE],
  [['encoderMaxChannel'], TWICE],
  [['motorMaxRpm'], TWICE],
  [['motorTorque'], TWICE],
  [['motorSupply'], TWICE],
  [['rampTime'], TWICE],
  [['pulseHigh', 'pulseLow'], HALF],
];

interface Change {
  /** The first of the fields that change. */
  readonly field: FieldName;
  readonly from: Stated | null;
  readonly to: Stated | null;
  readonly machine: MachineProfile;
}

/** A number of the machine times a factor; null where it isn't known, or the field could not hold the new one. */
const scaled = (m: MachineProfile, field: FieldName, factor: Ratio): Stated | null => {
  const spec = FIELDS[field];
  const from = m[field] as Stated | null;
  if (!from || spec.kind !== 'number') return null;
  const to = stated(mul(from.value, factor), from.unit);
  return checkNumber(spec, to).ok ? to : null;
};

const changesOf = (m: MachineProfile): readonly Change[] => {
  const numbers = FACTORS.flatMap(([fields, factor]): Change[] => {
    const changed = fields.map((f) => [f, scaled(m, f, factor)] as const);
    const [field, to] = changed[0] ?? [];
    if (!field || changed.some(([, value]) => value === null)) return [];
    return [
      { field, from: m[field] as Stated, to: to ?? null, machine: { ...m, ...Object.fromEntries(changed) } },
    ];
  });
  const spread: Change[] =
    m.pulseTiming === 'spread'
      ? []
      : [{ field: 'pulseTiming', from: null, to: null, machine: { ...m, pulseTiming: 'spread' } }];
  return [...numbers, ...spread];
};

/**
 * Which single change of the machine would raise most what the drive follows for this job: each is tried on a copy of
 * the profile, by the same figures. Nothing is taken for known that isn't: unknown limits stay unknown beside it.
 */
export const raisesFor = (inputs: Inputs): Raises | null => {
  const at = (machine: MachineProfile) => {
    const sheet = figuresFor({ ...inputs, machine });
    const ceiling = sheet.get('speed').value?.drive;
    return { ceiling, step: sheet.get('stepOnCarriage').value };
  };
  const before = at(inputs.machine);
  const now = before.ceiling;
  if (!now) return null;
  const raises = changesOf(inputs.machine).flatMap(({ field, from, to, machine }): Raise[] => {
    const { ceiling, step } = at(machine);
    const highest = ceiling?.atMost ?? null;
    if (!ceiling || highest === null || highest <= (now.atMost ?? 0n)) return [];
    const other = step && before.step && compare(step, before.step) !== 0 ? step : null;
    return [{ field, from, to, highest, binds: ceiling.binds, step: other }];
  });
  return { now, raises: raises.sort((a, b) => (a.highest > b.highest ? -1 : a.highest < b.highest ? 1 : 0)) };
};
