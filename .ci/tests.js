/**
 * Runs all tests. A file of journeys that failed is gone through once more from its beginning, and it is said: what
 * fails twice is no chance, and one that passes then still has something to explain. All else must pass at once.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';

/** More than these is no haste of a journey. */
const MOST = 4;

const vitest = (...args) =>
  spawnSync(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', ...args], { stdio: 'inherit' })
    .status;

/** The files that failed; none where that can't be told. */
const failedIn = (report) => {
  try {
    const { testResults } = JSON.parse(readFileSync(report, 'utf8'));
    return testResults.filter((f) => f.status !== 'passed').map((f) => relative('.', f.name));
  } catch {
    return [];
  }
};

const folder = mkdtempSync(join(tmpdir(), 'latheside-tests-'));
const report = join(folder, 'report.json');
let status = vitest(
  ...process.argv.slice(2),
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
);
if (status !== 0) {
  const failed = failedIn(report);
  const journeys = failed.filter((f) => f.startsWith('test/browser/'));
  if (failed.length > 0 && failed.length <= MOST && journeys.length === failed.length) {
    console.log(`Gone through once more: ${journeys.join(', ')}`);
    status = vitest('--project', 'browser', ...journeys);
  }
}
rmSync(folder, { recursive: true, force: true });
process.exit(status ?? 1);
