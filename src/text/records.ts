import { threadOfJob } from '../core/cut/finish';
import type { DialSetting, PlannedPass } from '../core/cut/pass';
import { classOf as usualClass } from '../core/figures';
import { inBase, toNumber, type Stated } from '../core/quantity';
import type { Run, RunReading } from '../core/run/run';
import { infeedName, materialName, toolMaterialName } from './cut-work';
import { finishText, mmText } from './finish';
import { marked, statedText } from './numbers';
import { outcomeText as ofRun } from './run';
import { classText } from './threads';
import { timeOf } from './time';
import { capital, words } from './words';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const two = (n: number): string => n.toString().padStart(2, '0');

/** A day by the phone's clock, "3 March 2026". @param at milliseconds since 1970 */
export const dayText = (at: number): string => {
  const d = new Date(at);
  return `${d.getDate()} ${MONTHS[d.getMonth()] ?? ''} ${d.getFullYear()}`;
};
/** The same as ISO 8601 writes it, with the time: "2026-03-03 14:32". */
export const isoTime = (at: number): string => {
  const d = new Date(at);
  return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())} ${timeOf(at)}`;
};

const side = (run: Run): string => (run.job.side === 'external' ? 'External' : 'Internal');
const hand = (run: Run): string => (run.job.hand === 'left' ? 'Left-hand' : 'Right-hand');
const stock = ({ job }: Run): string => (job.material ? materialName[job.material] : '');
const tool = ({ job }: Run): string => (job.toolMaterial ? toolMaterialName[job.toolMaterial] : '');
/** The class it was cut to: the one chosen, or the thread's usual one. */
const classOf = ({ job }: Run): string => {
  const thread = threadOfJob(job);
  const id = thread && usualClass(thread, job.classId, job.side);
  return id ? classText(id) : '';
};

/** A setting as it is made on the handwheel: turns and divisions, and what the dial counts. */
export const settingText = ({ turns, past, divisions, reading }: DialSetting): string => {
  const by = turns
    ? `${turns === 1 ? '1 turn' : `${turns} turns`} + ${finishText.divisions(past)}`
    : finishText.divisions(divisions);
  return `${by} (${statedText(reading)})`;
};

/** Where both handwheels were for a pass. */
export const passText = ({ cross, top, kind }: PlannedPass, start: number | null): string => {
  const slides = finishText.slides();
  const set = [
    ...(cross ? [`${slides.cross} ${settingText(cross)}`] : []),
    ...(top ? [`${slides.top} ${settingText(top)}`] : []),
  ].join(', ');
  const which = start === null ? '' : `Start ${start}: `;
  return which + (kind === 'spring' ? `Spring pass, ${set}` : set);
};

/** What a reading said. */
export const readingText = (r: RunReading, unit: 'mm' | 'in'): string => {
  if (r.felt) {
    const tried = r.tried ? `${finishText.triedWith[r.tried] ?? ''}: ` : '';
    const noGo = r.noGo ? `; ${finishText.noGo.toLowerCase()}: ${finishText.noGoOf[r.noGo] ?? ''}` : '';
    return `${tried}${finishText.felt[r.felt].toLowerCase()}${noGo}`;
  }
  const read = r.reading ? statedText(r.reading) : '';
  if (r.pitchDiameter === null) return read;
  const spread = r.uncertainty === null ? '' : ` ± ${mmText(r.uncertainty, unit)}`;
  return `${read}: ${words().pitchDiameter} ${mmText(r.pitchDiameter, unit)}${spread} ${unit}`;
};

export const outcomeText = (run: Run): string =>
  run.outcome === 'not-measured' && run.readings.length > 0
    ? finishText.outcome(run.outcome, true)
    : run.outcome
      ? ofRun[run.outcome]
      : recordsText.open;

/** Everything that a record may be asked by: names, stock, outcome, notes, and the day as people write it. */
export const recordWords = (run: Run): string => {
  const at = run.ended ?? run.begun;
  const d = new Date(at);
  const [day, month, year] = [d.getDate(), d.getMonth() + 1, d.getFullYear()];
  return [
    run.threadName,
    marked(run.threadName),
    classOf(run),
    run.machineName,
    run.workshop,
    stock(run),
    tool(run),
    side(run),
    hand(run),
    outcomeText(run),
    dayText(at),
    isoTime(at),
    `${day}.${month}.${year} ${two(day)}.${two(month)}.${year}`,
    run.notes,
  ].join(' ');
};

export const recordsText = {
  title: 'Records',
  none: 'No cut has been ended yet. Each one you end stands here with its machine, passes, readings and outcome; found again by any word of it, used again as a new job, handed on as a table.',
  search: 'Look up',
  searchHint: 'Such as “m10 heron march”',
  count: (n: number): string => (n === 1 ? '1 record' : `${n} records`),
  nothing: 'Nothing of that in the records.',
  elsewhere: 'In other workshops',
  more: (n: number): string => `${n} more`,
  away: 'Put away',
  bringBack: (name: string): string => `Bring back ${name}`,
  open: 'Not ended',
  gone: 'Not among the records read so far.',
  unreadable: (n: number): string =>
    n === 1 ? 'One record can’t be read. It is kept.' : `${n} records can’t be read. They are kept.`,
  outcome: 'Outcome',
  machine: 'Machine',
  cut: 'Cut',
  from: (begun: string, ended: string): string => `${begun} to ${ended}`,
  work: 'Work',
  tool: 'Tool',
  speed: 'Speed set',
  plan: 'Planned',
  planned: (cuts: number, springs: number): string =>
    `${cuts === 1 ? '1 cut' : `${cuts} cuts`}${springs ? `, ${springs === 1 ? '1 spring pass' : `${springs} spring passes`}` : ''}`,
  plannedAnew: 'Planned anew after a reading',
  passes: 'Cuts taken',
  noPasses: 'None.',
  readings: 'Readings',
  noReadings: 'None.',
  after: (n: number): string => `after cut ${n}`,
  notes: 'Notes',
  again: 'Use again as a new job',
  reopen: 'Not ended: go on with it',
  notReopened: 'Not while another run is open on that machine: end or finish that one first.',
  putAway: 'Put away this record',
  csv: 'Share as a table (CSV)',
  json: 'Share as data (JSON)',
  exportNote: (n: number): string =>
    `${n === 1 ? 'This one record' : `All ${n} found`}. The table is for spreadsheets; the data keeps every figure exact.`,
  fileName: (ending: string): string => `latheside-records.${ending}`,
  back: 'All records',
  toCut: 'Back to Cut',
} as const;

const inMm = (s: Stated): string => String(toNumber(inBase(s)));
const um = (x: number | null | undefined): string => (x === null || x === undefined ? '' : x.toFixed(4));

/** A column of the table: its header, and what stands in it. Lengths in mm with a point, times as ISO 8601 writes them. */
export const recordColumns: readonly (readonly [header: string, cell: (run: Run) => string])[] = [
  ['Begun', (r) => isoTime(r.begun)],
  ['Ended', (r) => (r.ended === null ? '' : isoTime(r.ended))],
  ['Outcome', outcomeText],
  ['Thread', (r) => r.threadName],
  ['Class', classOf],
  ['Side', side],
  ['Hand', hand],
  ['Starts', (r) => String(r.job.starts)],
  ['Machine', (r) => r.machineName],
  ['Workshop', (r) => r.workshop],
  ['Material', stock],
  ['Tool', tool],
  ['Infeed', (r) => (r.job.infeed ? infeedName[r.job.infeed] : '')],
  ['Speed set, rpm', (r) => (r.job.rpm ? String(toNumber(r.job.rpm)) : '')],
  ['Blank, mm', (r) => (r.job.blank ? inMm(r.job.blank) : '')],
  ['Cuts taken', (r) => String(r.taken.length)],
  ['Radial depth by the dials, mm', (r) => um(r.taken.at(-1)?.pass.depth)],
  ['Readings', (r) => String(r.readings.length)],
  ['Last reading, mm', (r) => last(r, (x) => (x.reading ? inMm(x.reading) : null))],
  ['Last pitch diameter, mm', (r) => last(r, (x) => (x.pitchDiameter === null ? null : um(x.pitchDiameter)))],
  [
    'Uncertainty (twice standard), mm',
    (r) => last(r, (x) => (x.uncertainty === null ? null : um(x.uncertainty))),
  ],
  ['Gauge', (r) => last(r, (x) => x.felt && finishText.felt[x.felt])],
  ['Notes', (r) => r.notes],
];

/** The newest that any reading has of something. */
const last = (run: Run, of: (r: RunReading) => string | null): string =>
  [...run.readings]
    .reverse()
    .map(of)
    .find((x) => x !== null) ?? '';

/** What a record is called in a list. */
export const recordName = (run: Run): string =>
  [marked(run.threadName), classOf(run)].filter((x) => x).join(' ');
export const recordLine = (run: Run): string =>
  [outcomeText(run), capital(run.machineName), dayText(run.ended ?? run.begun)].filter((x) => x).join(' · ');
