import { add, div, mul, ratio, type Ratio } from '../quantity';
import type { FormId, Thread } from './thread';

/** A form that a standard or a handbook gives. */
export type StandardForm = Exclude<FormId, 'own'>;

/**
 * A basic profile, all lengths as multiples of the pitch. Diameters lose twice the depth on one side.
 * Irrational constants are carried to 18 decimals; whoever uses them rounds to the standard's last digit.
 */
export interface Form {
  readonly id: FormId;
  /** Flank angles from the plane square to the axis, degrees: the flank that carries load, and the other. */
  readonly flanks: readonly [Ratio, Ratio];
  /** Height of the sharp triangle; null for a square thread. */
  readonly sharpHeight: Ratio | null;
  /** Basic major minus basic pitch diameter. */
  readonly majorToPitch: Ratio;
  /** Basic major minus basic minor diameter. */
  readonly majorToMinor: Ratio;
  /** Largest and smallest root radius of an external thread; null where the root is flat or not fixed. */
  readonly rootRadius: { readonly max: Ratio; readonly min: Ratio } | null;
  /** Where the standard itself rounds the depth of thread, mm, before it states any diameter. */
  readonly depthStep?: Ratio;
  readonly source: string;
}

/** √3 to 19 decimals. */
const SQRT3 = ratio(17320508075688772935n, 10n ** 19n);
/** H of a 60° thread: √3/2 · P (ISO 68-1). */
export const H60 = div(SQRT3, 2);
/** H of a 55° thread: cot 27.5° / 2 · P (BS 84; 0.960491 P). */
const H55 = ratio(960491063485583n, 10n ** 15n);

/** H of a 30° trapezoidal or round thread: cot 15° / 2 = (2 + √3) / 2. */
const H30 = div(add(2, SQRT3), 2);
/** H of a 29° thread: cot 14.5° / 2. */
const H29 = ratio(1933356547449369n, 10n ** 15n);
/** 1/π: modules in a pitch. */
const PER_PI = ratio(318309886183790672n, 10n ** 18n);

const of60 = (eighths: number): Ratio => mul(H60, ratio(eighths, 8));
const same = (deg: Ratio): readonly [Ratio, Ratio] => [deg, deg];
const one = (r: Ratio): Form['rootRadius'] => ({ max: r, min: r });
const half60 = same(ratio(30));
/** Root radius of the high-fatigue forms, 0.150111 P to 0.180424 P. */
const J_ROOT = { max: mul(H60, ratio(5, 24)), min: ratio(150111, 1_000_000) };
const J = {
  flanks: half60,
  sharpHeight: H60,
  majorToPitch: of60(6),
  majorToMinor: of60(9),
  rootRadius: J_ROOT,
};

const FORMS: Readonly<Record<StandardForm, Omit<Form, 'id'>>> = {
  iso60: {
    flanks: half60,
    sharpHeight: H60,
    majorToPitch: of60(6),
    majorToMinor: of60(10),
    // The design root has H/6; ISO 965-1 allows no less than 0.125 P.
    rootRadius: { max: div(H60, 6), min: ratio(1, 8) },
    source: 'ISO 68-1',
  },
  unj60: { ...J, source: 'ASME B1.15' },
  mj60: { ...J, source: 'ISO 5855-1' },
  whitworth55: {
    flanks: same(ratio(55, 2)),
    sharpHeight: H55,
    majorToPitch: mul(H55, ratio(2, 3)),
    majorToMinor: mul(H55, ratio(4, 3)),
    rootRadius: one(ratio(137329, 1_000_000)),
    source: 'BS 84',
  },
  ba47: {
    flanks: same(ratio(95, 4)),
    sharpHeight: ratio(113634, 100_000),
    majorToPitch: ratio(6, 10),
    majorToMinor: ratio(12, 10),
    rootRadius: one(ratio(1808346, 10_000_000)),
    depthStep: ratio(5, 1000),
    source: 'BS 93',
  },
  // Depth 0.5327 P and radius P/6: BS 811, from memory.
  cycle60: {
    flanks: half60,
    sharpHeight: H60,
    majorToPitch: ratio(5327, 10_000),
    majorToMinor: ratio(10654, 10_000),
    rootRadius: one(ratio(1, 6)),
    source: 'BS 811',
  },
  trapezoidal30: {
    flanks: same(ratio(15)),
    sharpHeight: H30,
    majorToPitch: ratio(1, 2),
    majorToMinor: ratio(1),
    rootRadius: null,
    source: 'ISO 2901',
  },
  acme29: {
    flanks: same(ratio(29, 2)),
    sharpHeight: H29,
    majorToPitch: ratio(1, 2),
    majorToMinor: ratio(1),
    rootRadius: null,
    source: 'ASME B1.5',
  },
  stubAcme29: {
    flanks: same(ratio(29, 2)),
    sharpHeight: H29,
    majorToPitch: ratio(3, 10),
    majorToMinor: ratio(6, 10),
    rootRadius: null,
    source: 'ASME B1.8',
  },
  // H = 0.890643 P, height engaged 0.6 P, root radius 0.071409 P: ASME B1.9, from memory.
  buttress7x45: {
    flanks: [ratio(7), ratio(45)],
    sharpHeight: ratio(890643, 1_000_000),
    majorToPitch: ratio(6, 10),
    majorToMinor: ratio(12, 10),
    rootRadius: one(ratio(71409, 1_000_000)),
    source: 'ASME B1.9',
  },
  square: {
    flanks: same(ratio(0)),
    sharpHeight: null,
    majorToPitch: ratio(1, 2),
    majorToMinor: ratio(1),
    rootRadius: null,
    source: 'common practice',
  },
  // The nut's minor diameter is d − 0.9 P, the screw's d − P: DIN 405-1, from memory.
  round30: {
    flanks: same(ratio(15)),
    sharpHeight: H30,
    majorToPitch: ratio(1, 2),
    majorToMinor: ratio(9, 10),
    rootRadius: one(ratio(238507, 1_000_000)),
    source: 'DIN 405-1',
  },
  npt60: {
    flanks: half60,
    sharpHeight: H60,
    majorToPitch: ratio(8, 10),
    majorToMinor: ratio(16, 10),
    rootRadius: null,
    source: 'ASME B1.20.1',
  },
  // Addendum one module, whole depth 2.157 modules (0.6866 of the axial pitch): handbook practice for 14.5° worms.
  worm29: {
    flanks: same(ratio(29, 2)),
    sharpHeight: H29,
    majorToPitch: mul(2, PER_PI),
    majorToMinor: mul(2, ratio(2157, 1000), PER_PI),
    rootRadius: null,
    source: 'common practice',
  },
  // Addendum one module, whole depth 2.2 modules: DIN 3975, from memory. H = cot 20° / 2.
  worm40: {
    flanks: same(ratio(20)),
    sharpHeight: ratio(1373738709727n, 10n ** 12n),
    majorToPitch: mul(2, PER_PI),
    majorToMinor: mul(2, ratio(22, 10), PER_PI),
    rootRadius: null,
    source: 'DIN 3975',
  },
};

/** The form's basic profile. */
export const standardForm = (id: StandardForm): Form => ({ id, ...FORMS[id] });

/**
 * The basic profile of a thread: its form's, or its own.
 * @throws RangeError for a thread of its own form that brings no profile: a slip of the code, never of a person
 */
export const formOf = ({ form, profile }: Pick<Thread, 'form' | 'profile'>): Form => {
  if (profile) return profile;
  if (form === 'own') throw new RangeError('a thread of its own form without a profile');
  return standardForm(form);
};
