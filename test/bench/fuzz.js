/**
 * `npm run fuzz`, or with how many after `--`: a million spoilt files, each read: no crash, nothing over 50 ms for 100 kB, nothing taken
 * that the published schema refuses. Exits with 1 otherwise, and names the number that gives the file again.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { bundle } from './bundle.js';

const LONGEST_MS = 50;
const count = Number(process.argv[2] ?? 1_000_000);
const schema = JSON.parse(readFileSync('public/schemas/latheside-1.schema.json', 'utf8'));
const isValid = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false }).compile(schema);

const { folder, remove } = await bundle('test/bench/fuzz.ts', 'fuzz.js');
try {
  const { again, GOOD, readDocument, spoilt } = await import(pathToFileURL(join(folder, 'fuzz.js')).href);
  /** @type {Record<string, number>} */
  const codes = {};
  let longest = 0;
  const slow = [];
  for (let n = 0; n < count; n += 1) {
    const text = spoilt(GOOD, n, again);
    const begun = performance.now();
    const read = readDocument(text);
    const took = performance.now() - begun;
    longest = Math.max(longest, took);
    if (took > LONGEST_MS) slow.push(n);
    const code = read.ok ? 'taken' : read.code;
    codes[code] = (codes[code] ?? 0) + 1;
    if (read.ok && !isValid(JSON.parse(text.trim())))
      throw new Error(`${n} is taken, and the schema refuses it`);
  }
  // A pause of the machine itself isn't the reader's: it is asked again.
  for (const n of slow) {
    const text = spoilt(GOOD, n, again);
    const tries = [1, 2, 3, 4, 5].map(() => {
      const begun = performance.now();
      readDocument(text);
      return performance.now() - begun;
    });
    if (Math.min(...tries) > LONGEST_MS) throw new Error(`${n} takes over ${LONGEST_MS} ms`);
  }
  console.log(`${count} files, the longest ${longest.toFixed(1)} ms`);
  console.log(Object.entries(codes).sort(([, a], [, b]) => b - a));
} finally {
  remove();
}
