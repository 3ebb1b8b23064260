import { OWN_FIELDS, type OwnFieldName } from '../../../core/job';
import { ratio, stated } from '../../../core/quantity';
import { ownFieldName } from '../../../text/own';
import type { App } from '../../../state';
import { plainUnit, type Question } from './question';

/** A figure of one of the person's own threads, at ["own", key, field]. */
export const ownQuestion = (app: App, key: string, name: string): Question | null => {
  const entry = app.own.find(key);
  if (!entry || !Object.hasOwn(OWN_FIELDS, name)) return null;
  const field = name as OwnFieldName;
  const { own } = entry;
  return {
    label: ownFieldName[field],
    field: OWN_FIELDS[field],
    now: field === 'starts' ? stated(ratio(own.starts), 'count') : own[field],
    unitLabel: plainUnit,
    accept: async (value) => {
      await app.changeOwn(key, field === 'starts' ? { starts: Number(value.value.n) } : { [field]: value });
      return null;
    },
    ...(field === 'starts' ? {} : { forget: () => app.changeOwn(key, { [field]: null }) }),
  };
};
