import { STOP_TESTS, storeTest, type Inputs } from '../../../src/core/context';
import { blankJob } from '../../../src/core/job';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { makeStopTest, stopTestById } from '../../../src/core/prove/stops';
import { ratio, stated } from '../../../src/core/quantity';
import type { Person } from './app';

const DAY = 86_400_000;

/** What somebody recorded of Heron's stop ten days ago: every test as it must be, the carriage 1 mm past the mark. */
const records = (): { id: string; at: number; body: unknown }[] => {
  const at = Date.now() - 10 * DAY;
  const inputs: Inputs = {
    machine: EXAMPLES.heron(),
    job: { ...blankJob(), room: stated(ratio(4), 'mm') },
    context: {
      now: at,
      day: new Date(at).toISOString().slice(0, 10),
      hours: null,
      records: [],
      events: [],
      cuttingSince: null,
      cuttingDay: null,
    },
  };
  return STOP_TESTS.map((name) => {
    const test = stopTestById(name);
    const made = test && makeStopTest(test, inputs, `kept-${name}`, 'as-said', stated(ratio(1), 'mm'));
    if (!made?.ok) throw new Error(name);
    return { id: made.record.id, at, body: storeTest(made.record) };
  });
};

/**
 * Puts the whole protocol of the stop into the database, as recorded earlier on the only machine, Heron as the example has
 * it, and opens the app again with it. What is due each day is left to the checks.
 */
export const stopsTested = async (person: Person): Promise<void> => {
  const { page } = person.phone;
  await page.evaluate(
    (rows) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('latheside');
        opening.onerror = reject;
        opening.onsuccess = () => {
          const db = opening.result;
          const tx = db.transaction(['machines', 'evidence'], 'readwrite');
          const machines = tx.objectStore('machines').getAllKeys();
          machines.onsuccess = () => {
            for (const row of rows)
              tx.objectStore('evidence').put({
                ...row,
                ...{ schema: 1, kind: 'test', machine: machines.result[0], device: 'before' },
              });
          };
          tx.oncomplete = () => {
            db.close();
            resolve();
          };
          tx.onerror = reject;
        };
      }),
    records(),
  );
  await page.reload();
};
