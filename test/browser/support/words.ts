import type { Locator } from 'playwright-core';
import type { Evaluates } from './evaluates';
import type { PadUnitNow } from './hand';

/** Runs in the page: all words in an element, or on the whole page, those in its elements' own trees included. */
const wordsIn = (from: Element | null): string => {
  const read = (node: Node): string => {
    if (node instanceof Element && getComputedStyle(node).display === 'none') return '';
    const root = node instanceof Element ? node.shadowRoot : null;
    if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
    if (node instanceof HTMLSlotElement) return node.assignedNodes({ flatten: true }).map(read).join('');
    return [...(root ?? node).childNodes].map(read).join(' ');
  };
  return read(from ?? document.body);
};
const tidied = (all: string): string => all.replace(/\s+/g, ' ').replace(/ (?=[.:,;])/g, '');

/** All the words of the screen, for literal figures that stand in several elements. */
export const readWords = async (page: Evaluates): Promise<string> =>
  tidied(await page.evaluate(wordsIn, null));

/** All the words of one element. */
export const wordsOf = async (target: Locator): Promise<string> => tidied(await target.evaluate(wordsIn));

/** Runs in the page: what the pad that is open says of its unit. */
export const padUnit = (): PadUnitNow => {
  const look = (root: ParentNode): Element | null => {
    for (const e of root.querySelectorAll('*')) {
      const found = e.localName === 'ls-pad' ? e : e.shadowRoot && look(e.shadowRoot);
      if (found) return found;
    }
    return null;
  };
  const { units, unit } = look(document) as unknown as {
    units: { id: string; label: string }[];
    unit: string;
  };
  return { label: units.find((u) => u.id === unit)?.label ?? '', many: units.length > 2 };
};
