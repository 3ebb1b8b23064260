/**
 * Weighs the built app against the limits in DEVELOPERS.md: brotli at its highest setting, as hosts store it.
 * Exits with 1 over a limit.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

const KB = 1000;
const LIMITS = { entry: 60 * KB, scripts: 260 * KB, precached: 400 * KB };

/** @param {Buffer} bytes */
const brotli = (bytes) =>
  brotliCompressSync(bytes, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    },
  }).length;

/**
 * The scripts that run before the app's first paint: the page's own and, over and over, what those import statically.
 * @param {string} folder
 */
function entryScripts(folder) {
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const queue = [
    ...page.matchAll(/<(?:script|link rel="modulepreload")[^>]*(?:src|href)="([^"]+\.js)"/g),
  ].map(([, address]) => posix.normalize(address ?? ''));
  if (queue.length === 0) throw new Error(`${folder}/index.html starts no script.`);
  const found = new Set();
  for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
    if (found.has(file)) continue;
    found.add(file);
    const source = readFileSync(join(folder, file), 'utf8');
    // Built modules import their neighbours as `import…from"./name.js"` or `import"./name.js"`.
    for (const [, address] of source.matchAll(/(?:\bfrom|\bimport)\s*["'`](\.[^"'`]+\.js)["'`]/g)) {
      queue.push(posix.join(posix.dirname(file), address ?? ''));
    }
  }
  return [...found];
}

/**
 * The files the worker keeps, read from the list in it.
 * @param {string} folder
 */
function precachedFiles(folder) {
  const worker = readFileSync(join(folder, 'worker.js'), 'utf8');
  const files = [...worker.matchAll(/["`]?url["`]?:\s*["`]([^"`]+)["`]/g)].map(
    ([, address]) => address ?? '',
  );
  return [...new Set(files)];
}

/**
 * Bytes of each group of files, raw and brotli.
 * @param {string} folder
 */
export function weigh(folder = 'dist') {
  // The elements for other pages may lie beside the app: they are no part of it, and their own build weighs them.
  const scripts = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.js') && !/^embed[\\/]/.test(name),
  );
  const groups = { entry: entryScripts(folder), scripts, precached: precachedFiles(folder) };
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const inPage = [...page.matchAll(/<script>([^]*?)<\/script>/g)].map(([, code = '']) => Buffer.from(code));
  return Object.entries(groups).map(([name, files]) => {
    const read = files.map((file) => readFileSync(join(folder, file)));
    // What is kept has the page itself in it.
    const contents = name === 'precached' ? read : [...inPage, ...read];
    return {
      name: /** @type {keyof typeof LIMITS} */ (name),
      files: files.length,
      raw: contents.reduce((sum, bytes) => sum + bytes.length, 0),
      brotli: contents.reduce((sum, bytes) => sum + brotli(bytes), 0),
      limit: LIMITS[/** @type {keyof typeof LIMITS} */ (name)],
    };
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const labels = { entry: 'entry and static imports', scripts: 'all scripts', precached: 'precached' };
  let over = false;
  for (const { name, files, raw, brotli: packed, limit } of weigh(process.argv[2])) {
    const kb = (/** @type {number} */ bytes) => (bytes / KB).toFixed(1).padStart(7);
    over ||= packed > limit;
    const verdict = packed > limit ? 'OVER' : 'within';
    console.log(
      `${labels[name].padEnd(25)}${String(files).padStart(4)} files ${kb(raw)} kB raw ${kb(packed)} kB brotli, ` +
        `${verdict} ${limit / KB} kB`,
    );
  }
  if (over) process.exitCode = 1;
}
