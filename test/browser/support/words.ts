import type { Evaluates } from './evaluates';
import type { PadUnitNow } from './hand';

/** All the words of the screen, for literal figures that stand in several elements. */
export const readWords = async (page: Evaluates): Promise<string> => {
  const all = await page.evaluate(() => {
    const read = (node: Node): string => {
      if (node instanceof Element && getComputedStyle(node).display === 'none') return '';
      const root = node instanceof Element ? node.shadowRoot : null;
      if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
      if (node instanceof HTMLSlotElement) return node.assignedNodes({ flatten: true }).map(read).join('');
      return [...(root ?? node).childNodes].map(read).join(' ');
    };
    return read(document.body);
  }, null);
  return all.replace(/\s+/g, ' ').replace(/ (?=[.:,;])/g, '');
};

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
