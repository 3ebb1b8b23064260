import { existsSync } from 'node:fs';
import { findChromium } from '../../../.ci/chromium.js';
import { DIST } from './builds';

/** Before any journey: says plainly what is missing rather than failing in every one of them. */
export default function setup(): void {
  if (!existsSync(`${DIST}/worker.js`))
    throw new Error('The journeys run the built app: npm run build first.');
  if (findChromium() === null) throw new Error('No Chromium: node .ci/chromium.js says what to install.');
}
