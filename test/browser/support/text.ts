import type { Page } from 'playwright-core';
import type { Evaluates } from './evaluates';

/** Where words overlap other words, leave their key, or are cut off, one line each. */
export function textFaults(page: Evaluates): Promise<string[]> {
  return page.evaluate(faults, null);
}

/** Sets the size of text as a person's browser does: everything in rem follows. */
export async function textSize(page: Page, percent: number): Promise<void> {
  await page.evaluate((size) => {
    document.documentElement.style.setProperty('font-size', size);
  }, `${percent}%`);
}

/** Figures written with a point, with what stands about them; versions and numbers of standards are none. */
export const pointsIn = (words: string): string[] =>
  [...words.matchAll(/.{0,20}(?<![B.\d])\d+\.\d+(?!\.?\d).{0,10}/g)].map(([found]) => found);

/** Runs in the page. */
function faults(): string[] {
  interface Piece {
    words: string;
    box: DOMRect;
    element: Element;
  }
  const found: string[] = [];
  const pieces: Piece[] = [];
  const up = (node: Node): Node | null =>
    (node as Element).assignedSlot ?? node.parentNode ?? (node as ShadowRoot).host ?? null;
  const chain = (element: Element): Element[] => {
    const all: Element[] = [];
    for (let at: Node | null = element; at; at = up(at)) if (at instanceof Element) all.push(at);
    return all;
  };
  const unseen = (element: Element): boolean =>
    !element.checkVisibility({ visibilityProperty: true }) ||
    chain(element).some((e) => getComputedStyle(e).clipPath !== 'none');

  const collect = (root: Node): void => {
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (node instanceof Element && node.shadowRoot) collect(node.shadowRoot);
      const words =
        node.nodeType === Node.TEXT_NODE ? (node.textContent ?? '').replace(/\s+/g, ' ').trim() : '';
      const element = node.parentElement;
      if (!words || !element || /^(STYLE|SCRIPT|TITLE|NOSCRIPT)$/.test(element.tagName)) continue;
      if (element instanceof SVGElement || unseen(element)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects())
        if (box.width > 1 && box.height > 1) pieces.push({ words: words.slice(0, 40), box, element });
    }
  };
  const sheet = document.querySelector('ls-app')?.shadowRoot?.querySelector('ls-why-sheet')?.shadowRoot;
  const open = sheet?.querySelector('ls-sheet')?.shadowRoot?.querySelector('dialog')?.open === true;
  collect(open && sheet ? sheet : document.body);

  const scrolls = (element: Element): boolean =>
    chain(element).some(
      (e) => e.scrollWidth > e.clientWidth + 1 && /auto|scroll/.test(getComputedStyle(e).overflowX),
    );

  for (const { words, box, element } of pieces) {
    if (scrolls(element)) continue;
    if (box.left < -1 || box.right > innerWidth + 1) found.push(`${words}: outside the screen`);
    // The box of a line is taller than its letters.
    const slack = 1 + box.height / 10;
    const key = chain(element).find((e) => e.matches('.key, .line, a, button'));
    if (key) {
      const frame = key.getBoundingClientRect();
      if (
        box.left < frame.left - 1 ||
        box.right > frame.right + 1 ||
        box.top < frame.top - slack ||
        box.bottom > frame.bottom + slack
      )
        found.push(`${words}: leaves its key`);
    }
    for (const e of chain(element)) {
      const style = getComputedStyle(e);
      if (!/hidden|clip/.test(style.overflowX + style.overflowY) || e === document.documentElement) continue;
      const frame = e.getBoundingClientRect();
      if (box.right > frame.right + 1 || box.bottom > frame.bottom + 2) found.push(`${words}: cut off`);
    }
  }
  for (const [at, a] of pieces.entries()) {
    for (const b of pieces.slice(at + 1)) {
      if (a.element === b.element) continue;
      const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      // Boxes of lines are taller than their letters; a third of the smaller is letters on letters.
      if (wide > 2 && high > Math.min(a.box.height, b.box.height) / 3)
        found.push(`${a.words} | ${b.words}: on top of each other`);
    }
  }
  return [...new Set(found)];
}
