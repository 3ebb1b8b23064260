/**
 * `npm run soak`, or with `-- --kills 10 --seed 7`: kills the browser in saves, passes, imports and updates of the built app, stops
 * its worker, fills the phone, moves its clock, and looks after each whether everything that was acknowledged is there. Exits
 * with 1 where anything was lost or wrong.
 */
import { existsSync, readFileSync } from 'node:fs';
import { runnerImport } from 'vite';
import { median } from '../bench/numbers.js';

const DIST = process.env.LATHESIDE_DIST ?? 'dist';
if (!existsSync(`${DIST}/worker.js`)) throw new Error('Nothing built: npm run build first.');

/** @param {string} name @param {number} usual */
const option = (name, usual) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : Number(process.argv[at + 1]);
};
const kills = option('kills', 220);
const seed = option('seed', Date.now() % 1_000_000);
const { version } = JSON.parse(readFileSync('package.json', 'utf8'));

/** @type {import('./soak').Trial[]} */
const trials = [];
/** @param {import('./soak').Trial} trial */
const onTrial = (trial) => {
  trials.push(trial);
  const { name, wrong, acknowledged, refilled, ms } = trial;
  const again = refilled > 0 ? ', filled again from the copy' : '';
  console.log(`${trials.length} ${name}: ${acknowledged} acknowledged, ${(ms / 1000).toFixed(1)} s${again}`);
  for (const line of wrong.slice(0, 8)) console.log(`  WRONG ${line}`);
};

console.log(`${kills} kills, seed ${seed}`);
/** @type {{ module: typeof import('./soak') }} */
const { module } = await runnerImport('./test/soak/soak.ts', { configFile: false, logLevel: 'error' });
await module.soak({ kills, seed, built: [DIST, version], onTrial });

const row = (/** @type {(string | number)[]} */ cells) =>
  console.log(cells.map((cell, at) => (at === 0 ? `${cell}`.padEnd(36) : `${cell}`.padStart(14))).join(''));
console.log('');
row(['', 'times', 'acknowledged', 'refused', 'refilled', 'wrong', 'median']);
for (const name of new Set(trials.map((t) => t.name))) {
  const of = trials.filter((t) => t.name === name);
  const sum = (/** @type {(t: import('./soak').Trial) => number} */ count) =>
    of.reduce((s, t) => s + count(t), 0);
  const wrong = sum((t) => (t.wrong.length > 0 ? 1 : 0));
  const seconds = `${((median(of.map((t) => t.ms)) ?? 0) / 1000).toFixed(1)} s`;
  row([
    name,
    of.length,
    sum((t) => t.acknowledged),
    sum((t) => t.refused),
    sum((t) => t.refilled),
    wrong,
    seconds,
  ]);
}
const failed = trials.filter((t) => t.wrong.length > 0).length;
console.log(`${trials.length - failed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
