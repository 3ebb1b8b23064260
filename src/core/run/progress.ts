import type { PlannedPass } from '../cut/pass';
import type { Outcome, Run, RunReading } from './run';

/** Number of the plan that is being cut: the newest. −1 for a run without one. */
const planNow = (run: Run): number => run.plans.length - 1;

/** Passes said to be taken of the plan that is being cut. A new plan begins with the pass after the last one taken. */
const takenOfPlan = (run: Run): number => run.taken.filter((t) => t.plan === planNow(run)).length;

/** Passes still to be taken, the next one first. */
export const passesLeft = (run: Run): readonly PlannedPass[] =>
  (run.plans[planNow(run)] ?? []).slice(takenOfPlan(run));

export const nextPass = (run: Run): PlannedPass | null => passesLeft(run)[0] ?? null;

/** The number by which a person counts: from the first pass of the run, whatever plan it belonged to. */
export const cutNumber = (run: Run): number => run.taken.length + 1;

/** Passes taken and still to be taken. */
export const cutsInAll = (run: Run): number => run.taken.length + passesLeft(run).length;

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

/** Adds what was read off; with `plan` the rest is cut by that one, which holds the passes still to be taken. */
export const withReading = (run: Run, reading: RunReading | null, plan?: readonly PlannedPass[]): Run => ({
  ...run,
  readings: reading ? [...run.readings, reading] : run.readings,
  plans: plan ? [...run.plans, plan] : run.plans,
});

export const endRun = (run: Run, outcome: Outcome, notes: string, at: number): Run => ({
  ...run,
  ended: at,
  outcome,
  notes,
  paused: false,
});

/** An ended run that goes on: paused, so that it is begun again on purpose. */
export const reopenRun = (run: Run): Run => ({ ...run, ended: null, outcome: null, paused: true });
