import { LEAD_READING, recordOf, type Given, type ProveTest } from '../core/prove';
import { leadHigh, stated, type Stated } from '../core/quantity';
import { newId } from '../storage';
import type { App } from './app';

/** What the names of a test's readings begin with. */
const prefixOf = (app: App, test: string): string =>
  test === 'stopping-time' ? 'dummy.' : `prove.${app.machine?.id ?? ''}.${test}.`;

/** Dummy runs are the same figures as under Cut, so that they are made once. */
const DUMMY: Readonly<Record<string, string>> = { rpm: 'dummy.rpm', lead: 'dummy.lead' };

/** Under which name a test's reading is kept until it is recorded: it belongs to this machine alone. */
export const readingKey = (app: App, test: string, reading: string): string =>
  test === 'stopping-time'
    ? (DUMMY[reading] ?? reading.replace('run-', 'dummy.'))
    : prefixOf(app, test) + reading;

const choicesKey = (test: string): string => `prove.${test}`;
/** Enough of a machine's id to tell it from the others of a workshop; the whole would not fit. */
const machineMark = (app: App): string => (app.machine?.id ?? '').slice(0, 8);

const noteKey = (app: App, test: string): string => `${choicesKey(test)}.note@${machineMark(app)}`;

const chosen = (app: App, test: string): Record<string, string> => {
  const [all = '', machine] = (app.settings.choices[choicesKey(test)] ?? '').split('@');
  if (machine !== machineMark(app)) return {};
  return Object.fromEntries(all.split(';').map((one) => one.split('=') as [string, string]));
};

/** What was entered of a test so far, on this machine. */
export const givenOf = (app: App, test: ProveTest): Given => {
  const choices = chosen(app, test.id);
  const bare: Given = { sheet: app.sheet, readings: {}, choices };
  const names = [...test.readings(bare).map((r) => r.id), ...(test.atLead ? [LEAD_READING] : [])];
  const readings: Record<string, Stated | null> = {};
  for (const name of names) readings[name] = app.readings.get(readingKey(app, test.id, name));
  return { ...bare, readings };
};

/** Keeps the lead that a test is made at with its first reading. */
export const keepLead = async (app: App, test: ProveTest): Promise<void> => {
  const key = readingKey(app, test.id, LEAD_READING);
  const lead = app.sheet.get('lead').value;
  if (test.atLead && lead && !app.readings.get(key))
    await app.readings.set(key, stated(leadHigh(lead), 'mm'));
};

export const chooseIn = (app: App, test: ProveTest, choice: string, option: string): Promise<void> => {
  const all = Object.entries({ ...chosen(app, test.id), [choice]: option });
  return app.choose(choicesKey(test.id), `${all.map((e) => e.join('=')).join(';')}@${machineMark(app)}`);
};

/** What a person wrote of a test that isn't recorded yet. */
export const noteOf = (app: App, test: ProveTest): string =>
  app.settings.choices[noteKey(app, test.id)] ?? '';
export const keepNote = (app: App, test: ProveTest, note: string): Promise<void> =>
  app.choose(noteKey(app, test.id), note);

/** Forgets what was entered of a test; its readings can be brought back by undo. */
export const clearTest = async (app: App, test: ProveTest): Promise<void> => {
  const { [choicesKey(test.id)]: _, [noteKey(app, test.id)]: __, ...choices } = app.settings.choices;
  await app.setSettings({ choices });
  await app.clearReadings(prefixOf(app, test.id));
};

/**
 * Records a test as it was entered, having set on the machine what it measured. False: there is nothing to record.
 * @throws StorageError, with nothing recorded
 */
export const recordTest = async (app: App, test: ProveTest): Promise<boolean> => {
  app.clock.tick();
  const { sets, lacks, missing } = test.decide(givenOf(app, test));
  if (lacks.length > 0 || missing.length > 0) return false;
  if (sets) await app.setField(sets.field, sets.value);
  const record = recordOf(test, givenOf(app, test), newId(), noteOf(app, test));
  if (!record) return false;
  await app.records.addTest(record);
  await clearTest(app, test);
  app.undo.push({ code: 'test', detail: test.id, evidence: record.id });
  return true;
};
