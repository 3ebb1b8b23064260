import type { CDPSession, Locator, Page } from 'playwright-core';

/** Roles a person taps. */
type Role = 'button' | 'link' | 'tab' | 'radio' | 'checkbox' | 'switch' | 'option' | 'menuitem';

/** How long a touch may take until the page has felt it: some two frames, on a busy machine more. */
const FELT_MS = 2000;

/** `nowhere`: on nothing that can be touched. */
type Felt = 'there' | 'elsewhere' | 'nowhere' | 'not at all';
type Touched = Window & { lathesideFelt?: Felt | '' };

/** Points a swipe is reported at. */
const MOVES = 3;

/** One connection for each page: making one for each swipe takes longer than the swipe. */
const sessions = new WeakMap<Page, Promise<CDPSession>>();
const sessionOf = (page: Page): Promise<CDPSession> => {
  const known = sessions.get(page) ?? page.context().newCDPSession(page);
  sessions.set(page, known);
  return known;
};

/**
 * A finger: taps and swipes as the touch screen reports them, where a person would put them. What is not on the
 * screen is swiped to first; what something else covers can't be tapped.
 */
export class Finger {
  /** Taps and screenfuls swiped so far, for counting steps. */
  taps = 0;
  screenfuls = 0;

  constructor(private readonly page: Page) {}

  /** Taps the one thing with this accessible name. A string must be the whole name; give a RegExp for a part. */
  async tap(name: string | RegExp, role: Role = 'button'): Promise<void> {
    await this.tapOn(this.page.getByRole(role, { name, exact: typeof name === 'string' }));
  }

  /** Taps several things in turn, for instance the keys of a number. */
  async tapEach(...names: string[]): Promise<void> {
    for (const name of names) await this.tap(name);
  }

  /**
   * Comes back once the page has felt it: a driver is faster than a person, and would else go on to what the last
   * touch is about to change. A touch that met nothing that can be touched is made once more, as a person would,
   * and it is said.
   */
  async tapOn(target: Locator): Promise<void> {
    await target.waitFor({ state: 'visible' });
    for (let attempt = 0; ; attempt += 1) {
      const { x, y } = await this.reach(target);
      await this.page.touchscreen.tap(x, y);
      this.taps += 1;
      const felt = await this.felt();
      // What was left may have been done already, and taken with it what was touched.
      if (felt === 'there' || !(await target.isVisible())) return;
      console.warn(`A touch of ${target.toString()} was felt ${felt}, on ${this.page.url()}`);
      if (felt === 'elsewhere' || attempt > 0) return;
    }
  }

  /** Where the last touch was felt. A page that went with it has felt it. */
  private async felt(): Promise<Felt> {
    for (const from = Date.now(); Date.now() - from < FELT_MS;) {
      const felt = await this.page
        .evaluate(() => (window as Touched).lathesideFelt)
        .catch(() => 'there' as const);
      if (felt !== '') return felt ?? 'there';
      await new Promise((done) => setTimeout(done, 5));
    }
    return 'not at all';
  }

  /** Swipes until the middle of the target is on the screen and uncovered; gives that point. */
  async reach(target: Locator): Promise<{ x: number; y: number }> {
    for (let attempt = 0; attempt < 30; attempt += 1) {
      const place = await target.evaluate(findPlace);
      if (place.free && place.still) return place;
      if (place.away === 0) {
        // Moving, or covered by something else that may still be moving away.
        await this.page.waitForTimeout(100);
      } else {
        await this.swipe(place.away, place.list);
      }
    }
    throw new Error(`Can't be reached by touch: ${target.toString()}`);
  }

  /** Swipes so that the content moves by this many CSS pixels; positive shows what is further down. */
  async swipe(distance: number, list: List | null = null): Promise<void> {
    const { width, height } = this.page.viewportSize() ?? { width: 390, height: 844 };
    // From edge to edge of what scrolls on every screen: clear of the header above and the places below. A list that
    // is shorter is swiped within itself, as a person would.
    const [most, middle] = list
      ? [list.height * 0.8, list.top + list.height / 2]
      : [height * 0.64, height / 2];
    const step = Math.max(-most, Math.min(most, distance));
    const session = await sessionOf(this.page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', moved: number): Promise<unknown> =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: width / 2, y: middle + step / 2 - moved }],
      });
    await touch('touchStart', 0);
    for (let part = 1; part <= MOVES; part += 1) await touch('touchMove', (step * part) / MOVES);
    // Held still before it lifts, or the page would go on by itself.
    await this.page.waitForTimeout(60);
    await touch('touchMove', step + Math.sign(step));
    await touch('touchEnd', step);
    this.screenfuls += Math.abs(step) / height;
  }
}

interface List {
  readonly top: number;
  readonly height: number;
}

interface Place {
  readonly x: number;
  readonly y: number;
  /** A touch there reaches the element. */
  readonly free: boolean;
  /** It stood at the same place two frames ago: people wait until things rest. */
  readonly still: boolean;
  /** The scrolling part it stands in, where that leaves much of the screen to something else. */
  readonly list: List | null;
  /** How far it has to be moved to reach the middle of the screen; 0 where it is near it already. */
  readonly away: number;
}

/** Runs in the page. */
async function findPlace(element: Element): Promise<Place> {
  // Nobody chooses from a list in the blink in which it follows a key; and a key may be used again for another thing.
  const busy = (): boolean => {
    const root = element.getRootNode();
    return Boolean(
      element.closest('[aria-busy]') ??
      (root instanceof ShadowRoot ? root.host.closest('[aria-busy]') : null),
    );
  };
  const [wasBusy, said] = [busy(), element.textContent];
  const before = element.getBoundingClientRect();
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const box = element.getBoundingClientRect();
  const still =
    !wasBusy && !busy() && element.textContent === said && box.left === before.left && box.top === before.top;
  const x = box.left + box.width / 2;
  const y = box.top + box.height / 2;
  let hit = document.elementFromPoint(x, y);
  while (hit?.shadowRoot) {
    const deeper = hit.shadowRoot.elementFromPoint(x, y);
    if (!deeper || deeper === hit) break;
    hit = deeper;
  }
  for (let up: Node | null = hit; up; up = up.parentNode ?? (up as ShadowRoot).host ?? null) {
    if (up === element) {
      if (still) {
        const page = window as Touched;
        page.lathesideFelt = '';
        const feel = (e: Event): void => {
          const met = e.composedPath();
          page.lathesideFelt = met.includes(element)
            ? 'there'
            : met.some((m) => m instanceof Element && m.matches('a, button, input, label, select, textarea'))
              ? 'elsewhere'
              : 'nowhere';
        };
        addEventListener('click', feel, { capture: true, once: true });
      }
      return { x, y, free: true, still, list: null, away: 0 };
    }
  }
  // Off the screen, or behind something fixed at its edge such as the bar: bring it to the middle.
  const offMiddle = y - innerHeight / 2;
  let list: List | null = null;
  for (let up: Node | null = element; up && !list; up = up.parentNode ?? (up as ShadowRoot).host ?? null) {
    if (!(up instanceof Element) || !/auto|scroll/.test(getComputedStyle(up).overflowY)) continue;
    const { top, height } = up.getBoundingClientRect();
    if (height > 0 && height < innerHeight * 0.7) list = { top, height };
    else break;
  }
  const near = list ? list.top + list.height / 2 : innerHeight / 2;
  const off = list ? y - near : offMiddle;
  const least = (list?.height ?? innerHeight) / 6;
  return { x, y, free: false, still, list, away: Math.abs(off) < least ? 0 : off };
}
