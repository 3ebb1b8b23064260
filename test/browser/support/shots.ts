import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Where pictures of the journeys go: LATHESIDE_SHOTS, or a folder for temporary files. */
export const SHOTS = process.env.LATHESIDE_SHOTS ?? join(tmpdir(), 'latheside-shots');

/** A picture of a screen passed by, where pictures were asked for: taking hundreds takes minutes. */
export async function glimpse(page: Page, name: string): Promise<void> {
  if (process.env.LATHESIDE_SHOTS) await shoot(page, name);
}

/** Takes a picture of what the screen shows and gives its path. */
export async function shoot(page: Page, name: string): Promise<string> {
  mkdirSync(SHOTS, { recursive: true });
  const path = join(SHOTS, `${name.replace(/[^A-Za-z0-9]+/g, '-')}.png`);
  await page.screenshot({ path });
  return path;
}
