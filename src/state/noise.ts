import { inBase, toNumber, type Stated } from '../core/quantity';
import {
  NOISE_NAMES,
  OUTPUTS,
  SIZES,
  type NoiseGiven,
  type NoiseName,
  type Output,
} from '../core/wiring/noise';
import type { App } from './app';

/** What the names of a machine's figures begin with. */
const prefixOf = (app: App): string => `noise.${app.machine?.id ?? ''}.`;
export const noiseKey = (app: App, name: NoiseName): string => prefixOf(app) + name;

/** Enough of a machine's id to tell it from the others of a workshop. */
const outputKey = (app: App): string => `noise.output.${(app.machine?.id ?? '').slice(0, 8)}`;

export const noiseEntered = (app: App, name: NoiseName): Stated | null =>
  app.readings.get(noiseKey(app, name));

/** All that is known about cables and noise on the machine in use; null: there is no machine. */
export const noiseGiven = (app: App): NoiseGiven | null => {
  const { profile } = app;
  const chosen = app.settings.choices[outputKey(app)];
  return (
    profile && {
      profile,
      entered: (name) => {
        const value = noiseEntered(app, name);
        return value && toNumber(inBase(value));
      },
      output: OUTPUTS.find((o) => o === chosen) ?? null,
      rpm: noiseEntered(app, 'rpm')?.value ?? app.job.rpm,
    }
  );
};

export const chooseOutput = (app: App, output: Output): Promise<void> => app.choose(outputKey(app), output);

/** Keeps a figure; of a conductor's sizes only the one said last. */
export const keepNoise = async (app: App, name: NoiseName, value: Stated): Promise<void> => {
  if (SIZES.some((s) => s === name))
    for (const other of SIZES) if (other !== name) await app.readings.set(noiseKey(app, other), null);
  await app.readings.set(noiseKey(app, name), value);
};

export const anyNoise = (app: App): boolean => NOISE_NAMES.some((name) => noiseEntered(app, name) !== null);

/** Forgets what was entered for this machine; it can be brought back by undo. */
export const clearNoise = (app: App): Promise<void> => app.clearReadings(prefixOf(app));
