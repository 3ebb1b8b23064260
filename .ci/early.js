/** The script that stands in the page itself (src/storage/early-read.js), and the hash by which the policy allows it. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { minify_sync } from 'terser';

const source = readFileSync(new URL('../src/storage/early-read.js', import.meta.url), 'utf8');

export const EARLY = minify_sync(source, { ecma: 2020 }).code ?? source;
export const EARLY_HASH = `'sha256-${createHash('sha256').update(EARLY).digest('base64')}'`;
