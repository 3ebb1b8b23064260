/**
 * Breaks each listed line of core in a copy of the project and runs the core tests on it: every break must turn
 * one red. The tests of the broken folder run first, all others only if those stay green. Prints a table; exits with 1 where a break survives. The project's own files are never touched.
 * `node test/mutate/run.js [word …]` runs only those whose name or file contains a word.
 */
import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { MUTATIONS } from './list.js';

const COPIED = ['src', 'test', '.ci', 'package.json', 'tsconfig.json', 'vite.config.ts'];
const LEAST = 30;

const copy = mkdtempSync(join(tmpdir(), 'latheside-mutate-'));
/** @type {import('node:child_process').ChildProcess | undefined} */
let running;
const clean = () => {
  running?.kill();
  rmSync(copy, { recursive: true, force: true });
};
process.on('exit', clean);
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => process.exit(130));

for (const name of COPIED) cpSync(name, join(copy, name), { recursive: true });
symlinkSync(resolve('node_modules'), join(copy, 'node_modules'), 'junction');

const ALL = ['test/core', 'test/published'];
/** Core is pure, so its tests may share one set of modules: that is where most of the time goes otherwise. */
const QUICK = ['--pool', 'threads', '--no-isolate'];

/**
 * Runs tests in the copy, stopping at the first failure.
 * @param {string[]} tests folders to run
 * @returns {Promise<{ green: boolean, by: string }>} `by` names the test that failed
 */
function runTests(tests) {
  const report = join(copy, 'report.json');
  rmSync(report, { force: true });
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--project', 'core', '--bail', '1', ...QUICK];
  const filters = ['--reporter', 'json', '--outputFile', report, ...tests];
  return new Promise((done, failed) => {
    let said = '';
    const child = spawn(process.execPath, [...args, ...filters], {
      cwd: copy,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    running = child;
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += text));
    child.on('error', failed);
    child.on('exit', (code) => {
      if (code === 0) return done({ green: true, by: '' });
      let result;
      try {
        result = JSON.parse(readFileSync(report, 'utf8'));
      } catch {
        return failed(new Error(`The tests could not be run:\n${said}`));
      }
      done({ green: false, by: firstFailure(result) });
    });
  });
}

/** @param {{ testResults: { name: string, status: string, assertionResults: { status: string, fullName: string }[] }[] }} report */
function firstFailure({ testResults }) {
  for (const { assertionResults } of testResults) {
    const failed = assertionResults.find(({ status }) => status === 'failed');
    if (failed) return failed.fullName;
  }
  // A break that shows already while a test file is read, as where a table is made.
  const file = testResults.find(({ status }) => status === 'failed');
  return file ? `while reading ${file.name.slice(copy.length + 1)}` : '';
}

/**
 * The file with one thing changed.
 * @param {import('./list.js').Mutation} mutation
 * @param {string} text
 */
function broken({ name, file, find, change }, text) {
  const times = text.split(find).length - 1;
  if (times !== 1)
    throw new Error(`"${name}": the text to change stands ${times} times in ${file}, not once.`);
  const changed = text.replace(find, () => change);
  const { diagnostics = [] } = ts.transpileModule(changed, { reportDiagnostics: true });
  // What can't be read would turn every test red and prove nothing.
  if (diagnostics.length > 0) throw new Error(`"${name}" is no longer TypeScript.`);
  return changed;
}

const words = process.argv.slice(2);
const chosen = MUTATIONS.filter(
  ({ name, file }) => words.length === 0 || words.some((word) => `${file} ${name}`.includes(word)),
);
if (words.length === 0 && chosen.length < LEAST) throw new Error(`Only ${chosen.length} breaks are listed.`);

// All are looked up before the first run, so that a stale entry is said at once.
const prepared = chosen.map((mutation) => {
  const path = join(copy, 'src/core', mutation.file);
  const text = readFileSync(path, 'utf8');
  return { ...mutation, path, text, changed: broken(mutation, text) };
});

const before = await runTests(ALL);
if (!before.green) throw new Error(`The tests fail before anything is broken: ${before.by}`);

const survivors = [];
for (const { name, file, path, text, changed } of prepared) {
  writeFileSync(path, changed);
  const near = join('test/core', file.slice(0, file.indexOf('/')));
  let { green, by } = existsSync(join(copy, near)) ? await runTests([near]) : { green: true, by: '' };
  if (green) ({ green, by } = await runTests(ALL));
  writeFileSync(path, text);
  if (green) survivors.push(name);
  console.log(
    `${green ? 'SURVIVED' : 'red     '}  ${file.padEnd(24)} ${name}${green ? '' : `\n${' '.repeat(35)}${by}`}`,
  );
}
console.log(`\n${chosen.length - survivors.length} of ${chosen.length} breaks turned a test red.`);
if (survivors.length > 0) {
  console.error(`Survived:\n${survivors.map((name) => `  ${name}`).join('\n')}`);
  process.exitCode = 1;
}
