import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The build the journeys run on: LATHESIDE_DIST, or the usual one. */
export const DIST = process.env.LATHESIDE_DIST ?? 'dist';

/**
 * Builds the app into a temporary folder and gives its path: under another version for journeys of an update, or
 * as the way out. The caller removes the folder.
 */
export function build({
  version,
  into,
  unregister = false,
  variables = {},
}: {
  /** A folder that is there already and keeps what else is in it. */
  into?: string;
  version?: string;
  /** Other variables that the build reads. */
  variables?: Readonly<Record<string, string>>;
  unregister?: boolean;
}): Promise<string> {
  const folder = into ?? mkdtempSync(join(tmpdir(), 'latheside-build-'));
  const env = {
    ...process.env,
    NODE_ENV: 'production',
    ...variables,
    ...(version === undefined ? {} : { LATHESIDE_VERSION: version }),
    ...(unregister ? { LATHESIDE_UNREGISTER: '1' } : {}),
  };
  const args = [
    'node_modules/vite/bin/vite.js',
    'build',
    '--outDir',
    folder,
    ...(into === undefined ? ['--emptyOutDir'] : []),
    '--logLevel',
    'warn',
  ];
  return new Promise((resolve, reject) => {
    let said = '';
    const child = spawn(process.execPath, args, { env, stdio: ['ignore', 'pipe', 'pipe'] });
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (text: Buffer) => (said += text.toString()));
    child.on('error', reject);
    child.on('exit', (code) => {
      if (code === 0) resolve(folder);
      else reject(new Error(`The build failed:\n${said}`));
    });
  });
}
