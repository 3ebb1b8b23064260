import { FIELDS, FIELD_NAMES, type MachineProfile } from './fields';
import type { Field } from './field';
import { ratio, stated } from '../quantity';

/** What a field holds while nothing is known of it. */
export const emptyValue = (field: Field): unknown => (field.kind === 'text' ? '' : null);

/**
 * A machine of which nothing is known yet. The safety factor alone starts with a value, 1.5 (common practice),
 * since without one no stopping room could ever be judged; "Why" names it as such.
 */
export const blankProfile = (name: string, workshop: string): MachineProfile => {
  const all = Object.fromEntries(FIELD_NAMES.map((f) => [f, emptyValue(FIELDS[f])]));
  return Object.freeze({
    ...(all as unknown as MachineProfile),
    name,
    workshop,
    colour: 'teal',
    safetyFactor: stated(ratio(3, 2), 'times'),
  });
};

/** A copy with some fields changed. Values are taken as given: check them with `checkField` first. */
export const withFields = (m: MachineProfile, fields: Partial<MachineProfile>): MachineProfile =>
  Object.freeze({ ...m, ...fields });
