import { makeStopTest, type Seen, type StopRefusal, type StopTest } from '../core/prove/stops';
import type { Stated } from '../core/quantity';
import { newId } from '../storage';
import type { App } from './app';

/** Under which name the distance of a test is kept until it is recorded: it belongs to this machine alone. */
export const stopReadingKey = (app: App, test: StopTest): string =>
  `stops.${app.machine?.id ?? ''}.${test.id}`;

export const stopReading = (app: App, test: StopTest): Stated | null =>
  test.distance && app.readings.get(stopReadingKey(app, test));

/**
 * Records what a person saw. Gives why not where nothing was recorded, null when it is on the disk.
 * @throws StorageError, with nothing recorded
 */
export const recordStop = async (app: App, test: StopTest, seen: Seen): Promise<StopRefusal | null> => {
  app.clock.tick();
  const made = makeStopTest(test, app.inputs, newId(), seen, stopReading(app, test));
  if (!made.ok) return made.refusal;
  await app.records.addTest(made.record);
  if (test.distance) await app.readings.set(stopReadingKey(app, test), null);
  app.undo.push({ code: 'test', detail: test.id, evidence: made.record.id });
  return null;
};
