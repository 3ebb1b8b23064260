import { FIELDS, type FieldName, type MachineProfile } from '../../core/machine';
import type { Stated } from '../../core/quantity';
import { plain, showStated } from '../../text/numbers';
import { choiceLabel, machineText } from '../../text/machine';
import { fieldUnitFor } from '../../text/units';

const joined = (s: Stated, field: FieldName): string =>
  `${showStated(s).value}\u00a0${fieldUnitFor(field, s)}`.trim();

/** A field's value in words: "8 tpi", "Stepper", "80, 160, 270 rpm", "Not known". */
export const fieldValue = (m: MachineProfile, field: FieldName): string => {
  const spec = FIELDS[field];
  const value: unknown = m[field];
  if (value === null || value === '')
    return spec.kind === 'text' ? machineText.nothing : machineText.notKnown;
  if (spec.kind === 'number') return joined(value as Stated, field);
  if (spec.kind === 'speeds') {
    const list = (value as readonly Stated[]).map((s) => plain(s.value)).join(', ');
    return list ? `${list} rpm` : machineText.notKnown;
  }
  if (spec.kind === 'choice') return choiceLabel(field, value as string);
  return value as string;
};

export const isKnown = (m: MachineProfile, field: FieldName): boolean => {
  const value: unknown = m[field];
  return value !== null && value !== '' && !(Array.isArray(value) && value.length === 0);
};
