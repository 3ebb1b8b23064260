import { stated, type Stated } from '../quantity';
import { chose, leadOf, LEAD_READING } from './given';
import { makeTest, type TestRecord } from './record';
import type { Choice, Given, ProveTest } from './spec';

/** The choices that a test asks for, as things were chosen so far. */
export const choicesOf = ({ choices }: ProveTest, given: Given): readonly Choice[] =>
  choices.filter(({ when }) => !when || given.choices[when[0]] === when[1]);

/**
 * The record of a test as it was entered, with the readings and choices it asks for and none besides. Null while anything
 * is lacking or not known: there is nothing to record. What the test sets on the machine has to be set before.
 */
export const recordOf = (test: ProveTest, given: Given, id: string, note = ''): TestRecord | null => {
  const { result, lacks, missing } = test.decide(given);
  if (lacks.length > 0 || missing.length > 0) return null;
  const readings: Record<string, Stated> = {};
  for (const { id: name } of test.readings(given)) {
    const value = given.readings[name];
    if (value) readings[name] = value;
  }
  const lead = test.atLead ? leadOf(given).value : null;
  if (lead) readings[LEAD_READING] = stated(lead, 'mm');
  const choices: Record<string, string> = {};
  for (const c of choicesOf(test, given)) {
    const option = chose(given, c);
    if (option) choices[c.id] = option;
  }
  return makeTest(test.id, test.rule, given.sheet.inputs, id, { result, readings, choices, note });
};
