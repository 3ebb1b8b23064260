/**
 * `npm run bench`: size, start-up, keys and calculations of the built app, printed as a table and written to
 * test/bench/out/bench.json. Not a test: times depend on the machine. `--rounds 3` for a quick look.
 */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { weigh } from '../../.ci/sizes.js';
import { SLOWDOWN } from './browser.js';
import { measureHour } from './hour.js';
import { measureKeys } from './keys.js';
import { prepare } from './moves.js';
import { measureMuch } from './much.js';
import { ms } from './numbers.js';
import { measurePlaces } from './places.js';
import { measureCalculations } from './reckon.js';
import { measureStarts } from './starts.js';
import { measureTasks } from './tasks.js';
import { measureTrace } from './trace.js';

const DIST = 'dist';
if (!existsSync(`${DIST}/worker.js`)) throw new Error('Nothing built: npm run build first.');

const asked = process.argv.indexOf('--rounds');
const rounds = asked < 0 ? 9 : Number(process.argv[asked + 1]);

/** @param {string[]} cells */
const row = (cells) =>
  console.log(cells.map((cell, at) => (at === 0 ? cell.padEnd(34) : cell.padStart(15))).join(''));
const title = (/** @type {string} */ text) => console.log(`\n${text}`);

title('Size');
const sizes = weigh(DIST);
row(['', 'raw', 'brotli', 'limit']);
for (const { name, raw, brotli, limit } of sizes) {
  row([name, ...[raw, brotli, limit].map((bytes) => `${(bytes / 1000).toFixed(1)} kB`)]);
}

title(`Start, processor slowed ${SLOWDOWN} times, medians of ${rounds}`);
// The bare page has no policy for the address of its worker.
const PLAIN = { 'Content-Security-Policy': "default-src 'self'" };
const nothing = async () => {};
const starts = await measureStarts(
  [
    {
      name: 'bare page with a worker',
      folder: 'test/bench/bare',
      headers: PLAIN,
      mark: null,
      prepare: nothing,
    },
    { name: 'Latheside', folder: DIST, mark: 'latheside:usable', prepare },
  ],
  rounds,
);
const [bare, app] = /** @type {any[]} */ (starts);
row(['', 'bare: paint', 'paint', 'times bare', 'usable', 'times bare']);
for (const kind of ['cold', 'offline', 'reopened']) {
  const base = bare[kind].paint;
  const times = (/** @type {number | null} */ value) => (value === null ? '' : (value / base).toFixed(2));
  const { paint, usable } = app[kind];
  row([kind, ms(base), ms(paint), times(paint), ms(usable), times(usable)]);
}

title('Calculations in a page, slowed');
const calculations = await measureCalculations();
row(['', 'first', 'median', '95 %', 'count']);
for (const [name, { first, median, p95, count }] of Object.entries(calculations)) {
  row([name, ms(first), ms(median), ms(p95), String(count)]);
}

title('Touch on a pad key to the next paint, slowed');
const keys = await measureKeys(DIST, 10_000);
row(['', 'median', '95 %', 'worst', 'count']);
for (const [name, k] of Object.entries(keys))
  row([name, ms(k.median), ms(k.p95), ms(k.worst), String(k.count)]);

title('Touch on a place to its picture, slowed; what moves by itself');
const places = await measurePlaces(DIST);
row(['', 'median', '95 %', 'worst', 'count']);
for (const [name, p] of Object.entries(places.each))
  row([name, ms(p.median), ms(p.p95), ms(p.worst), String(p.count)]);
const sum = (/** @type {{ value: number }[]} */ of) => of.reduce((s, { value }) => s + value, 0).toFixed(4);
row(['layout shift of the start', sum(places.start)]);
row(['and from place to place', sum(places.shifts)]);

title("An hour's use, a touch every three seconds");
const hour = await measureHour(DIST);
row(['touches', 'heap', 'nodes', 'listeners']);
for (const { touches, heap, nodes, listeners } of hour)
  row([String(touches), `${(heap / 1e6).toFixed(2)} MB`, String(nodes), String(listeners)]);

title('Longest task of the page after it is asked for, slowed, worst of three openings');
const tasks = await measureTasks(DIST);
for (const [name, each] of Object.entries(tasks)) row([name, ms(Math.max(...each))]);

title('Lead error in time, every ingredient on, in Node: nanoseconds a count');
const trace = await measureTrace();
row(['counts', 'whole run', 'median piece', 'bare loop', 'points kept']);
const ns = (/** @type {number} */ value) => `${value.toFixed(2)} ns`;
for (const { counts, whole, median: each, bare: loop, points } of trace) {
  row([String(counts), ns(whole), ns(each), ns(loop), String(points)]);
}

title('What grows with what is kept, slowed: records, as many own threads, a tenth as many machines');
const much = await measureMuch(DIST);
/** @type {[string, (m: typeof much[number]) => number | null][]} */
const GROWS = [
  ['first paint, offline', (m) => m.paint],
  ['usable', (m) => m.usable],
  ['longest task after a start', (m) => m.startTask],
  ['list of machines shown', (m) => m.shown],
  ['another machine taken', (m) => m.taken],
  ['longest task of both', (m) => m.listTask],
  ['everything backed up', (m) => m.backUp],
  ['longest task of it', (m) => m.backUpTask],
  ['back-up opened', (m) => m.opened],
  ['longest task of it', (m) => m.openTask],
  ['brought in', (m) => m.broughtIn],
  ['longest task of it', (m) => m.bringTask],
];
row(['', ...much.map((m) => `${m.many}`)]);
for (const [name, value] of GROWS) row([name, ...much.map((m) => ms(value(m)))]);
row(['size of the back-up', ...much.map((m) => `${(m.bytes / 1000).toFixed(0)} kB`)]);

mkdirSync('test/bench/out', { recursive: true });
const machine = { processor: cpus()[0]?.model ?? 'unknown', cores: cpus().length, node: process.version };
writeFileSync(
  'test/bench/out/bench.json',
  `${JSON.stringify({ at: new Date().toISOString(), machine, slowdown: SLOWDOWN, rounds, sizes, starts, calculations, keys, places, hour, tasks, trace, much }, null, 2)}\n`,
);
