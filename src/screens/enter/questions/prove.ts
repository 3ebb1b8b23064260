import { number } from '../../../core/machine';
import { testById } from '../../../core/prove';
import { givenOf, keepLead, readingKey } from '../../../state/prove';
import { readingLabel, testText } from '../../../text/prove';
import type { App } from '../../../state';
import { readingQuestion, type Question } from './question';

/** A reading of a commissioning test: "prove.counts.turns". Kept for the machine in use. */
export const proveQuestion = (app: App, name: string): Question | null => {
  const [, id = '', reading = ''] = name.split('.');
  const test = testById(id);
  const asked = test?.readings(givenOf(app, test)).find((r) => r.id === reading);
  if (!test || !asked) return null;
  const { units, min, max, whole, suggest } = asked;
  const more = { ...(whole ? { whole } : {}), ...(suggest ? { suggest } : {}) };
  const key = readingKey(app, id, reading);
  const label = `${testText[test.id].title}: ${readingLabel(id, reading)}`;
  const question = readingQuestion(app, key, {
    [key]: { label, field: number('notes', units, min, max, more) },
  });
  return (
    question && {
      ...question,
      accept: async (value) => {
        await keepLead(app, test);
        return question.accept(value);
      },
    }
  );
};
