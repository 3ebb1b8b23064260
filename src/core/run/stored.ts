import type { DialSetting, PlannedPass } from '../cut/pass';
import { readJob, storeJob } from '../job';
import { readStored, storeStated } from '../machine';
import { readMade } from '../recall';
import { OUTCOMES, type Run, type RunReading, type TakenPass } from './run';

/** Bounds of what is read: far above anything a person could make, so that a torn row can't fill the memory. */
const MOST = { plans: 200, passes: 1000, taken: 5000, text: 10_000, paths: 200 } as const;

const storeDial = (d: DialSetting | null): unknown => d && { ...d, reading: storeStated(d.reading) };
const storePass = (p: PlannedPass): unknown => ({ ...p, cross: storeDial(p.cross), top: storeDial(p.top) });

/** A run as it is kept: exact figures as integer text, passes as plain data. `open` is what open runs are found by. */
export const storeRun = (run: Run): Record<string, unknown> => ({
  ...run,
  job: storeJob(run.job),
  plans: run.plans.map((plan) => plan.map(storePass)),
  taken: run.taken.map((t) => ({ ...t, pass: storePass(t.pass) })),
  readings: run.readings.map((r) => ({ ...r, reading: r.reading && storeStated(r.reading) })),
  ...(run.ended === null ? { open: run.machine } : {}),
});

/** Thrown inside this file alone, for what can't be read. */
class Unread extends Error {}
const no = (): never => {
  throw new Unread();
};

type Raw = Readonly<Record<string, unknown>>;
const object = (x: unknown): Raw => (typeof x === 'object' && x !== null ? (x as Raw) : no());
const finite = (x: unknown): number => (typeof x === 'number' && Number.isFinite(x) ? x : no());
const text = (x: unknown): string => (typeof x === 'string' && x.length <= MOST.text ? x : no());
const oneOf = <T>(x: unknown, options: readonly T[]): T => (options.includes(x as T) ? (x as T) : no());
const maybe = <T>(x: unknown, read: (x: unknown) => T): T | null => (x === null ? null : read(x));
const list = <T>(x: unknown, most: number, read: (x: unknown) => T): readonly T[] =>
  Array.isArray(x) && x.length <= most ? x.map(read) : no();
const exact = (x: unknown) => readStored(x) ?? no();

const readDial = (x: unknown): DialSetting => {
  const raw = object(x);
  return {
    ...raw,
    divisions: finite(raw.divisions),
    reading: exact(raw.reading),
    turns: maybe(raw.turns, finite),
    past: finite(raw.past),
  };
};

const readPass = (x: unknown): PlannedPass => {
  const raw = object(x);
  return {
    ...raw,
    n: finite(raw.n),
    kind: oneOf(raw.kind, ['cut', 'spring'] as const),
    cross: maybe(raw.cross, readDial),
    top: maybe(raw.top, readDial),
    depth: finite(raw.depth),
    step: finite(raw.step),
    chip: finite(raw.chip),
  };
};

const readTaken = (x: unknown): TakenPass => {
  const raw = object(x);
  return { ...raw, n: finite(raw.n), at: finite(raw.at), plan: finite(raw.plan), pass: readPass(raw.pass) };
};

const readReading = (x: unknown): RunReading => {
  const raw = object(x);
  return {
    ...raw,
    at: finite(raw.at),
    way: oneOf(raw.way, ['wires', 'thread-micrometer', 'gauge'] as const),
    reading: maybe(raw.reading, exact),
    felt: oneOf(raw.felt, ['goes', 'tight', 'does-not-go', null] as const),
    pitchDiameter: maybe(raw.pitchDiameter, finite),
    uncertainty: maybe(raw.uncertainty, finite),
    after: finite(raw.after),
  };
};

const readThen = (x: unknown): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(object(x))
      .slice(0, MOST.paths)
      .map(([path, was]) => [text(path), text(was)]),
  );

/**
 * Reads a run from disk. A pass or reading that can't be read would falsify the whole, so the run is then not
 * read at all (null: kept as it is and counted as unreadable). Parts that a newer version added stay as they are.
 * Never throws.
 */
export const readRun = (x: unknown): Run | null => {
  try {
    const { open: _open, made, ...raw } = object(x);
    return {
      ...raw,
      machine: text(raw.machine),
      machineName: text(raw.machineName),
      workshop: text(raw.workshop),
      threadName: text(raw.threadName),
      job: readJob(object(raw.job)),
      plans: list(raw.plans, MOST.plans, (plan) => list(plan, MOST.passes, readPass)),
      begun: finite(raw.begun),
      ended: maybe(raw.ended, finite),
      taken: list(raw.taken, MOST.taken, readTaken),
      readings: list(raw.readings, MOST.taken, readReading),
      paused: oneOf(raw.paused, [true, false] as const),
      outcome: oneOf(raw.outcome, [...OUTCOMES, null]),
      notes: text(raw.notes),
      ...(raw.machineThen === undefined ? {} : { machineThen: readThen(raw.machineThen) }),
      ...readMade(made),
    };
  } catch {
    // Unread, or an object that throws when it is looked at.
    return null;
  }
};
