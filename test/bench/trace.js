/** Times the model of lead error in this Node, bundled as it is for the worker. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundle } from './bundle.js';

const SIZES = [1e4, 1e5, 1e6, 6_553_600, 1e7, 1e8];

/** @returns {Promise<import('./trace').TraceTimes[]>} */
export async function measureTrace() {
  const { folder, remove } = await bundle('test/bench/trace.ts', 'trace.mjs');
  try {
    const { timeTrace } = await import(pathToFileURL(join(folder, 'trace.mjs')).href);
    // Once unseen, as in a page that has run it before; the first run of all is shown by the smallest sizes.
    const first = timeTrace(1e4);
    timeTrace(2e6);
    return [first, ...SIZES.slice(1).map((counts) => timeTrace(counts))];
  } finally {
    remove();
  }
}
