import { restsOn } from '../../core/checks/rests-on';
import type { FieldName } from '../../core/machine';
import { checkText } from './items';
import { formulaText } from '../why-words';

/** What of the app depends on a field: figures by their titles, checks by their questions. Empty where nothing does. */
export const restsOnText = (field: FieldName): readonly string[] => {
  const { figures, checks } = restsOn(`machine.${field}`);
  return [
    figures.length ? `Goes straight into: ${figures.map((id) => formulaText[id].title).join(', ')}.` : '',
    checks.length
      ? `When it changes, these are due again: ${checks.map((id) => checkText(id).question).join(' ')}`
      : '',
  ].filter(Boolean);
};
