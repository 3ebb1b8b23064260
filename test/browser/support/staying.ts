import type { Page } from 'playwright-core';

/** What is found on a page and still found a second later: caught while it is laid out anew, texts may lie on each other. */
export const staying = async (page: Page, look: (page: Page) => Promise<string[]>): Promise<string[]> => {
  const found = await look(page);
  if (found.length === 0) return found;
  await page.waitForTimeout(1000);
  return look(page);
};
