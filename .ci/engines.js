/**
 * Finds Firefox and WebKitGTK for the journeys in three engines. Run as a command on Debian as root it installs the
 * Debian packages where something is missing (Chromium's too); elsewhere it says what to install and exits with 1.
 */
import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium, findProgram, installOnDebian } from './chromium.js';

const LIBRARIES = ['/usr/lib', '/usr/libexec', '/usr/local/libexec'];

/** Path of a Firefox: LATHESIDE_FIREFOX, or on the path; null where there is none. */
export const findFirefox = () =>
  findProgram('LATHESIDE_FIREFOX', [
    'firefox-esr',
    'firefox',
    '/Applications/Firefox.app/Contents/MacOS/firefox',
  ]);

/** The small browser that comes with the library; each distribution has its own folder for it. */
function findMiniBrowser() {
  const below = LIBRARIES.flatMap((folder) => {
    try {
      return [folder, ...readdirSync(folder).map((name) => join(folder, name))];
    } catch {
      return [];
    }
  });
  return findProgram(
    'LATHESIDE_MINIBROWSER',
    below.map((folder) => join(folder, 'webkit2gtk-4.1', 'MiniBrowser')),
  );
}

/**
 * WebKitGTK's driver, browser and a screen to show it on, or null where one of them is missing.
 * @returns {{ driver: string, browser: string, display: string } | null}
 */
export function findWebKit() {
  const driver = findProgram('LATHESIDE_WEBKITDRIVER', ['WebKitWebDriver']);
  const browser = findMiniBrowser();
  const display = findProgram('LATHESIDE_XVFB', ['Xvfb']);
  return driver !== null && browser !== null && display !== null ? { driver, browser, display } : null;
}

/** Debian packages that are missing. */
function missing() {
  return [
    ...(findChromium() === null ? ['chromium'] : []),
    ...(findFirefox() === null ? ['firefox-esr'] : []),
    ...(findWebKit() === null ? ['webkit2gtk-driver', 'xvfb'] : []),
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const needed = missing();
  if (needed.length > 0 && (!installOnDebian(needed) || missing().length > 0)) {
    console.error(
      [
        `Not found: ${missing().join(', ')} (names of Debian's packages). The journeys in three engines need them:`,
        '  Debian or Ubuntu: sudo apt-get install chromium firefox-esr webkit2gtk-driver xvfb',
        '  Fedora: sudo dnf install chromium firefox webkit2gtk4.1 xorg-x11-server-Xvfb',
        '  or name what is elsewhere in LATHESIDE_CHROMIUM, LATHESIDE_FIREFOX, LATHESIDE_MINIBROWSER,',
        '  LATHESIDE_WEBKITDRIVER, LATHESIDE_XVFB.',
      ].join('\n'),
    );
    process.exit(1);
  }
  for (const program of [findChromium(), findFirefox()])
    console.log(
      execFileSync(program ?? '', ['--version'], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'ignore'],
      }).trim(),
    );
  // Its driver tells no version; the session does.
  console.log(`WebKitGTK at ${findMiniBrowser()}`);
}
