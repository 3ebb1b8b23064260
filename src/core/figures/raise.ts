import type { Inputs } from '../context';
import type { FieldName, MachineProfile } from '../machine';
import { compare, div, mul, ratio, stated, type Ratio, type Stated } from '../quantity';
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

/** Numbers that are usually changed, and by what: half as fine, geared by two, an input or a motor twice as fast. */
const FACTORS: readonly (readonly [FieldName, Ratio])[] = [
  ['microsteps', HALF],
  ['servoPulses', HALF],
  ['motorPulley', ratio(2)],
  ['screwPulley', ratio(2)],
  ['edgesPerLine', HALF],
  ['encoderLines', HALF],
  ['encoderPulley', ratio(2)],
  ['controllerMaxSteps', ratio(2)],
  ['counterMaxEdges', ratio(2)],
  ['stepInputMax', ratio(2)],
  ['encoderMaxChannel', ratio(2)],
  ['motorMaxRpm', ratio(2)],
  ['motorTorque', ratio(2)],
  ['motorSupply', ratio(2)],
  ['rampTime', ratio(2)],
];

interface Change {
  readonly field: FieldName;
  readonly from: Stated | null;
  readonly to: Stated | null;
  readonly machine: MachineProfile;
}

/** Teeth, lines and microsteps are whole; a half of 1 is no change. */
const isPossible = (field: FieldName, to: Stated): boolean => {
  const whole = ['microsteps', 'servoPulses', 'motorPulley', 'screwPulley', 'edgesPerLine', 'encoderLines'];
  return !whole.includes(field) || (to.value.d === 1n && compare(to.value, 1) >= 0);
};

const changesOf = (m: MachineProfile): readonly Change[] => {
  const numbers = FACTORS.flatMap(([field, factor]): Change[] => {
    const from = m[field] as Stated | null;
    if (!from) return [];
    const to = stated(mul(from.value, factor), from.unit);
    return isPossible(field, to) ? [{ field, from, to, machine: { ...m, [field]: to } }] : [];
  });
  const pulses: Change[] =
    m.pulseHigh && m.pulseLow
      ? [
          {
            field: 'pulseHigh',
            from: m.pulseHigh,
            to: stated(div(m.pulseHigh.value, 2), m.pulseHigh.unit),
            machine: {
              ...m,
              pulseHigh: stated(div(m.pulseHigh.value, 2), m.pulseHigh.unit),
              pulseLow: stated(div(m.pulseLow.value, 2), m.pulseLow.unit),
            },
          },
        ]
      : [];
  const spread: Change[] =
    m.pulseTiming === 'spread'
      ? []
      : [{ field: 'pulseTiming', from: null, to: null, machine: { ...m, pulseTiming: 'spread' } }];
  return [...numbers, ...pulses, ...spread];
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
