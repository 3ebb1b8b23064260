import { seatsOf, sums, type Seat } from './seats';
import type { Stages } from './written';

/**
 * Where the wheels of a train can stand. All distances are tooth sums: a wheel's pitch radius counts as its
 * number of teeth, so two wheels in mesh stand as far apart as their teeth together (centre distance × 2 ÷ module,
 * for wheels of one module). Rules by geometry, own derivation; only the clearance is common practice.
 */
export interface Banjo {
  /** First shaft of the train to the leadscrew (or box input). */
  readonly shafts: number | null;
  /** Smallest and largest distance of the last stud from the leadscrew that the slot allows. */
  readonly least: number | null;
  readonly most: number | null;
  /** Smallest distance between two studs: their collars touch. */
  readonly studGap: number | null;
  readonly studs: number | null;
  /** A wheel clears the shaft beside it when the tooth sum to that shaft is larger than its own teeth by more than this. */
  readonly clearance: number | null;
}
export type BanjoLimit = keyof Banjo;
export const BANJO_LIMITS: readonly BanjoLimit[] = [
  'shafts',
  'least',
  'most',
  'studGap',
  'studs',
  'clearance',
];

/** Why a train can't be set up. */
export type Misfit =
  | { readonly rule: 'studs'; readonly needs: number; readonly has: number }
  /** Taut or slack: the centres can't span the distance of the shafts. */
  | { readonly rule: 'reach'; readonly sum: number; readonly shafts: number }
  | {
      readonly rule: 'slot';
      readonly sum: number;
      readonly least: number | null;
      readonly most: number | null;
    }
  | { readonly rule: 'stud-gap'; readonly sum: number; readonly least: number }
  | {
      readonly rule: 'wheel-on-shaft';
      readonly wheel: number;
      readonly clearance: number;
    }
  | { readonly rule: 'wheels-touch'; readonly wheel: number; readonly other: number };

export interface Point {
  readonly x: number;
  readonly y: number;
}
export type Fit =
  { readonly fits: true; readonly at: readonly Point[] } | { readonly fits: false; readonly misfit: Misfit };

/** Teeth of two wheels in one plane that just don't touch: an addendum of one module each, 2 in tooth sums a wheel. */
const TIPS = 4;

/** How far apart two shafts have to be, in tooth sums, and what is in the way when they are nearer. */
interface Demand {
  readonly least: number;
  /** Reaching the distance itself is not enough: a wheel must stand clear of a shaft. */
  readonly beyond: boolean;
  readonly misfit: Misfit;
}

const tooNear = (d: Demand, away: number): boolean => (d.beyond ? away <= d.least : away < d.least);

/** What two shafts demand of each other; the most demanding first. */
const demandsOf = (seats: readonly Seat[], i: number, j: number, c: number | null): Demand[] => {
  const [here, there] = [seats.filter((s) => s.shaft === i), seats.filter((s) => s.shaft === j)];
  const all: Demand[] = [];
  for (const a of here)
    for (const b of there)
      // In one plane neighbours are in mesh; others must not touch.
      if (j - i > 1 && a.stage === b.stage)
        all.push({
          least: a.teeth + b.teeth + TIPS,
          beyond: false,
          misfit: { rule: 'wheels-touch', wheel: a.teeth, other: b.teeth },
        });
  if (c === null) return all;
  for (const [own, other] of [
    [here, there],
    [there, here],
  ] as const)
    for (const a of own) {
      // A wheel in mesh stands clear of the shaft by its partner's teeth.
      if (j - i === 1 && other.some((b) => b.stage === a.stage)) continue;
      const least = a.teeth + c;
      all.push({
        least,
        beyond: true,
        misfit: { rule: 'wheel-on-shaft', wheel: a.teeth, clearance: c },
      });
    }
  return all.sort((p, q) => q.least - p.least);
};

/** Directions tried for the free angle of three distances: the widest bow first, then both ways from it. */
const TURN = 24;
const DIRECTIONS: readonly Point[] = Array.from({ length: TURN + 1 }, (_, step) => {
  const half = Math.ceil(step / 2) * (step % 2 ? 1 : -1);
  const turn = ((TURN / 2 + half) * Math.PI) / TURN;
  return { x: Math.cos(turn), y: Math.sin(turn) };
});

/** Where circles of radius p and q with centres d apart meet: how far along, and the square of how far to the side. */
const sideways = (p: number, q: number, d: number): { along: number; square: number } => {
  const along = (p * p - q * q + d * d) / (2 * d);
  return { along, square: p * p - along * along };
};

/** Taut by a rounding is taut. */
const TAUT = -1e-6;

/**
 * Centres from the distances between neighbours, such that shafts 0 and 2, and 1 and 3, are far enough apart
 * (`clear`, called with those two distances); null where there are none.
 */
const place = (
  d: readonly number[],
  shafts: number,
  clear: (zeroTwo: number, oneThree: number) => boolean,
): Point[] | null => {
  const [o, s] = [
    { x: 0, y: 0 },
    { x: shafts, y: 0 },
  ];
  const [a = 0, b = 0, c = 0] = d;
  if (d.length === 1) return [o, s];
  if (d.length === 2) {
    const { along, square } = sideways(a, b, shafts);
    return square < TAUT ? null : [o, { x: along, y: Math.sqrt(Math.max(0, square)) }, s];
  }
  for (const { x: ux, y: uy } of DIRECTIONS) {
    const [x, y] = [a * ux, a * uy];
    const oneThree = Math.hypot(shafts - x, y);
    if (oneThree > b + c || oneThree < Math.abs(b - c) || oneThree === 0) continue;
    const { along, square } = sideways(b, c, oneThree);
    const off = Math.sqrt(Math.max(0, square));
    const [vx, vy] = [(shafts - x) / oneThree, -y / oneThree];
    for (const side of [off, -off]) {
      const [px, py] = [x + vx * along - vy * side, y + vy * along + vx * side];
      if (clear(Math.hypot(px, py), oneThree)) return [o, { x, y }, { x: px, y: py }, s];
    }
  }
  return null;
};

/** A distance between the shafts at which a train looks like one, where the true one isn't known. */
const assumed = (d: readonly number[]): number =>
  d.length === 1 ? (d[0] ?? 0) : Math.round(d.reduce((n, x) => n + x, 0) * (d.length === 2 ? 0.75 : 0.7));

/**
 * Whether a train can stand on the banjo, and where its centres then are (first shaft at 0|0, leadscrew on the x
 * axis). A limit that isn't known isn't looked at: the caller says so (`unchecked`).
 */
export const fit = (stages: Stages, banjo: Banjo): Fit => {
  const d = sums(stages);
  const seats = seatsOf(stages);
  const not = (misfit: Misfit): Fit => ({ fits: false, misfit });
  if (banjo.studs !== null && d.length - 1 > banjo.studs)
    return not({ rule: 'studs', needs: d.length - 1, has: banjo.studs });
  const shafts = banjo.shafts ?? assumed(d);
  const total = d.reduce((n, x) => n + x, 0);
  const longest = Math.max(...d, shafts);
  if (2 * longest > total + shafts) return not({ rule: 'reach', sum: total, shafts });
  const last = d.at(-1) ?? 0;
  if (d.length > 1) {
    const { least, most } = banjo;
    if ((least !== null && last < least) || (most !== null && last > most))
      return not({ rule: 'slot', sum: last, least, most });
    const gap = d.slice(1, -1).find((x) => banjo.studGap !== null && x < banjo.studGap);
    if (gap !== undefined) return not({ rule: 'stud-gap', sum: gap, least: banjo.studGap ?? 0 });
  }
  const demands = (i: number, j: number): Demand[] => demandsOf(seats, i, j, banjo.clearance);
  for (const [i, sum] of d.entries()) {
    const near = demands(i, i + 1).find((x) => tooNear(x, sum));
    if (near) return not(near.misfit);
  }
  const end = d.length;
  // Nothing can be said about the first shaft and the screw while their distance is only assumed.
  const ends = end > 1 && banjo.shafts !== null ? demands(0, end).find((x) => tooNear(x, shafts)) : undefined;
  if (ends) return not(ends.misfit);
  const [zeroTwo, oneThree] = end === 3 ? [demands(0, 2), demands(1, 3)] : [[], []];
  const at = place(
    d,
    shafts,
    (p, q) => !zeroTwo.some((x) => tooNear(x, p)) && !oneThree.some((x) => tooNear(x, q)),
  );
  if (at) return { fits: true, at };
  return not((zeroTwo[0] ?? oneThree[0])?.misfit ?? { rule: 'reach', sum: total, shafts });
};

/** The limits that aren't known, so that nothing was checked against them. */
export const unchecked = (banjo: Banjo): BanjoLimit[] => BANJO_LIMITS.filter((k) => banjo[k] === null);
