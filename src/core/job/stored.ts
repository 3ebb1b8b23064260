import { fromStored, stated, toStored, type Ratio, type Stated } from '../quantity';
import { checkNumber, readStored, storeStated, type NumberField } from '../machine';
import { FEED_FIELD, JOB_FIELDS, PITCH_FIELD } from './fields';
import { blankJob, NOSE_KINDS, type Job, type ThreadChoice } from './job';
import { readOwn, storeOwn } from './own-thread';
import { MAX_STARTS } from './starts';

/** A stated value that the field would take from a person too; null for anything else. */
const readField = (field: NumberField, x: unknown): Stated | null => {
  const value = readStored(x);
  return value && checkNumber(field, value).ok ? value : null;
};

export const storeThread = (t: ThreadChoice | null): unknown => {
  if (!t) return null;
  if (t.kind === 'catalogue') return { kind: t.kind, id: t.id };
  if (t.kind === 'own') return { kind: t.kind, id: t.id, own: storeOwn(t.own) };
  if (t.kind === 'pitch') return { kind: t.kind, pitch: storeStated(t.pitch) };
  return { kind: t.kind, perRev: storeStated(t.perRev) };
};

export const readThread = (x: unknown): ThreadChoice | null => {
  if (typeof x !== 'object' || x === null) return null;
  const raw = x as Record<string, unknown>;
  if (raw.kind === 'catalogue' && typeof raw.id === 'string' && raw.id.length <= 80)
    return { kind: 'catalogue', id: raw.id };
  const own = raw.kind === 'own' ? readOwn(raw.own) : null;
  if (own && typeof raw.id === 'string' && raw.id.length <= 80) return { kind: 'own', id: raw.id, own };
  const pitch = raw.kind === 'pitch' ? readField(PITCH_FIELD, raw.pitch) : null;
  if (pitch) return { kind: 'pitch', pitch };
  const perRev = raw.kind === 'feed' ? readField(FEED_FIELD, raw.perRev) : null;
  return perRev && { kind: 'feed', perRev };
};

export const storeJob = (job: Job): Record<string, unknown> => ({
  ...job,
  thread: storeThread(job.thread),
  noseSize: job.noseSize && storeStated(job.noseSize),
  rpm: job.rpm && toStored(job.rpm),
  room: job.room && storeStated(job.room),
  length: job.length && storeStated(job.length),
});

const oneOf = <T>(x: unknown, options: readonly T[], otherwise: T): T =>
  options.includes(x as T) ? (x as T) : otherwise;

const readRpm = (x: unknown): Ratio | null => {
  const rpm = fromStored(x);
  return rpm && checkNumber(JOB_FIELDS.rpm, stated(rpm, 'rpm')).ok ? rpm : null;
};

/** Reads a job from disk; what can't be read falls back to "not chosen". Never throws. */
export const readJob = (x: unknown): Job => {
  if (typeof x !== 'object' || x === null) return blankJob();
  const raw = x as Record<string, unknown>;
  const starts = raw.starts;
  return Object.freeze({
    thread: readThread(raw.thread),
    starts:
      typeof starts === 'number' && Number.isInteger(starts) && starts >= 1 && starts <= MAX_STARTS
        ? starts
        : 1,
    hand: oneOf(raw.hand, ['right', 'left'] as const, 'right'),
    side: oneOf(raw.side, ['external', 'internal'] as const, 'external'),
    classId: typeof raw.classId === 'string' && raw.classId.length <= 12 ? raw.classId : null,
    noseKind: oneOf(raw.noseKind, [...NOSE_KINDS, null], null),
    noseSize: readField(JOB_FIELDS.noseSize, raw.noseSize),
    rpm: readRpm(raw.rpm),
    room: readField(JOB_FIELDS.room, raw.room),
    use: oneOf(raw.use, ['fastener', 'leadscrew', 'worm', null] as const, null),
    length: readField(JOB_FIELDS.length, raw.length),
  });
};
