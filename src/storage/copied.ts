import { STORES, type Change, type StoreName } from './backing';
import { isHousekeeping } from './meta';

/** Earlier versions stay out of the copy: it holds what there is, not how it came to be. */
export const COPIED: readonly StoreName[] = STORES.filter((s) => s !== 'history');

/** Whether a row is something of its own, not housekeeping of this database. */
export const isCopied = ({ store, id }: Pick<Change, 'store' | 'id'>): boolean =>
  COPIED.includes(store) && !(store === 'meta' && isHousekeeping(id));

/** The number that a row's last change had on its device; 0 for one without. */
export const counterOf = (row: unknown): number => {
  const { counter } = (row ?? {}) as { counter?: unknown };
  return typeof counter === 'number' ? counter : 0;
};
