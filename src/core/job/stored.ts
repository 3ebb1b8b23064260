import { compare, fromStored, isPositive, toStored, type Ratio } from '../quantity';
import { readStored, storeStated } from '../machine';
import { blankJob, MAX_STARTS, RPM_HIGH, RPM_LOW, type Job, type ThreadChoice } from './job';

const PITCH_UNITS: readonly string[] = ['mm', 'in', 'tpi', 'module', 'dp'];

export const storeThread = (t: ThreadChoice | null): unknown => {
  if (!t) return null;
  if (t.kind === 'catalogue') return { kind: t.kind, id: t.id };
  if (t.kind === 'pitch') return { kind: t.kind, pitch: storeStated(t.pitch) };
  return { kind: t.kind, perRev: storeStated(t.perRev) };
};

export const readThread = (x: unknown): ThreadChoice | null => {
  if (typeof x !== 'object' || x === null) return null;
  const raw = x as Record<string, unknown>;
  if (raw.kind === 'catalogue' && typeof raw.id === 'string' && raw.id.length <= 80)
    return { kind: 'catalogue', id: raw.id };
  const stated = readStored(raw.kind === 'pitch' ? raw.pitch : raw.perRev);
  if (!stated || !isPositive(stated.value) || !PITCH_UNITS.includes(stated.unit)) return null;
  if (raw.kind === 'pitch') return { kind: 'pitch', pitch: stated };
  return raw.kind === 'feed' && (stated.unit === 'mm' || stated.unit === 'in')
    ? { kind: 'feed', perRev: stated }
    : null;
};

export const storeJob = (job: Job): Record<string, unknown> => ({
  ...job,
  thread: storeThread(job.thread),
  noseSize: job.noseSize && storeStated(job.noseSize),
  rpm: job.rpm && toStored(job.rpm),
  room: job.room && storeStated(job.room),
});

const oneOf = <T>(x: unknown, options: readonly T[], otherwise: T): T =>
  options.includes(x as T) ? (x as T) : otherwise;

const readRpm = (x: unknown): Ratio | null => {
  const rpm = fromStored(x);
  return rpm && compare(rpm, RPM_LOW) >= 0 && compare(rpm, RPM_HIGH) <= 0 ? rpm : null;
};

/** Reads a job from disk; what can't be read falls back to "not chosen". Never throws. */
export const readJob = (x: unknown): Job => {
  if (typeof x !== 'object' || x === null) return blankJob();
  const raw = x as Record<string, unknown>;
  const starts = raw.starts;
  const length = (v: unknown) => {
    const s = readStored(v);
    return s && (s.unit === 'mm' || s.unit === 'in') && s.value.n >= 0n ? s : null;
  };
  return Object.freeze({
    thread: readThread(raw.thread),
    starts:
      typeof starts === 'number' && Number.isInteger(starts) && starts >= 1 && starts <= MAX_STARTS
        ? starts
        : 1,
    hand: oneOf(raw.hand, ['right', 'left'] as const, 'right'),
    side: oneOf(raw.side, ['external', 'internal'] as const, 'external'),
    classId: typeof raw.classId === 'string' && raw.classId.length <= 12 ? raw.classId : null,
    noseKind: oneOf(raw.noseKind, ['radius', 'flat', 'sharp', null] as const, null),
    noseSize: length(raw.noseSize),
    rpm: readRpm(raw.rpm),
    room: length(raw.room),
  });
};
