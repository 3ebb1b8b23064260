import { number, readStored, storeStated, checkNumber, type NumberField } from '../machine';
import type { Stated } from '../quantity';
import { blankOwn, OWN_PROFILES, type OwnThread } from '../thread/own';
import { MAX_STARTS } from './starts';

const PITCH = ['mm', 'tpi', 'in', 'module', 'dp'] as const;

/** The numbers of a thread of one's own: units and plausible range (common practice). */
export const OWN_FIELDS = {
  major: number('screw', ['mm', 'in'], '0.3', '2000'),
  pitch: number('screw', PITCH, '0.02', '200'),
  angle: number('screw', ['deg'], '1', '150', { suggest: ['60', '55', '53.1', '50'] }),
  crest: number('screw', ['mm', 'in'], '0', '100'),
  depth: number('screw', ['mm', 'in'], '0.01', '200'),
  starts: number('screw', ['count'], '1', `${MAX_STARTS}`, { whole: true, suggest: ['1', '2', '3', '4'] }),
} as const;
export type OwnFieldName = keyof typeof OWN_FIELDS;

export const OWN_NAME_LENGTH = 40;

const readField = (field: NumberField, x: unknown): Stated | null => {
  const value = readStored(x);
  return value && checkNumber(field, value).ok ? value : null;
};

export const storeOwn = (own: OwnThread): Record<string, unknown> => {
  const store = (s: Stated | null): unknown => s && storeStated(s);
  return {
    ...own,
    major: store(own.major),
    pitch: store(own.pitch),
    angle: store(own.angle),
    crest: store(own.crest),
    depth: store(own.depth),
  };
};

/** Reads a thread of one's own; a figure that can't be read is not known. Null for what is no thread at all. */
export const readOwn = (x: unknown): OwnThread | null => {
  if (typeof x !== 'object' || x === null || Array.isArray(x)) return null;
  const raw = x as Record<string, unknown>;
  const profile = OWN_PROFILES.find((p) => p === raw.profile);
  // A profile that this version doesn't know must not become another one.
  if (!profile) return null;
  const { name, starts } = raw;
  const known = typeof starts === 'number' && Number.isInteger(starts) && starts >= 1 && starts <= MAX_STARTS;
  return Object.freeze({
    ...blankOwn(),
    name: typeof name === 'string' ? name.slice(0, OWN_NAME_LENGTH) : '',
    major: readField(OWN_FIELDS.major, raw.major),
    pitch: readField(OWN_FIELDS.pitch, raw.pitch),
    profile,
    angle: readField(OWN_FIELDS.angle, raw.angle),
    crest: readField(OWN_FIELDS.crest, raw.crest),
    depth: readField(OWN_FIELDS.depth, raw.depth),
    starts: known ? starts : 1,
    hand: raw.hand === 'left' ? 'left' : 'right',
  });
};
