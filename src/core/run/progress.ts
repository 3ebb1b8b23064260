import type { PlannedPass } from '../cut/pass';
import type { Turn } from '../cut/starts';
import type { Outcome, Run, RunReading } from './run';

/** Number of the plan that is being cut: the newest. −1 for a run without one. */
const planNow = (run: Run): number => run.plans.length - 1;

/** Each pass is one cut for every start of the thread, all of them before the next pass is set. */
const startsOf = (run: Run): number => Math.max(1, run.job.starts);

/** Cuts said to be taken of the plan that is being cut. A new plan begins with the pass after the last one taken. */
const takenOfPlan = (run: Run): number => run.taken.filter((t) => t.plan === planNow(run)).length;

const planOf = (run: Run): readonly PlannedPass[] => run.plans[planNow(run)] ?? [];

/** Passes of the plan not yet taken in every start, the next one first. */
export const passesLeft = (run: Run): readonly PlannedPass[] =>
  planOf(run).slice(Math.floor(takenOfPlan(run) / startsOf(run)));

/** Cuts still to be taken: in every start of every pass. */
export const cutsLeft = (run: Run): number => planOf(run).length * startsOf(run) - takenOfPlan(run);

/** The start that cut `n` of the run is of. */
export const startOf = (run: Run, n: number): number => ((n - 1) % startsOf(run)) + 1;

/** Which start the next cut is of, and in which round of all starts. */
export const turnOf = (run: Run): Turn => {
  const [taken, starts] = [run.taken.length, startsOf(run)];
  return { round: Math.floor(taken / starts) + 1, start: startOf(run, taken + 1) };
};

/** Whether some starts are a pass deeper than others: then no reading is of all of them, and no plan goes on from it. */
export const midRound = (run: Run): boolean => turnOf(run).start > 1;

export const nextPass = (run: Run): PlannedPass | null => passesLeft(run)[0] ?? null;

/** The number by which a person counts: from the first cut of the run, whatever plan it belonged to. */
export const cutNumber = (run: Run): number => run.taken.length + 1;

/** Cuts taken and still to be taken. */
export const cutsInAll = (run: Run): number => run.taken.length + cutsLeft(run);

/** Radial depth from what the dials stand at now to the plan's last setting, mm. */
export const depthLeft = (run: Run): number => {
  const last = run.plans[planNow(run)]?.at(-1)?.depth ?? 0;
  return Math.max(0, last - (run.taken.at(-1)?.pass.depth ?? 0));
};

/** Whether the last pass taken can be taken back: not across a new plan, which was reckoned from what it left. */
export const canGoBack = (run: Run): boolean => run.taken.at(-1)?.plan === planNow(run) && run.ended === null;

/** The next pass counts as taken. @param n the number a person saw; null where it is no longer the next */
export const takePass = (run: Run, n: number, at: number): Run | null => {
  const pass = nextPass(run);
  if (!pass || n !== cutNumber(run) || run.ended !== null) return null;
  return { ...run, paused: false, taken: [...run.taken, { n, at, plan: planNow(run), pass }] };
};

export const backOne = (run: Run): Run | null =>
  canGoBack(run) ? { ...run, taken: run.taken.slice(0, -1) } : null;

/**
 * Adds what was read off; with `plan` the rest is cut by that one, which holds the passes still to be taken. null: a
 * plan while starts stand at different depths.
 */
export const withReading = (
  run: Run,
  reading: RunReading | null,
  plan?: readonly PlannedPass[],
): Run | null =>
  plan && midRound(run)
    ? null
    : {
        ...run,
        readings: reading ? [...run.readings, reading] : run.readings,
        plans: plan ? [...run.plans, plan] : run.plans,
      };

export const endRun = (run: Run, outcome: Outcome, notes: string, at: number): Run => ({
  ...run,
  ended: at,
  outcome,
  notes,
  paused: false,
});

/** An ended run that goes on: paused, so that it is begun again on purpose. */
export const reopenRun = (run: Run): Run => ({ ...run, ended: null, outcome: null, paused: true });
