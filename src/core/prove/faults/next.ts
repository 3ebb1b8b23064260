import { toNumber } from '../../quantity';
import type { Hypothesis } from './hypotheses';
import { FAULT_TESTS, standard, usualHalf, type Expected, type FaultTest } from './reading';
import type { Steps } from './steps';

/** The test that tells most, how far to go, and what it is expected to tell. */
export interface NextTest {
  readonly test: FaultTest;
  /** Spindle turns, screw turns, or mm, as the test counts (reading.ts). */
  readonly over: number;
  /** Expected drop of entropy, bits. */
  readonly bits: number;
}

/** Turns to take, and mm to go, so that the usual ± is fine enough (common practice). */
const TURNS = 10;
const TRAVEL = 100;
interface Plan {
  readonly over: number;
  readonly u: number;
  readonly length: number;
}

/** How each test would be taken; null when the profile doesn't say what it should show. */
const planOf = (test: FaultTest, e: Expected): Plan | null => {
  const u = standard(toNumber(usualHalf(test, e)));
  if (test === 'travel') return { over: TRAVEL, u: u / TRAVEL, length: TRAVEL };
  if (test === 'back') return { over: TRAVEL, u, length: TRAVEL };
  const each = e[test] && toNumber(e[test]);
  if (!each) return null;
  const over = test === 'screw' ? Math.ceil(TURNS / each) : TURNS;
  return { over, u: u / (over * each), length: test === 'carriage' ? over * each : 0 };
};

const entropy = (ws: readonly number[]): number => {
  const sum = ws.reduce((a, b) => a + b, 0);
  return ws.reduce((h, w) => (w > 0 ? h - (w / sum) * Math.log2(w / sum) : h), 0);
};

/** Less than this tells nothing worth the work. */
const LEAST_BITS = 0.1;

interface Weighted {
  readonly h: Hypothesis;
  readonly weight: number;
}

/**
 * Those that say the same of every test taken as one: what no test parts stays in every remainder alike, and so drops
 * out of the difference.
 */
const merged = (hs: readonly Weighted[], plans: readonly (readonly [FaultTest, Plan])[]): Weighted[] => {
  const by = new Map<string, Weighted>();
  for (const x of hs) {
    const key = plans
      .map(([test, p]) => x.h.says(test, p.length))
      .map((s) => `${s.mean.toFixed(9)} ${s.spread.toFixed(9)}`)
      .join();
    by.set(key, { h: x.h, weight: x.weight + (by.get(key)?.weight ?? 0) });
  }
  return [...by.values()];
};

/** Gauss-Hermite nodes and weights of three points for a normal of width 1 (Abramowitz and Stegun, 25.4; from memory). */
const NODES = [
  [-Math.sqrt(3), 1 / 6],
  [0, 2 / 3],
  [Math.sqrt(3), 1 / 6],
] as const;

/**
 * Expected drop of entropy (Shannon): for each hypothesis taken as true, what would remain after a reading that scatters
 * about what it says.
 */
const drop = (hs: readonly Weighted[], test: FaultTest, p: Plan): number => {
  const said = hs.map(({ h, weight }) => {
    const { mean, spread } = h.says(test, p.length);
    const width = Math.hypot(p.u, spread);
    return { mean, width, weight };
  });
  const after = said.reduce((sum, a) => {
    // What is next to impossible changes nothing in the mean.
    if (a.weight < 1e-4) return sum;
    const left = NODES.reduce((h, [at, part]) => {
      const reading = a.mean + at * a.width;
      const weights = said.map((b) => {
        const z2 = ((reading - b.mean) / b.width) ** 2;
        return z2 > 60 ? 0 : (b.weight * Math.exp(-z2 / 2)) / b.width;
      });
      return h + part * entropy(weights);
    }, 0);
    return sum + a.weight * left;
  }, 0);
  const all = said.reduce((n, x) => n + x.weight, 0);
  return entropy(said.map((x) => x.weight)) - after / (all || 1);
};

/** null when no test would tell more: what is left is told by looking at the parts. */
export function* nextSteps(hypotheses: readonly Weighted[], e: Expected): Steps<NextTest | null> {
  const plans = FAULT_TESTS.flatMap((test) => {
    const plan = planOf(test, e);
    return plan ? [[test, plan] as const] : [];
  });
  const hs = merged(hypotheses, plans);
  let best: NextTest | null = null;
  for (const [test, plan] of hs.length > 1 ? plans : []) {
    yield;
    const bits = drop(hs, test, plan);
    // Of tests that tell as much, the one that is less work stands first in the list.
    if (bits >= LEAST_BITS && bits > (best?.bits ?? 0) * 1.05) best = { test, over: plan.over, bits };
  }
  return best;
}
