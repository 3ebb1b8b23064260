import type { AnyItem } from '../../core/checks';
import { words, type Words } from '../words';
import { changeTexts } from './change';
import { cuttingTexts } from './cutting';
import { dayTexts } from './day';
import { jobPlanTexts } from './job-plan';
import { jobSetUpTexts } from './job-set-up';
import { startTexts } from './start';
import type { ItemText, ReadingText, TextsFor } from './item-text';

/** The words of every check; an item without its words doesn't compile. */
export const checkTexts = (w: Words): TextsFor<AnyItem> => ({
  ...changeTexts(w),
  ...dayTexts(w),
  ...jobPlanTexts(w),
  ...jobSetUpTexts(w),
  ...startTexts(w),
  ...cuttingTexts(w),
});

/**
 * The words of one check, with what has to be done first at the head of where to look.
 * @throws RangeError for an id that no check has
 */
export const checkText = (id: string, w: Words = words()): ItemText & Partial<ReadingText> => {
  const all: Readonly<Record<string, ItemText>> = checkTexts(w);
  const text = Object.hasOwn(all, id) ? all[id] : undefined;
  if (!text) throw new RangeError(`no check ${id}`);
  return text.first ? { ...text, look: `${text.first} ${text.look}` } : text;
};
