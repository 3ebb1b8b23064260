import { compare, div, inBase, mul, ratio, sub, toNumber, type Ratio, type Stated } from '../quantity';
import { ownDesignation, ownSize } from './own-name';
import { standardForm, type Form, type StandardForm } from './profiles';
import type { Thread } from './thread';

/** Profiles offered for a thread of one's own; `other` has flanks, crest and depth that the person gives. */
export const OWN_PROFILES = [
  'iso60',
  'whitworth55',
  'ba47',
  'trapezoidal30',
  'acme29',
  'stubAcme29',
  'buttress7x45',
  'square',
  'round30',
  'worm29',
  'worm40',
  'other',
] as const satisfies readonly (StandardForm | 'other')[];
export type OwnProfile = (typeof OWN_PROFILES)[number];

/** A thread that a person made up or copied from a part. null is "not known". */
export interface OwnThread {
  /** What the person calls it; empty: it is called by its figures. */
  readonly name: string;
  readonly major: Stated | null;
  readonly pitch: Stated | null;
  readonly profile: OwnProfile;
  /** Included angle of the flanks, for `other`. */
  readonly angle: Stated | null;
  /** Width of the flat at the crest, for `other`; 0 for a sharp crest. */
  readonly crest: Stated | null;
  /** Height of the thread on one side, for `other`. */
  readonly depth: Stated | null;
  readonly starts: number;
  readonly hand: 'right' | 'left';
}

export const blankOwn = (): OwnThread =>
  Object.freeze({
    name: '',
    major: null,
    pitch: null,
    profile: 'iso60',
    angle: null,
    crest: null,
    depth: null,
    starts: 1,
    hand: 'right',
  });

/** What keeps a thread of one's own from having a profile. */
export type OwnTrouble =
  | 'no-pitch'
  | 'no-angle'
  | 'no-crest'
  | 'no-depth'
  /** A worm's pitch with a profile whose crest and depth are lengths. */
  | 'pitch-by-module'
  | 'crest-too-wide'
  | 'too-deep'
  /** The thread is deeper than the blank is thick. */
  | 'no-core';

/** Places to which an irrational constant of a person's own profile is carried. */
const SCALE = 10 ** 12;
const constant = (x: number): Ratio => ratio(BigInt(Math.round(x * SCALE)), BigInt(SCALE));

type Shape =
  { readonly ok: true; readonly form: Form } | { readonly ok: false; readonly trouble: OwnTrouble };

/**
 * Symmetrical flanks from angle, crest flat and depth: the pitch line is where groove and ridge are half a pitch wide
 * (ISO 5408), (P/2 − flat) / (2 tan A/2) below the crest.
 */
const otherForm = ({ pitch, angle, crest, depth }: OwnThread): Shape => {
  const no = (trouble: OwnTrouble): Shape => ({ ok: false, trouble });
  if (!pitch) return no('no-pitch');
  if (pitch.unit === 'module' || pitch.unit === 'dp') return no('pitch-by-module');
  if (!angle) return no('no-angle');
  if (!crest) return no('no-crest');
  if (!depth) return no('no-depth');
  const p = inBase(pitch);
  const flat = div(inBase(crest), p);
  const height = div(inBase(depth), p);
  if (compare(flat, ratio(1, 2)) >= 0) return no('crest-too-wide');
  const tan = Math.tan((toNumber(inBase(angle)) / 2) * (Math.PI / 180));
  // Flanks that have met can't go deeper.
  if (toNumber(flat) + 2 * toNumber(height) * tan > 1 + 1e-9) return no('too-deep');
  const half = div(inBase(angle), 2);
  const majorToPitch = mul(sub(ratio(1, 2), flat), constant(1 / tan));
  const majorToMinor = mul(2, height);
  if (compare(majorToMinor, majorToPitch) <= 0) return no('no-depth');
  return {
    ok: true,
    form: {
      id: 'own',
      flanks: [half, half],
      sharpHeight: constant(0.5 / tan),
      majorToPitch,
      majorToMinor,
      rootRadius: null,
      source: 'entered',
    },
  };
};

const shapeOf = (own: OwnThread): Shape => {
  if (!own.pitch) return { ok: false, trouble: 'no-pitch' };
  if (own.profile === 'other') return otherForm(own);
  return { ok: true, form: standardForm(own.profile) };
};

const hasCore = (own: OwnThread, form: Form): boolean => {
  const { major, pitch } = own;
  if (!major || !pitch || pitch.unit === 'module' || pitch.unit === 'dp') return true;
  return compare(inBase(major), mul(form.majorToMinor, inBase(pitch))) > 0;
};

/** Why there is no thread yet; null when it is complete. A missing diameter is no trouble: pitch and lead stand. */
export const ownTrouble = (own: OwnThread): OwnTrouble | null => {
  const shape = shapeOf(own);
  if (!shape.ok) return shape.trouble;
  return hasCore(own, shape.form) ? null : 'no-core';
};

/**
 * The thread with everything that is reckoned for a catalogued one; null while something is wrong or missing
 * (ownTrouble says what).
 */
export const threadOfOwn = (id: string, own: OwnThread): Thread | null => {
  const shape = shapeOf(own);
  if (!shape.ok || !own.pitch || !hasCore(own, shape.form)) return null;
  return {
    id: ownId(id),
    family: OWN,
    designation: own.name || ownDesignation(own),
    size: ownSize(own),
    major: own.major,
    pitch: own.pitch,
    starts: own.starts,
    form: shape.form.id,
    ...(shape.form.id === 'own' ? { profile: shape.form } : {}),
  };
};

/** The family that a person's own threads are called by, and the first part of their ids. */
export const OWN = 'own';
export const ownId = (key: string): string => `${OWN}:${key}`;
/** The key of one's own thread in the database, from the thread's id; null for a catalogued one. */
export const ownKey = (id: string): string | null =>
  id.startsWith(`${OWN}:`) ? id.slice(OWN.length + 1) : null;
