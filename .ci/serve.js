/**
 * A small static server for the built app: right media types, the security headers of policy.js and a path to
 * serve under. `node .ci/serve.js dist --port 4173 --base /sub/`
 */
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CACHE_OTHER, HEADERS } from './policy.js';

const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
};

/**
 * @typedef {object} Served
 * @property {string} url address of the app, ending in a slash
 * @property {number} port
 * @property {string[]} requests paths asked for so far, in order; empty it to start anew
 * @property {string} folder the folder served; set it to another one to deploy another build
 * @property {number} delay ms that each answer waits, as on a slow network; 0 unless set
 * @property {() => Promise<void>} close stops at once, ending connections that browsers keep open
 */

/**
 * Serves a folder on this machine.
 * @param {string} folder
 * @param {{ port?: number, base?: string, host?: string, headers?: Record<string, string> }} [options]
 *   `port` 0 (the default) takes a free one; `base` is the path served under, with slashes at both ends;
 *   `headers` are added to or replace the usual ones.
 * @returns {Promise<Served>}
 */
export async function serve(folder, { port = 0, base = '/', host = 'localhost', headers = {} } = {}) {
  /** @type {Omit<Served, 'url' | 'port' | 'close'>} */
  const state = { requests: [], folder, delay: 0 };
  const server = createServer((request, response) => {
    const [pathname = '/'] = (request.url ?? '/').split('?');
    state.requests.push(pathname);
    setTimeout(() => void answer(pathname, response), state.delay);
  });

  /**
   * @param {string} pathname
   * @param {import('node:http').ServerResponse} response
   */
  async function answer(pathname, response) {
    const refuse = (/** @type {number} */ status, /** @type {string} */ text) =>
      response.writeHead(status, { 'Content-Type': TYPES['.txt'] }).end(`${text}\n`);
    if (!pathname.startsWith(base)) return refuse(404, `Served under ${base}`);
    const file = await findFile(state.folder, pathname.slice(base.length));
    if (file === null) return refuse(404, 'Not found');
    response.writeHead(200, {
      ...HEADERS,
      'Cache-Control': CACHE_OTHER,
      'Content-Type': TYPES[/** @type {keyof typeof TYPES} */ (extname(file))] ?? 'application/octet-stream',
      ...headers,
    });
    createReadStream(file)
      .on('error', () => response.destroy())
      .pipe(response);
  }

  await new Promise((ready, failed) => {
    server.once('error', failed);
    server.listen(port, host, () => ready(undefined));
  });
  const address = /** @type {import('node:net').AddressInfo} */ (server.address());
  return Object.assign(state, {
    port: address.port,
    url: `http://localhost:${address.port}${base}`,
    close: () =>
      new Promise((/** @type {(value: void) => void} */ closed) => {
        server.close(() => closed());
        server.closeAllConnections();
      }),
  });
}

/**
 * The file a path names inside the folder, or null where there is none or the path leads outside.
 * @param {string} folder
 * @param {string} path
 */
async function findFile(folder, path) {
  const root = resolve(folder);
  let file;
  try {
    file = join(root, decodeURIComponent(path));
  } catch {
    return null;
  }
  if (file !== root && !file.startsWith(root + sep)) return null;
  try {
    const found = await stat(file);
    if (found.isFile()) return file;
    const index = join(file, 'index.html');
    return (await stat(index)).isFile() ? index : null;
  } catch {
    return null;
  }
}

/** @param {string} name @param {string} fallback */
function option(name, fallback) {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? fallback : (process.argv[at + 1] ?? fallback);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2] ?? 'dist';
  const served = await serve(folder, {
    port: Number(option('port', '4173')),
    base: option('base', '/'),
    host: option('host', 'localhost'),
  });
  console.log(`Latheside is at ${served.url} (Ctrl+C stops it)`);
}
