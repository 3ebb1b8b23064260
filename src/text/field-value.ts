import { FIELDS, mountedOf, type FieldName, type MachineProfile } from '../core/machine';
import type { Stated } from '../core/quantity';
import { plain, showStated } from './numbers';
import { stagesText } from './train-words';
import { choiceLabel, machineText } from './machine';
import { fieldUnitFor } from './units';

/** The train mounted as it is drawn, with the lever of the box. */
const mountedText = (m: MachineProfile): string | null => {
  const train = mountedOf(m);
  return train && `${stagesText(train.stages)}${train.box === null ? '' : ` · ${train.box}`}`;
};

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
  if (spec.kind === 'written' && spec.form === 'train') return mountedText(m) ?? machineText.notKnown;
  if (spec.kind === 'choice') return choiceLabel(field, value as string);
  return value as string;
};

export const isKnown = (m: MachineProfile, field: FieldName): boolean => {
  const value: unknown = m[field];
  return value !== null && value !== '' && !(Array.isArray(value) && value.length === 0);
};
