/**
 * Finds a Chromium for the browser tests: LATHESIDE_CHROMIUM, then the usual places, then Playwright's own.
 * Run as a command on Debian as root it installs the Debian package where none is found; elsewhere it says what
 * to install and exits with 1.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const PLACES = [
  '/usr/lib/chromium/chromium',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** @param {string} path */
function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Path of the first program that is there, or null: a variable's, then each of these, names being looked for on the path.
 * @param {string} variable
 * @param {string[]} candidates names and paths
 * @returns {string | null}
 * @throws {Error} where the variable names something that can't be run
 */
export function findProgram(variable, candidates) {
  const named = process.env[variable];
  if (named) {
    if (isProgram(named)) return named;
    throw new Error(`${variable} names ${named}, which is no program that can be run.`);
  }
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const places = candidates.flatMap((one) =>
    /[\\/]/.test(one) ? [one] : folders.map((folder) => join(folder, one)),
  );
  return places.find(isProgram) ?? null;
}

/** Path of a Chromium program, or null where none is found. */
export function findChromium() {
  // On Debian the name on the path is a script around the program; a script can't be killed for real.
  return findProgram('LATHESIDE_CHROMIUM', [...PLACES, ...NAMES, chromium.executablePath()]);
}

/**
 * Installs Debian packages; true where that can be tried and worked.
 * @param {string[]} packages
 */
export function installOnDebian(packages) {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return false;
  const run = (/** @type {string[]} */ args) =>
    spawnSync('apt-get', args, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  return run(['update']) && run(['install', '-y', '--no-install-recommends', ...packages]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const found = findChromium() ?? (installOnDebian(['chromium']) ? findChromium() : null);
  if (found === null) {
    console.error(
      [
        'No Chromium found, and the browser tests need one. Any of these will do:',
        '  Debian or Ubuntu: sudo apt-get install chromium',
        '  Fedora: sudo dnf install chromium',
        '  macOS: brew install --cask chromium',
        '  anywhere: npx playwright-core install chromium',
        '  or set LATHESIDE_CHROMIUM to the path of a Chromium, Chrome or Edge.',
      ].join('\n'),
    );
    process.exit(1);
  }
  const version = execFileSync(found, ['--version'], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  console.log(`${version.trim()} at ${found}`);
}
