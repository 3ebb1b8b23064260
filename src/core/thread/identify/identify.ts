import type { Measured } from '../wires';
import type { Candidate } from './candidate';
import { crestDensity, crestState, FLOOR, type CrestState } from './crest';
import type { ThreadReadings } from './readings';
import { separate, type Separation } from './separate';

export interface Match {
  readonly candidate: Candidate;
  /** Probability among all candidates, each taken as likely as another before measuring. */
  readonly probability: number;
  /** Nominal less read (a hole: read less basic minor); null when not measured or there is no nominal. */
  readonly short: number | null;
  readonly crest: CrestState | null;
  /** Read less nominal, in standard uncertainties. */
  readonly pitchOff: number | null;
  readonly angleOff: number | null;
  /** No more than twenty times less likely than the first: not to be called told apart. */
  readonly together: boolean;
}

export type Identification =
  | {
      readonly ok: true;
      /** Most likely first. Empty only for an empty list of candidates. */
      readonly matches: readonly Match[];
      /** False when even the first disagrees with a reading by more than 4 standard uncertainties. */
      readonly fits: boolean;
      /** What would best tell the first two apart, best first; empty when one match stands alone. */
      readonly next: readonly Separation[];
    }
  | { readonly ok: false; readonly refusal: 'nothing-measured' | 'not-positive' | 'uncertainty-unknown' };

/** Shown: everything down to this much (natural logarithm of the likelihood) below the best; 1 in 3000. */
const SHOWN = 8;
const TOGETHER = Math.log(20);
/** Density of a diameter for a thread that has none of its own, per mm: as if any up to 100 mm were alike. */
const ANY_DIAMETER = 0.01;
/** A screw's own pitch error, as a share of the pitch: 1 in 1000 is a poor leadscrew. */
const PITCH_SPREAD = 0.001;
/** Flanks as found on real threads, degrees on the included angle. */
const ANGLE_SPREAD = 0.5;
const TOO_FAR = 4;
/** About 25 standard deviations off. */
const HOPELESS = -300;

const spreadOf = (read: Measured, own: number): number => Math.sqrt((read.u ?? 0) ** 2 + own ** 2);

/** Read less nominal, in standard deviations. */
const off = (read: Measured | null, nominal: number, own: number): number | null =>
  read && (read.value - nominal) / spreadOf(read, own);

const shortOf = (r: ThreadReadings, c: Candidate): number | null => {
  const nominal = r.side === 'external' ? c.major : c.minor;
  if (!r.diameter || nominal === null) return null;
  return r.side === 'external' ? nominal - r.diameter.value : r.diameter.value - nominal;
};

const normalLog = (read: Measured | null, nominal: number, own: number): number => {
  if (!read) return 0;
  const s = spreadOf(read, own);
  return -(((read.value - nominal) / s) ** 2) / 2 - Math.log(s);
};

/** Natural logarithm of how likely this thread makes the readings. Runs over the whole list, so it makes nothing. */
const logLikelihood = (r: ThreadReadings, c: Candidate): number => {
  const log = normalLog(r.pitch, c.pitch, PITCH_SPREAD * c.pitch) + normalLog(r.angle, c.angle, ANGLE_SPREAD);
  if (!r.diameter) return log;
  const short = shortOf(r, c);
  if (short === null) return log + Math.log(ANY_DIAMETER);
  // So far off by pitch or angle that the diameter can't matter: most of a long list ends here.
  if (log < HOPELESS) return log + Math.log(FLOOR);
  return log + Math.log(crestDensity(c.crests[r.side], short, r.diameter.u ?? 0));
};

const matchOf = (r: ThreadReadings, c: Candidate, behind: number, total: number): Match => {
  const short = shortOf(r, c);
  return {
    candidate: c,
    probability: Math.exp(-behind) / total,
    short,
    crest: short === null ? null : crestState(c.crests[r.side], short, r.diameter?.u ?? 0),
    pitchOff: off(r.pitch, c.pitch, PITCH_SPREAD * c.pitch),
    angleOff: off(r.angle, c.angle, ANGLE_SPREAD),
    together: behind <= TOGETHER,
  };
};

const problem = (r: ThreadReadings): Extract<Identification, { ok: false }>['refusal'] | null => {
  const given = [r.diameter, r.pitch, r.angle].filter((x) => x !== null);
  if (given.length === 0) return 'nothing-measured';
  if (given.some((x) => !(x.value > 0) || !Number.isFinite(x.value))) return 'not-positive';
  return given.some((x) => x.u === null || !(x.u > 0)) ? 'uncertainty-unknown' : null;
};

const tooFar = (z: number | null): boolean => z !== null && Math.abs(z) > TOO_FAR;

/** Diameter so far off nominal that no state of the crest explains it. */
const diameterWrong = (r: ThreadReadings, m: Match): boolean => {
  if (!r.diameter || m.short === null) return false;
  const parts = m.candidate.crests[r.side];
  const reach = TOO_FAR * (r.diameter.u ?? 0);
  return (
    m.short < Math.min(...parts.map((p) => p.from)) - reach ||
    m.short > Math.max(...parts.map((p) => p.to)) + reach
  );
};

/**
 * Ranks the candidates by how likely each makes the readings. All that can't be ruled out are returned, three that
 * can't be told apart as three; `next` says what to measure to part the first two.
 * Refused: nothing measured, a reading not above 0, or one whose uncertainty is not known (never taken as nought).
 */
export const identify = (r: ThreadReadings, candidates: readonly Candidate[]): Identification => {
  const refusal = problem(r);
  if (refusal) return { ok: false, refusal };
  const logs = candidates.map((c) => logLikelihood(r, c));
  const best = logs.reduce((m, x) => Math.max(m, x), -Infinity);
  if (best === -Infinity) return { ok: true, matches: [], fits: false, next: [] };
  const total = logs.reduce((sum, x) => sum + Math.exp(x - best), 0);
  const matches = candidates
    .map((candidate, i) => ({ candidate, behind: best - (logs[i] ?? -Infinity) }))
    .filter((x) => x.behind <= SHOWN)
    .sort((a, b) => a.behind - b.behind)
    .map((x) => matchOf(r, x.candidate, x.behind, total));
  const [first, second] = matches;
  const fits =
    first !== undefined && !tooFar(first.pitchOff) && !tooFar(first.angleOff) && !diameterWrong(r, first);
  const next = first && second ? separate(first.candidate, second.candidate, r) : [];
  return { ok: true, matches, fits, next };
};
