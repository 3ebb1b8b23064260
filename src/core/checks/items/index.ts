import type { Item } from '../item';
import { CHANGE } from './change';
import { CUTTING } from './cutting';
import { DAY } from './day';
import { JOB_PLAN } from './job-plan';
import { JOB_SET_UP } from './job-set-up';
import { START } from './start';

/** Every pre-start check, in the order of asking. To add one: put it in its tier's list, its words in text/checks. */
export const ITEMS = [...CHANGE, ...DAY, ...JOB_PLAN, ...JOB_SET_UP, ...START, ...CUTTING] as const;

export { CHANGE, CUTTING, DAY, JOB_PLAN, JOB_SET_UP, START };

export type AnyItem = (typeof ITEMS)[number];
export type ItemId = AnyItem['id'];

const BY_ID: ReadonlyMap<string, Item> = new Map(ITEMS.map((i): [string, Item] => [i.id, i]));

export const itemById = (id: ItemId): Item => {
  const item = BY_ID.get(id);
  if (!item) throw new RangeError(`no item ${id}`);
  return item;
};
