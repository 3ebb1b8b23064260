/**
 * What the bench does in the app, by the names on its keys. If a name changes on a screen, change it here.
 */

/** @typedef {import('playwright-core').Page} Page */

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
 * Puts threads of the person's own into the database and opens the app again with them.
 * @param {Page} page
 * @param {number} count
 */
export async function keepOwnThreads(page, count) {
  await page.evaluate(
    (many) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('latheside');
        opening.onerror = reject;
        opening.onsuccess = () => {
          const tx = opening.result.transaction('threads', 'readwrite');
          const pitches = ['5/4', '3/2', '1/1', '2/1'];
          for (let at = 0; at < many; at += 1) {
            const [n, d] = /** @type {string} */ (pitches[at % pitches.length]).split('/');
            const body = {
              name: '',
              major: { n: String(1000 + at), d: '100', unit: 'mm' },
              pitch: { n, d, unit: 'mm' },
              profile: 'iso60',
              ...{ angle: null, crest: null, depth: null, starts: 1, hand: 'right' },
            };
            tx.objectStore('threads').put({
              ...{ id: `bench-${at}`, schema: 1, rev: `${at}-bench`, parents: [], device: 'bench' },
              ...{ counter: at, changedAt: 0, deleted: false, body },
            });
          }
          tx.oncomplete = resolve;
          tx.onerror = reject;
        };
      }),
    count,
  );
  await page.reload();
  await go(page, 'threads/own');
  // The list shows 60; the count of the others tells that all were read.
  await page.getByText(`and ${count - 60} more`).waitFor();
}

/**
 * Opens the look-up with its pad.
 * @param {Page} page
 */
export async function openPad(page) {
  await go(page, 'threads/type');
  await page.getByRole('button', { name: '1', exact: true }).waitFor();
}
