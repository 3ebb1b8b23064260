import { number } from '../../../core/machine';
import { stopTestById } from '../../../core/prove/stops';
import { stopReadingKey } from '../../../state/stops';
import { stopsText, stopTestText } from '../../../text/stops';
import type { App } from '../../../state';
import { readingQuestion, type Question } from './question';

/** A distance measured in a stop test: "stops.stop-press-moving". Kept for the machine in use. */
export const stopsQuestion = (app: App, name: string): Question | null => {
  const test = stopTestById(name.split('.')[1] ?? '');
  if (!test?.distance) return null;
  const { units, min, max } = test.distance;
  const key = stopReadingKey(app, test);
  const label = `${stopTestText[test.id].title}: ${stopsText.distance}`;
  return readingQuestion(app, key, { [key]: { label, field: number('notes', units, min, max) } });
};
