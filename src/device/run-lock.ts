/** Who takes the passes of a run; see state/runs. */
export type RunHold = 'asking' | 'held' | 'elsewhere' | 'missing';

/**
 * The tab that takes the passes of a run holds the Web Lock `run:<id>`. Another one waits for it and gets it when
 * that tab is closed, or takes it over when asked to.
 */
export class RunLock {
  private id: string | null = null;
  private let: () => void = () => undefined;

  constructor(private readonly tell: (id: string, hold: RunHold) => void) {}

  /** Holds the lock of this run from now on, and no other; null: none. */
  follow(id: string | null): void {
    if (id === this.id) return;
    this.let();
    this.id = id;
    if (id === null) return;
    if ('locks' in navigator) this.ask(id, { ifAvailable: true });
    else this.tell(id, 'missing');
  }

  /** Takes the lock from whichever tab has it; that one sees the run read-only from then on. */
  takeOver(): void {
    if (this.id === null || !('locks' in navigator)) return;
    this.let();
    this.ask(this.id, { steal: true });
  }

  private ask(id: string, options: LockOptions): void {
    const waiting = new AbortController();
    let release = (): void => undefined;
    const done = new Promise<void>((resolve) => {
      release = resolve;
    });
    let wanted = true;
    this.let = () => {
      wanted = false;
      waiting.abort();
      release();
    };
    const elsewhere = (): void => {
      if (!wanted) return;
      this.tell(id, 'elsewhere');
      this.ask(id, {});
    };
    // A request that is granted at once or steals can't be called off, and needn't be.
    const whole = options.ifAvailable || options.steal ? options : { signal: waiting.signal };
    navigator.locks
      .request(`run:${id}`, whole, (lock): Promise<void> | undefined => {
        if (!lock) return void elsewhere();
        if (!wanted) return undefined;
        this.tell(id, 'held');
        return done;
      })
      .catch((e: unknown) => {
        // Taken by another tab; else there is no lock to be had, as on a page that is just left: to ask again would never end.
        if ((e as DOMException).name === 'AbortError') elsewhere();
        else if (wanted) this.tell(id, 'missing');
      });
  }
}
