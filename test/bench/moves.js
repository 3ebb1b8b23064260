/**
 * What the bench does in the app, by the names on its keys. If a name changes on a screen, change it here.
 */

/** @typedef {import('playwright-core').Page} Page */

/** Keys of the number pad pressed in turn. */
const KEYS = ['1', '0', '2', '5', '3', '4', '6', '8', '7', '9'];

/**
 * @param {Page} page
 * @param {string} hash
 */
const go = async (page, hash) => {
  await page.goto(`${page.url().replace(/#.*/, '')}#/${hash}`);
};

/**
 * Leaves the app as a person has it who used it before: a machine, a thread, a speed.
 * @param {Page} page
 */
export async function prepare(page) {
  await go(page, 'machine/list');
  await page
    .getByRole('button', { name: /^Heron/ })
    .first()
    .click();
  await page.getByText('No thread chosen').waitFor();
  await go(page, 'threads/family/iso-coarse');
  await page.getByRole('button', { name: 'M10', exact: true }).click();
  await page.getByText('16.93 tpi').waitFor();
  await go(page, 'speed');
  await page.getByRole('button', { name: /^160/ }).click();
  await page.getByText('at 160 rpm').waitFor();
  await go(page, 'threads');
  await page.getByText('16.93 tpi').waitFor();
}

/**
 * Opens the look-up with its pad and gives the keys to press.
 * @param {Page} page
 */
export async function openPad(page) {
  await go(page, 'threads/type');
  await page.getByRole('button', { name: '1', exact: true }).waitFor();
  return KEYS;
}
