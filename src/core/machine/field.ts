import type { Stated, Unit } from '../quantity';

/** Where a field stands on the Machine screen, in the order a person walks along the machine. */
export const GROUPS = [
  'name',
  'drive',
  'screw',
  'nut',
  'gears',
  'encoder',
  'motor',
  'pulses',
  'controller',
  'carriage',
  'dials',
  'load',
  'spindle',
  'stop',
  'notes',
] as const;
export type Group = (typeof GROUPS)[number];

/** A number with its unit. `min` and `max` are the plausible range, as text in the first unit. */
export interface NumberField<U extends readonly Unit[] = readonly Unit[]> {
  readonly kind: 'number';
  readonly group: Group;
  readonly units: U;
  readonly min: string;
  readonly max: string;
  readonly whole?: true;
  /** Values met most often, offered as keys beside the number pad; each is text in the first unit. */
  readonly suggest?: readonly string[];
}
export interface ChoiceField<O extends readonly string[] = readonly string[]> {
  readonly kind: 'choice';
  readonly group: Group;
  readonly options: O;
}
export interface TextField {
  readonly kind: 'text';
  readonly group: Group;
  readonly maxLength: number;
  readonly required?: true;
}
/** Spindle speeds the lathe really has, rpm, rising. */
export interface SpeedsField {
  readonly kind: 'speeds';
  readonly group: Group;
  readonly min: string;
  readonly max: string;
  readonly most: number;
}
/**
 * Several figures in writing: of change gears (core/drive/trains) a set of wheels, a train, or the table of a
 * quick-change box; of a motor its pull-out curve (core/drive/curve).
 */
export interface WrittenField {
  readonly kind: 'written';
  readonly group: Group;
  readonly form: 'wheels' | 'train' | 'box' | 'curve';
  readonly maxLength: number;
}
export type Field = NumberField | ChoiceField | TextField | SpeedsField | WrittenField;

export type ValueOf<F extends Field> = F extends { kind: 'number' }
  ? Stated | null
  : F extends { kind: 'choice'; options: readonly (infer O)[] }
    ? O | null
    : F extends { kind: 'speeds' }
      ? readonly Stated[] | null
      : F extends { kind: 'written' }
        ? string | null
        : string;

export const number = <const U extends readonly Unit[]>(
  group: Group,
  units: U,
  min: string,
  max: string,
  more: { whole?: true; suggest?: readonly string[] } = {},
): NumberField<U> => ({ kind: 'number', group, units, min, max, ...more });

export const choice = <const O extends readonly string[]>(group: Group, options: O): ChoiceField<O> => ({
  kind: 'choice',
  group,
  options,
});
