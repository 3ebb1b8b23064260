/** `denied`: the browser said no, for instance with the battery low. */
export type AwakeState = 'held' | 'off' | 'denied' | 'unsupported';

export interface Awake {
  /** Stops keeping the screen on. */
  release(): void;
}

/**
 * Keeps the screen on until released. A browser takes the lock away whenever the page is hidden, so it is asked
 * for again each time the page is shown.
 * @param onState told of every change; `off` while hidden and after release
 */
export function keepAwake(onState: (state: AwakeState) => void): Awake {
  if (!('wakeLock' in navigator)) {
    onState('unsupported');
    return { release: () => undefined };
  }
  let wanted = true;
  let sentinel: WakeLockSentinel | undefined;

  async function ask(): Promise<void> {
    if (!wanted || document.visibilityState !== 'visible' || sentinel?.released === false) return;
    try {
      const got = await navigator.wakeLock.request('screen');
      if (!wanted) {
        await got.release();
        return;
      }
      sentinel = got;
      got.addEventListener('release', () => {
        onState('off');
      });
      onState('held');
    } catch {
      onState('denied');
    }
  }

  const shown = (): void => void ask();
  document.addEventListener('visibilitychange', shown);
  void ask();
  return {
    release: () => {
      wanted = false;
      document.removeEventListener('visibilitychange', shown);
      void sentinel?.release();
    },
  };
}
