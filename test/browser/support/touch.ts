import type { Page } from 'playwright-core';

/**
 * What on the page a finger can't hit as the design asks (its table of limits), one line each:
 * pad keys 96 × 96, places in the bar 56 high, alike and a fifth of the width at least (64 beside the screen), all else 64 × 64;
 * 8 between any two that are seen, 24 between what destroys and the rest. CSS pixels, on the screen as it stands.
 * @param pad least key of the pad: 96, or 64 on a phone on its side
 */
export function touchFaults(page: Page, pad = 96): Promise<string[]> {
  return page.evaluate(faults, pad);
}

/** Makes the screen as high as what is on it, so that nothing is scrolled away or covered by what sticks. */
export async function unroll(page: Page, width = 390): Promise<void> {
  let height = 844;
  await page.setViewportSize({ width, height });
  // A higher screen may lay things out differently; three steps come to rest.
  for (let step = 0; step < 3; step += 1) {
    const more = await hidden(page);
    if (more === 0) return;
    height += more;
    await page.setViewportSize({ width, height });
  }
}

/** The most that any scrolling part of the page has out of sight, CSS pixels. */
function hidden(page: Page): Promise<number> {
  return page.evaluate(() => {
    const roots = (node: ParentNode): Element[] =>
      [...node.querySelectorAll('*')].flatMap((e) => (e.shadowRoot ? [e, ...roots(e.shadowRoot)] : [e]));
    const longest = roots(document).map((e) =>
      /auto|scroll/.test(getComputedStyle(e).overflowY) ? e.scrollHeight - e.clientHeight : 0,
    );
    return Math.max(0, ...longest);
  });
}

/** Runs in the page. */
function faults(padSize: number): string[] {
  interface Target {
    name: string;
    box: DOMRect;
    kind: 'pad' | 'bar' | 'other';
    destroys: boolean;
    /** Not to be seen before something is scrolled. */
    out: boolean;
  }
  // Layout is in sixty-fourths of a pixel.
  const SLACK = 0.1;
  const ACTIVE = 'a[href], button, input, textarea, select, summary, [role=button]';
  const found: string[] = [];
  const targets: Target[] = [];

  const up = (node: Node): Node | null =>
    (node as Element).assignedSlot ?? node.parentNode ?? (node as ShadowRoot).host ?? null;
  const within = (node: Node | null, element: Element): boolean => {
    for (let at = node; at; at = up(at)) if (at === element) return true;
    return false;
  };
  const hit = (x: number, y: number): Element | null => {
    let at = document.elementFromPoint(x, y);
    while (at?.shadowRoot) {
      const deeper = at.shadowRoot.elementFromPoint(x, y);
      if (!deeper || deeper === at) break;
      at = deeper;
    }
    return at;
  };
  const ancestor = (element: Element, tag: string): boolean => {
    for (let at: Node | null = element; at; at = up(at))
      if (at instanceof Element && at.localName === tag) return true;
    return false;
  };
  /** Whether a point lies off the screen, or outside a list that scrolls. */
  const scrolledOut = (element: Element, x: number, y: number): boolean => {
    if (x < 0 || y < 0 || x >= innerWidth - 1 || y >= innerHeight - 1) return true;
    for (let at: Node | null = element; at; at = up(at)) {
      if (!(at instanceof Element) || !/auto|scroll/.test(getComputedStyle(at).overflow)) continue;
      const frame = at.getBoundingClientRect();
      if (x < frame.left || x > frame.right || y < frame.top || y > frame.bottom) return true;
    }
    return false;
  };
  const named = (element: Element): string =>
    (element.getAttribute('aria-label') ?? element.textContent ?? element.id)
      .replace(/\s+/g, ' ')
      .trim()
      .slice(0, 40);

  const collect = (root: ParentNode): void => {
    for (const element of root.querySelectorAll('*')) {
      if (element.shadowRoot) collect(element.shadowRoot);
      if (!element.matches(ACTIVE)) continue;
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0 || !element.checkVisibility({ visibilityProperty: true }))
        continue;
      const bar = ancestor(element, 'ls-bar');
      targets.push({
        name: named(element),
        box,
        kind: bar ? 'bar' : element.closest('.pad') ? 'pad' : 'other',
        out: scrolledOut(element, box.left, box.bottom) || scrolledOut(element, box.left, box.top),
        destroys: element.matches('.stop') || /^Take out \S+ rpm/.test(named(element)),
      });
      const inset = 3;
      for (const [x, y] of [
        [box.left + inset, box.top + inset],
        [box.right - inset, box.top + inset],
        [box.left + inset, box.bottom - inset],
        [box.right - inset, box.bottom - inset],
      ] as const) {
        if (scrolledOut(element, x, y)) continue;
        if (!within(hit(x, y), element)) found.push(`${named(element)}: covered at ${x}, ${y}`);
      }
    }
  };
  // An open sheet lies over everything else.
  const sheet = document.querySelector('ls-app')?.shadowRoot?.querySelector('ls-why-sheet')?.shadowRoot;
  const open = sheet?.querySelector('ls-sheet')?.shadowRoot?.querySelector('dialog')?.open === true;
  collect(open && sheet ? sheet : document);

  const size = ({ box }: Target): string => `${box.width.toFixed(1)} × ${box.height.toFixed(1)}`;
  const places = targets.filter((t) => t.kind === 'bar');
  // On a phone on its side the places stand one over the other.
  const beside = places.every((t) => t.box.left === places[0]?.box.left);
  for (const target of targets) {
    const least = target.kind === 'pad' ? padSize : 64;
    const [wide, high] = target.kind === 'bar' ? [beside ? 64 : innerWidth / 5, 56] : [least, least];
    if (target.box.width < wide - SLACK || target.box.height < high - SLACK)
      found.push(`${target.name}: ${size(target)}, not ${wide} × ${high}`);
  }
  const bar = places.map((t) => t.box.width);
  if (bar.length && Math.max(...bar) - Math.min(...bar) > 1) found.push(`bar: widths ${bar.join(', ')}`);

  for (const [at, a] of targets.entries()) {
    for (const b of targets.slice(at + 1)) {
      if (a.kind === 'bar' || b.kind === 'bar' || a.out || b.out) continue;
      const gap = Math.max(
        Math.max(a.box.left, b.box.left) - Math.min(a.box.right, b.box.right),
        Math.max(a.box.top, b.box.top) - Math.min(a.box.bottom, b.box.bottom),
      );
      const least = a.destroys !== b.destroys ? 24 : 8;
      if (gap < least - SLACK) found.push(`${a.name} | ${b.name}: ${gap.toFixed(1)} apart, not ${least}`);
    }
  }
  return found;
}
