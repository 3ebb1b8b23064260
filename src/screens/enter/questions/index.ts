import { ITEMS, type Item } from '../../../core/checks';
import { JOB_FIELDS, type JobFieldName } from '../../../core/job';
import { checkSpeeds, crossRefusal, FIELDS, number, readStored, type FieldName } from '../../../core/machine';
import { equal, inBase, ratio, stated, toNumber, type Stated } from '../../../core/quantity';
import { enterText } from '../../../text/app';
import { newWireLabel, wireRefusal } from '../../../text/measure';
import { checkText, readingRefusalText } from '../../../text/checks';
import { fieldText } from '../../../text/machine';
import { refusalText } from '../../../text/typed';
import { fieldUnitLabel } from '../../../text/units';
import type { App } from '../../../state';
import { dummyFields } from './dummy';
import { faultFields } from './faults';
import { feedFields } from './feed';
import { finishFields } from './finish';
import { identifyFields } from './identify';
import { measureFields } from './measure';
import { noiseQuestion } from './noise';
import { ownQuestion } from './own';
import { pickFields } from './pick';
import { proveQuestion } from './prove';
import { stopsQuestion } from './stops';
import { traceFields } from './trace';
import { plainUnit, readingQuestion, type Question } from './question';

import { wheelQuestion } from './wheel';
import { wiringQuestion } from './wiring';

export type { Question } from './question';
import { recordAnswer } from '../../../state/answer';

const machineQuestion = (app: App, name: string): Question | null => {
  const field = Object.keys(FIELDS).find((f) => f === name) as FieldName | undefined;
  const spec = field && FIELDS[field];
  if (!field || spec?.kind !== 'number' || !app.profile) return null;
  return {
    label: fieldText[field].label,
    field: spec,
    now: app.profile[field] as Stated | null,
    unitLabel: (u) => fieldUnitLabel(field, u),
    accept: async (value) => {
      const refusal = app.profile && crossRefusal(app.profile, field, value);
      if (refusal) return refusalText(refusal);
      await app.setField(field, value);
      return null;
    },
    forget: () => app.setField(field, null),
  };
};

const jobQuestion = (app: App, name: string): Question | null => {
  if (!Object.hasOwn(JOB_FIELDS, name)) return null;
  const key = name as JobFieldName;
  const { job } = app;
  const now =
    key === 'rpm'
      ? job.rpm && stated(job.rpm, 'rpm')
      : key === 'starts'
        ? stated(ratio(job.starts), 'count')
        : job[key];
  return {
    label: enterText.job[key],
    field: JOB_FIELDS[key],
    now,
    unitLabel: plainUnit,
    accept: async (value) => {
      const part =
        key === 'rpm'
          ? { rpm: value.value }
          : key === 'starts'
            ? { starts: Number(value.value.n) }
            : { [key]: value };
      await app.jobs.change(part);
      return null;
    },
    ...(key === 'starts' ? {} : { forget: () => app.jobs.change({ [key]: null }) }),
  };
};

const speedQuestion = (app: App): Question => {
  const spec = FIELDS.spindleSpeeds;
  return {
    label: enterText.spindleSpeed,
    field: number('spindle', ['rpm'], spec.min, spec.max),
    now: null,
    unitLabel: plainUnit,
    accept: async (value) => {
      const checked = checkSpeeds(spec, [...(app.profile?.spindleSpeeds ?? []), value]);
      if (!checked.ok) return refusalText(checked.refusal);
      await app.setField('spindleSpeeds', checked.value);
      return null;
    },
  };
};

const hoursQuestion = (app: App): Question => ({
  label: enterText.hours,
  field: number('notes', ['h'], '0', '1000000'),
  now: null,
  unitLabel: plainUnit,
  accept: async (value) => {
    const hours = toNumber(value.value);
    const last = app.records.newestHours;
    if (last !== null && hours < last) return enterText.hoursBack(`${last}`);
    await app.logHours(hours);
    return null;
  },
});

const checkQuestion = (app: App, id: string): Question | null => {
  const item = (ITEMS as readonly Item[]).find((i) => i.id === id);
  const reading = item?.reading;
  if (!item || !reading) return null;
  return {
    label: checkText(item.id).figure ?? checkText(item.id).question,
    field: number('notes', reading.units, reading.min, reading.max, reading.whole ? { whole: true } : {}),
    now: null,
    unitLabel: plainUnit,
    accept: async (value) => {
      const refusal = await recordAnswer(app, item, 'done', value);
      return refusal && readingRefusalText(refusal);
    },
  };
};

const wireQuestion = (app: App): Question => ({
  label: newWireLabel,
  field: number('notes', ['mm', 'in'], '0.1', '30'),
  now: null,
  unitLabel: plainUnit,
  accept: async (value) => {
    const owned = app.settings.wires.flatMap((w) => readStored(w) ?? []);
    if (owned.some((w) => equal(inBase(w), inBase(value)))) return wireRefusal.known;
    return (await app.addWire(value)) ? null : wireRefusal.many;
  },
});

/** The question at an address such as ["job", "rpm"]; null for an address that asks nothing. */
export const questionFor = (app: App, path: readonly string[]): Question | null => {
  const [what, name = '', field = ''] = path;
  if (what === 'own') return ownQuestion(app, name, field);
  if (what === 'wire') return wireQuestion(app);
  if (what === 'reading' && name.startsWith('prove.')) return proveQuestion(app, name);
  if (what === 'reading' && name.startsWith('noise.')) return noiseQuestion(app, name);
  if (what === 'reading' && name.startsWith('stops.')) return stopsQuestion(app, name);
  if (what === 'reading')
    return readingQuestion(app, name, {
      ...measureFields(),
      ...traceFields(),
      ...identifyFields(),
      ...dummyFields(),
      ...faultFields(app.machine?.id ?? ''),
      ...feedFields(),
      ...finishFields(),
      ...pickFields(),
    });
  if (!app.machine) return null;
  if (what === 'machine') return machineQuestion(app, name);
  if (what === 'job') return jobQuestion(app, name);
  if (what === 'speed') return speedQuestion(app);
  if (what === 'wheel') return wheelQuestion(app);
  if (what === 'wiring') return wiringQuestion(app, path);
  if (what === 'hours') return hoursQuestion(app);
  if (what === 'check') return checkQuestion(app, name);
  return null;
};
