import { Workbox } from 'workbox-window';
import { cuttingHere, whileNobodyCuts } from './cutting-lock';
import { scriptUrl } from './script-url';
import { activate, askNews, askStored, type News } from './worker-talk';

export type { Change, News } from './worker-talk';

/** Why the app can't be started offline, or an update didn't arrive; the words are in `text`. */
export type OfflineCode =
  | 'no-service-worker'
  | 'registration-refused'
  | 'install-failed'
  | 'no-answer'
  | 'cache-incomplete'
  | 'update-failed'
  | 'withdrawn';

export interface OfflineStatus {
  /** `ready-offline` is said only when every precached file was counted in the cache. */
  readonly offline: 'checking' | 'ready-offline' | 'failed';
  /** A newer version waits for a yes; or has taken over in another tab and this one still runs the old code. */
  readonly update: null | 'update-waiting' | 'update-needs-reload';
  /** What the newer version brings; null until its worker has said. */
  readonly news: News | null;
  readonly code: OfflineCode | null;
}

/** What became of a yes; `reloading` is seldom read, since the page goes away. */
export type Accepted = 'reloading' | 'refused-cutting' | 'update-failed' | 'save-failed';

export interface Updates {
  /** Says yes to the update. Refused while any tab is cutting; nothing is lost by asking again later. */
  accept(): Promise<Accepted>;
  /** Looks for a new version now. */
  check(): Promise<void>;
}

export interface UpdateOptions {
  /** Saves all that a person has made; awaited before any reload. */
  save: () => Promise<void>;
  /** Called on every change, first with `checking`. */
  onStatus: (status: OfflineStatus) => void;
}

const HOUR_MS = 3_600_000;

/**
 * Keeps the app working offline and up to date: registers the worker after the page has loaded, offers a new
 * version and never forces it. Call once.
 *
 * The accepting tab watches the very worker that was waiting, not a change of controller: on a first visit such a
 * change comes from the first claim, and if another tab said yes first nothing waits any more.
 */
export function watchUpdates({ save, onStatus }: UpdateOptions): Updates {
  let status: OfflineStatus = { offline: 'checking', update: null, news: null, code: null };
  let registration: ServiceWorkerRegistration | undefined;
  /** Whether a worker was in charge before; a change after that is an update, the first claim is none. */
  let claimed = false;
  let accepting = false;

  function tell(change: Partial<OfflineStatus>): void {
    status = { ...status, ...change };
    onStatus(status);
  }

  function fail(code: OfflineCode): void {
    tell({ offline: 'failed', code });
  }

  /** A newer version can be had; what it brings is said as soon as its worker has answered. */
  async function offer(worker: ServiceWorker, update: OfflineStatus['update']): Promise<void> {
    tell({ update, code: null });
    tell({ news: await askNews(worker) });
  }

  async function start(): Promise<void> {
    onStatus(status);
    if (!('serviceWorker' in navigator)) {
      fail('no-service-worker');
      return;
    }
    const before = await navigator.serviceWorker.getRegistration();
    if (__UNREGISTER__) {
      await before?.unregister();
      fail('withdrawn');
      return;
    }
    claimed = navigator.serviceWorker.controller !== null || before?.active != null;
    navigator.serviceWorker.addEventListener('controllerchange', changed);
    registration = await new Workbox(scriptUrl('worker.js'), { updateViaCache: 'none' }).register();
    if (registration === undefined) return;
    registration.addEventListener('updatefound', () => {
      follow(registration?.installing);
    });
    follow(registration.installing);
    if (registration.waiting && registration.active) void offer(registration.waiting, 'update-waiting');
    if (registration.active) await verify(registration.active);
    document.addEventListener('visibilitychange', () => void check());
    setInterval(() => void check(), HOUR_MS);
  }

  function follow(worker: ServiceWorker | null | undefined): void {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration?.active) void offer(worker, 'update-waiting');
      if (worker.state === 'activated') void verify(worker);
      if (worker.state === 'redundant') discarded();
    });
  }

  /** An installation that failed leaves the version before it in charge, if there was one. */
  function discarded(): void {
    if (registration?.waiting || accepting) return;
    if (registration?.active) tell({ code: 'update-failed' });
    else fail('install-failed');
  }

  function changed(): void {
    if (!claimed) claimed = true;
    else if (!accepting) void followOtherTab();
  }

  /** Another tab accepted: an idle tab saves and reloads, one that is cutting says so and waits. */
  async function followOtherTab(): Promise<void> {
    if (!cuttingHere() && (await reload()) === 'reloading') return;
    const { controller } = navigator.serviceWorker;
    if (controller) await offer(controller, 'update-needs-reload');
  }

  async function reload(): Promise<Accepted> {
    try {
      await save();
    } catch {
      return 'save-failed';
    }
    location.reload();
    return 'reloading';
  }

  /**
   * Counts the files; missing ones (a browser may clear caches and keep the worker) are fetched again in place,
   * each checked against its hash. Where that can't be done because the host has a newer version, looking for
   * an update brings that one.
   */
  async function verify(worker: ServiceWorker): Promise<void> {
    const counted = await askStored(worker, navigator.onLine);
    if (counted === null) fail('no-answer');
    else if (counted.present === counted.expected) tell({ offline: 'ready-offline', code: null });
    else {
      fail('cache-incomplete');
      await check();
    }
  }

  async function check(): Promise<void> {
    if (document.visibilityState !== 'visible' || !navigator.onLine) return;
    // With no network there is nothing to find and nothing to say.
    await registration?.update().catch(() => undefined);
  }

  async function accept(): Promise<Accepted> {
    const answer = await whileNobodyCuts(async () => {
      accepting = true;
      const waiting = registration?.waiting;
      if (waiting && !(await activate(waiting))) return 'update-failed';
      return reload();
    });
    if (answer !== 'reloading') accepting = false;
    if (answer === 'save-failed') tell({ update: 'update-needs-reload' });
    return answer ?? 'refused-cutting';
  }

  start().catch(() => {
    fail('registration-refused');
  });
  return { accept, check };
}
