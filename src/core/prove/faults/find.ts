import type { MachineProfile } from '../../machine';
import { toNumber } from '../../quantity';
import { causeSteps, nothing, type Cause, type ThreadSet } from './causes';
import { times, type Factors } from './change';
import { byRatio, others, type Hypothesis } from './hypotheses';
import { nextSteps, type NextTest } from './next';
import { weigh, type Expected, type Reading, type Weighed } from './reading';
import { atOnce, type Steps } from './steps';
import { ODDS } from './usual';

/** χ² within which readings agree with a cause, by how many there are: 95.45 % (k = 2) and 99.73 % (k = 3). */
const WITHIN = [0, 4, 6.18, 8.02, 9.72, 11.31, 12.85, 14.34, 15.79];
const ABOUT = [0, 9, 11.83, 14.16, 16.25, 18.21, 20.06, 21.85, 23.57];
/** Most readings that are weighed together. */
export const MOST_READINGS = 8;

interface Fit {
  readonly chi: number;
  readonly log: number;
}
const fit = (says: Hypothesis['says'], ws: readonly Weighed[]): Fit => {
  let [chi, log] = [0, 0];
  for (const w of ws) {
    const s = says(w.test, w.length);
    const variance = w.u * w.u + s.spread * s.spread;
    const z2 = (w.value - s.mean) ** 2 / variance;
    chi += z2;
    // In units of the reading's own uncertainty: a vague cause pays for being vague.
    log -= (z2 + Math.log(variance / (w.u * w.u))) / 2;
  }
  return { chi, log };
};

export interface Ranked {
  readonly causes: readonly Cause[];
  readonly factors: Factors;
  /** Share among all that was weighed, "something else" included; 0 to 1. */
  readonly share: number;
  /** Within the readings' uncertainty at k = 2; else within k = 3 only. */
  readonly fits: boolean;
}
/** Causes that these readings can't tell apart: they say the same within one standard uncertainty. */
export type Group = readonly Ranked[];

export interface Found {
  /** The readings that could be weighed; one that the profile expects nothing of is left out. */
  readonly weighed: readonly Weighed[];
  /** Whether the profile agrees with the readings as it is. */
  readonly agrees: boolean;
  /** Likeliest first. */
  readonly groups: readonly Group[];
  /** Pairs beyond those given, less likely. */
  readonly more: number;
  readonly next: NextTest | null;
}

/** Most causes that are given; single ones are all given. */
const MOST = 40;
/** Hypotheses that the next test is chosen by. */
const MOST_NEXT = 120;

const product = (causes: readonly Cause[]): Factors => {
  const [a, b] = causes;
  return a && b ? times(a.factors, b.factors) : (a as Cause).factors;
};

const numbers = (f: Factors): [number, number, number] => [
  toNumber(f.counts),
  toNumber(f.screw),
  toNumber(f.carriage),
];

interface Scored extends Fit {
  readonly h: Hypothesis;
  readonly weight: number;
}

/** The same entry twice, or the thread typed twice over: one slip, not two. */
const same = (a: Cause, b: Cause): boolean =>
  a.changes.some((x) => b.changes.some((y) => x.field === y.field)) ||
  (a.changes.length === 0 && b.changes.length === 0);

/** Every hypothesis that isn't far out, weighed: one slip, two at once, no ratio, something else. */
function* score(m: MachineProfile, t: ThreadSet | null, ws: readonly Weighed[]): Steps<Scored[]> {
  const scored: Scored[] = [];
  const about = ABOUT[ws.length] ?? 0;
  const take = (h: Hypothesis, anyhow: boolean): void => {
    const f = fit(h.says, ws);
    if (anyhow || f.chi <= about) scored.push({ ...f, h, weight: h.odds * Math.exp(f.log) });
  };
  take({ causes: [], odds: ODDS.none, says: byRatio(1, 1, 1) }, false);
  others(m).forEach((h) => take(h, h.causes.length === 0));
  const causes = yield* causeSteps(m, t);
  const singles = causes
    .filter((cause) => !nothing(cause.factors))
    .map((cause) => {
      const f = numbers(cause.factors);
      const says = byRatio(...f);
      take({ causes: [cause], odds: cause.odds, says }, false);
      return { cause, f, first: says(ws[0]?.test ?? 'travel', 0).mean };
    });
  // Pairs are many: those that the first reading rules out are passed over before anything is made of them.
  const { value, u } = ws[0] ?? { value: 1, u: 1 };
  const [low, high] = [value - Math.sqrt(about) * u, value + Math.sqrt(about) * u];
  for (let i = 0; i < singles.length; i += 1) {
    if (i % 32 === 0) yield;
    const a = singles[i] as (typeof singles)[number];
    for (let k = i + 1; k < singles.length; k += 1) {
      const b = singles[k] as (typeof singles)[number];
      const product = a.first * b.first;
      if (product < low || product > high || same(a.cause, b.cause)) continue;
      const [c, s, l] = [a.f[0] * b.f[0], a.f[1] * b.f[1], a.f[2] * b.f[2]];
      // Two that cancel in every test are no explanation of anything.
      if (Math.abs(c - 1) + Math.abs(s - 1) + Math.abs(l - 1) < 1e-12) continue;
      const odds = a.cause.odds * b.cause.odds;
      take({ causes: [a.cause, b.cause], odds, says: byRatio(c, s, l) }, false);
    }
  }
  const sum = scored.reduce((n, x) => n + x.weight, 0);
  return scored.map((x) => ({ ...x, weight: x.weight / sum })).sort((a, b) => b.weight - a.weight);
}

const alike = (a: Scored, b: Scored, ws: readonly Weighed[]): boolean =>
  ws.every((w) => {
    const [x, y] = [a.h.says(w.test, w.length), b.h.says(w.test, w.length)];
    return Math.abs(x.mean - y.mean) <= w.u && Math.abs(x.spread - y.spread) <= w.u;
  });

/**
 * Ranks what may be wrong by likelihood (normal, JCGM 100) times how common it is, groups what the readings can't tell
 * apart, and names the test that would tell most.
 * @param readings up to MOST_READINGS; what is beyond is left out
 */
export function* findSteps(
  m: MachineProfile,
  t: ThreadSet | null,
  expected: Expected,
  readings: readonly Reading[],
): Steps<Found> {
  const weighed = readings.flatMap((r) => weigh(r, expected) ?? []).slice(0, MOST_READINGS);
  const scored = weighed.length > 0 ? yield* score(m, t, weighed) : [];
  const within = WITHIN[weighed.length] ?? 0;
  const agrees = scored.some((s) => s.h.causes.length === 0 && s.h.odds === ODDS.none && s.chi <= within);
  // While the profile agrees, only what the readings bear on and can't rule out is worth a line.
  const hides = ({ h }: Scored): boolean =>
    h.causes.length === 1 &&
    weighed.some((w) => {
      const { mean, spread } = h.says(w.test, w.length);
      return spread > 0 || mean !== (w.test === 'back' ? 0 : 1);
    });
  const named = scored.filter((s) => s.h.causes.length > 0 && (!agrees || hides(s)));
  const given = named.filter((s, i) => i < MOST || s.h.causes.length === 1);
  yield;
  const groups: { head: Scored; all: Ranked[] }[] = [];
  for (const s of given) {
    const { causes } = s.h;
    const one: Ranked = { causes, factors: product(causes), share: s.weight, fits: s.chi <= within };
    const group = groups.find(({ head }) => alike(head, s, weighed));
    if (group) group.all.push(one);
    else groups.push({ head: s, all: [one] });
    if (group?.all.length === 8) yield;
  }
  return {
    weighed,
    agrees,
    groups: groups.map((g) => g.all),
    more: named.length - given.length,
    next: yield* nextSteps(scored.slice(0, MOST_NEXT), expected),
  };
}

/** All steps at once. */
export const findFaults = (...of: Parameters<typeof findSteps>): Found => atOnce(findSteps(...of));
