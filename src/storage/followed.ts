import type { Backing, Change } from './backing';

/** A backing whose changes are told once they are kept, each piece of work by itself; it is done when they were taken. */
export const followed = (
  backing: Backing,
  follow: (changes: readonly Change[]) => Promise<void>,
): Backing => ({
  durable: backing.durable,
  close: () => backing.close(),
  run: async (mode, stores, work) => {
    if (mode === 'readonly') return backing.run(mode, stores, work);
    let changes: Change[] = [];
    const result = await backing.run(mode, stores, (w) => {
      // Work may be done over, when the browser dropped the connection.
      changes = [];
      return work({
        ...w,
        put: (store, row) => {
          changes.push({ store, id: row.id, row });
          w.put(store, row);
        },
        remove: (store, id) => {
          changes.push({ store, id, row: null });
          w.remove(store, id);
        },
      });
    });
    if (changes.length > 0) await follow(changes);
    return result;
  },
});
