import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';

/**
 * One module and what it imports as a file of its own, built as the app is, in a folder to be removed.
 * @param {string} entry
 * @param {string} file
 */
export async function bundle(entry, file) {
  const folder = mkdtempSync(join(tmpdir(), 'latheside-bench-'));
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      lib: { entry: resolve(entry), formats: ['es'], fileName: () => file },
    },
  });
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
