import type { Locator } from 'playwright-core';

/**
 * Colours in an element's own tree that aren't the system's while those are in force, one line each; also where nothing at all
 * stands out from the ground. What takes itself out on purpose (a code for a camera) is passed over.
 */
export const strangeColours = (element: Locator): Promise<string[]> => element.evaluate(find);

/** Runs in the page. */
function find(element: Element): string[] {
  const probe = document.body.appendChild(document.createElement('i'));
  const of = (word: string): string => {
    probe.style.color = word;
    return getComputedStyle(probe).color;
  };
  const words = ['Canvas', 'CanvasText', 'GrayText', 'Highlight', 'HighlightText', 'ButtonText'];
  words.push(
    'ButtonFace',
    'ButtonBorder',
    'LinkText',
    'VisitedText',
    'Field',
    'FieldText',
    'Mark',
    'MarkText',
  );
  const known = new Set([...words.map(of), 'none', 'rgba(0, 0, 0, 0)']);
  const paper = of('Canvas');
  probe.remove();
  const found: string[] = [];
  let seen = false;
  const look = (e: Element): void => {
    const style = getComputedStyle(e);
    const drawn = e instanceof SVGGeometryElement || e instanceof SVGTextElement;
    // A rule is a picture of its own making.
    const apart = style.forcedColorAdjust === 'none' && !e.matches('ls-rule');
    if (!apart && e.checkVisibility() && !e.closest('clipPath')) {
      const colours = drawn
        ? [style.fill, style.stroke]
        : [
            style.color,
            style.backgroundColor,
            ...(parseFloat(style.borderTopWidth) ? [style.borderTopColor] : []),
          ];
      for (const colour of colours) {
        if (!known.has(colour)) found.push(`${e.localName}.${e.getAttribute('class') ?? ''}: ${colour}`);
        seen ||= ![paper, 'none', 'rgba(0, 0, 0, 0)'].includes(colour);
      }
    }
    for (const child of [...(e.shadowRoot?.children ?? []), ...e.children])
      if (child.localName !== 'style') look(child);
  };
  look(element);
  if (!seen && !element.matches('ls-code-loop')) found.push('nothing stands out from the ground');
  return found;
}
