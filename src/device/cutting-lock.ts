/** Name of the Web Lock that every tab in the middle of a cut holds. */
const NAME = 'cutting';

/** What a running cut holds until it ends. */
export interface CuttingHold {
  /** Whether other tabs know of it; false in browsers without Web Locks. */
  readonly seenByOtherTabs: boolean;
  /** Lets go; a second call does nothing. */
  release(): void;
}

let holds = 0;

/** Whether this tab is cutting, or has asked to and is waiting for an update to finish. */
export function cuttingHere(): boolean {
  return holds > 0;
}

/**
 * Says to all tabs that a cut is running; no update is accepted meanwhile. Resolves when that is certain: at once,
 * unless an update is being accepted at this moment, in which case the page is about to reload.
 * Without Web Locks only this tab knows.
 */
export function holdCutting(): Promise<CuttingHold> {
  holds += 1;
  let end = (): void => undefined;
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  let held = true;
  const hold = (seenByOtherTabs: boolean): CuttingHold => ({
    seenByOtherTabs,
    release: () => {
      if (!held) return;
      held = false;
      holds -= 1;
      end();
    },
  });
  if (!('locks' in navigator)) return Promise.resolve(hold(false));
  return new Promise((resolve) => {
    navigator.locks
      // Shared: two machines may be cutting in two tabs.
      .request(NAME, { mode: 'shared' }, () => {
        resolve(hold(true));
        return ended;
      })
      .catch(() => {
        resolve(hold(false));
      });
  });
}

/**
 * Runs `work` with the certainty that no tab is cutting nor begins to; gives null, without running it, where one
 * is. Asking for the lock alone, rather than looking whether it is held, leaves no gap for a cut to begin in.
 */
export async function whileNobodyCuts<T>(work: () => Promise<T>): Promise<T | null> {
  if (cuttingHere()) return null;
  if (!('locks' in navigator)) return work();
  return navigator.locks.request(NAME, { ifAvailable: true }, (lock): Promise<T | null> =>
    lock === null ? Promise.resolve(null) : work(),
  );
}
