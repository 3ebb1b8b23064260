import type { Page } from 'playwright-core';

/**
 * What can't be read in the drawings on the page, one line each: words below 7:1 or on top of each other, lines and areas
 * below 3:1 (WCAG 2.2, 1.4.6 and 1.4.11) that are no hairline. Against the paper: areas under words are left out.
 */
export const drawingFaults = (page: Page): Promise<string[]> => page.evaluate(faults);

/** How many drawings stand on the page. */
export const drawingsOn = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const count = (root: ParentNode): number =>
      root.querySelectorAll('svg').length +
      [...root.querySelectorAll('*')].reduce((n, e) => n + (e.shadowRoot ? count(e.shadowRoot) : 0), 0);
    return count(document);
  });

/** Runs in the page. */
function faults(): string[] {
  const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  if (!canvas) throw new Error('no canvas');
  /** A colour on another, as the screen shows it. */
  const shown = (colour: string, on: string): number => {
    for (const c of [on, colour]) {
      canvas.fillStyle = c;
      canvas.fillRect(0, 0, 1, 1);
    }
    const [r = 0, g = 0, b = 0] = [...canvas.getImageData(0, 0, 1, 1).data].map((v) =>
      v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4,
    );
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (colour: string, paper: string): number => {
    const [dark = 0, light = 0] = [shown(colour, paper), shown(paper, paper)].sort((a, b) => a - b);
    return (light + 0.05) / (dark + 0.05);
  };
  const found: string[] = [];
  const value = (name: string): string => {
    const probe = document.createElement('i');
    probe.setAttribute('hidden', '');
    document.body.append(probe);
    probe.style.setProperty('color', `var(${name})`);
    const { color } = getComputedStyle(probe);
    probe.remove();
    return color;
  };
  const [paper, hair] = [value('--paper'), value('--hair')];
  const look = (svg: SVGSVGElement): void => {
    // The filled key of a place or a choice turns its icon's colours round.
    const ground = getComputedStyle(svg).color === paper ? value('--ink') : paper;
    const texts = [...svg.querySelectorAll('text')].filter((t) => t.textContent?.trim());
    for (const e of svg.querySelectorAll<SVGGraphicsElement>(
      'path, line, rect, circle, polygon, polyline, text',
    )) {
      const style = getComputedStyle(e);
      const box = e.getBoundingClientRect();
      if (
        !e.checkVisibility({ visibilityProperty: true }) ||
        box.width + box.height === 0 ||
        e.closest('defs, pattern')
      )
        continue;
      const text = e.localName === 'text';
      const colours = text ? [style.fill] : [style.stroke, style.fill];
      const drawn = colours.filter(
        (c) => c.startsWith('rgb') && !/, 0\)$/.test(c) && c !== ground && c !== hair,
      );
      if (drawn.length === 0) continue;
      const best = Math.max(...drawn.map((c) => contrast(c, ground)));
      if (best < (text ? 7 : 3))
        found.push(
          `${svg.getAttribute('aria-label')?.slice(0, 30) ?? svg.getAttribute('class') ?? 'svg'}: ${e.localName}.${e.getAttribute('class') ?? ''} ${drawn.join(' ')} ${best.toFixed(1)}:1`,
        );
    }
    for (const [i, a] of texts.entries())
      for (const b of texts.slice(i + 1)) {
        const [p, q] = [a.getBoundingClientRect(), b.getBoundingClientRect()];
        // Turned words have boxes larger than themselves.
        if (/rotate/.test(`${a.getAttribute('transform')}${b.getAttribute('transform')}`)) continue;
        const wide = Math.min(p.right, q.right) - Math.max(p.left, q.left);
        const high = Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top);
        if (wide > 2 && high > Math.min(p.height, q.height) / 3)
          found.push(`${a.textContent} | ${b.textContent}: on top of each other`);
      }
  };
  const walk = (root: ParentNode): void => {
    for (const e of root.querySelectorAll('*')) {
      if (e.shadowRoot) walk(e.shadowRoot);
      if (e instanceof SVGSVGElement && e.checkVisibility({ visibilityProperty: true })) look(e);
    }
  };
  walk(document);
  return [...new Set(found)];
}
