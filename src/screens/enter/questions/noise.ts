import { NOISE_FIELDS, NOISE_NAMES } from '../../../core/wiring/noise';
import { keepNoise, noiseKey } from '../../../state/noise';
import { noiseLabel } from '../../../text/noise';
import type { App } from '../../../state';
import { readingQuestion, type Question } from './question';

/** A figure about cables and noise: "noise.length". Kept for the machine in use. */
export const noiseQuestion = (app: App, path: string): Question | null => {
  const name = NOISE_NAMES.find((n) => path === `noise.${n}`);
  if (!name || !app.machine) return null;
  const key = noiseKey(app, name);
  const question = readingQuestion(app, key, {
    [key]: { label: noiseLabel(name), field: NOISE_FIELDS[name] },
  });
  return (
    question && {
      ...question,
      accept: async (value) => {
        await keepNoise(app, name, value);
        return null;
      },
    }
  );
};
