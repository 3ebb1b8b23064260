import axe from 'axe-core';
import type { RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import type { Evaluates } from './evaluates';
import { glimpse } from './shots';

/** Widths every screen must be clean at, CSS pixels, and the colours it is scanned in there: no rule looks at both at once. */
const VIEWS = [
  [320, 'light'],
  [390, 'dark'],
  [768, 'light'],
] as const;

const OPTIONS: RunOptions = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  rules: { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } },
  resultTypes: ['violations'],
  elementRef: true,
  // Style sheets are the page's own: fetching them again would be a request the journey has to explain.
  preload: false,
};

/** What axe finds wrong on the page as it stands, one line for each element. */
export async function scan(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const violations = await page.evaluate(async (options) => {
    const { axe: engine } = window as unknown as { axe: typeof axe };
    const { violations: all } = await engine.run(document, options);
    // Behind an open sheet nothing can be touched, however little of it the sheet leaves to be seen.
    const modals = (root: ParentNode): Element[] => [
      ...root.querySelectorAll('dialog:modal'),
      ...[...root.querySelectorAll('*')].flatMap((e) => (e.shadowRoot ? modals(e.shadowRoot) : [])),
    ];
    const sheet = modals(document)[0];
    const above = (e: Element): Element | null =>
      e.assignedSlot ?? e.parentElement ?? (e.getRootNode() as ShadowRoot).host ?? null;
    const inSheet = (e: Element | null): boolean => e !== null && (e === sheet || inSheet(above(e)));
    return all.map(({ id, nodes }) => ({
      id,
      nodes: nodes
        .filter(({ element }) => id !== 'target-size' || !sheet || inSheet(element ?? null))
        .map(({ target, any, failureSummary }) => ({
          target,
          any: any.map(({ message }) => ({ message })),
          failureSummary,
        })),
    }));
  }, OPTIONS);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(
      (node) => `${id}: ${node.target.flat().join(' ')} ${node.any[0]?.message ?? node.failureSummary ?? ''}`,
    ),
  );
}

/** How far the page is wider than the screen, CSS pixels; 0 is right. */
export function sideways(page: Evaluates): Promise<number> {
  return page.evaluate(() => {
    const root = document.documentElement;
    return Math.max(0, root.scrollWidth - root.clientWidth);
  }, null);
}

/**
 * Scans the page at every width and in both colour schemes, leaving a picture of each where they are asked for, and puts the size back.
 * @param name of the screen and state, for the pictures and the lines
 */
export async function scanEverywhere(page: Page, name: string): Promise<string[]> {
  const before = page.viewportSize() ?? { width: 390, height: 844 };
  const found: string[] = [];
  for (const [width, colorScheme] of VIEWS) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: width === 768 ? 1024 : 844 });
    await settled(page);
    const where = `${name} ${width} ${colorScheme}`;
    await glimpse(page, where);
    const wide = await sideways(page);
    if (wide > 0) found.push(`${where}: ${wide} px wider than the screen`);
    found.push(...(await scan(page)).map((line) => `${where}: ${line}`));
  }
  await page.emulateMedia({ colorScheme: null });
  await page.setViewportSize(before);
  return found;
}

/** Resolves after two frames, and when no transition runs any more: colours are measured as they come to rest. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const finite = document.getAnimations().filter((one) => one.effect?.getTiming().iterations !== Infinity);
    await Promise.allSettled(finite.map((one) => one.finished));
  });
}
