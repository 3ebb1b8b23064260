import type { Page } from 'playwright-core';
import { scanEverywhere } from './axe';
import { touchFaults, unroll } from './touch';

/**
 * What is wrong with the page as it stands, a line each: axe and sideways scroll at every width in both colours, keys
 * too small or too close. Leaves the screen at its usual size.
 * @param name of the screen and state, for the lines and pictures
 */
export async function pageFaults(page: Page, name: string): Promise<string[]> {
  const found = await scanEverywhere(page, name);
  // A key just pressed takes no second answer for a moment.
  await page.locator('.resting').first().waitFor({ state: 'detached' });
  await unroll(page);
  found.push(...(await touchFaults(page)));
  await page.setViewportSize({ width: 390, height: 844 });
  return found;
}

/** Pages of the document that the page prints: each has one object of this type. */
export async function printedPages(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format });
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
}
