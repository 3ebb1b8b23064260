import { fromStored, stated, toStored, type Ratio, type Stated } from '../quantity';
import { checkNumber, readStored, storeStated, type NumberField } from '../machine';
import { FEED_FIELD, JOB_FIELDS, PITCH_FIELD, STATED_FIELDS, type StatedJobField } from './fields';
import {
  blankJob,
  ENDINGS,
  HOLDINGS,
  INFEEDS,
  MATERIALS,
  NOSE_KINDS,
  PASS_HOLDS,
  PASS_RULES,
  TOOL_MATERIALS,
  type Job,
  type ThreadChoice,
} from './job';
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

const each = <V>(of: (name: StatedJobField) => V): Record<StatedJobField, V> =>
  Object.fromEntries(STATED_FIELDS.map((name) => [name, of(name)])) as Record<StatedJobField, V>;

export const storeJob = (job: Job): Record<string, unknown> => ({
  ...job,
  ...each((name) => job[name] && storeStated(job[name])),
  thread: storeThread(job.thread),
  rpm: job.rpm && toStored(job.rpm),
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
    ...each((name) => readField(JOB_FIELDS[name], raw[name])),
    noseKind: oneOf(raw.noseKind, [...NOSE_KINDS, null], null),
    rpm: readRpm(raw.rpm),
    roomFrom: typeof raw.roomFrom === 'string' ? raw.roomFrom : null,
    use: oneOf(raw.use, ['fastener', 'leadscrew', 'worm', null] as const, null),
    material: oneOf(raw.material, [...MATERIALS, null], null),
    ending: oneOf(raw.ending, [...ENDINGS, null], null),
    holding: oneOf(raw.holding, [...HOLDINGS, null], null),
    toolMaterial: oneOf(raw.toolMaterial, [...TOOL_MATERIALS, null], null),
    infeed: oneOf(raw.infeed, [...INFEEDS, null], null),
    passRule: oneOf(raw.passRule, [...PASS_RULES, null], null),
    passHold: oneOf(raw.passHold, [...PASS_HOLDS, null], null),
    outwards: raw.outwards === true,
  });
};
