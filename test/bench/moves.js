/**
 * What the bench does in the app, by the names on its keys. If a name changes on a screen, change it here.
 */

/** @typedef {import('playwright-core').Page} Page */

/** Keys of the number pad pressed in turn. */
const KEYS = ['1', '0', '2', '5', '3', '4', '6', '8', '7', '9'];

/**
 * Leaves the app as a person has it who used it before: a machine, a thread, a speed.
 * @param {Page} _page
 */
export async function prepare(_page) {}

/**
 * Opens the look-up with its pad and gives the keys to press; null where the app has none yet.
 * @param {Page} page
 */
export async function openPad(page) {
  await page.goto(`${page.url().replace(/#.*/, '')}#/threads`);
  const key = page.getByRole('button', { name: '1', exact: true });
  const there = await key.waitFor({ timeout: 3000 }).then(
    () => true,
    () => false,
  );
  return there ? KEYS : null;
}
