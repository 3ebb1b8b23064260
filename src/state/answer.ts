import { makeRecord, type Item, type RecordRefusal } from '../core/checks';
import type { CheckRecord } from '../core/context';
import type { Stated } from '../core/quantity';
import { newId } from '../storage';
import type { App } from './app';

/**
 * Records one answer to one check, as things are now. Gives why nothing was recorded, or null when it is on the
 * disk. Apart from App, so that the first screen need not load the checks.
 * @throws StorageError
 */
export const recordAnswer = async (
  app: App,
  item: Item,
  answer: CheckRecord['answer'],
  reading: Stated | null,
): Promise<RecordRefusal | null> => {
  app.clock.tick();
  const made = makeRecord(item, app.sheet, answer, reading, newId());
  if (!made.ok) return made.refusal;
  await app.records.addCheck(made.record);
  app.undo.push({ code: 'check', detail: item.id, evidence: made.record.id });
  return null;
};
