/** The scripts and the style sheet that stand in the page itself, and the hashes by which the policy allows them. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { minify_sync } from 'terser';

const read = (/** @type {string} */ path) => readFileSync(new URL(`../src/${path}`, import.meta.url), 'utf8');
const hash = (/** @type {string} */ text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

const script = read('storage/early-read.js') + read('device/early-manifest.js');

export const EARLY = minify_sync(script, { ecma: 2020 }).code ?? script;
export const EARLY_HASH = hash(EARLY);

/** The look's values and the frame that stands until the app does: asked for apart, the first paint would wait for it. */
export const LOOK = read('elements/theme.css')
  .replaceAll(/\/\*[^]*?\*\//g, '')
  .replaceAll(/\s+/g, ' ')
  .replaceAll(/ ?([{};,]) ?/g, '$1')
  .replaceAll(': ', ':')
  .replaceAll(';}', '}')
  // Beside the page, wherever that is.
  .replaceAll("url('/", "url('./")
  .trim();
export const LOOK_HASH = hash(LOOK);
